package org.conetender.app.config;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.conetender.core.settings.Cone;
import org.tomlj.TomlArray;

/** Reads one {@code [[cone]]}; what its settings mean together is checked by {@link ConeRules}. */
final class ConeReader {

    /** Stocking that leaves an unhurried harvest (science.md §7.3: 200 per mL, half an hour). */
    private static final double CYSTS_G_PER_L = 1;

    /** Longest label of a lot; it stands in topics' payloads and messages. *guess* */
    private static final int MOST_LOT = 40;

    /** What a ready batch is kept above by default, °C (design.md). */
    private static final double FLOOR_C = 20;

    private final Fields cone;
    private final String id;
    private final LineBook lines;
    private final Ids ids;

    /** @param id of the cone, or a stand-in such as {@code #2} when its own cannot serve */
    ConeReader(Fields cone, String id, LineBook lines, Ids ids) {
        this.cone = cone;
        this.id = id;
        this.lines = lines;
        this.ids = ids;
    }

    Cone read() {
        Cone.Usual usual = usual(cone.sub("usual"));
        Fields water = cone.sub("water");
        Cone.Probes probes = new Cone.Probes(probes(water),
                lines.contact(water, "level-line", id + ".level"));
        Fields heat = cone.sub("heat");
        Cone.Fittings fittings = new Cone.Fittings(probes, heat(heat), air(cone.sub("air")),
                lights(cone.sub("lamp")), button(cone.sub("button")), vessel(cone.sub("vessel"), heat));
        Cone read = new Cone(id, fittings, limits(cone.sub("limits")), timing(cone.sub("timing")), usual);
        new ConeRules(cone, read).check();
        return read;
    }

    private List<String> probes(Fields water) {
        List<String> given = water.texts("probes");
        if (water.given("probes") && water.at().raw("probes") instanceof TomlArray a
                && (a.isEmpty() || a.size() > 2)) {
            water.at().wrong("probes", "a cone needs one or two probes in its water; without one nothing can "
                    + "be measured, more than two cannot be compared");
        }
        return given.stream().filter(p -> ids.probe(water, "probes", p, "the water of cone " + id)).toList();
    }

    private Cone.Heat heat(Fields heat) {
        int kind = heat.word("kind");
        int by = heat.word("switch");
        double watts = heat.number("watts");
        lines.output(heat, "line", id + ".heat");
        boolean cutOut = lines.output(heat, "cut-out-line", id + ".cut-out");
        // A heater that is not there takes no power; a figure that could not be read stays NaN.
        double rating = kind == Cone.HeatKind.NONE.ordinal() ? 0 : watts;
        return new Cone.Heat(kind < 0 ? Cone.HeatKind.NONE : Cone.HeatKind.values()[kind], rating,
                Cone.SwitchKind.values()[Math.max(0, by)], cutOut, contacts(heat, by));
    }

    private static Cone.Contacts contacts(Fields heat, int by) {
        Cone.Contacts given = new Cone.Contacts(heat.number("cycles-per-day"), heat.number("life-cycles"));
        return by == Cone.SwitchKind.SOLID_STATE.ordinal() ? Cone.Contacts.NONE : given;
    }

    private Cone.Air air(Fields air) {
        Fields geometry = cone.sub("geometry");
        lines.output(air, "line", id + ".air-pause");
        int entry = air.word("entry");
        boolean proof = lines.contact(air, "proof-line", id + ".air-proof");
        return new Cone.Air(Cone.AirEntry.values()[Math.max(0, entry)], proof, air.flag("idle-on"),
                new Cone.Geometry(geometry.number("pump-outlet-cm"), geometry.number("waterline-cm"),
                        geometry.flag("check-valve"), geometry.text("siphon-risk-accepted")));
    }

    private Cone.Lights lights(Fields lamp) {
        return new Cone.Lights(lines.output(lamp, "harvest-line", id + ".lamp"),
                lines.output(lamp, "trigger-line", id + ".trigger"));
    }

    private boolean button(Fields button) {
        boolean fitted = lines.contact(button, "line", id + ".button");
        boolean lamp = lines.output(button, "lamp-line", id + ".button-lamp");
        if (fitted != lamp) {
            button.at().wrong(fitted ? "lamp-line" : "line", "a hand button and its lamp belong together: "
                    + "the lamp says whether a press will be taken; give both lines or neither");
        }
        return fitted;
    }

    private Cone.Vessel vessel(Fields vessel, Fields heat) {
        double bath = heat.number("bath-l");
        return new Cone.Vessel(vessel.flag("lid"), vessel.flag("insulated"), Double.isNaN(bath) ? 0 : bath,
                Set.copyOf(vessel.texts("touches")));
    }

    private Cone.Limits limits(Fields limits) {
        double setpoint = limits.number("setpoint-c");
        return new Cone.Limits(setpoint, limits.number("guard-c"), limits.number("arrest-c"),
                limits.number("loss-c"),
                limits.number("floor-c", Double.isNaN(setpoint) ? FLOOR_C : Math.min(FLOOR_C, setpoint)));
    }

    private Cone.Timing timing(Fields timing) {
        return new Cone.Timing(timing.number("hydration-h"), timing.number("trigger-h"),
                timing.number("settle-min"), timing.number("air-off-cap-min"),
                timing.flag("automatic-settling"));
    }

    private Cone.Usual usual(Fields usual) {
        Optional<String> lot = usual.text("lot");
        lot.filter(l -> l.isBlank() || l.length() > MOST_LOT || l.chars().anyMatch(Character::isISOControl))
                .ifPresent(l -> usual.at().wrong("lot", "this must be 1 to " + MOST_LOT
                        + " characters, no control characters"));
        double litres = usual.number("litres");
        return new Cone.Usual(lot.orElse(""), litres,
                usual.number("cysts-g", litres * CYSTS_G_PER_L), usual.number("ppt"));
    }
}

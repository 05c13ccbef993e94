package org.conetender.app.config;

import static org.conetender.app.config.SiteDocs.ID_FORM;
import static org.conetender.app.config.SiteDocs.PROBE_FORM;
import static org.conetender.app.config.SiteDocs.absent;
import static org.conetender.app.config.SiteDocs.flag;
import static org.conetender.app.config.SiteDocs.line;
import static org.conetender.app.config.SiteDocs.needed;
import static org.conetender.app.config.SiteDocs.number;
import static org.conetender.app.config.SiteDocs.row;
import static org.conetender.app.config.SiteDocs.text;
import static org.conetender.app.config.SiteDocs.value;

import java.util.List;
import org.conetender.app.config.SettingDoc.Fallback;
import org.conetender.app.config.SettingDoc.Kind;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Cone.Limits;

/** The settings of each {@code [[cone]]}. */
final class ConeDocs {

    /** How {@link org.conetender.core.settings.Cone.HeatKind} is written, in its order. */
    static final List<String> HEAT = List.of("immersed", "mat", "bath", "none");

    /** How {@link org.conetender.core.settings.Cone.SwitchKind} is written, in its order. */
    static final List<String> SWITCH = List.of("relay", "solid-state");

    /** How {@link org.conetender.core.settings.Cone.AirEntry} is written, in its order. */
    static final List<String> ENTRY = List.of("bottom", "dip-tube");

    /** Other plants than these are refused (the heating law is made for them and tried on them). */
    static final double LEAST_LITRES = Cone.Usual.LEAST_LITRES;
    static final double MOST_LITRES = Cone.Usual.MOST_LITRES;
    static final double LEAST_W_PER_L = 3;
    static final double MOST_W_PER_L = 25;

    /** Cycles a day: less is hardly control, more wears 100 000 out in a hundred days (guess). */
    static final double LEAST_CYCLES = 50;
    static final double MOST_CYCLES = 1_000;

    /** Air is never off longer than this with animals in the cone (design.md). */
    static final double MOST_CAP_MIN = 12;

    static final List<SettingDoc> ROWS = List.of(
            row("cone.id", text(ID_FORM), needed(),
                    "Names the cone everywhere: on MQTT, in messages, on a label beside it.", "\"a\""),

            row("cone.vessel.lid", flag(), value("false"),
                    "Whether a lid lies on the cone. An open surface loses about 2.5 times as much warmth.",
                    "true"),
            row("cone.vessel.insulated", flag(), value("false"),
                    "Whether the wall is insulated. It then loses about a quarter of what a bare one does.",
                    "false"),
            row("cone.vessel.touches", new Kind.Texts(ID_FORM), value("[]"),
                    "Cones whose walls touch this one's. Heat passes between them, so it is not looked "
                            + "whether the heater of one warms the other. One of two need name the other.",
                    "[\"b\"]"),

            row("cone.water.probes", new Kind.Texts(PROBE_FORM), needed(),
                    "One or two probes in the water; the first counts, the second is compared with it.",
                    "[\"28-00000a000001\"]"),
            row("cone.water.level-line", line(), absent(),
                    "A contact that closes while water stands at the heater's height. Without one an "
                            + "immersed heater must first pass a low-power response test.", "5"),

            row("cone.heat.kind", new Kind.Word(HEAT), value("\"none\""),
                    "How heat reaches the water. One bath that warms several cones belongs to one of "
                            + "them; the others have none.", "\"immersed\""),
            row("cone.heat.watts", number("W", LEAST_LITRES * LEAST_W_PER_L, MOST_LITRES * MOST_W_PER_L),
                    new Fallback.Derived("must be given with a heater"),
                    "The heater's rating. Between 3 and 25 W for each litre it warms: a weaker one never "
                            + "gets there, a stronger one cooks the batch before a fault can be told.", "25"),
            row("cone.heat.bath-l", number("L", LEAST_LITRES, MOST_LITRES),
                    new Fallback.Derived("must be given with a bath"),
                    "Water that the bath's heater warms in all, the cones in it included.", "12"),
            row("cone.heat.switch", new Kind.Word(SWITCH), value("\"relay\""),
                    "What switches the heater: a relay is spared, a solid-state switch may follow quickly "
                            + "(it fails shorted more often than open).", "\"relay\""),
            row("cone.heat.cycles-per-day", number("cycles a day", LEAST_CYCLES, MOST_CYCLES),
                    value("150"),
                    "Only for a relay: how often a day it may close. Fewer spare it and let the water "
                            + "swing wider; they are refused where it would swing by more than half a "
                            + "degree.", "150"),
            row("cone.heat.life-cycles", number("cycles", 1_000, 10_000_000), value("100000"),
                    "Only for a relay: how often it can close before it is worn, from its data sheet, at "
                            + "the heater's load. It is counted, and you are told when it gets there.",
                    "100000"),
            row("cone.heat.line", line(), new Fallback.Derived("must be given with a heater"),
                    "The output that closes the heater's normally open switch.", "17"),
            row("cone.heat.cut-out-line", line(), absent(),
                    "The output of a second normally open switch in series. It opens when the first one "
                            + "is welded. It does not replace an independent thermal cut-out.", "27"),

            row("cone.air.line", line(), needed(),
                    "The output that pauses this cone's air when energised: a relay whose resting contact "
                            + "keeps the pump running, or the valve of this cone at a shared pump.", "22"),
            row("cone.air.entry", new Kind.Word(ENTRY), value("\"bottom\""),
                    "Where air enters: a nozzle at the bottom with a valve, or a tube from above without "
                            + "one.", "\"bottom\""),
            row("cone.air.proof-line", line(), absent(),
                    "A contact (pressure or flow) that closes while air really flows.", "6"),
            row("cone.air.idle-on", flag(), value("true"),
                    "Whether air goes on in an empty cone. Where water can siphon back it always does; else "
                            + "as long as a level contact does not say that it is empty, or half an hour "
                            + "where there is none: the report may have been meant for another cone.",
                    "true"),

            row("cone.geometry.pump-outlet-cm", number("cm", 0, 300), needed(),
                    "Height of the air pump's outlet above the bench. Above the waterline, stopped air "
                            + "cannot draw water into the pump.", "60"),
            row("cone.geometry.waterline-cm", number("cm", 1, 300), needed(),
                    "Height of the waterline above the same bench, at the fullest.", "45"),
            row("cone.geometry.check-valve", flag(), value("false"),
                    "Whether a check valve is fitted in the air line. They stick with salt: test it now "
                            + "and then.", "false"),
            row("cone.geometry.siphon-risk-accepted",
                    text("\"name, date\", such as \"the keeper, 2026-03-14\""), absent(),
                    "Signs that somebody accepts a pump below the waterline without a check valve.",
                    "\"the keeper, 2026-03-14\""),

            row("cone.lamp.harvest-line", line(), absent(),
                    "A lamp at the drain, outside the water, that gathers the nauplii for drawing.", "23"),
            row("cone.lamp.trigger-line", line(), absent(),
                    "A light above, outside the water, that starts development in its first hours.", "24"),

            row("cone.button.line", line(), absent(),
                    "A large sealed low-voltage hand button: the obvious next step, without a phone.", "16"),
            row("cone.button.lamp-line", line(), new Fallback.Derived("must be given with a button"),
                    "The lamp in the hand button; it says whether a press will be taken.", "20"),

            row("cone.limits.setpoint-c",
                    number("°C", Limits.LEAST_SETPOINT_C, Limits.MOST_SETPOINT_C), value("27"),
                    "What the water is held at while the cysts develop. At least 1 °C below the guard.",
                    "27"),
            row("cone.limits.guard-c", number("°C", 16, 35), value("31"),
                    "Above this, heater, cut-out and lamps go off. Below the arrest.", "31"),
            row("cone.limits.arrest-c", number("°C", 28, 36), value("33"),
                    "Above this, development stands still and a person is called. Below the loss.", "33"),
            row("cone.limits.loss-c", number("°C", 30, 40), value("38"),
                    "Above this, the batch is marked doubtful.", "38"),
            row("cone.limits.floor-c", number("°C", 10, Limits.MOST_SETPOINT_C),
                    new Fallback.Derived("20, or the set-point if that is lower"),
                    "What a ready batch is kept from falling below while it waits for its feed.", "20"),

            row("cone.timing.hydration-h", number("h", 0.5, 6), value("2"),
                    "How long cysts take up water until they are round.", "2"),
            row("cone.timing.trigger-h", number("h", 1, 24), value("6"),
                    "The trigger light burns until this long after the cysts went in.", "6"),
            row("cone.timing.settle-min", number("min", 2, MOST_CAP_MIN - 2), value("6"),
                    "The wait between air off and drawing. At least 2 min less than the cap.", "6"),
            row("cone.timing.air-off-cap-min", number("min", 4, MOST_CAP_MIN), value("10"),
                    "Air comes back this long after it went off, at the latest. The animals use up their "
                            + "oxygen meanwhile.", "10"),
            row("cone.timing.automatic-settling", flag(), value("false"),
                    "Whether separation may start without a person, where that is provably safe: air "
                            + "proven by a contact, no way for water to siphon back.", "false"),

            row("cone.usual.lot", text("1 to 40 characters, no control characters"), value("\"unknown\""),
                    "The tin that \"started\" means until another is named. What reports teach is kept by "
                            + "its name; an unknown tin teaches nothing to the next batch.",
                    "\"L-0417\""),
            row("cone.usual.litres", number("L", LEAST_LITRES, MOST_LITRES), needed(),
                    "Water in the cone when full.", "2"),
            row("cone.usual.cysts-g", number("g", 0.01, MOST_LITRES * 5),
                    new Fallback.Derived("1 g for each litre"),
                    "Dry cysts for one batch, at most 5 g for each litre. Denser hatches "
                            + "leave less time for drawing.", "2"),
            row("cone.usual.ppt", number("ppt", Cone.Usual.LEAST_PPT, Cone.Usual.MOST_PPT), value("25"),
                    "Salt in grams for each kilogram of salt water.", "25"));

    private ConeDocs() {}
}

package org.conetender.sim;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.conetender.core.settings.Cone;

/**
 * The devices screwed to one cone, by their ids: switches {@code a.heat}, {@code a.cut-out},
 * {@code a.air-pause}, {@code a.lamp}, {@code a.trigger}, {@code a.button-lamp}; contacts
 * {@code a.level}, {@code a.air-proof}, {@code a.button}; probes as the settings name them. What is not
 * fitted is not there.
 */
final class Fixtures {

    static final String HEAT = "heat";
    static final String CUT_OUT = "cut-out";
    static final String AIR_PAUSE = "air-pause";
    static final String HARVEST = "lamp";
    static final String TRIGGER = "trigger";
    static final String BUTTON_LAMP = "button-lamp";
    static final String LEVEL = "level";
    static final String PROOF = "air-proof";
    static final String BUTTON = "button";

    final Map<String, SimSwitch> switches = new LinkedHashMap<>();
    final Map<String, SimContact> contacts = new LinkedHashMap<>();
    /** In the order of the settings; another cone's after two were swapped. */
    final List<SimProbe> probes = new ArrayList<>();

    /** What brings power to the heater. */
    final Feed feed = new Feed(this);

    private final String cone;
    private final SimClock clock;

    Fixtures(Cone settings, SimClock clock, long seed, boolean exact) {
        this.cone = settings.id();
        this.clock = clock;
        Cone.Fittings f = settings.fittings();
        relay(HEAT, f.heat().kind() != Cone.HeatKind.NONE);
        relay(CUT_OUT, f.heat().cutOut());
        relay(AIR_PAUSE, true);
        relay(HARVEST, f.lights().harvest());
        relay(TRIGGER, f.lights().trigger());
        relay(BUTTON_LAMP, f.button());
        contact(LEVEL, f.probes().level());
        contact(PROOF, f.air().proof());
        contact(BUTTON, f.button());
        for (String id : f.probes().water()) {
            probes.add(probe(id, clock, seed, exact));
        }
    }

    static SimProbe probe(String id, SimClock clock, long seed, boolean exact) {
        var random = Seeds.of(seed, "probe/" + id);
        SimProbe.Build build = exact ? SimProbe.Build.EXACT : SimProbe.Build.draw(random);
        return new SimProbe(id, clock, build, random);
    }

    private void relay(String what, boolean fitted) {
        if (fitted) {
            switches.put(what, new SimSwitch(cone + "." + what, clock));
        }
    }

    private void contact(String what, boolean fitted) {
        if (fitted) {
            contacts.put(what, new SimContact(cone + "." + what, clock));
        }
    }

    /** Whether that contact conducts; {@code otherwise} where it is not fitted. */
    boolean conducts(String what, boolean otherwise) {
        SimSwitch s = switches.get(what);
        return s == null ? otherwise : s.conducting();
    }

    /** Whether the daemon asks for that contact to conduct; false where it is not fitted. */
    boolean commanded(String what) {
        SimSwitch s = switches.get(what);
        return s != null && s.commanded();
    }
}

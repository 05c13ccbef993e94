package org.conetender.sim;

/** What goes wrong with a heater or with the probe it is steered by, second by second, for {@link Theme}. */
final class HeatScripts {

    /** By then a cone has been held for hours and its heater is known, s. */
    private static final long KNOWN_S = 4 * 3_600;

    /** By then the others are warm and have been held for a while, s. */
    private static final long RENEWED_S = 3 * 3_600;

    private HeatScripts() {}

    /** The heater's contact no longer opens; the cone is hardly known yet. */
    static void welded(Rig r, long s) {
        Scripts.nursed(r, s);
        if (s == 3_600) {
            r.world().apply(new Fault.OfSwitch("a", "heat", SimSwitch.Fault.WELDED, Scripts.lasting(r, 120)));
        }
    }

    /** Both contacts weld. */
    static void weldedPair(Rig r, long s) {
        Scripts.nursed(r, s);
        if (s == 3_600) {
            r.world().apply(new Fault.OfSwitch("a", "heat", SimSwitch.Fault.WELDED, Scripts.lasting(r, 400)));
            r.world().apply(new Fault.OfSwitch("a", "cut-out", SimSwitch.Fault.WELDED,
                    Scripts.lasting(r, 400)));
        }
    }

    /** The heater breaks while the water is still warming up. */
    static void deadHeater(Rig r, long s) {
        Scripts.nursed(r, s);
        if (s == 1_200) {
            r.world().apply(new Fault.OfSwitch("c", "heat", SimSwitch.Fault.OPEN, Scripts.lasting(r, 230)));
        }
    }

    /** The contact welds in a cone that is known: it must be seen within minutes. */
    static void weldedWhenKnown(Rig r, long s) {
        Scripts.nursed(r, s);
        boolean heating = r.world().cone("b").heaterOn() && r.world().wrong().isEmpty();
        if (s >= KNOWN_S && s < KNOWN_S + 3_600 && heating) {
            r.world().apply(new Fault.OfSwitch("b", "heat", SimSwitch.Fault.WELDED, Scripts.lasting(r, 120)));
        }
    }

    /** The heater breaks in a cone that is held and known. */
    static void deadWhenKnown(Rig r, long s) {
        Scripts.nursed(r, s);
        if (s == KNOWN_S) {
            r.world().apply(new Fault.OfSwitch("c", "heat", SimSwitch.Fault.OPEN, Scripts.lasting(r, 150)));
        }
    }

    /** The cut-out conducts for ever when the batch begins, which its heater's own switch hides. */
    static void cutOutStuck(Rig r, long s) {
        if (s == 1) {
            r.world().apply(new Fault.OfSwitch("a", "cut-out", SimSwitch.Fault.WELDED,
                    Scripts.lasting(r, 170)));
        }
        Scripts.nursed(r, s);
    }

    /** The heater's own switch conducts for ever when the batch begins, which its cut-out hides. */
    static void ownSwitchStuck(Rig r, long s) {
        if (s == 1) {
            r.world().apply(new Fault.OfSwitch("c", "heat", SimSwitch.Fault.WELDED, Scripts.lasting(r, 170)));
        }
        Scripts.nursed(r, s);
    }

    /** The water of a cone without a level contact seeps away, once it is known; in the end it is told so. */
    static void seep(Rig r, long s) {
        Scripts.nursed(r, s);
        if (s == KNOWN_S) {
            r.world().apply(new Fault.OfWater("c", Fault.Water.SEEP, Scripts.lasting(r, 640)));
        }
    }

    /** While cone a is cleaned its heater's plug is exchanged with b's, which is held. */
    static void plugsExchanged(Rig r, long s) {
        renewed(r, s, Fault.Wiring.PLUGS);
    }

    /** The output of cone a reaches the heater of b too, which is held. */
    static void outputsTouch(Rig r, long s) {
        renewed(r, s, Fault.Wiring.SHORTED);
    }

    /** Cone a is filled anew beside two that are held, and something is wired wrongly since. */
    private static void renewed(Rig r, long s, Fault.Wiring wiring) {
        Scripts.nursed(r, s);
        SimCone a = r.world().cone("a");
        if (s == RENEWED_S) {
            a.drain();
            r.say("a", "drained");
            r.world().apply(new Fault.Crossed("a", "b", wiring, Scripts.lasting(r, 60)));
        }
        if (s == RENEWED_S + 60) {
            r.say("a", "cleaned");
        }
        if (s == RENEWED_S + 120) {
            a.fill(a.settings().usual().litres(), 22, a.settings().usual().ppt());
            a.stock("L-0417", a.settings().usual().cystsG());
            r.say("a", "started");
        }
    }

    /** Two probes give one figure for ever; their cones are known. */
    static void frozenProbe(Rig r, long s) {
        Scripts.nursed(r, s);
        // In a cold room a heater works hard, so its probe is asked by a pause: no missing effect tells then.
        if (s == 600) {
            r.world().apply(new Fault.OfSite(Fault.Trouble.ROOM_COLD, Scripts.lasting(r, 460)));
        }
        // One above the set-point, where no heat is asked for and nothing else would show it; one anywhere.
        boolean warm = r.world().cone("b").fixtures.probes.getFirst().shownC() > 27.1;
        boolean whole = r.world().wrong().stream().noneMatch(f -> f.cone().equals("b"));
        if (s >= KNOWN_S && s < KNOWN_S + 3_600 && warm && whole) {
            r.world().apply(new Fault.OfProbe("b", 0, SimProbe.Fault.FROZEN, Scripts.lasting(r, 160)));
        }
        if (s == KNOWN_S) {
            r.world().apply(new Fault.OfProbe("c", 0, SimProbe.Fault.FROZEN, Scripts.lasting(r, 230)));
        }
    }
}

package org.conetender.core.settings;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.conetender.core.unit.Units;

/**
 * One hatching cone: what is fitted to it, the limits it must keep, and its usual charge.
 *
 * @param id lower-case letters, digits and {@code -}
 * @param fittings probes, heat, air, lamps
 * @param limits temperatures, safely ordered: {@code setpoint ≤ guard − margin < arrest < loss}
 * @param timing how long the timed parts of a batch last
 * @param usual the charge that {@code started} stands for, until somebody sets another
 */
public record Cone(String id, Fittings fittings, Limits limits, Timing timing, Usual usual) {

    /** Whether their walls touch, as either of them has it. */
    public boolean touches(Cone other) {
        return fittings.vessel().touches().contains(other.id)
                || other.fittings.vessel().touches().contains(id);
    }

    /**
     * @param button whether the large hand button is fitted
     * @param vessel what the cone itself loses heat through
     */
    public record Fittings(Probes probes, Heat heat, Air air, Lights lights, boolean button,
                           Vessel vessel) {

        /** Fittings of an open, bare cone. */
        public Fittings(Probes probes, Heat heat, Air air, Lights lights, boolean button) {
            this(probes, heat, air, lights, button, Vessel.OPEN);
        }
    }

    /**
     * What decides how fast warmth is lost (science.md §9), until the plant has been learnt.
     *
     * @param lid whether a lid lies on the cone; an open surface loses about 2.5 times as much
     * @param insulated whether the wall is insulated
     * @param bathLitres water that a bath's heater warms in all, the cones in it included; 0 without a bath
     * @param touches ids of cones whose walls touch this one's, so that their heat passes through
     */
    public record Vessel(boolean lid, boolean insulated, double bathLitres, Set<String> touches) {

        public Vessel {
            touches = Set.copyOf(touches);
        }

        /** One that touches no other. */
        public Vessel(boolean lid, boolean insulated, double bathLitres) {
            this(lid, insulated, bathLitres, Set.of());
        }

        /** The cone that loses most: bare and open, in no bath. */
        public static final Vessel OPEN = new Vessel(false, false, 0);
    }

    /**
     * @param water ids of one or two probes in the water, the first one is the main one
     * @param level whether a contact closes while water stands at the heater's height
     */
    public record Probes(List<String> water, boolean level) {
        public Probes {
            water = List.copyOf(water);
        }
    }

    /** How heat reaches the water. */
    public enum HeatKind { IMMERSED, MAT, BATH, NONE }

    /** A relay is spared; a solid-state switch may follow short windows. */
    public enum SwitchKind { RELAY, SOLID_STATE }

    /**
     * @param kind how heat reaches the water
     * @param watts the heater's rating; 0 when there is none
     * @param switchKind what switches it
     * @param cutOut whether a second switch in series, the cut-out, is fitted
     * @param contacts what the switch bears
     */
    public record Heat(HeatKind kind, double watts, SwitchKind switchKind, boolean cutOut,
                       Contacts contacts) {

        /** With a switch of the usual kind. */
        public Heat(HeatKind kind, double watts, SwitchKind switchKind, boolean cutOut) {
            this(kind, watts, switchKind, cutOut,
                    switchKind == SwitchKind.RELAY ? Contacts.USUAL : Contacts.NONE);
        }

        /** How fast it warms so much brine at full power and without losses, K/s. */
        public double riseKPerS(double litres) {
            return watts / (litres * Units.BRINE_J_PER_L_K);
        }

        /** Whether there is one at all. */
        public boolean fitted() {
            return kind != HeatKind.NONE;
        }

        /** Whether a relay switches it, whose contacts wear. */
        public boolean wears() {
            return fitted() && switchKind == SwitchKind.RELAY;
        }
    }

    /**
     * What the contacts of a heater's switch bear; each cycle closes and opens them once.
     *
     * @param cyclesPerDay they may make so many a day; infinite where nothing wears
     * @param lifeCycles they are rated for so many; infinite where nothing wears
     */
    public record Contacts(double cyclesPerDay, double lifeCycles) {

        /** 100 000 at the rated load are typical (control.md §1.5); at 150 a day they last two years. */
        public static final Contacts USUAL = new Contacts(150, 100_000);

        /** A solid-state switch has none. */
        public static final Contacts NONE =
                new Contacts(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /** Where air enters: a nozzle at the bottom with a valve, or a tube from above without one. */
    public enum AirEntry { BOTTOM, DIP_TUBE }

    /**
     * @param entry where air enters the cone
     * @param proof whether a contact proves that air really flows (pressure or flow)
     * @param idleOn whether air stays on in a clean cone where nothing demands it
     * @param geometry heights that decide whether water can siphon back
     */
    public record Air(AirEntry entry, boolean proof, boolean idleOn, Geometry geometry) {}

    /**
     * @param pumpOutletCm height of the air pump's outlet above the bench
     * @param waterlineCm height of the waterline above the same bench
     * @param checkValve whether a check valve is fitted in the air line
     * @param signed who accepted a geometry that can siphon, and when; empty when nobody did
     */
    public record Geometry(double pumpOutletCm, double waterlineCm, boolean checkValve,
                           Optional<String> signed) {
        /** Whether stopping the pump could let water run back into it. */
        public boolean canSiphon() {
            return !checkValve && pumpOutletCm <= waterlineCm;
        }
    }

    /**
     * @param harvest a lamp at the drain that gathers nauplii there
     * @param trigger a light above that starts development in its first hours
     */
    public record Lights(boolean harvest, boolean trigger) {}

    /**
     * Temperatures in °C. Defaults after science.md §1: 27 / 31 / 33 / 38, floor 20.
     *
     * @param setpointC what the water is held at
     * @param guardC above it heat and lamps go off
     * @param arrestC development stands still
     * @param lossC the batch is in doubt
     * @param floorC what a ready batch is kept from falling below
     */
    public record Limits(double setpointC, double guardC, double arrestC, double lossC, double floorC) {

        /** Least distance of the set-point below the guard in K: probe error of 0.5 and ripple; *guess*. */
        public static final double MARGIN_C = 1;

        /** Cooler than this nothing hatches within two days (science.md §2.3). */
        public static final double LEAST_SETPOINT_C = 15;

        /** The soft ceiling (science.md §1). */
        public static final double MOST_SETPOINT_C = 30;

        /** The warmest that this cone may be held at, °C. */
        public double mostSetpointC() {
            return Math.min(guardC - MARGIN_C, MOST_SETPOINT_C);
        }
    }

    /**
     * @param hydrationHours cysts take up water (1 to 2 h, science.md §5)
     * @param triggerHours the trigger light burns until this long after wetting (science.md §5)
     * @param settleMinutes the wait between air off and drawing
     * @param airOffCapMinutes air comes back after this, at the latest (house rule: never over 12)
     * @param automaticSettling whether the daemon may start a separation without a person
     */
    public record Timing(double hydrationHours, double triggerHours, double settleMinutes,
                         double airOffCapMinutes, boolean automaticSettling) {}

    /**
     * The charge that {@code started} stands for.
     *
     * @param lot label of the tin
     * @param litres water in the cone
     * @param cystsG dry cyst product in grams
     * @param ppt salt in g per kg of solution
     */
    public record Usual(String lot, double litres, double cystsG, double ppt) {

        /** Water that the heating law is made for and tried on, L; other cones are refused. */
        public static final double LEAST_LITRES = 0.5;
        public static final double MOST_LITRES = 20;

        /** Salt in which cysts hatch and nauplii live, g per kg (guess: well beyond science.md §2.4). */
        public static final double LEAST_PPT = 5;
        public static final double MOST_PPT = 80;

        /** Cysts for each litre, g; denser hatches only injure the animals (science.md §5). */
        public static final double MOST_CYSTS_G_PER_L = 5;

        /** Whether it is too dense to be anybody's usual charge. */
        public boolean tooDense() {
            return cystsG > litres * MOST_CYSTS_G_PER_L;
        }
    }
}

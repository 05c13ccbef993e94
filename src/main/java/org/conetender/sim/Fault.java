package org.conetender.sim;

import java.util.List;
import java.util.function.Predicate;

/**
 * Something that goes wrong in the world at a time, for a time. Faults end by themselves when their time
 * is over, or earlier when a person repairs the cone. Of two on the same device the later one shows, and
 * the first to end makes the device whole again. Outlets and contacts are named as in {@link Fixtures}
 * without the cone, such as {@code heat} or {@code air-proof}.
 */
public sealed interface Fault {

    /** The cone's id; empty for the whole site. */
    String cone();

    When when();

    /** Whether any of those is such a one; rules ask dozens of times in every second, so without a stream. */
    static boolean any(List<Fault> wrong, Predicate<Fault> such) {
        for (Fault f : wrong) {
            if (such.test(f)) {
                return true;
            }
        }
        return false;
    }

    /** @param atMs world time at which it begins  @param forMs how long it lasts, ms, above 0 */
    record When(long atMs, long forMs) {
        long untilMs() {
            return atMs + forMs;
        }
    }

    /** A probe. @param index 0 for the cone's first, 1 for its second */
    record OfProbe(String cone, int index, SimProbe.Fault kind, When when) implements Fault {}

    /** The first probes of two cones hang in each other's water. */
    record Swapped(String cone, String other, When when) implements Fault {}

    /** How the output of one cone comes to heat another. */
    enum Wiring {
        /** Both plugs are exchanged: each heater hangs on the other cone's switch and cut-out. */
        PLUGS,
        /** Both switches are exchanged: each drives the other's heater, behind that heater's own cut-out. */
        SWITCHES,
        /** The output of the first drives the other's heater as well, behind that heater's cut-out. */
        SHORTED
    }

    /** The heater of {@code other} follows the output of {@code cone}; where two are exchanged, also back. */
    record Crossed(String cone, String other, Wiring wiring, When when) implements Fault {}

    /** An output. @param outlet such as {@code heat} */
    record OfSwitch(String cone, String outlet, SimSwitch.Fault kind, When when) implements Fault {}

    /** A contact. @param contact such as {@code level} */
    record OfContact(String cone, String contact, SimContact.Fault kind, When when) implements Fault {}

    /** Pump, hose or proof. */
    record OfAir(String cone, Air.Fault kind, When when) implements Fault {}

    /** What can happen to the water itself. */
    enum Water {
        /** The lid is off until the fault ends. */
        LID_OFF,
        /** A quarter of the usual fill, ice cold, is poured in at once. */
        COLD_POURED,
        /** As much, nearly boiling: a kettle against a cold cone. */
        HOT_POURED,
        /** The drain valve drips: about a usual fill in an hour. */
        LEAK,
        /** It seeps: about a usual fill in twenty hours. */
        SEEP
    }

    /** The water. */
    record OfWater(String cone, Water kind, When when) implements Fault {}

    /** What can happen to the whole site. */
    enum Trouble {
        /** The house loses its power. The harness must also end the daemon's process. */
        POWER_CUT,
        /** A heat wave: the room warms by 14 °C. */
        ROOM_HOT,
        /** A window is open: the room cools by 8 °C. */
        ROOM_COLD,
        /** No way to the broker. */
        LINK_DOWN,
        /** The way to the broker is slow, both ways: messages are late, and none is lost. */
        LINK_SLOW,
        /** Whoever looks after the cones does not come. The harness must leave that person alone. */
        NOBODY_COMES,
        /** The wall clock is not synchronised. */
        CLOCK_UNTRUSTED,
        /** The wall clock is three hours wrong while the fault lasts. */
        CLOCK_WRONG,
        /** A write to the record neither ends nor fails. The harness must leave the record agent alone. */
        DISK_HANGS,
        /** The one pump of all cones stops, or the socket of all their pumps is dead. */
        PUMPS_STOP,
        /** A boot finds the wall clock where the last one left it, and no network that would set it. */
        NO_BATTERY;

        /** Whether it is among those that are on. */
        boolean in(List<Fault> wrong) {
            return any(wrong, f -> f instanceof OfSite s && s.kind() == this);
        }
    }

    /** The probe in the room. */
    record OfRoomProbe(SimProbe.Fault kind, When when) implements Fault {
        @Override
        public String cone() {
            return "";
        }
    }

    /** The bus, and with it every probe there is. */
    record OfBus(SimProbe.Fault kind, When when) implements Fault {
        @Override
        public String cone() {
            return "";
        }
    }

    /** The site. */
    record OfSite(Trouble kind, When when) implements Fault {
        @Override
        public String cone() {
            return "";
        }
    }
}

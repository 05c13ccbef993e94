package org.conetender.sim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/** The faults that wait, and those that are on; begins and ends them in the {@link World}. */
final class Faults {

    // All guesses: sizes that a guard must notice and that a real fry room could meet.
    private static final double HOT_K = 14;
    private static final double COLD_K = -8;
    private static final double POURED_SHARE = 0.25;
    private static final double ICY_C = 4;
    private static final double KETTLE_C = 85;
    private static final double LEAK_S = 3_600;
    private static final double SEEP_S = 20 * LEAK_S;
    private static final long WRONG_MS = 3 * 3_600_000L;

    private final World world;
    private final PriorityQueue<Fault> waiting =
            new PriorityQueue<>(Comparator.comparingLong((Fault f) -> f.when().atMs()));
    private final List<Fault> active = new ArrayList<>();
    /** Those, as they are shown: rules ask many times in every second. */
    private List<Fault> seen = List.of();
    private long nextEndMs = Long.MAX_VALUE;

    Faults(World world) {
        this.world = world;
    }

    void add(Fault fault) {
        if (!fault.cone().isEmpty()) {
            world.cone(fault.cone());
        }
        waiting.add(fault);
    }

    List<Fault> active() {
        return seen;
    }

    /** Begins and ends what is due; leaks drip meanwhile. Called once per slice, before the cones move. */
    void step(long nowMs, double seconds) {
        while (!waiting.isEmpty() && waiting.peek().when().atMs() <= nowMs) {
            Fault f = waiting.poll();
            active.add(f);
            turn(f, true);
            schedule();
        }
        if (nowMs >= nextEndMs) {
            for (Fault f : List.copyOf(active)) {
                if (f.when().untilMs() <= nowMs) {
                    active.remove(f);
                    turn(f, false);
                }
            }
            schedule();
        }
        for (int i = 0; i < active.size(); i++) {
            if (active.get(i) instanceof Fault.OfWater w && goneInS(w.kind()) < Double.MAX_VALUE) {
                SimCone cone = world.cone(w.cone());
                cone.water().drain(cone.settings().usual().litres() * seconds / goneInS(w.kind()));
            }
        }
    }

    /** Ends what a person can mend at that cone; probes that were swapped stay so. */
    void mend(String cone) {
        for (Fault f : List.copyOf(active)) {
            if (f.cone().equals(cone) && !(f instanceof Fault.Swapped)) {
                active.remove(f);
                turn(f, false);
            }
        }
        schedule();
    }

    /** In which a usual fill would be gone, s. */
    private static double goneInS(Fault.Water kind) {
        return switch (kind) {
            case LEAK -> LEAK_S;
            case SEEP -> SEEP_S;
            case LID_OFF, COLD_POURED, HOT_POURED -> Double.MAX_VALUE;
        };
    }

    /** Keeps the next end at hand, so that a quiet step costs one comparison, and what is shown. */
    private void schedule() {
        seen = List.copyOf(active);
        nextEndMs = active.stream().mapToLong(f -> f.when().untilMs()).min().orElse(Long.MAX_VALUE);
    }

    /** Begins or ends one. A device that is not fitted cannot fail, so its fault passes without trace. */
    private void turn(Fault fault, boolean on) {
        switch (fault) {
            case Fault.OfProbe f -> probe(f, on);
            case Fault.Swapped f -> swap(f);
            case Fault.Crossed f -> cross(f, on);
            case Fault.OfSwitch f -> {
                SimSwitch s = world.cone(f.cone()).fixtures.switches.get(f.outlet());
                if (s != null) {
                    s.fail(on ? f.kind() : SimSwitch.Fault.NONE);
                }
            }
            case Fault.OfContact f -> {
                SimContact c = world.cone(f.cone()).fixtures.contacts.get(f.contact());
                if (c != null) {
                    c.fail(on ? f.kind() : SimContact.Fault.NONE);
                }
            }
            case Fault.OfAir f -> world.cone(f.cone()).air().fail(on ? f.kind() : Air.Fault.NONE);
            case Fault.OfWater f -> water(f, on);
            case Fault.OfRoomProbe f -> world.roomProbe()
                    .ifPresent(p -> p.fail(on ? f.kind() : ofBus()));
            case Fault.OfBus f -> {
                world.devices().probes().values().forEach(p -> p.fail(on ? f.kind() : ofBus()));
                // A probe that failed by itself is no better for it.
                for (Fault still : on ? List.<Fault>of() : List.copyOf(active)) {
                    if (still instanceof Fault.OfProbe || still instanceof Fault.OfRoomProbe) {
                        turn(still, true);
                    }
                }
            }
            case Fault.OfSite f -> site(f.kind(), on);
        }
    }

    private void probe(Fault.OfProbe f, boolean on) {
        List<SimProbe> probes = world.cone(f.cone()).fixtures.probes;
        if (f.index() < probes.size()) {
            probes.get(f.index()).fail(on ? f.kind() : ofBus());
        }
    }

    /** What is wrong with every probe, however well it is itself. */
    private SimProbe.Fault ofBus() {
        return active.stream().filter(Fault.OfBus.class::isInstance).map(f -> ((Fault.OfBus) f).kind())
                .findFirst().orElse(SimProbe.Fault.NONE);
    }

    /** Done twice it is undone, so the same call begins and ends it. */
    private void swap(Fault.Swapped f) {
        List<SimProbe> one = world.cone(f.cone()).fixtures.probes;
        List<SimProbe> two = world.cone(f.other()).fixtures.probes;
        SimProbe first = one.get(0);
        one.set(0, two.get(0));
        two.set(0, first);
    }

    /** A heater follows one other cone's output: of two faults the later shows, the first to end mends. */
    private void cross(Fault.Crossed f, boolean on) {
        Feed one = world.cone(f.cone()).fixtures.feed;
        Feed other = world.cone(f.other()).fixtures.feed;
        other.from(on ? one : other, f.wiring());
        if (f.wiring() != Fault.Wiring.SHORTED) {
            one.from(on ? other : one, f.wiring());
        }
    }

    private void water(Fault.OfWater f, boolean on) {
        SimCone cone = world.cone(f.cone());
        switch (f.kind()) {
            case LID_OFF -> cone.water().lid(!on);
            case COLD_POURED -> pour(cone, ICY_C, on);
            case HOT_POURED -> pour(cone, KETTLE_C, on);
            case LEAK, SEEP -> { }
        }
    }

    private static void pour(SimCone cone, double degreesC, boolean on) {
        if (on && cone.water().waterPresent()) {
            cone.water().pour(POURED_SHARE * cone.settings().usual().litres(), degreesC, cone.water().ppt());
        }
    }

    /** Whether a network has set the computer's clock: neither of those that keep it away is on. */
    private boolean set() {
        return !Fault.Trouble.CLOCK_UNTRUSTED.in(active) && !Fault.Trouble.NO_BATTERY.in(active);
    }

    private void site(Fault.Trouble kind, boolean on) {
        switch (kind) {
            case POWER_CUT -> world.power(!on);
            case ROOM_HOT -> world.room().add(on ? HOT_K : 0);
            case ROOM_COLD -> world.room().add(on ? COLD_K : 0);
            case LINK_DOWN -> world.broker().link(!on);
            case LINK_SLOW -> world.broker().slow(on);
            case CLOCK_UNTRUSTED -> world.clock().trust(!on && set());
            case PUMPS_STOP -> world.cones().forEach(c ->
                    c.air().fail(on ? Air.Fault.PUMP_STOPPED : Air.Fault.NONE));
            case NO_BATTERY -> {
                if (!on && set()) {
                    world.clock().network();
                }
            }
            case DISK_HANGS, NOBODY_COMES -> { }
            // A network may have set it right meanwhile.
            case CLOCK_WRONG -> world.clock().stepWall(on ? WRONG_MS
                    : world.clock().now().wallMs() == world.clock().trueWallMs() ? 0 : -WRONG_MS);
        }
    }
}

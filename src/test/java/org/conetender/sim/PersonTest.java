package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.conetender.core.settings.Cone.Geometry;
import org.conetender.core.image.Step;
import org.conetender.port.Transport.Incoming;
import org.conetender.port.Transport.Outgoing;
import org.junit.jupiter.api.Test;

/** People at cones whose stage is kept by a stand-in that knows the truth; it is no daemon. */
class PersonTest {

    private static final long LOOK_MS = 5_000;
    private static final Map<String, String> NEXT = Map.of("filled", "filled", "stocked", "hydrating",
            "started", "hydrating", "settle", "settling", "drawing", "drawing", "drained", "drained",
            "cleaned", "clean", "abandoned", "abandoned");

    /** Three cones, a person, and the stand-in. */
    private static final class Site {
        private final World world;
        private final Person person;
        private final SimTransport transport;
        private final List<String> said = new ArrayList<>();
        private final String[] stages = {"clean", "clean", "clean"};

        Site(Habit habit, Geometry geometry) {
            world = new World(Benches.larkmoor(geometry), 11, Bench.larkmoor());
            transport = world.broker().connect("homie/5/larkmoor/$state");
            person = new Person(world, Benches.larkmoor(geometry), habit,
                    new Person.Senses(world.broker(), Hands.through(world.broker(), "larkmoor")));
        }

        void run(int hours) {
            long end = world.clock().elapsedMs() + hours * 3_600_000L;
            while (world.clock().elapsedMs() < end) {
                stand();
                person.step();
                world.step(LOOK_MS);
            }
        }

        /** Hears, moves the stage by word or by the truth, keeps 27 °C, and stops the air to settle. */
        private void stand() {
            for (Incoming in : transport.poll(100)) {
                int cone = in.topic().charAt("homie/5/larkmoor-".length()) - 'a';
                said.add("abc".charAt(cone) + " " + in.payload());
                stages[cone] = NEXT.getOrDefault(in.payload(), stages[cone]);
            }
            for (int i = 0; i < 3; i++) {
                SimCone c = world.cones().get(i);
                String id = c.settings().id();
                double hatched = c.cysts().map(Cysts::hatchedFraction).orElse(0.0);
                stages[i] = switch (stages[i]) {
                    case "hydrating" -> hatched > 0.1 ? "hatching" : "hydrating";
                    case "hatching" -> hatched > 0.9 ? "ready" : "hatching";
                    case "settling" -> c.air().pausedMs() > 360_000 ? "settled" : "settling";
                    default -> stages[i];
                };
                boolean cold = c.water().heaterCovered() && c.water().waterC() < 27;
                Map<String, SimSwitch> out = world.devices().switches();
                out.get(id + ".heat").hold(cold, 60_000);
                out.get(id + ".cut-out").hold(cold, 60_000);
                boolean still = Set.of("settling", "settled", "drawing").contains(stages[i]);
                out.get(id + ".air-pause").hold(still, 60_000);
                transport.offer(new Outgoing("homie/5/larkmoor-" + id + "/hatch/stage", stages[i], true, ""));
            }
        }
    }

    @Test
    void aCarefulPersonTellsAllAndHarvestsEveryConeAlive() {
        Site site = new Site(Habit.careful(), Benches.HIGH_PUMP);
        site.run(48);
        assertThat(site.said).contains("a filled", "a stocked", "a settle", "a drawing", "a drained",
                "a cleaned");
        for (SimCone c : site.world.cones()) {
            BatchTruth first = c.batches().get(0);
            assertThat(first.endedAtMs()).as(first.cone()).isPositive();
            assertThat(first.harvest().drawn()).isGreaterThan(300_000);
            assertThat(first.harvest().dead()).isLessThan(0.02);
            assertThat(first.moments().t10Ms()).isLessThan(first.moments().t90Ms());
        }
        assertThat(site.said.stream().map(s -> s.substring(2))).allMatch(w -> Step.of(w).isPresent());
    }

    @Test
    void whereWaterCanRunBackTheValveIsShutBeforeTheAirStops() {
        Site low = new Site(Habit.careful(), Benches.LOW_PUMP);
        low.run(48);
        assertThat(low.said.indexOf("a valve-shut")).isBetween(0, low.said.indexOf("a settle"));
        for (SimCone c : low.world.cones()) {
            assertThat(c.air().flood()).isEqualTo(Air.Flood.NOT);
        }
    }

    @Test
    void aPersonOfTwoTouchesSaysOnlyStartedAndCleaned() {
        Site quiet = new Site(Habit.twoTouches(), Benches.HIGH_PUMP);
        quiet.run(60);
        Set<String> words = new HashSet<>();
        quiet.said.forEach(s -> words.add(s.substring(2)));
        assertThat(words).containsExactlyInAnyOrder("started", "cleaned");
        for (SimCone c : quiet.world.cones()) {
            assertThat(c.batches().get(0).harvest().drawn()).isGreaterThan(200_000);
        }
    }

    @Test
    void peopleWhoSlipSayWrongThingsButOnlyWordsThatExist() {
        Site slips = new Site(new Habit(true, 0.4, 5, Habit.careful().wakes(),
                Habit.careful().sleeps()), Benches.HIGH_PUMP);
        slips.run(72);
        assertThat(slips.said).isNotEmpty();
        assertThat(slips.said.stream().map(s -> s.substring(2))).allMatch(w -> Step.of(w).isPresent());
        assertThat(slips.said.stream().anyMatch(s -> s.endsWith("part-drawn") || s.endsWith("settle")))
                .isTrue();
    }

    @Test
    void anAlertIsAcknowledgedAndPutRight() {
        List<String> acknowledged = new ArrayList<>();
        Hands hands = new Hands() {
            @Override
            public void say(String cone, String step) { }

            @Override
            public void acknowledge(String cone, String alert) {
                acknowledged.add(cone + " " + alert);
            }

            @Override
            public void want(String cone, String hour) { }
        };
        World world = Benches.drawn(11);
        SimTransport transport = world.broker().connect("homie/5/larkmoor/$state");
        Person other = new Person(world, Benches.larkmoor(Benches.HIGH_PUMP), Habit.careful(),
                new Person.Senses(world.broker(), hands));
        world.apply(new Fault.OfAir("b", Air.Fault.TORN_DIAPHRAGM, new Fault.When(0, 100 * 3_600_000L)));
        transport.offer(new Outgoing("homie/5/larkmoor-b/$alert/air", "Cone b has no air.", true, ""));
        for (int i = 0; i < 1_800; i++) {
            world.step(LOOK_MS);
            other.step();
        }
        assertThat(acknowledged).contains("b air");
        world.cone("b").air().valve(true);
        world.step(1_000);
        assertThat(world.cone("b").air().flowLpm()).isEqualTo(world.cone("b").air().healthyLpm());
    }

    @Test
    void aPlanOfFaultsIsTheSameForTheSameSeedAndCoversEveryKind() {
        Set<Class<?>> kinds = new HashSet<>();
        var settings = Benches.larkmoor(Benches.HIGH_PUMP);
        for (long seed = 0; seed < 60; seed++) {
            FaultPlan plan = FaultPlan.random(seed, settings, 40);
            assertThat(plan).isEqualTo(FaultPlan.random(seed, settings, 40));
            plan.faults().forEach(f -> kinds.add(f.getClass()));
            World w = new World(settings, seed, Bench.larkmoor());
            plan.faults().forEach(w::apply);
            w.step(46 * 3_600_000L);
            assertThat(w.wrong()).isEmpty();
            assertThat(w.powered()).isTrue();
        }
        // The stories of the swarm draw the bus, the room's probe and crossed wires.
        assertThat(kinds).doesNotContain(Fault.Crossed.class, Fault.OfRoomProbe.class, Fault.OfBus.class)
                .hasSize(Fault.class.getPermittedSubclasses().length - 3);
    }
}

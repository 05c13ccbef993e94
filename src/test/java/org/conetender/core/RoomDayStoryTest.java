package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.hatch.Speed;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Cone.HeatKind;
import org.conetender.core.settings.Settings;
import org.conetender.sim.Plant;
import org.conetender.sim.Room;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The whole core in a room that is warm in the afternoon and cool at dawn. */
class RoomDayStoryTest {

    private static final double WEAK_W = 8;
    private static final double K90 = Speed.UNKNOWN_LOT.k90();

    /** A room with a probe, two days old, in which cone a is stocked. */
    private static Story stocked(long seed, boolean clock) {
        return stocked(Story.at(Fitting.ROOM_PROBE, Fitting.NO_HEAT).wall(0, clock), seed, 0);
    }

    /** The same without a probe, in a cooler one, where a heater of 8 W does not hold the water at night. */
    private static Story felt(long seed, boolean clock) {
        Settings l = Larkmoor.with();
        List<Cone> weak = l.cones().stream().map(c -> new Cone(c.id(), weak(c.fittings()), c.limits(),
                c.timing(), c.usual())).toList();
        return stocked(new Story(new Settings(l.site(), weak)).wall(0, clock), seed, WEAK_W);
    }

    private static Cone.Fittings weak(Cone.Fittings f) {
        return new Cone.Fittings(f.probes(), new Cone.Heat(HeatKind.IMMERSED, WEAK_W,
                f.heat().switchKind(), true), f.air(), f.lights(), false);
    }

    private static Story stocked(Story s, long seed, double watts) {
        SplittableRandom random = new SplittableRandom(seed);
        double mean = watts > 0 ? random.nextDouble(17, 19) : random.nextDouble(23, 25);
        Room room = new Room(new Room.Climate(mean, random.nextDouble(2, 3.5),
                random.nextDouble(0.2, 0.5), 0.5), random);
        Plant plant = new Plant(new Plant.Build(HeatKind.IMMERSED, watts, 2, new Plant.Quirks(45, 1, 0.6)),
                room);
        // As these settings say: open. The weak heater needs a lid, of which the daemon is not told.
        plant.lid(watts > 0);
        plant.pour(2, 23, 25);
        long[] lastMs = {s.now().monoMs()};
        s.each(x -> {
            double dtS = (x.now().monoMs() - lastMs[0]) / 1_000.0;
            lastMs[0] = x.now().monoMs();
            if (dtS > 0) {
                room.step(x.now().wallMs(), dtS);
                plant.step(watts > 0 && x.on("a.heat") && x.on("a.cut-out") ? watts : 0, 0, 0.8, dtS);
            }
            if (watts == 0) {
                x.senses.room(room.airC());
            }
            x.senses.water("a", plant.waterC());
            x.senses.frozen("a-water");
        });
        if (watts > 0) {
            s.does(Step.STARTED);
        }
        s.pass(Duration.ofHours(54));
        if (watts > 0) {
            s.does(Step.DRAINED, Step.CLEANED);
        }
        s.does(Step.STARTED).minutes(2);
        return s;
    }

    private static double doneDegreeHours(Story s) {
        return s.state().live().cones().get("a").growth().done().degreeHours();
    }

    /** Hours off, asked every sixth hour until the point is reached, on the average. */
    private static double missH(Story s) {
        List<double[]> told = new ArrayList<>();
        double h = 0;
        while (doneDegreeHours(s) < K90) {
            if (h % 6 == 0) {
                told.add(new double[] {h, s.state().live().cones().get("a").outlook().forecast()
                        .orElseThrow().ready().median()});
            }
            s.pass(Duration.ofMinutes(61));
            h = Math.round(h + 1);
            assertThat(h).isLessThan(90);
        }
        double reachedH = h * 61 / 60.0;
        return told.stream().mapToDouble(t -> Math.abs(t[0] * 61 / 60 + t[1] - reachedH)).average()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theDaemonsHourIsNearerTheTruthOnceItKnowsTheRoomsDay(long seed) {
        double with = missH(stocked(seed, true));
        double without = missH(stocked(seed, false));
        assertThat(with).as("%.2f h with the room's day, %.2f h without", with, without)
                .isLessThan(0.4 * without).isLessThan(1);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void theDayOfARoomThatNobodyMeasuresIsFeltByTheWater(long seed) {
        double with = missH(felt(seed, true));
        double without = missH(felt(seed, false));
        assertThat(with).as("%.2f h with the day that was felt, %.2f h without", with, without)
                .isLessThan(0.8 * without);
    }

    @Test
    void theRoomsDayOutlivesAPowerCut() {
        Story s = stocked(4, true);
        var day = s.state().live().day();
        assertThat(day.known()).isTrue();
        s.restart("boot-2", Duration.ofMinutes(5).toMillis());
        assertThat(s.state().live().day().known()).isTrue();
        for (int h = 0; h < 24; h++) {
            assertThat(s.state().live().day().hours().get(h).meanC())
                    .isCloseTo(day.hours().get(h).meanC(), within(0.01));
        }
    }
}

package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.SplittableRandom;
import org.conetender.core.hatch.Projection.Plan;
import org.conetender.core.judge.Losses;
import org.conetender.core.settings.Cone.HeatKind;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;
import org.conetender.sim.Plant;
import org.conetender.sim.Room.Climate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the room's learnt day is worth, in the simulation's rooms and cones, whose days differ. */
class RoomAheadTest {

    private static final long MINUTE = Units.MINUTE_MS;
    private static final int SEEDS = 30;
    private static final double LITRES = 2;
    private static final double AIM_C = 27;
    private static final double STOCKED_C = 24;
    private static final double AIR_LPM = 0.8;

    /** @param watts of its heater, 0 for none */
    private record Drawn(Climate climate, double watts, long seed) {

        /** A cone without a heater in a warm room, or one whose heater does not hold it at night. */
        static Drawn of(long seed, boolean heater) {
            SplittableRandom r = new SplittableRandom(seed);
            double mean = heater ? r.nextDouble(16, 20) : r.nextDouble(22, 25);
            double swing = r.nextDouble(1.5, 3.5);
            double watts = heater ? Losses.wattsPerK(LITRES, true) * (AIM_C - mean) : 0;
            return new Drawn(new Climate(mean, swing, r.nextDouble(0.3, 0.9), 0.5), watts, seed);
        }

        /** Hours by which the median is off. */
        Miss miss() {
            SplittableRandom r = new SplittableRandom(seed + 1_000);
            org.conetender.sim.Room room = new org.conetender.sim.Room(climate, r);
            long asked = (long) (60 * (72 + r.nextDouble(0, 24)));
            RoomDay day = RoomDay.NONE;
            for (long m = 0; m < asked; m++) {
                room.step(m * MINUTE, 60);
                day = day.after(new Moment("boot-1", m * MINUTE, m * MINUTE, true), MINUTE,
                        Optional.of(room.airC()));
            }
            Plant plant = new Plant(new Plant.Build(HeatKind.IMMERSED, watts, LITRES,
                    new Plant.Quirks(45, 1, 0.6)), room);
            plant.pour(LITRES, STOCKED_C, 25);
            double nowC = room.airC();
            Room known = day.room(new Moment("boot-1", asked * MINUTE, asked * MINUTE, true),
                    Optional.of(nowC), 20);
            double truthH = truthH(plant, room, asked);
            return new Miss(Math.abs(medianH(known) - truthH),
                    Math.abs(medianH(Room.constant(nowC)) - truthH));
        }

        private double truthH(Plant plant, org.conetender.sim.Room room, long asked) {
            double done = 0;
            for (int s = 0; s < Forecast.HORIZON_H * 360; s++) {
                room.step(asked * MINUTE + s * 10_000L, 10);
                plant.step(plant.waterC() < AIM_C ? watts : 0, 0, AIR_LPM, 10);
                done += Rate.USUAL.perHour(plant.waterC()) / 360;
                if (done >= Speed.UNKNOWN_LOT.k90()) {
                    return s / 360.0;
                }
            }
            throw new AssertionError("it never hatched: " + this);
        }

        /** Never is taken for the end of the look-ahead. */
        private double medianH(Room room) {
            Projection p = new Projection(STOCKED_C, new Projection.Plant(LITRES, watts,
                    Losses.wattsPerK(LITRES, true), room), Plan.hold(AIM_C));
            return Math.min(Forecast.HORIZON_H,
                    Forecast.of(Development.NONE, Speed.UNKNOWN_LOT, p, Rate.USUAL).ready().median());
        }
    }

    /** @param with the room's day, h  @param without it, h */
    private record Miss(double with, double without) {}

    @ParameterizedTest(name = "heater {0}")
    @ValueSource(booleans = {false, true})
    void theHourIsNearerTheTruthThanInARoomThatStaysAsItIs(boolean heater) {
        double with = 0;
        double without = 0;
        int nearer = 0;
        for (long seed = 1; seed <= SEEDS; seed++) {
            Miss m = Drawn.of(seed, heater).miss();
            with += m.with() / SEEDS;
            without += m.without() / SEEDS;
            nearer += m.with() < m.without() ? 1 : 0;
        }
        assertThat(with).as("hours off: %.2f with, %.2f without, nearer in %d of %d", with, without, nearer,
                SEEDS).isLessThan(0.5 * without);
        assertThat(nearer).isGreaterThan(SEEDS * 2 / 3);
    }
}

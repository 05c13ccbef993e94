package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.conetender.core.judge.Proving.Part;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The trial of the switches by itself, over cones of every size that {@code check} takes. */
class ProvingTest {

    private static final int CONES = 300;
    private static final int LIMIT_S = 3 * 3_600;

    /** What is wrong with the switches. */
    private enum Wrong {
        NOTHING(Part.PASSED), CUT_OUT(Part.CUT_OUT_STUCK), OWN(Part.HEATER_STUCK), BOTH(Part.UNTESTABLE);

        final Part named;

        Wrong(Part named) {
            this.named = named;
        }
    }

    /** A cone as it is drawn: 0.5 to 20 L, 3 to 25 W/L, both log-uniform; losses 30 % off what is known. */
    private record Drawn(Basin basin, double nominalLossPerS, boolean measured) {

        static Drawn of(long seed) {
            SplittableRandom r = new SplittableRandom(seed);
            double litres = Math.exp(r.nextDouble(Math.log(0.5), Math.log(20)));
            double watts = litres * Math.exp(r.nextDouble(Math.log(3), Math.log(25)));
            double loss = Losses.wattsPerK(litres, true);
            Basin b = new Basin(new Basin.Build(watts, litres, loss * r.nextDouble(0.7, 1.3),
                    r.nextDouble(20, 90), r.nextDouble(5, 20)), r.nextDouble(14, 27), seed);
            b.roomC = r.nextDouble(12, 26);
            return new Drawn(b, loss / (litres * Basin.J_PER_L_K), r.nextBoolean());
        }

        /** Runs the trial to its end; the time it took, s, with the part it ended in. */
        Ended run(Wrong wrong) {
            Proving p = Proving.DUE;
            boolean own = false;
            boolean cutOut = false;
            int t = 0;
            for (; t < LIMIT_S && !p.part().over() && !p.part().failed(); t++) {
                boolean o = own || wrong == Wrong.OWN || wrong == Wrong.BOTH;
                boolean c = cutOut || wrong == Wrong.CUT_OUT || wrong == Wrong.BOTH;
                basin.power = o && c ? Basin.Power.WELDED : Basin.Power.DEAD;
                double shown = basin.second(false);
                double room = measured ? nominalLossPerS * (basin.roomC - shown) : 0;
                p = p.after(new Proving.Seen(1_000, new Belief.Trusted(shown), true, new Proving.Heater(true,
                        own, cutOut, 600_000, new Proving.Plant(true, basin.build.riseKPerS(), room))));
                own = p.part() == Part.HEATER;
                cutOut = p.part() == Part.CUT_OUT;
            }
            return new Ended(p.part(), t);
        }
    }

    private record Ended(Part part, int afterS) {}

    /** The wait for calm readings apart, of which nothing is left here: heat has been off for long. */
    @Test
    void whatIsLeftOfItIsKnownAtEverySecond() {
        Proving.Plant plant = new Proving.Plant(true, 25.0 / 8_200, 0);
        Proving p = Proving.DUE;
        long left = p.leftMs(plant);
        assertThat(left).isBetween(6 * 60_000L, 10 * 60_000L);
        for (int t = 0; p.part() != Part.PASSED; t++) {
            assertThat(p.leftMs(plant)).as("after %d s, %s", t, p.part()).isCloseTo(left - 1_000L * t,
                    within(4_000L));
            p = p.after(new Proving.Seen(1_000, new Belief.Trusted(22), true, new Proving.Heater(true,
                    p.part() == Part.HEATER, p.part() == Part.CUT_OUT, 600_000, plant)));
        }
        assertThat(p.leftMs(plant)).isZero();
    }

    @ParameterizedTest
    @EnumSource(value = Wrong.class, names = {"CUT_OUT", "OWN"})
    void aSwitchThatDoesNotOpenIsNamedAndNeverTheOther(Wrong wrong) {
        int found = 0;
        for (int seed = 1; seed <= CONES; seed++) {
            Drawn d = Drawn.of(seed);
            Ended e = d.run(wrong);
            found += e.part() == wrong.named ? 1 : 0;
            assertThat(e.part()).as("seed %d: %s", seed, d.basin.build).isIn(wrong.named, Part.UNTESTABLE,
                    Part.PASSED);
        }
        assertThat(found).as("of %d", CONES).isGreaterThanOrEqualTo(CONES * 99 / 100);
    }

    @Test
    void healthySwitchesAreNeverNamed() {
        int passed = 0;
        for (int seed = 1; seed <= CONES; seed++) {
            Drawn d = Drawn.of(seed);
            Ended e = d.run(Wrong.NOTHING);
            assertThat(e.part().failed()).as("seed %d: %s", seed, d.basin.build).isFalse();
            passed += e.part() == Part.PASSED && e.afterS() < 1_200 ? 1 : 0;
        }
        assertThat(passed).as("within twenty minutes, of %d", CONES).isGreaterThanOrEqualTo(CONES * 95 / 100);
    }

    /** In a room that nobody measures warm water cools while it is heated: there the watches must do. */
    @Test
    void bothWeldedRarelyPassWhereTheRoomIsMeasured() {
        int passed = 0;
        for (int seed = 1; seed <= CONES; seed++) {
            Drawn d = Drawn.of(seed);
            passed += d.measured() && d.run(Wrong.BOTH).part() == Part.PASSED ? 1 : 0;
        }
        assertThat(passed).as("of about %d", CONES / 2).isLessThanOrEqualTo(CONES / 2 / 20);
    }

    @Test
    void itsTimesFollowFromRiseAndLags() {
        assertThat(new Proving.Plant(true, 0.1875, 0).tryMs()).isEqualTo(121_000);
        assertThat(new Proving.Plant(true, 0.001875, 0).tryMs()).isEqualTo(220_000);
        double larkmoor = 25 / (2 * Basin.J_PER_L_K);
        assertThat(new Proving.Plant(true, larkmoor, 0).tryMs() / 1_000.0).isCloseTo(181.5, within(0.1));
    }
}

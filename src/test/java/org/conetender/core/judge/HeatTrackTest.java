package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.conetender.core.heat.Hold;
import org.conetender.core.heat.Share;
import org.junit.jupiter.api.Test;

/**
 * Whether heat does what it must, on cones at random: what they lose is half of the nominal to three and a
 * half times as much, and the water may be cold or near its set-point, as after a restart.
 */
class HeatTrackTest {

    private static final int CONES = 300;
    private static final double AIM_C = 27;
    private static final int HOUR_S = 3_600;

    /** A cone, its heater and what the daemon takes them for. */
    static final class Drawn {
        final Basin basin;
        final double nominalPerS;
        final int everyS;
        final boolean measured;
        HeatTrack track = HeatTrack.fresh();
        Hold hold = Hold.IDLE;
        Share.Credit credit = Share.Credit.NONE;
        boolean on;
        double shownC;
        int seconds;

        Drawn(long seed) {
            Random r = new Random(seed * 0x9E3779B97F4A7C15L);
            double litres = 0.5 * Math.pow(40, r.nextDouble());
            double watts = litres * 3 * Math.pow(25.0 / 3, r.nextDouble());
            double nominal = Losses.wattsPerK(litres, true);
            double losses = 0.5 * Math.pow(7, r.nextDouble());
            Basin.Build b = new Basin.Build(watts, litres, nominal * losses, 20 + 70 * r.nextDouble(),
                    5 + 15 * r.nextDouble());
            nominalPerS = nominal / (litres * Basin.J_PER_L_K);
            double roomC = 17 + 7 * r.nextDouble();
            double canC = roomC + 0.8 * watts / b.lossWPerK();
            boolean restart = r.nextBoolean();
            double startC = restart ? Math.min(AIM_C, canC) - r.nextDouble() / 2 : roomC + 4 * r.nextDouble();
            basin = new Basin(b, startC, seed);
            basin.roomC = roomC;
            everyS = 1 + r.nextInt(8);
            measured = r.nextBoolean();
            shownC = startC;
            // What the life before has left in the element.
            for (int i = 0; restart && i < 40; i++) {
                shownC = basin.second(true);
            }
        }

        void second() {
            double shown = basin.second(on);
            boolean anew = ++seconds % everyS == 0;
            shownC = anew ? shown : shownC;
            double over = shownC - (measured ? basin.roomC : 20);
            double full = basin.build.riseKPerS();
            double drift = measured ? 0 : nominalPerS * Math.max(0, 35 - shownC);
            track = track.after(new HeatTrack.Step(1_000, on, new Belief.Trusted(shownC),
                    new HeatTrack.Physics(full, nominalPerS * over, drift, drift, nominalPerS,
                            true), anew), false);
            hold = hold.after(AIM_C - shownC, AIM_C, 1_000, new Hold.Plant(full,
                    Math.max(0, nominalPerS * (AIM_C - shownC + over) / full), 240_000));
            Hold h = track.responded() ? hold : hold.atMost(Hold.LOW_POWER);
            credit = Share.after(credit, h.duty(), on, new Share.Window(1_000,
                    track.responded() ? 240_000 : HeatTrack.trialMs(full)));
            on = credit.wants();
        }

        /** Seconds until it failed or responded, so many at most. */
        int tried(int most) {
            while (seconds < most && !track.failed() && !track.responded()) {
                second();
            }
            return seconds;
        }

        @Override
        public String toString() {
            return basin.build + " losses " + basin.build.lossPerS() / nominalPerS + " of nominal";
        }
    }

    @Test
    void noSoundHeaterFailsAndNearlyAllRespondWithinTheHour() {
        long sum = 0;
        int responded = 0;
        for (int seed = 1; seed <= CONES; seed++) {
            Drawn d = new Drawn(seed);
            int took = d.tried(HOUR_S);
            sum += took;
            assertThat(d.track.failed()).as("seed %d after %d s: %s", seed, took, d).isFalse();
            responded += d.track.responded() ? 1 : 0;
        }
        assertThat(responded).as("others were hardly asked for heat").isGreaterThanOrEqualTo(CONES - 6);
        assertThat(sum / CONES).as("seconds in the mean").isLessThan(1_200);
    }

    @Test
    void noDeadHeaterRespondsAndNearlyAllFailWithinTheHour() {
        int failed = 0;
        for (int seed = 1; seed <= CONES; seed++) {
            Drawn d = new Drawn(seed);
            d.basin.power = Basin.Power.DEAD;
            int took = d.tried(HOUR_S);
            assertThat(d.track.responded()).as("seed %d after %d s: %s", seed, took, d).isFalse();
            failed += d.track.failed() ? 1 : 0;
        }
        assertThat(failed).as("others were hardly asked for heat").isGreaterThanOrEqualTo(CONES - 6);
    }

    @Test
    void aSoundHeaterThatHasRespondedFailsNoLaterWindow() {
        for (int seed = 1; seed <= CONES; seed++) {
            Drawn d = new Drawn(seed);
            while (d.seconds < 5 * HOUR_S) {
                d.second();
                assertThat(d.track.failed()).as("seed %d after %d s: %s", seed, d.seconds, d).isFalse();
            }
        }
    }
}

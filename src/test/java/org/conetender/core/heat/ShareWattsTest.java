package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.conetender.core.heat.Share.Claim;
import org.conetender.core.heat.Share.Credit;
import org.conetender.core.heat.Share.Supply;
import org.junit.jupiter.api.Test;

/** Heaters of different watts on switches of different patience, under one limit. */
class ShareWattsTest {

    private static final long[] TURNS_MS = {120_000, 216_000, 576_000};

    /** A site that serves its heaters as the tick does. */
    private static final class Site {
        final double limitW;
        final double[] watts;
        final long[] turnMs;
        final boolean[] on;
        final boolean[] wants;
        final int[] onS;
        final int[] waitS;
        final int[] longestWaitS;
        final int[] runS;
        private final Credit[] credit;
        double atLargeW;
        double mostW;
        int hastyS = Integer.MAX_VALUE;

        Site(double limitW, double[] watts, long[] turnMs) {
            this.limitW = limitW;
            this.watts = watts;
            this.turnMs = turnMs;
            int cones = watts.length;
            on = new boolean[cones];
            wants = new boolean[cones];
            onS = new int[cones];
            waitS = new int[cones];
            longestWaitS = new int[cones];
            runS = new int[cones];
            credit = new Credit[cones];
            Arrays.fill(credit, Credit.NONE);
        }

        void second() {
            List<Claim> claims = new ArrayList<>();
            for (int i = 0; i < watts.length; i++) {
                credit[i] = Share.wanting(credit[i], wants[i] ? Share.Want.ON : Share.Want.OFF, on[i], 1_000);
                claims.add(new Claim("" + i, credit[i], on[i], turnMs[i]));
            }
            Supply supply = Supply.of(limitW, atLargeW);
            double usedW = atLargeW;
            for (Claim c : Share.order(claims)) {
                int i = Integer.parseInt(c.cone());
                boolean next = wants[i] && supply.takenW() + watts[i] <= limitW;
                supply = supply.after(c, watts[i], next);
                usedW += next ? watts[i] : 0;
                note(i, next);
            }
            mostW = Math.max(mostW, usedW);
        }

        private void note(int i, boolean next) {
            if (on[i] && !next && wants[i]) {
                hastyS = Math.min(hastyS, runS[i] - (int) (turnMs[i] / 1_000));
            }
            runS[i] = next ? runS[i] + 1 : 0;
            onS[i] += next ? 1 : 0;
            waitS[i] = wants[i] && !next ? waitS[i] + 1 : 0;
            longestWaitS[i] = Math.max(longestWaitS[i], waitS[i]);
            on[i] = next;
        }
    }

    /** Two small heaters that come and go by turns, so that one of them always has a fresh turn. */
    private static Site besideTwoThatComeAndGo() {
        Site s = new Site(60, new double[] {50, 25, 25}, new long[] {120_000, 120_000, 120_000});
        for (int t = 0; t < 7_200; t++) {
            s.wants[0] = t >= 30;
            s.wants[1] = t % 100 < 70;
            s.wants[2] = (t + 50) % 100 < 70;
            s.second();
        }
        return s;
    }

    @Test
    void aLargeHeaterIsNotKeptOutByTwoSmallOnesThatComeAndGo() {
        Site s = besideTwoThatComeAndGo();
        assertThat(s.longestWaitS[0]).isLessThanOrEqualTo(400);
        assertThat(s.onS[0]).isGreaterThan(2_000);
        assertThat(s.onS[1]).isGreaterThan(1_000);
        assertThat(s.onS[2]).isGreaterThan(1_000);
    }

    @Test
    void nothingIsKeptForAHeaterThatCouldNotHaveItAnyway() {
        Site s = new Site(60, new double[] {50, 25}, new long[] {120_000, 120_000});
        s.atLargeW = 25;
        for (int t = 0; t < 1_000; t++) {
            s.wants[0] = true;
            s.wants[1] = true;
            s.second();
        }
        assertThat(s.onS[0]).as("a heater that cannot be switched off has its power").isZero();
        assertThat(s.onS[1]).isCloseTo(1_000, within(2));
    }

    /** Seeded: limits, watts, turns and wants at random. */
    @Test
    void whateverTheirWattsTheLimitHoldsNobodyStarvesAndNoTurnIsCutShort() {
        for (int seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            int cones = 2 + random.nextInt(6);
            double[] watts = new double[cones];
            long[] turnMs = new long[cones];
            for (int i = 0; i < cones; i++) {
                watts[i] = 5 + random.nextInt(96);
                turnMs[i] = TURNS_MS[random.nextInt(TURNS_MS.length)];
            }
            double largest = Arrays.stream(watts).max().orElseThrow();
            double all = Arrays.stream(watts).sum();
            Site s = new Site(largest + random.nextDouble() * (all - largest), watts, turnMs);
            int busyS = 20 + random.nextInt(600);
            for (int t = 0; t < 20_000; t++) {
                for (int i = 0; i < cones; i++) {
                    // A heater that waits goes on wanting, one that runs has enough at some time.
                    s.wants[i] = s.wants[i] ? !s.on[i] || random.nextInt(busyS) > 0
                            : random.nextInt(busyS) == 0;
                }
                s.second();
            }
            long turnsS = Arrays.stream(turnMs).sum() / 1_000;
            for (int i = 0; i < cones; i++) {
                assertThat(s.longestWaitS[i]).as("seed %d: cone %d of %d", seed, i, cones)
                        .isLessThanOrEqualTo((int) (2 * turnsS + 60));
                assertThat(s.onS[i]).as("seed %d: cone %d", seed, i).isPositive();
            }
            assertThat(s.mostW).as("seed %d: watts", seed).isLessThanOrEqualTo(s.limitW)
                    .isGreaterThan(0.5 * largest);
            assertThat(s.hastyS).as("seed %d: relays are spared", seed).isGreaterThanOrEqualTo(-1);
        }
    }

    /** Seeded: the plain law's windows do not all begin together where power is short. */
    @Test
    void windowsStaggerThemselves() {
        for (int seed = 1; seed <= 40; seed++) {
            Random random = new Random(seed);
            int cones = 2 + random.nextInt(4);
            double[] duty = random.doubles(cones, 0.1, 0.9 / cones).toArray();
            Credit[] credit = new Credit[cones];
            Arrays.fill(credit, Credit.NONE);
            boolean[] on = new boolean[cones];
            int[] onS = new int[cones];
            for (int t = 0; t < 20_000; t++) {
                List<Claim> claims = new ArrayList<>();
                for (int i = 0; i < cones; i++) {
                    credit[i] = Share.after(credit[i], duty[i], on[i], new Share.Window(1_000, 240_000));
                    claims.add(new Claim("" + i, credit[i], on[i], Share.TURN_MS));
                }
                Supply supply = Supply.of(25, 0);
                for (Claim c : Share.order(claims)) {
                    int i = Integer.parseInt(c.cone());
                    on[i] = c.credit().wants() && supply.takenW() + 25 <= 25;
                    supply = supply.after(c, 25, on[i]);
                    onS[i] += on[i] ? 1 : 0;
                }
            }
            for (int i = 0; i < cones; i++) {
                assertThat(onS[i] / 20_000.0).as("seed %d: all have what they want, one at a time", seed)
                        .isCloseTo(duty[i], within(0.03));
            }
        }
    }
}

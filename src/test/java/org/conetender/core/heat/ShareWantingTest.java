package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.conetender.core.heat.Share.Claim;
import org.conetender.core.heat.Share.Credit;
import org.junit.jupiter.api.Test;

/** Cones whose law decides on and off itself, under a limit of watts. */
class ShareWantingTest {

    /** Heaters of which some want to be on, at most so many at once. */
    private static final class Site {
        final Credit[] credit;
        final boolean[] on;
        final int[] onS;
        final int[] waitS;
        final int[] longestWaitS;
        final int[] runS;
        final boolean[] looks;
        int shortestServedS = Integer.MAX_VALUE;
        private final int most;

        Site(int cones, int most) {
            this.most = most;
            credit = new Credit[cones];
            Arrays.fill(credit, Credit.NONE);
            on = new boolean[cones];
            onS = new int[cones];
            waitS = new int[cones];
            longestWaitS = new int[cones];
            runS = new int[cones];
            looks = new boolean[cones];
        }

        void second(boolean... wants) {
            List<Claim> claims = new ArrayList<>();
            for (int i = 0; i < wants.length; i++) {
                credit[i] = Share.wanting(credit[i], wants[i] ? Share.Want.ON : looks[i] ? Share.Want.LOOKS
                        : Share.Want.OFF, on[i], 1_000);
                claims.add(new Claim("" + i, credit[i], on[i], Share.TURN_MS));
            }
            int left = most;
            for (Claim c : Share.order(claims)) {
                int i = Integer.parseInt(c.cone());
                boolean next = wants[i] && left > 0;
                left -= next ? 1 : 0;
                note(i, next, wants[i]);
            }
            assertThat(left).as("the limit").isNotNegative();
        }

        private void note(int i, boolean next, boolean wanted) {
            if (on[i] && !next && wanted) {
                shortestServedS = Math.min(shortestServedS, runS[i]);
            }
            runS[i] = next ? runS[i] + 1 : 0;
            onS[i] += next ? 1 : 0;
            waitS[i] = wanted && !next ? waitS[i] + 1 : 0;
            longestWaitS[i] = Math.max(longestWaitS[i], waitS[i]);
            on[i] = next;
        }
    }

    @Test
    void threeColdConesShareOneHeatersPowerInTurns() {
        Site s = new Site(3, 1);
        for (int t = 0; t < 7_200; t++) {
            s.second(true, true, true);
        }
        for (int i = 0; i < 3; i++) {
            assertThat(s.onS[i]).isCloseTo(2_400, within(200));
            assertThat(s.longestWaitS[i]).isLessThan(300);
        }
        assertThat(s.shortestServedS).as("relays are spared").isGreaterThanOrEqualTo(119);
    }

    @Test
    void whoWantsNowAndThenIsServedBesideOneThatAlwaysWants() {
        Site s = new Site(2, 1);
        for (int t = 0; t < 14_400; t++) {
            s.second(true, t % 600 < 60 || s.waitS[1] > 0);
        }
        assertThat(s.longestWaitS[1]).isLessThanOrEqualTo(121);
        assertThat(s.onS[0] + s.onS[1]).as("no second of power is lost").isGreaterThan(14_390);
    }

    /** In doubt of its water a law switches off and looks, some twenty seconds in ninety; waiting or on. */
    @Test
    void whoLooksNowAndThenKeepsItsTurnBesideThoseThatAlwaysWant() {
        Site s = new Site(3, 1);
        for (int t = 0; t < 14_400; t++) {
            s.looks[0] = t % 90 < 22;
            s.second(!s.looks[0], true, true);
        }
        assertThat(s.onS[0]).as("of 4,800 in turns").isGreaterThan(2_400);
        assertThat(s.onS[1]).isCloseTo(s.onS[2], within(400));
    }

    /** Seeded: wants that come and go at random, as bands of any width would make them. */
    @Test
    void nobodyStarves() {
        for (int seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            int cones = 2 + random.nextInt(6);
            int most = 1 + random.nextInt(cones - 1);
            Site s = new Site(cones, most);
            boolean[] wants = new boolean[cones];
            for (int t = 0; t < 10_000; t++) {
                for (int i = 0; i < cones; i++) {
                    // A heater that waits goes on wanting, one that runs has enough at some time.
                    wants[i] = wants[i] ? !s.on[i] || random.nextInt(400) > 0 : random.nextInt(200) == 0;
                }
                s.second(wants);
            }
            for (int i = 0; i < cones; i++) {
                assertThat(s.longestWaitS[i]).as("seed %d, cone %d of %d, %d at once", seed, i, cones, most)
                        .isLessThanOrEqualTo(cones * 125);
                assertThat(s.onS[i]).isPositive();
            }
            assertThat(s.shortestServedS).isGreaterThanOrEqualTo(119);
        }
    }

    @Test
    void aTurnIsCountedWhileItIsWantedAndForgottenWhenItIsNot() {
        Credit waits = Share.wanting(Share.wanting(Credit.NONE, Share.Want.ON, false, 1_000),
                Share.Want.ON, false, 1_000);
        assertThat(waits).isEqualTo(new Credit(0, true, 2_000));
        assertThat(Share.wanting(waits, Share.Want.ON, true, 1_000).turnMs()).as("it is on: its turn begins")
                .isEqualTo(-1_000);
        assertThat(Share.wanting(waits, Share.Want.OFF, false, 1_000)).isEqualTo(Credit.NONE);
    }

    @Test
    void owingNothingItLeavesNoHeatBehindWhenTheLawsChange() {
        Credit owed = new Credit(200_000, true, -5_000);
        assertThat(Share.wanting(owed, Share.Want.ON, true, 1_000).creditMs()).isZero();
        assertThat(Share.wanting(owed, Share.Want.ON, true, 1_000).turnMs()).as("but its turn goes on")
                .isEqualTo(-6_000);
    }
}

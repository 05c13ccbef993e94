package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.conetender.core.heat.Share.Claim;
import org.conetender.core.heat.Share.Credit;
import org.conetender.core.heat.Share.Window;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Duties become on and off, and short power goes round. */
class ShareTest {

    private static final Window RELAY = new Window(1_000, 240_000);

    /** Heaters that obey the order under a limit of so many at once. */
    private static final class Bank {
        final double[] duty;
        final Credit[] credit;
        final boolean[] on;
        final int[] onS;
        final int[] longestWaitS;
        final List<Integer> pulsesS = new ArrayList<>();
        private final int most;
        private final int[] since;

        Bank(int most, double... duty) {
            this.most = most;
            this.duty = duty;
            credit = new Credit[duty.length];
            on = new boolean[duty.length];
            onS = new int[duty.length];
            longestWaitS = new int[duty.length];
            since = new int[duty.length];
            java.util.Arrays.fill(credit, Credit.NONE);
        }

        Bank run(int seconds, Window w) {
            for (int t = 0; t < seconds; t++) {
                List<Claim> claims = new ArrayList<>();
                for (int i = 0; i < duty.length; i++) {
                    credit[i] = Share.after(credit[i], duty[i], on[i], w);
                    claims.add(new Claim("" + i, credit[i], on[i], Share.TURN_MS));
                }
                int left = most;
                for (Claim c : Share.order(claims)) {
                    int i = Integer.parseInt(c.cone());
                    boolean next = c.credit().wants() && left > 0;
                    left -= next ? 1 : 0;
                    note(i, next);
                }
            }
            return this;
        }

        private void note(int i, boolean next) {
            if (next != on[i]) {
                if (on[i]) {
                    pulsesS.add(since[i]);
                }
                since[i] = 0;
            }
            since[i]++;
            on[i] = next;
            onS[i] += next ? 1 : 0;
            longestWaitS[i] = Math.max(longestWaitS[i], next ? 0 : since[i]);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.05", "0.1", "0.26", "0.5", "0.75", "0.9", "0.97", "1"})
    void theDutyIsRealisedWithinAFewPercentOverAnHour(double duty) {
        Bank b = new Bank(1, duty).run(600, RELAY);
        int before = b.onS[0];
        b.run(3_600 * 4, RELAY);
        assertThat((b.onS[0] - before) / 14_400.0).isCloseTo(duty, within(0.02));
        Bank fast = new Bank(1, duty).run(3_600, new Window(1_000, 10_000));
        assertThat(fast.onS[0] / 3_600.0).isCloseTo(duty, within(0.02));
    }

    @ParameterizedTest
    @CsvSource({"0.004", "0.02", "0.3", "0.5", "0.95", "0.99"})
    void noPulseOfARelayIsShorterThanTenSeconds(double duty) {
        Bank b = new Bank(1, duty).run(20_000, RELAY);
        assertThat(b.pulsesS).isNotEmpty().allSatisfy(s -> assertThat(s).isGreaterThanOrEqualTo(9));
    }

    @Test
    void aDutyOfNothingIsOffAndOwesNothing() {
        assertThat(Share.after(new Credit(200_000, true, 5_000), 0, true, RELAY)).isEqualTo(Credit.NONE);
    }

    @Test
    void threeThatWantAllOfOneHeatersPowerTakeTurns() {
        Bank b = new Bank(1, 1, 1, 1).run(3_600, RELAY);
        assertThat(b.onS[0] + b.onS[1] + b.onS[2]).isGreaterThan(3_560);
        for (int i = 0; i < 3; i++) {
            assertThat(b.onS[i]).isCloseTo(1_200, within(150));
            assertThat(b.longestWaitS[i]).isLessThan(400);
        }
        assertThat(b.pulsesS).as("relays are spared").hasSizeLessThan(40);
    }

    @Test
    void withPowerForTwoOfThreeNobodyKeepsItForGood() {
        Bank b = new Bank(2, 1, 1, 1).run(7_200, RELAY);
        for (int i = 0; i < 3; i++) {
            assertThat(b.onS[i]).isCloseTo(4_800, within(500));
        }
    }

    @Test
    void aLittleDutyIsServedBesideAGreatOne() {
        Bank b = new Bank(1, 1, 0.2, 0.2).run(7_200, RELAY);
        assertThat(b.onS[1] / 7_200.0).isCloseTo(0.2, within(0.03));
        assertThat(b.onS[2] / 7_200.0).isCloseTo(0.2, within(0.03));
        assertThat(b.onS[0] / 7_200.0).isGreaterThan(0.5);
    }

    /** Seeded: whatever is wanted, who wants waits no longer than everybody's turn. */
    @Test
    void nobodyStarves() {
        for (int seed = 1; seed <= 60; seed++) {
            Random random = new Random(seed);
            double[] duty = new double[2 + random.nextInt(5)];
            for (int i = 0; i < duty.length; i++) {
                duty[i] = 0.1 + 0.9 * random.nextDouble();
            }
            Bank b = new Bank(1 + random.nextInt(2), duty).run(7_200, RELAY);
            for (int i = 0; i < duty.length; i++) {
                assertThat(b.longestWaitS[i]).as("seed %d, cone %d of %d", seed, i, duty.length)
                        .isLessThan(2_400 + duty.length * 400);
                assertThat(b.onS[i]).isPositive();
            }
        }
    }
}

package org.conetender.adapter.gpio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class LeasesTest {

    private final Leases leases = new Leases();

    @Test
    void aHoldLastsUntilItsEndAndNotAMillisecondLonger() {
        leases.grant("a.heat", 1_000, 4_000);
        assertThat(leases.due(4_999)).isEmpty();
        assertThat(leases.due(5_000)).containsExactly("a.heat");
    }

    @Test
    void aRenewalCountsFromItsOwnTimeAndMayShorten() {
        leases.grant("a.heat", 1_000, 4_000);
        leases.grant("a.heat", 3_000, 4_000);
        assertThat(leases.due("a.heat", 6_999)).isFalse();
        leases.grant("a.heat", 4_000, 100);
        assertThat(leases.due("a.heat", 4_100)).isTrue();
    }

    @Test
    void oneOutputsLeaseIsNoOthers() {
        leases.grant("a.heat", 0, 4_000);
        leases.grant("b.heat", 2_000, 4_000);
        assertThat(leases.due(4_500)).containsExactly("a.heat");
    }

    @Test
    void aDroppedLeaseIsNeverDueAgain() {
        leases.grant("a.heat", 0, 4_000);
        leases.drop("a.heat");
        assertThat(leases.due(Long.MAX_VALUE)).isEmpty();
    }

    @Test
    void anOutputThatWouldNotGoSafeIsDueAtEveryLook() {
        leases.overdue("a.heat");
        assertThat(leases.due(0)).containsExactly("a.heat");
        assertThat(leases.due(1)).containsExactly("a.heat");
    }

    /** Law: after any run of renewals, an output is due exactly when the last lease has ended. */
    @Test
    void onlyTheLastRenewalDecides() {
        for (long seed = 0; seed < 200; seed++) {
            Random random = new Random(seed);
            long nowMs = random.nextInt(1_000_000);
            long endMs = 0;
            for (int i = 0; i < 20; i++) {
                nowMs += random.nextInt(3_000);
                int validForMs = 1 + random.nextInt(4_000);
                endMs = nowMs + validForMs;
                leases.grant("a.heat", nowMs, validForMs);
                long later = nowMs + random.nextInt(5_000);
                assertThat(leases.due("a.heat", later)).as("seed %d", seed).isEqualTo(later >= endMs);
            }
        }
    }
}

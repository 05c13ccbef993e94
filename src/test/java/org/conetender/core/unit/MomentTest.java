package org.conetender.core.unit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** How long ago something was: exact where a clock can tell, honest bounds where none can. */
class MomentTest {

    private static final long HOUR = Units.HOUR_MS;
    private static final long NOON = 1_795_608_000_000L;

    private static Moment at(String boot, long monoMs, long wallMs, boolean trusted) {
        return new Moment(boot, monoMs, wallMs, trusted);
    }

    @Test
    void withinOneBootTheWallClockDoesNotMatter() {
        Moment then = at("one", HOUR, NOON, true);
        for (long jump : new long[] {-300 * HOUR, 0, 300 * HOUR}) {
            assertThat(at("one", 3 * HOUR, NOON + jump, false).since(then)).isEqualTo(Span.exactly(2 * HOUR));
        }
    }

    @Test
    void acrossAPowerCutTwoTrustedClocksTellToWhatTheyMayBeOff() {
        Span s = at("two", 20_000, NOON + HOUR, true).since(at("one", 9 * HOUR, NOON, true));
        assertThat(s).isEqualTo(new Span(HOUR - 2 * Boots.SKEW_MS, HOUR + 2 * Boots.SKEW_MS));
        assertThat(s.known() && s.bounded() && !s.exact()).isTrue();
    }

    /** Whatever the wall clocks say, one of them is not to be believed. */
    @Test
    void acrossAPowerCutAnUntrustedClockLeavesOnlyTheLowerBound() {
        for (int i = 0; i < 3; i++) {
            Span s = at("two", 20_000, NOON + HOUR, i == 1).since(at("one", HOUR, NOON, i == 2));
            assertThat(s.leastMs()).isEqualTo(20_000);
            assertThat(s.bounded() || s.exact()).isFalse();
        }
    }

    /** A clock that was set back between two boots says nothing, but this boot has lasted all the same. */
    @Test
    void noTimeAcrossAPowerCutIsShorterThanThisBootHasLasted() {
        Span s = at("two", 3 * HOUR, NOON - HOUR, true).since(at("one", 9 * HOUR, NOON, true));
        assertThat(s.leastMs()).isEqualTo(3 * HOUR);
        assertThat(s.bounded()).isFalse();
    }

    @Test
    void nothingIsEverLessThanNoTimeAgo() {
        assertThat(at("one", 5, NOON, true).since(at("one", 9, NOON, true))).isEqualTo(Span.exactly(0));
        assertThat(at("two", 0, NOON - HOUR, true).since(at("one", 9, NOON, true)).leastMs()).isZero();
    }

    /** Seeded: in one boot, time passes alike on the way and in one go. */
    @Test
    void spansOfOneBootAddUp() {
        for (int seed = 1; seed <= 200; seed++) {
            Random r = new Random(seed);
            Moment a = at("one", r.nextInt(1_000_000), r.nextLong(1L << 40), r.nextBoolean());
            Moment b = a.plusMs(r.nextInt(1_000_000));
            Moment c = b.plusMs(r.nextInt(1_000_000));
            assertThat(c.since(a).leastMs()).as("seed " + seed)
                    .isEqualTo(c.since(b).leastMs() + b.since(a).leastMs());
        }
    }
}

package org.conetender.core.unit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Times across power cuts on a machine whose wall clock may be years off until it is synchronised. The
 * quartz of each boot is off by up to 100 ppm until its clock is set, which may take a month. The number of
 * random histories is 10^5, or what {@code -Dconetender.outages=1000000} says.
 */
class BootsTest {

    private static final long YEAR_MS = 365L * 24 * Units.HOUR_MS;
    private static final double DRIFT = 100e-6;
    private static final long EPOCH_MS = 1_772_442_000_000L;

    /** A moment as the machine noted it, and when it truly was, ms since the history began. */
    private record Noted(Moment moment, long trueMs) {}

    /** One machine's history, drawn from a seed: boots, minutes, syncs, cuts. */
    private static final class History {
        final SplittableRandom dice;
        final List<Noted> noted = new ArrayList<>();
        /** True ends and beginnings of power, ms. */
        final List<long[]> dark = new ArrayList<>();
        /** By which a clock is off that is trusted; each boot's its own. */
        private long skewMs;
        private long nowMs;
        private boolean everSet;
        private double monoMs;

        History(long seed) {
            dice = new SplittableRandom(seed);
            int boots = 2 + dice.nextInt(5);
            for (int b = 0; b < boots; b++) {
                boot("boot-" + b, b == boots - 1);
                if (b < boots - 1) {
                    long from = nowMs;
                    nowMs += dice.nextInt(3) == 0 ? dice.nextLong(20_000) : dice.nextLong(72 * Units.HOUR_MS);
                    dark.add(new long[] {from, nowMs});
                }
            }
        }

        /** Minutes are noted as the record does; the wall is off by up to ten years until it is set. */
        private void boot(String id, boolean last) {
            monoMs = 0;
            skewMs = dice.nextLong(-Boots.SKEW_MS, Boots.SKEW_MS + 1);
            double rate = 1 + dice.nextDouble(-DRIFT, DRIFT);
            int idleAt = dice.nextInt(6) == 0 ? dice.nextInt(40) : Integer.MAX_VALUE;
            long wrong = dice.nextLong(-10 * YEAR_MS, 10 * YEAR_MS);
            int minutes = 1 + dice.nextInt(last ? 90 : 40);
            int setAt = dice.nextInt(3) == 0 ? Integer.MAX_VALUE : dice.nextInt(minutes);
            for (int m = 0; m < minutes; m++) {
                boolean set = m >= setAt;
                everSet |= set;
                note(id, set ? skewMs : wrong, set);
                if (m == idleAt) {
                    pass(dice.nextLong(30 * 24 * Units.HOUR_MS), set ? 1 : rate);
                    note(id, set ? skewMs : wrong, set);
                }
                pass(Units.MINUTE_MS, set ? 1 : rate);
            }
            nowMs -= dice.nextLong(Units.MINUTE_MS - 1);
        }

        private void pass(long ms, double rate) {
            nowMs += ms;
            monoMs += ms * rate;
        }

        private void note(String id, long error, boolean set) {
            noted.add(new Noted(new Moment(id, Math.round(monoMs), EPOCH_MS + nowMs + error, set), nowMs));
        }
    }

    private static int outages() {
        return Integer.getInteger("conetender.outages", 100_000);
    }

    private static Boots heard(List<Noted> noted) {
        Boots boots = Boots.NONE;
        for (Noted n : noted) {
            boots = boots.heard(n.moment());
        }
        return boots;
    }

    private static Span drifting(Span s) {
        long ms = Math.round(s.mostMs() * DRIFT) + 1;
        return new Span(s.leastMs() - ms, s.mostMs() + ms);
    }

    private static void contains(Span s, long trueMs, String what) {
        assertThat(trueMs).as(what + " within " + s).isBetween(s.leastMs(), s.mostMs());
    }

    @Test
    void theWallTimeOfABootIsKnownOnceItsClockWasTrustedAndStaysSo() {
        Moment early = new Moment("b", 1_000, 5, false);
        Moment set = new Moment("b", 61_000, EPOCH_MS, true);
        Moment lost = new Moment("b", 3_661_000, 77, false);
        Boots boots = Boots.NONE.heard(early);
        assertThat(boots.wallMs(early)).as("never trusted").isEmpty();
        boots = boots.heard(set);
        assertThat(boots.wallMs(early)).as("backwards too").hasValue(EPOCH_MS - 60_000);
        assertThat(boots.wallMs(lost)).as("on the monotonic clock").hasValue(EPOCH_MS + Units.HOUR_MS);
        assertThat(boots.wallMs(new Moment("c", 9, 9, false))).as("another boot").isEmpty();
        assertThat(boots.wallMs(new Moment("b", 62_000, EPOCH_MS + 9_000, true)))
                .as("a trusted clock is believed").hasValue(EPOCH_MS + 9_000);
    }

    @Test
    void theIntervalAlwaysContainsTheTruth() {
        for (int seed = 1; seed <= outages(); seed++) {
            History h = new History(seed);
            int upTo = 1 + h.dice.nextInt(h.noted.size());
            List<Noted> known = h.noted.subList(0, upTo);
            Boots boots = heard(known);
            Noted to = known.getLast();
            for (int i = 0; i < 4; i++) {
                Noted from = known.get(h.dice.nextInt(upTo));
                Span s = boots.between(from.moment(), to.moment());
                long trueMs = to.trueMs() - from.trueMs();
                // Within a boot the monotonic clock is all there is, and is taken for the truth.
                contains(from.moment().sameBoot(to.moment()) ? drifting(s) : s, trueMs, "seed " + seed);
            }
        }
    }

    @Test
    void everyCutIsContainedBeforeAndAfterTheClockIsSet() {
        for (int seed = 1; seed <= outages(); seed++) {
            History h = new History(seed);
            Boots boots = heard(h.noted);
            List<Boots.Cut> cuts = boots.cuts();
            assertThat(cuts).hasSameSizeAs(h.dark);
            for (int i = 0; i < cuts.size(); i++) {
                contains(cuts.get(i).off(), h.dark.get(i)[1] - h.dark.get(i)[0], "seed " + seed);
            }
        }
    }

    @Test
    void onceSetTheTimeFromAnySetBootIsKnownToTheMinuteWhateverLayBetween() {
        int resolved = 0;
        for (int seed = 1; seed <= outages(); seed++) {
            History h = new History(seed);
            Boots boots = heard(h.noted);
            Noted to = h.noted.getLast();
            for (Noted from : h.noted) {
                if (from.moment().wallTrusted() && to.moment().wallTrusted()) {
                    Span s = boots.between(from.moment(), to.moment());
                    assertThat(s.known()).isTrue();
                    long trueMs = to.trueMs() - from.trueMs();
                    assertThat(Math.max(Math.abs(s.leastMs() - trueMs), Math.abs(s.mostMs() - trueMs)))
                            .as("seed " + seed).isLessThanOrEqualTo(Units.MINUTE_MS);
                    resolved++;
                    break;
                }
            }
        }
        assertThat(resolved).isGreaterThan(outages() / 4);
    }

    /** Of two clocks. */
    private static final long SKEW_MS = 2 * Boots.SKEW_MS;

    /** By which a quartz may be off after so many minutes, ms. */
    private static long drift(long minutes) {
        return Math.round(minutes * Units.MINUTE_MS * DRIFT);
    }

    /** Seeded: a start hears years at once. */
    @Test
    void manyMomentsAtOnceAreHeardAsOneByOne() {
        for (int seed = 1; seed <= outages() / 10; seed++) {
            List<Noted> noted = new History(seed).noted;
            assertThat(Boots.NONE.heard(noted.stream().map(Noted::moment)::iterator)).as("seed " + seed)
                    .isEqualTo(heard(noted));
        }
    }

    private static Moment at(String boot, long monoMin, long wallMin, boolean trusted) {
        return new Moment(boot, monoMin * Units.MINUTE_MS, EPOCH_MS + wallMin * Units.MINUTE_MS, trusted);
    }

    /** The clock is set in the middle of a life: what was uncertain at its beginning becomes exact. */
    @Test
    void aCutIsResolvedBackwardsWhenTheClockTurnsUp() {
        Boots boots = Boots.NONE.heard(at("one", 100, 100, true)).heard(at("two", 1, -5_000_000, false));
        assertThat(boots.cuts().getFirst().off()).isEqualTo(new Span(0, Long.MAX_VALUE));
        Boots later = boots.heard(at("two", 50, 180, true));
        assertThat(later.cuts().getFirst().off().mostMs())
                .isEqualTo(30 * Units.MINUTE_MS + SKEW_MS + drift(50));
        // Both moments lie before or after those at which the clocks were trusted: by 10 and by 49 minutes.
        Span s = later.between(at("one", 90, 0, false), at("two", 1, 0, false));
        assertThat(s).isEqualTo(new Span(41 * Units.MINUTE_MS - SKEW_MS - drift(59),
                41 * Units.MINUTE_MS + SKEW_MS + drift(59)));
    }

    /** Two cuts before one sync: each is bounded by both together, and their sum is exact. */
    @Test
    void severalCutsBeforeOneSyncAreAllBounded() {
        Boots boots = Boots.NONE.heard(at("one", 100, 100, true)).heard(at("two", 10, 9_999, false))
                .heard(at("three", 5, 145, true));
        for (Boots.Cut c : boots.cuts()) {
            assertThat(c.off()).isEqualTo(new Span(0, 30 * Units.MINUTE_MS + SKEW_MS + drift(15)));
        }
        assertThat(boots.between(at("one", 100, 0, false), at("three", 0, 0, false)))
                .isEqualTo(new Span(40 * Units.MINUTE_MS - SKEW_MS - drift(5),
                        40 * Units.MINUTE_MS + SKEW_MS + drift(5)));
        assertThat(boots.between(at("two", 10, 0, false), at("three", 5, 0, false)))
                .isEqualTo(new Span(5 * Units.MINUTE_MS - drift(5),
                        35 * Units.MINUTE_MS + SKEW_MS + drift(10)));
    }

    @Test
    void trustedClocksThatContradictTheMonotonicOnesBoundNothing() {
        Boots boots = Boots.NONE.heard(at("one", 100, 1_000, true)).heard(at("two", 5, 900, true));
        assertThat(boots.between(at("one", 90, 0, false), at("two", 5, 900, true)))
                .isEqualTo(new Span(15 * Units.MINUTE_MS - drift(15), Long.MAX_VALUE));
    }

    @Test
    void aClockThatIsSetAgainIsBelievedAndOneThatOnlySlewsIsNot() {
        Boots boots = Boots.NONE.heard(at("one", 100, 100, true));
        assertThat(boots.placed(at("one", 120, 120, true).plusMs(0))).isTrue();
        assertThat(boots.placed(at("one", 120, 300, true))).isFalse();
        assertThat(boots.placed(at("one", 120, 300, false))).isTrue();
        assertThat(boots.heard(at("one", 120, 300, true)).known().getFirst().startWallMs().getAsLong())
                .isEqualTo(EPOCH_MS + 180 * Units.MINUTE_MS);
    }

    @Test
    void bootsOfLongAgoAreForgottenAndTimesFromThemUnbounded() {
        Boots boots = Boots.NONE;
        for (int i = 0; i < 80; i++) {
            boots = boots.heard(at("boot-" + i, 5, 20L * i, false));
        }
        assertThat(boots.known()).hasSize(Boots.REMEMBERED);
        assertThat(boots.between(at("boot-0", 1, 0, false), at("boot-79", 5, 0, false)))
                .isEqualTo(new Span(5 * Units.MINUTE_MS, Long.MAX_VALUE));
    }

    @Test
    void whatCameLaterIsNotAgoAtAll() {
        Boots boots = Boots.NONE.heard(at("one", 5, 0, false)).heard(at("two", 5, 0, false));
        assertThat(boots.between(at("two", 1, 0, false), at("one", 1, 0, false))).isEqualTo(Span.exactly(0));
    }
}

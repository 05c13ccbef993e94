package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import org.assertj.core.data.Offset;
import org.conetender.core.Story;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.hatch.Oxygen;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Breath;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Span;
import org.junit.jupiter.api.Test;

/** What animals still lacked when the power went, to the second. */
class LackTest {

    private static final long MINUTE = 60_000;
    private static final long WHOLE = (long) (Breath.LONGEST_WHOLE_MINUTES * MINUTE);

    private final Story s = Story.at().does(Step.STARTED, Step.FIRST_SEEN).minutes(2);

    private static long aired(long missingMs, long ms) {
        return (long) Oxygen.missingAfterAir(missingMs, ms / (double) MINUTE);
    }

    /** Boots that lasted so long each, and after each of them such a cut. */
    private static List<Lack> cuts(ConeBook book, long bootMs, Span... off) {
        List<Boots.Boot> boots = new ArrayList<>();
        List<Boots.Cut> cuts = new ArrayList<>();
        for (int i = 0; i <= off.length; i++) {
            boots.add(new Boots.Boot("boot-" + (i + 1), bootMs, OptionalLong.empty(), Span.exactly(0)));
            if (i < off.length) {
                cuts.add(new Boots.Cut(i, off[i]));
            }
        }
        return Lack.of(cuts, new Boots(boots), book);
    }

    private ConeBook book() {
        return s.state().book().cone("a");
    }

    private long nowMs() {
        return s.now().monoMs();
    }

    /** What was owed when the power went at {@code ms} of the first boot, ms. */
    private long owedAt(long ms) {
        Span owed = cuts(book(), ms, Span.exactly(8 * MINUTE)).getFirst().owed();
        assertThat(owed.mostMs()).isEqualTo(owed.leastMs());
        return owed.mostMs();
    }

    @Test
    void aSingleCutFindsNothingMissing() {
        assertThat(cuts(book(), 5 * MINUTE)).isEmpty();
        assertThat(cuts(book(), 5 * MINUTE, new Span(MINUTE, Long.MAX_VALUE))).singleElement()
                .satisfies(l -> assertThat(l.owed()).isEqualTo(Span.exactly(0)));
    }

    @Test
    void theNextFindsWhatAirBetweenThemDidNotMakeGood() {
        List<Lack> found = cuts(book(), 3 * MINUTE, new Span(4 * MINUTE, 6 * MINUTE), Span.exactly(MINUTE),
                Span.exactly(MINUTE));
        Span second = found.get(1).owed();
        assertThat(second.leastMs()).isEqualTo(aired(4 * MINUTE, 3 * MINUTE));
        assertThat(second.mostMs()).isEqualTo(aired(6 * MINUTE, 3 * MINUTE));
        // The short one adds to it, and nothing is counted twice.
        assertThat(found.get(2).owed().mostMs()).isEqualTo(aired(second.mostMs() + MINUTE, 3 * MINUTE));
        assertThat(found.get(2).owed().leastMs()).isEqualTo(aired(second.leastMs() + MINUTE, 3 * MINUTE));
    }

    /** A boot is known to a minute: of what may have lasted no time only that counts which surely did. */
    @Test
    void ofAShortCutOnlyWhatItSurelyLastedCounts() {
        Span[] reboots = new Span[20];
        Arrays.fill(reboots, new Span(0, 2 * MINUTE - 1));
        assertThat(cuts(book(), 10_000, reboots)).allMatch(l -> l.owed().mostMs() == 0);
        Arrays.fill(reboots, new Span(0, 2 * MINUTE));
        Span owed = cuts(book(), 10_000, reboots).get(1).owed();
        assertThat(owed.leastMs()).isZero();
        assertThat(owed.mostMs()).isEqualTo(aired(2 * MINUTE, 10_000));
    }

    @Test
    void lessThanAMinuteIsNothing() {
        assertThat(cuts(book(), 0, Span.exactly(MINUTE - 1), Span.exactly(MINUTE)).get(1).owed())
                .isEqualTo(Span.exactly(0));
        assertThat(cuts(book(), 0, Span.exactly(MINUTE), Span.exactly(MINUTE)).get(1).owed())
                .isEqualTo(Span.exactly(MINUTE));
    }

    @Test
    void moreThanTheWholeCannotBeMissing() {
        Span owed = cuts(book(), 0, new Span(15 * MINUTE, Long.MAX_VALUE),
                new Span(15 * MINUTE, Long.MAX_VALUE), Span.exactly(MINUTE)).get(2).owed();
        assertThat(owed).isEqualTo(Span.exactly(WHOLE));
        assertThat(cuts(book(), 0, new Span(15 * MINUTE, Long.MAX_VALUE), Span.exactly(MINUTE)).get(1).owed())
                .isEqualTo(new Span(15 * MINUTE, WHOLE));
    }

    @Test
    void aSeparationIsMissingFromWhenItBeganUntilAirCameBack() {
        s.does(Step.SETTLE).minutes(6);
        long began = s.batch("a").stage().airOff().monoMs();
        assertThat(owedAt(began + 5 * MINUTE)).as("cut while it lasts").isEqualTo(5 * MINUTE);
        s.does(Step.HANDS_IN);
        long back = nowMs();
        assertThat(owedAt(back)).isBetween(back - began - 5_000, back - began);
        long all = owedAt(back + 2 * MINUTE);
        assertThat(all).isEqualTo(aired(owedAt(back), 2 * MINUTE));
        assertThat(owedAt(back + 60 * MINUTE)).as("an hour of air").isZero();
    }

    /** Two of them, with air between. */
    @Test
    void separationsInOneBootAreCountedTogetherWithTheAirBetweenThem() {
        s.does(Step.SETTLE).minutes(9);
        s.does(Step.HANDS_IN).minutes(20);
        long between = nowMs();
        long owed = owedAt(between);
        s.minutes(5).does(Step.SETTLE);
        long again = s.batch("a").stage().airOff().monoMs();
        assertThat(owed).isPositive();
        assertThat(owedAt(again + 4 * MINUTE)).isCloseTo(aired(owed, again - between) + 4 * MINUTE,
                Offset.offset(10L));
    }
}

package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.conetender.core.hatch.Lesson.At;
import org.conetender.core.hatch.Lesson.Sight;
import org.junit.jupiter.api.Test;

class OddsTest {

    private static final Odds.Besides USUAL = new Odds.Besides(0.82, 0);
    private static final At LATER = new At(250, 250, 18);

    private static double of(Sight sight, At at, double k50) {
        return Math.exp(new Odds(List.of(new Lesson(at, sight))).log(Math.log(k50), 0.15, USUAL));
    }

    /** Without a look before, nobody knows how long they were there: it tells only that they came by then. */
    @Test
    void firstNaupliiMayHaveBeenThereBeforeAnybodyCame() {
        double k50 = 250;
        double first = k50 * Math.exp(0.15 * Normal.quantile(0.01));
        At at = new At(first, first, first / 14);
        assertThat(of(new Sight.First(), at, k50)).isCloseTo(0.97 * 0.5 + 0.03 * 0.5, within(1e-3));
        assertThat(of(new Sight.First(), at, 200)).isCloseTo(of(new Sight.First(), at, 150), within(0.01))
                .isGreaterThan(of(new Sight.First(), at, 310) * 5);
    }

    /** Half an hour is more of four than of sixty: who is early by so much is not called mistaken. */
    @Test
    void whenFirstNaupliiWereReportedIsDoubtedByHalfAnHour() {
        double wide = of(new Sight.First(), new At(200, 200, 4), 320);
        double narrow = of(new Sight.First(), new At(200, 200, 60), 320);
        assertThat(wide).isGreaterThan(narrow * 2);
    }

    @Test
    void afterALookInVainTheyComeBetweenTheTwo() {
        At none = new At(150, 150, 11);
        At seen = new At(170, 170, 12);
        List<Lesson> both = List.of(new Lesson(none, new Sight.NoneYet()), new Lesson(seen,
                new Sight.First()));
        double between = Math.exp(new Odds(both).log(Math.log(160) + 0.15 * 2.326, 0.15, USUAL));
        assertThat(between).isGreaterThan(0.5);
        for (double k50 : new double[] {170, 300}) {
            assertThat(Math.exp(new Odds(both).log(Math.log(k50), 0.15, USUAL))).isLessThan(between / 5);
        }
    }

    /** A count is binomial, of fewer animals than were counted: 150 that resemble each other by 0.002. */
    @Test
    void aCountIsLikeliestWhereItsShareIs() {
        Sight half = new Sight.Counted(75, 10, 65);
        double worth = 1 / (1 + 149 * 0.002);
        double k50 = 260;
        double p = 0.82 * Normal.share(Math.log(250 / k50) / 0.15);
        double n = 75 * worth;
        double best = 2 * n * Math.log(0.5);
        double any = Math.sqrt(2 * Math.PI * (0.25 + 1 / (2 * n)) / (2 * n));
        double wanted = 0.97 * Math.exp(n * Math.log(p) + n * Math.log(1 - p) - best) + 0.03 * any;
        assertThat(of(half, LATER, k50)).isCloseTo(wanted, within(1e-9));
        assertThat(of(new Sight.Counted(0, 0, 0), LATER, k50)).isEqualTo(1);
        assertThat(of(new Sight.Counted(0, 0, 150), LATER, 400))
                .isGreaterThan(of(new Sight.Counted(0, 0, 150), LATER, 240) * 10);
    }

    @Test
    void theThreeWordsShareOutEveryHour() {
        for (double k50 = 120; k50 < 500; k50 += 10) {
            double sum = 0;
            for (Lesson.Word w : Lesson.Word.values()) {
                sum += of(new Sight.Judged(w), LATER, k50);
            }
            assertThat(sum).isCloseTo(1, within(0.02));
        }
        assertThat(of(new Sight.Judged(Lesson.Word.TOO_EARLY), LATER, 400)).isGreaterThan(0.95);
        assertThat(of(new Sight.Judged(Lesson.Word.RIGHT), LATER, 190)).isGreaterThan(0.7);
        assertThat(of(new Sight.Judged(Lesson.Word.LATE), LATER, 120)).isGreaterThan(0.9);
    }

    @Test
    void lookingInVainOnlySaysThatItIsLater() {
        At early = new At(150, 150, 11);
        assertThat(of(new Sight.NoneYet(), early, 300)).isGreaterThan(0.95);
        assertThat(of(new Sight.NoneYet(), early, 120)).isCloseTo(0.015, within(0.01));
    }

    @Test
    void whatIsNotKnownOfTheWayFlattensEveryLook() {
        At vague = new At(200, 300, 18);
        // Likeliest where half of what can hatch has, whichever way that was come by.
        Sight count = new Sight.Counted(41, 0, 59);
        assertThat(of(count, vague, 250)).isCloseTo(of(count, LATER, 250), within(1e-3));
        assertThat(of(count, vague, 265)).isGreaterThan(of(count, LATER, 265) * 1.5);
    }
}

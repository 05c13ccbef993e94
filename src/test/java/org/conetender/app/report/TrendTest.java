package org.conetender.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What a figure does with the age of a tin, and how sure that is. */
class TrendTest {

    private static List<Trend.Point> line(double scatter, long seed) {
        Random r = new Random(seed);
        return IntStream.range(0, 8).mapToObj(i -> new Trend.Point(10 * i, 5 - 0.01 * 10 * i
                + scatter * r.nextGaussian(), 0.1)).toList();
    }

    @Test
    void aLineIsFoundWithTheDoubtOfItsPoints() {
        for (Trend t : List.of(Trend.of(line(0, 1)).orElseThrow(),
                Trend.scattered(line(0, 1)).orElseThrow())) {
            assertThat(t.perMonth()).isCloseTo(-0.3, within(1e-9));
            // 0.1 over the root of the sum of squares of the days, in months.
            assertThat(t.sd()).isCloseTo(0.1 * 30 / Math.sqrt(4_200), within(1e-9));
            assertThat(t.sure()).isTrue();
        }
    }

    /** Four times as far as they should: eight lines in ten, or a few less, lie within 1.28 of their sd. */
    @Test
    void whatScattersMoreThanItsPointsAdmitIsDoubtedMore() {
        List<Double> off = new ArrayList<>();
        for (int seed = 0; seed < 400; seed++) {
            Trend honest = Trend.scattered(line(0.4, seed)).orElseThrow();
            Trend sure = Trend.of(line(0.4, seed)).orElseThrow();
            assertThat(honest.perMonth()).isEqualTo(sure.perMonth());
            assertThat(honest.sd()).isGreaterThanOrEqualTo(sure.sd());
            off.add(Math.abs(honest.perMonth() + 0.3) / honest.sd());
        }
        assertThat(off.stream().filter(z -> z < 1.28).count() / 400.0).isBetween(0.68, 0.86);
    }

    @Test
    void twoPointsOrTwoWeeksTellNothing() {
        assertThat(Trend.scattered(line(0, 1).subList(0, 2))).isEmpty();
        assertThat(Trend.scattered(List.of(new Trend.Point(0, 5, 0.1), new Trend.Point(1, 5, 0.1),
                new Trend.Point(2, 4, 0.1)))).isEmpty();
    }
}

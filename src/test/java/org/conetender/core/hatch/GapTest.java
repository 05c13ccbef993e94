package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.conetender.core.judge.Cooling;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GapTest {

    private static final long HOUR = Units.HOUR_MS;
    private static final Span UNKNOWN = new Span(60_000, Long.MAX_VALUE);
    private static final Cooling USUAL = Cooling.nominal(2.4);

    /** One true outage: cooling with a time constant and a room that the estimate has wrong. */
    private record Outage(double hours, double beforeC, double afterC, double degreeHours, Gap gap) {

        /**
         * @param book whether the cone is known by its configuration alone, or has shown itself
         * @param off whether the machine was off; else the heater may have held the water for a while
         */
        static Outage draw(Random random, boolean lengthKnown, boolean book, boolean off) {
            double room = 8 + 20 * random.nextDouble();
            double before = 14 + 19 * random.nextDouble();
            double tau = 0.8 + 5 * random.nextDouble();
            double hours = 0.05 + 11.9 * random.nextDouble();
            double water = before;
            double done = 0;
            double heldH = off ? 0 : hours * random.nextDouble();
            double dt = hours / 2_000;
            for (int i = 0; i < 2_000; i++) {
                boolean held = i * dt < heldH && water > room;
                double middle = held ? water : water + (room - water) * (1 - Math.exp(-dt / 2 / tau));
                done += dt * Rate.USUAL.perHour(middle);
                water += held ? 0 : (room - water) * (1 - Math.exp(-dt / tau));
            }
            // It loses from 1 / 1.6 of what it is taken to lose, wrapped, to 3.5 times as much, uncovered;
            // or from 1 / 1.8 of what it has shown to 1 / 0.6 of it.
            double least = book ? 1 / 1.6 : 1 / 1.8;
            double most = book ? 3.5 : 1 / 0.6;
            double guess = tau * Math.exp(Math.log(least) + Math.log(most / least) * random.nextDouble());
            double seenRoom = room + 3.6 * random.nextDouble() - 1.8;
            Span span = lengthKnown ? Span.exactly(Units.msOfHours(hours))
                    : new Span((long) (random.nextDouble() * 60_000), Long.MAX_VALUE);
            double seenBefore = before + 0.3 * random.nextDouble() - 0.15;
            double seenAfter = water + 0.3 * random.nextDouble() - 0.15;
            return new Outage(hours, before, water, done,
                    new Gap(span, seenBefore, seenAfter, seenRoom,
                            book ? Cooling.nominal(guess) : Cooling.shown(guess), off));
        }
    }

    @ParameterizedTest(name = "by the book {0}, machine off {1}")
    @CsvSource({"true, true", "true, false", "false, true", "false, false"})
    void theBoundsContainTheTruthOfTenThousandOutagesOfKnownLength(boolean book, boolean off) {
        Random random = new Random(41);
        for (int i = 0; i < 10_000; i++) {
            Outage o = Outage.draw(random, true, book, off);
            Development d = o.gap.development(Zones.USUAL);
            assertThat(o.degreeHours).as("%s", o)
                    .isBetween(d.leastDegreeHours() - 1e-3, d.mostDegreeHours() + 1e-3);
        }
    }

    @ParameterizedTest(name = "by the book {0}")
    @ValueSource(booleans = {true, false})
    void theBoundsContainTheTruthOfTenThousandOutagesOfUnknownLength(boolean book) {
        Random random = new Random(42);
        int bounded = 0;
        for (int i = 0; i < 10_000; i++) {
            Outage o = Outage.draw(random, false, book, true);
            Span length = o.gap.length();
            Development d = o.gap.development(Zones.USUAL);
            assertThat(o.hours).as("%s", o)
                    .isBetween(Units.hours(length.leastMs()) - 1e-3, Units.hours(length.mostMs()) + 1e-3);
            assertThat(o.degreeHours).as("%s", o)
                    .isBetween(d.leastDegreeHours() - 1e-3, d.mostDegreeHours() + 1e-3);
            bounded += Units.hours(length.mostMs()) < Gap.LONGEST_H ? 1 : 0;
        }
        // The cooling clock must be worth having: it bounds a good part of what the clocks cannot.
        assertThat(bounded).isGreaterThan(2_000);
    }

    /**
     * Widths of what is told of the same outages, on the average: degree-hours where the length is known,
     * else hours, of those after which the water was still warm enough to tell.
     */
    private static double width(boolean lengthKnown, boolean book, boolean off) {
        Random random = new Random(43);
        double sum = 0;
        int n = 0;
        for (int i = 0; i < 10_000; i++) {
            Gap g = Outage.draw(random, lengthKnown, book, off).gap;
            Development d = g.development(Zones.USUAL);
            Span l = g.length();
            if (lengthKnown || g.afterC() - g.roomC() > 4) {
                n++;
                sum += lengthKnown ? d.mostDegreeHours() - d.leastDegreeHours()
                        : Units.hours(l.mostMs()) - Units.hours(l.leastMs());
            }
        }
        assertThat(n).isGreaterThan(1_000);
        return sum / n;
    }

    @ParameterizedTest(name = "length known {0}, machine off {1}")
    @CsvSource({"true, true", "true, false", "false, true"})
    void aConeThatHasShownItselfLeavesLessInDoubt(boolean lengthKnown, boolean off) {
        double book = width(lengthKnown, true, off);
        double shown = width(lengthKnown, false, off);
        assertThat(shown).as("%.2f by the book, %.2f as shown", book, shown)
                .isLessThan((lengthKnown ? 0.95 : 0.8) * book);
    }

    @Test
    void anHourOfAConeThatHasShownItselfIsTwiceAsSureIfTheMachineWasOff() {
        Development book = new Gap(Span.exactly(HOUR), 27, 24.6, 20, USUAL, false).development(Zones.USUAL);
        Development shown = new Gap(Span.exactly(HOUR), 27, 24.6, 20, Cooling.shown(2.4), true)
                .development(Zones.USUAL);
        assertThat(shown.mostDegreeHours() - shown.leastDegreeHours())
                .isLessThan(0.5 * (book.mostDegreeHours() - book.leastDegreeHours()));
        // By hand: as slow as to 22 °C with 2.4 h · 1.8: 22 + 5.2·(1 − e^(−1/4.32))·4.32 = 26.64, mean;
        // less, as the water that was found is colder than that curve ends.
        assertThat(shown.mostDegreeHours()).isBetween(14.2, 14.64);
    }

    @Test
    void aWarmerEndThanAnyCoolingLeavesProvesHeatEvenIfTheMachineWasOff() {
        Gap dead = new Gap(Span.exactly(4 * HOUR), 27, 26.8, 18, Cooling.shown(2.4), true);
        Gap alive = new Gap(Span.exactly(4 * HOUR), 27, 26.8, 18, Cooling.shown(2.4), false);
        assertThat(dead.development(Zones.USUAL)).isEqualTo(alive.development(Zones.USUAL));
    }

    @Test
    void aShortCutInAWarmRoomCostsLittleCertainty() {
        Development d = new Gap(Span.exactly(HOUR), 27, 24.6, 20, USUAL, false).development(Zones.USUAL);
        // By hand, to 18 °C with 2.4 h / 3.5: mean 22.63 °C at the least and 26.94 °C at the most.
        assertThat(d.leastDegreeHours()).isCloseTo(10.63, within(0.02));
        assertThat(d.mostDegreeHours()).isCloseTo(14.94, within(0.02));
    }

    @Test
    void aCutOfOneMinuteChangesNextToNothing() {
        Development d = new Gap(Span.exactly(60_000), 27, 26.95, 20, USUAL, false).development(Zones.USUAL);
        assertThat(d.leastDegreeHours()).isCloseTo(15 / 60.0, within(0.01));
        assertThat(d.mostDegreeHours()).isCloseTo(15 / 60.0, within(0.01));
    }

    @Test
    void theCoolingClockTellsAnHourFromADayBeforeAnyNetwork() {
        // 27 to 23 °C in a room of 18 °C with 2.4 h: 2.4·ln(9/5) = 1.41 h; with 2.4 h / 3.5 and what probe
        // and room may err 0.69·ln(10.8/7.2) = 0.28 h at the least.
        Span length = new Gap(UNKNOWN, 27, 23, 18, USUAL, false).length();
        assertThat(Units.hours(length.leastMs())).isBetween(0.27, 0.29);
        assertThat(Units.hours(length.mostMs())).isBetween(1.41, 4.0);
    }

    @Test
    void waterAsWarmAsTheRoomBoundsNothingSoTheHouseRuleDoes() {
        Gap gap = new Gap(UNKNOWN, 27, 20.2, 20, USUAL, false);
        assertThat(gap.length().mostMs()).isEqualTo(Units.msOfHours(Gap.LONGEST_H));
        Development d = gap.development(Zones.USUAL);
        assertThat(d.mostDegreeHours()).isFinite().isGreaterThan(8 * Gap.LONGEST_H);
    }

    @Test
    void waterThatWasChangedInTheGapIsNotTakenForACoolingCurve() {
        // 27 to 15 °C in ten minutes, room 20 °C: somebody poured, so anything between is possible.
        Development d = new Gap(Span.exactly(HOUR / 6), 27, 15, 20, USUAL, false).development(Zones.USUAL);
        assertThat(d.leastDegreeHours()).isLessThan(3.0 / 6);
        assertThat(d.mostDegreeHours()).isGreaterThan(14.9 / 6);
    }

    @Test
    void waterFoundWarmerThanItWasWasHeatedByHalf() {
        Development d = new Gap(Span.exactly(4 * HOUR), 24, 29, 20, USUAL, false).development(Zones.USUAL);
        assertThat(d.mostDegreeHours()).isGreaterThan(4 * 17 - 3);
        assertThat(d.leastDegreeHours()).isLessThan(4 * 12);
    }

    @Test
    void timeThatMayHaveBeenTooWarmOrTooColdIsKept() {
        Gap cold = new Gap(Span.exactly(6 * HOUR), 27, 11, 5, USUAL, false);
        Gap warm = new Gap(Span.exactly(6 * HOUR), 38, 36, 34, USUAL, false);
        assertThat(cold.development(Zones.USUAL).hoursCold())
                .isBetween(3.0, 6.0);
        assertThat(warm.development(Zones.USUAL).hoursWarm())
                .isCloseTo(6, within(1e-9));
    }

    @Test
    void aGapOfKnownLengthIsNotNarrowed() {
        assertThat(new Gap(Span.exactly(HOUR), 27, 23, 18, USUAL, false).length())
                .isEqualTo(Span.exactly(HOUR));
    }

    @Test
    void nonsenseAroundAGapIsRefused() {
        assertThatThrownBy(() -> new Gap(UNKNOWN, 27, Double.NaN, 18, USUAL, false))
                .hasMessageContaining("temperatures");
        assertThatThrownBy(() -> new Gap(UNKNOWN, 27, 23, 18, Cooling.nominal(0), false))
                .hasMessageContaining("time constant");
    }
}

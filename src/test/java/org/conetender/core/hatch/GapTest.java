package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

class GapTest {

    private static final long HOUR = Units.HOUR_MS;
    private static final Span UNKNOWN = new Span(60_000, Long.MAX_VALUE);

    /** One true outage: cooling with a time constant and a room that the estimate has wrong. */
    private record Outage(double hours, double beforeC, double afterC, double degreeHours, Gap gap) {

        static Outage draw(Random random, boolean lengthKnown) {
            double room = 8 + 20 * random.nextDouble();
            double before = 14 + 19 * random.nextDouble();
            double tau = 0.8 + 5 * random.nextDouble();
            double hours = 0.05 + 11.9 * random.nextDouble();
            double water = before;
            double done = 0;
            double dt = hours / 2_000;
            for (int i = 0; i < 2_000; i++) {
                double middle = water + (room - water) * (1 - Math.exp(-dt / 2 / tau));
                done += dt * Rate.USUAL.perHour(middle);
                water += (room - water) * (1 - Math.exp(-dt / tau));
            }
            // It loses from 1 / 1.6 of what it is taken to lose, wrapped, to 3.5 times as much, uncovered.
            double guess = tau * Math.exp(Math.log(1 / 1.6) + Math.log(1.6 * 3.5) * random.nextDouble());
            double seenRoom = room + 3.6 * random.nextDouble() - 1.8;
            Span span = lengthKnown ? Span.exactly(Units.msOfHours(hours))
                    : new Span((long) (random.nextDouble() * 60_000), Long.MAX_VALUE);
            double seenBefore = before + 0.3 * random.nextDouble() - 0.15;
            double seenAfter = water + 0.3 * random.nextDouble() - 0.15;
            return new Outage(hours, before, water, done,
                    new Gap(span, seenBefore, seenAfter, seenRoom, guess));
        }
    }

    @Test
    void theBoundsContainTheTruthOfTenThousandOutagesOfKnownLength() {
        Random random = new Random(41);
        for (int i = 0; i < 10_000; i++) {
            Outage o = Outage.draw(random, true);
            Development d = o.gap.development(Zones.USUAL);
            assertThat(o.degreeHours).as("%s", o)
                    .isBetween(d.leastDegreeHours() - 1e-3, d.mostDegreeHours() + 1e-3);
        }
    }

    @Test
    void theBoundsContainTheTruthOfTenThousandOutagesOfUnknownLength() {
        Random random = new Random(42);
        int bounded = 0;
        for (int i = 0; i < 10_000; i++) {
            Outage o = Outage.draw(random, false);
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

    @Test
    void aShortCutInAWarmRoomCostsLittleCertainty() {
        Development d = new Gap(Span.exactly(HOUR), 27, 24.6, 20, 2.4).development(Zones.USUAL);
        // By hand, to 18 °C with 2.4 h / 3.5: mean 22.63 °C at the least and 26.94 °C at the most.
        assertThat(d.leastDegreeHours()).isCloseTo(10.63, within(0.02));
        assertThat(d.mostDegreeHours()).isCloseTo(14.94, within(0.02));
    }

    @Test
    void aCutOfOneMinuteChangesNextToNothing() {
        Development d = new Gap(Span.exactly(60_000), 27, 26.95, 20, 2.4).development(Zones.USUAL);
        assertThat(d.leastDegreeHours()).isCloseTo(15 / 60.0, within(0.01));
        assertThat(d.mostDegreeHours()).isCloseTo(15 / 60.0, within(0.01));
    }

    @Test
    void theCoolingClockTellsAnHourFromADayBeforeAnyNetwork() {
        // 27 to 23 °C in a room of 18 °C with 2.4 h: 2.4·ln(9/5) = 1.41 h; with 2.4 h / 3.5 and what probe
        // and room may err 0.69·ln(10.8/7.2) = 0.28 h at the least.
        Span length = new Gap(UNKNOWN, 27, 23, 18, 2.4).length();
        assertThat(Units.hours(length.leastMs())).isBetween(0.27, 0.29);
        assertThat(Units.hours(length.mostMs())).isBetween(1.41, 4.0);
    }

    @Test
    void waterAsWarmAsTheRoomBoundsNothingSoTheHouseRuleDoes() {
        Gap gap = new Gap(UNKNOWN, 27, 20.2, 20, 2.4);
        assertThat(gap.length().mostMs()).isEqualTo(Units.msOfHours(Gap.LONGEST_H));
        Development d = gap.development(Zones.USUAL);
        assertThat(d.mostDegreeHours()).isFinite().isGreaterThan(8 * Gap.LONGEST_H);
    }

    @Test
    void waterThatWasChangedInTheGapIsNotTakenForACoolingCurve() {
        // 27 to 15 °C in ten minutes, room 20 °C: somebody poured, so anything between is possible.
        Development d = new Gap(Span.exactly(HOUR / 6), 27, 15, 20, 2.4).development(Zones.USUAL);
        assertThat(d.leastDegreeHours()).isLessThan(3.0 / 6);
        assertThat(d.mostDegreeHours()).isGreaterThan(14.9 / 6);
    }

    @Test
    void waterFoundWarmerThanItWasWasHeatedByHalf() {
        Development d = new Gap(Span.exactly(4 * HOUR), 24, 29, 20, 2.4).development(Zones.USUAL);
        assertThat(d.mostDegreeHours()).isGreaterThan(4 * 17 - 3);
        assertThat(d.leastDegreeHours()).isLessThan(4 * 12);
    }

    @Test
    void timeThatMayHaveBeenTooWarmOrTooColdIsKept() {
        assertThat(new Gap(Span.exactly(6 * HOUR), 27, 11, 5, 2.4).development(Zones.USUAL).hoursCold())
                .isBetween(3.0, 6.0);
        assertThat(new Gap(Span.exactly(6 * HOUR), 38, 36, 34, 2.4).development(Zones.USUAL).hoursWarm())
                .isCloseTo(6, within(1e-9));
    }

    @Test
    void aGapOfKnownLengthIsNotNarrowed() {
        assertThat(new Gap(Span.exactly(HOUR), 27, 23, 18, 2.4).length()).isEqualTo(Span.exactly(HOUR));
    }

    @Test
    void nonsenseAroundAGapIsRefused() {
        assertThatThrownBy(() -> new Gap(UNKNOWN, 27, Double.NaN, 18, 2.4))
                .hasMessageContaining("temperatures");
        assertThatThrownBy(() -> new Gap(UNKNOWN, 27, 23, 18, 0)).hasMessageContaining("time constant");
    }
}

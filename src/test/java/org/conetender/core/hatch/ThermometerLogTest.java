package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ThermometerLogTest {

    private static final long START = 1_800_000_000_000L;
    private static final long MINUTE = Units.MINUTE_MS;
    private static final long HOUR = Units.HOUR_MS;

    private static ThermometerLog every(long stepMs, int n, DoubleUnaryOperator waterAtHour) {
        long[] ms = new long[n];
        double[] c = new double[n];
        for (int i = 0; i < n; i++) {
            ms[i] = START + i * stepMs;
            c[i] = waterAtHour.applyAsDouble(Units.hours(i * stepMs));
        }
        return ThermometerLog.of(ms, c);
    }

    private static Replay replay(ThermometerLog log, long stockedMs) {
        return log.replay(new Replay.Question(Speed.UNKNOWN_LOT, Zones.USUAL, stockedMs,
                new Replay.Surroundings(20, 2)));
    }

    @Test
    void eachHourGainsItsMeanTemperatureLessTwelve() {
        Replay r = replay(every(10 * MINUTE, 6 * 12 + 1, h -> 20 + h / 2), START);
        assertThat(r.hours()).hasSize(12);
        double sum = 0;
        for (int i = 0; i < 12; i++) {
            Replay.Hour hour = r.hours().get(i);
            assertThat(hour.untilMs()).isEqualTo(START + (i + 1) * HOUR);
            assertThat(hour.water().meanC()).isCloseTo(20.25 + i / 2.0, within(1e-6));
            assertThat(hour.gainedDegreeHours()).isCloseTo(hour.water().meanC() - 12, within(1e-6));
            assertThat(hour.water().minutes()).isEqualTo(60);
            sum += hour.gainedDegreeHours();
            assertThat(hour.done().degreeHours()).isCloseTo(sum, within(1e-6));
        }
        assertThat(r.development().degreeHours()).isCloseTo(12 * (23 - 12), within(1e-6));
        assertThat(r.outlook().onward().meanC()).isCloseTo(25.75, within(1e-6));
    }

    @Test
    void theForecastGoesOnFromTheLastHour() {
        Replay r = replay(every(10 * MINUTE, 61, h -> 26), START);
        assertThat(r.development().degreeHours()).isCloseTo(140, within(1e-6));
        assertThat(r.forecast().ready().median())
                .isCloseTo((Speed.UNKNOWN_LOT.k90() - 140) / 14, within(1e-6));
        assertThat(r.hours().getLast().hatched()).isEqualTo(r.forecast().hatched().median());
    }

    /** The last row of the table was two minutes long, and it alone was taken for what is to come. */
    @Test
    void theLastHourIsAnHourWhereverTheTableEnds() {
        Replay r = replay(every(2 * MINUTE, 3 * 30 + 2, h -> h > 3 ? 21 : 27), START);
        assertThat(r.hours().getLast().water().minutes()).isEqualTo(2);
        assertThat(r.outlook().onward().meanC()).isBetween(26.8, 27.0);
    }

    @Test
    void whatLiesBeforeAGapIsNotTakenToGoOn() {
        long[] ms = new long[20];
        double[] c = new double[20];
        for (int i = 0; i < 19; i++) {
            ms[i] = START + i * 10 * MINUTE;
            c[i] = 27;
        }
        ms[19] = START + 8 * HOUR;
        c[19] = 21;
        ThermometerLog log = ThermometerLog.of(ms, c);
        assertThat(log.gapBefore(19)).isTrue();
        assertThat(replay(log, START).outlook().onward().meanC()).isEqualTo(21);
    }

    @Test
    void readingsBeforeStockingDoNotCountAndTheFirstHourBeginsWithIt() {
        Replay r = replay(every(10 * MINUTE, 61, h -> 26), START + 2 * HOUR + 5 * MINUTE);
        assertThat(r.development().degreeHours()).isCloseTo(14 * (8 - 5 / 60.0), within(1e-6));
        assertThat(r.hours().getFirst().untilMs()).isEqualTo(START + 3 * HOUR + 5 * MINUTE);
        assertThat(r.hours()).hasSize(8);
        assertThat(r.hours().getLast().water().minutes()).isCloseTo(55, within(1e-9));
    }

    @Test
    void hoursBetweenStockingAndTheFirstReadingAreAnInterval() {
        Replay r = replay(every(10 * MINUTE, 61, h -> 26), START - 2 * HOUR);
        assertThat(r.hours()).hasSize(12);
        assertThat(r.hours().getFirst().water().measured()).isFalse();
        assertThat(r.development().leastDegreeHours()).isBetween(140 + 10.0, 140 + 20.0);
        assertThat(r.development().mostDegreeHours()).isBetween(140 + 24.0, 140 + 28.5);
    }

    @Test
    void aGapIsBoundedOnceAndSharedByItsHours() {
        long[] ms = new long[50];
        double[] c = new double[50];
        for (int i = 0; i < 50; i++) {
            ms[i] = START + (i < 25 ? i : i + 30) * 5 * MINUTE;
            c[i] = i < 25 ? 27 : 24;
        }
        ThermometerLog log = ThermometerLog.of(ms, c);
        assertThat(log.gapBefore(25)).isTrue();
        assertThat(log.gapBefore(24)).isFalse();
        Replay r = replay(log, START);
        Development all = r.development();
        double measured = 2 * 15 + 2 * 12;
        assertThat(all.leastDegreeHours()).isBetween(measured + 2.6 * 7, measured + 2.6 * 12);
        assertThat(all.mostDegreeHours()).isBetween(measured + 2.6 * 12, measured + 2.6 * 15.3);
        double last = 0;
        for (Replay.Hour h : r.hours()) {
            assertThat(h.done().degreeHours()).isGreaterThan(last);
            last = h.done().degreeHours();
        }
    }

    @Test
    void aPersonReadingEveryThreeHoursLeavesNoGaps() {
        ThermometerLog log = every(3 * HOUR, 8, h -> 25);
        for (int i = 0; i < log.size(); i++) {
            assertThat(log.gapBefore(i)).isFalse();
        }
        assertThat(replay(log, START).development().degreeHours()).isCloseTo(21 * 13, within(1e-6));
    }

    @Test
    void coarseReadingsAcrossTheBendAreNotTakenAtTheirMean() {
        // 28 to 33 °C on a straight line in an hour; by hand: 0.4·17 + 0.6·(18·0.5 + 3·(1/2 − 1/3)).
        Replay r = replay(every(HOUR, 2, h -> 28 + 5 * h), START);
        assertThat(r.development().degreeHours()).isCloseTo(0.4 * 17 + 0.6 * 9.5, within(0.001));
    }

    @Test
    void aLogThatEndsOnTheHourHasNoEmptyLastRow() {
        assertThat(replay(every(HOUR, 4, h -> 25), START).hours()).hasSize(3);
        assertThat(replay(every(50 * MINUTE, 4, h -> 25), START).hours()).hasSize(3);
        assertThat(replay(every(HOUR, 1, h -> 25), START).hours()).hasSize(1);
    }

    @Test
    void logsThatAreNoneAreRefused() {
        assertThatThrownBy(() -> ThermometerLog.of(new long[0], new double[0]))
                .hasMessageContaining("at least one");
        assertThatThrownBy(() -> ThermometerLog.of(new long[] {2, 1}, new double[] {20, 20}))
                .hasMessageContaining("reading 1");
        assertThatThrownBy(() -> ThermometerLog.of(new long[] {1}, new double[] {Double.NaN}))
                .hasMessageContaining("reading 0");
        ThermometerLog log = every(HOUR, 3, h -> 25);
        assertThatThrownBy(() -> replay(log, START + 3 * HOUR))
                .hasMessageContaining("after the last reading");
    }

    @Test
    void theChanceOfBeingReadyGrowsThroughTheQuantiles() {
        Replay replay = replay(every(10 * MINUTE, 61, h -> 26), START);
        Forecast.Ready r = replay.forecast().ready();
        Replay.Outlook o = replay.outlook();
        assertThat(o.readyBy(r.earliest())).isCloseTo(0.1, within(1e-6));
        assertThat(o.readyBy(r.earlierQuartile())).isCloseTo(0.25, within(1e-6));
        assertThat(o.readyBy(r.median())).isCloseTo(0.5, within(1e-6));
        assertThat(o.readyBy(r.laterQuartile())).isCloseTo(0.75, within(1e-6));
        assertThat(o.readyBy(r.latest())).isCloseTo(0.9, within(1e-6));
        double last = 0;
        for (double h = -10; h <= Forecast.HORIZON_H; h += 0.25) {
            assertThat(o.readyBy(h)).isBetween(last, 1.0);
            last = o.readyBy(h);
        }
        assertThat(o.readyBy(-10)).isZero();
        assertThat(last).isGreaterThan(0.999);
    }

    /** In water so cold that only one batch in ten comes there before the look-ahead ends. */
    @Test
    void whereMostBatchesNeverComeTheQuickOnesDoNotComeSoonerForIt() {
        Replay replay = replay(every(10 * MINUTE, 7, h -> 14.0), START);
        Forecast.Ready r = replay.forecast().ready();
        assertThat(r.earliest()).isBetween(80.0, 96.0);
        assertThat(r.earlierQuartile()).isInfinite();
        assertThat(replay.outlook().readyBy(1)).isLessThan(1e-6);
        assertThat(replay.outlook().readyBy(r.earliest() / 2)).isLessThan(0.005);
        assertThat(replay.outlook().readyBy(r.earliest())).isCloseTo(0.1, within(1e-6));
        assertThat(replay.outlook().readyBy(Forecast.HORIZON_H)).isBetween(0.1, 0.25);
        assertThat(replay(every(10 * MINUTE, 61, h -> 34), START).outlook().readyBy(50)).isZero();
    }

    /** A day of 24 ± 3 °C, coldest at its sixth hour. */
    private static double unheatedC(double hour) {
        return 24 - 3 * Math.cos((hour - 6) / 12 * Math.PI);
    }

    /** When such water has given so many degree-hours more. */
    private static double truthH(double hour, double degreeHours) {
        double done = 0;
        double at = hour;
        while (done < degreeHours) {
            done += 0.01 * (unheatedC(at + 0.005) - 12);
            at += 0.01;
        }
        return at - hour;
    }

    /** Whenever the log ends, with less than a day of it and with more; stocked up to 14 h before. */
    @ParameterizedTest
    @ValueSource(ints = {8, 12, 18, 24, 27, 28, 30, 31})
    void anUnheatedLogIsTakenToGoOnAsItsDays(int hours) {
        for (int from = 0; from < 24; from++) {
            int begun = from;
            Replay r = replay(every(10 * MINUTE, 6 * hours + 1, h -> unheatedC(begun + h)),
                    START + Math.max(0, hours - 14) * HOUR);
            double truth = truthH(begun + hours, Speed.UNKNOWN_LOT.k90() - r.development().degreeHours());
            Forecast.Ready ready = r.forecast().ready();
            assertThat(truth).as("begun at %s, for %s h", begun, hours)
                    .isBetween(ready.earliest(), ready.latest());
            assertThat(r.outlook().onward().daily()).isEqualTo(hours >= 24);
            if (hours >= 24) {
                assertThat(ready.median()).as("begun at %s", begun).isCloseTo(truth, within(0.35));
            }
        }
    }

    @Test
    void itsSwingWidensWhatIsToComeAndNothingElse() {
        Replay swings = replay(every(10 * MINUTE, 145, h -> unheatedC(h + 6)), START);
        Replay rests = replay(every(10 * MINUTE, 145, h -> 24), START);
        Replay.Outlook s = swings.outlook();
        Replay.Outlook o = rests.outlook();
        assertThat(swings.forecast().ready().latest() - swings.forecast().ready().earliest())
                .isGreaterThan(1.02 * (rests.forecast().ready().latest()
                - rests.forecast().ready().earliest()));
        assertThat(s.readyBy(0)).isCloseTo(o.readyBy(0), within(0.01));
        assertThat(s.readyBy(swings.forecast().ready().latest())).isCloseTo(0.9, within(1e-6));
        assertThat(s.readyBy(swings.forecast().ready().earliest())).isCloseTo(0.1, within(1e-6));
    }

    /** Warmed once, steadily held since: no more doubtful than one that was warm from the beginning. */
    @Test
    void aLogThatIsSteadyIsHeldWhereItIs() {
        Replay r = replay(every(10 * MINUTE, 6 * 13 + 1, h -> 20 + 7 * Math.min(1, h)), START);
        assertThat(r.outlook().onward()).isEqualTo(new Onward(false, 27, 27, 27, 0));
        double sd = Math.hypot(r.outlook().speed().logSdAt(Normal.Z90), Spread.PROBE_SD_K / 15);
        assertThat(r.forecast().ready().latest()).isCloseTo((Speed.UNKNOWN_LOT.k90()
                * Math.exp(Normal.Z90 * sd) - r.development().degreeHours()) / 15, within(0.01));
        for (int hours = 24; hours < 30; hours++) {
            assertThat(replay(every(10 * MINUTE, 6 * hours + 1, h -> 20 + Math.min(7, 2 * h)), START)
                    .outlook().onward().daily()).isFalse();
        }
    }

    /** A heater that failed is no day. */
    @Test
    void waterThatChangedForGoodIsNotExpectedBackButDoubted() {
        Replay r = replay(every(10 * MINUTE, 6 * 26 + 1, h -> h < 14 ? 27 : 20), START);
        assertThat(r.outlook().onward().daily()).isFalse();
        assertThat(r.outlook().onward().meanC()).isEqualTo(20);
        assertThat(r.outlook().onward().doubtK()).isBetween(3.0, 7.0);
    }

    /** Days of 12 ± 2 °C bring it on a little, by day; which hour the look-ahead ends at says nothing. */
    @Test
    void coldDaysAreTooSlowWheneverTheLogEnds() {
        for (int from = 0; from < 24; from++) {
            int begun = from;
            Replay r = replay(every(10 * MINUTE, 25 * 6,
                    h -> 12 + (unheatedC(begun + h) - 24) * 2 / 3), START);
            assertThat(r.forecast().course().end()).as("%s", begun).isEqualTo(Forecast.End.TOO_SLOW);
            assertThat(r.forecast().course().headingC()).isCloseTo(12, within(0.01));
        }
    }
}

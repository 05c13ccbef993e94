package org.conetender.sim.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.conetender.app.trial.OwnSeer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A small trial on seeds of its own, so that those of the bench stay unseen. */
class ForecastTrialTest {

    private static final long SEED = 77_000;
    /** Every number seen, band and habit, twice. */
    private static final ForecastTrial.Plan FEW = new ForecastTrial.Plan(96, 2);

    @Test
    void ofTenBatchesAboutEightComeWithinTheirInterval() throws InterruptedException {
        ForecastTrial t = ForecastTrial.run(SEED, FEW, OwnSeer::new, _ -> { });
        List<ForecastTrial.Judged> all = t.judged();
        assertThat(all).hasSize(3 * 96);
        double inside = all.stream().filter(ForecastTrial.Judged::in80).count() / (double) all.size();
        double half = all.stream().filter(ForecastTrial.Judged::in50).count() / (double) all.size();
        // Three points of 96 batches, which hang together: one standard deviation is about 0.04.
        assertThat(inside).isBetween(0.68, 0.92);
        assertThat(half).isBetween(0.36, 0.64);
        assertThat(width(all, 10)).isLessThan(width(all, 0) / 2);
        assertThat(t.lines()).anyMatch(l -> l.contains("lot seen 10"));
        assertThat(t.targets()).hasSize(26);
    }

    /** Of water that follows its room: the seeds are of the test, and one deviation of 48 is 0.06. */
    @ParameterizedTest
    @EnumSource(value = ForecastTrial.Heating.class, names = "ABLE", mode = EnumSource.Mode.EXCLUDE)
    void waterThatNobodyHoldsIsForeseenTooAndJudgedApart(ForecastTrial.Heating heating)
            throws InterruptedException {
        ForecastTrial t = ForecastTrial.run(SEED, new ForecastTrial.Plan(48, 2, heating), OwnSeer::new,
                _ -> { });
        List<ForecastTrial.Judged> known = t.judged().stream().filter(ForecastTrial.Judged::roomMeasured)
                .toList();
        assertThat(known).hasSizeGreaterThan(30);
        double inside = known.stream().filter(ForecastTrial.Judged::in80).count() / (double) known.size();
        assertThat(inside).as("within their 80 %").isBetween(0.62, 0.97);
        assertThat(t.lines()).anyMatch(l -> l.contains("room not measured"));
        assertThat(t.targets()).as("of held water only").isEmpty();
    }

    private static double width(List<ForecastTrial.Judged> all, int seen) {
        return new Quantiles(all.stream().filter(j -> j.brood().seen() == seen)
                .mapToDouble(j -> j.told().p90() - j.told().p10()).toArray()).at(0.5);
    }

    /** Knows the fixed number of hours, and is sure of it. */
    private static final class Stubborn implements Seer {
        private double hours;

        @Override
        public void learns(Past batch) {
            assertThat(batch.reports()).isNotEmpty();
        }

        @Override
        public void begins(TrialHatch hatch, double setC) {
            assertThat(setC).isBetween(22.0, 30.0);
        }

        @Override
        public void sees(double seconds, Pilot.Look look) {
            hours += seconds / 3_600;
        }

        @Override
        public void hears(Report report) {
            assertThat(report.hour()).isLessThanOrEqualTo(hours + 0.01);
        }

        @Override
        public Told tells() {
            double left = 24 - hours;
            return new Told(left - 1, left - 0.5, left, left + 0.5, left + 1);
        }
    }

    @Test
    void whoeverIsTooSureIsFoundOut() throws InterruptedException {
        ForecastTrial t = ForecastTrial.run(SEED, new ForecastTrial.Plan(24, 2), Stubborn::new, _ -> { });
        assertThat(t.targets().getFirst().met()).isFalse();
        assertThat(t.judged()).allSatisfy(j ->
                assertThat(j.offMin())
                        .isCloseTo(60 * Math.abs(j.others().fixed() - j.truthH()), within(2.0)));
    }

    /** Of two batches most splits are empty: no figure that is none, and no target that cannot be met. */
    @Test
    void whatNoBatchWasOfIsNamedAndNotMeasured() throws InterruptedException {
        ForecastTrial t = ForecastTrial.run(SEED, new ForecastTrial.Plan(2, 1), Stubborn::new, _ -> { });
        assertThat(t.lines()).noneMatch(l -> l.contains("NaN"));
        assertThat(t.lines().getLast()).startsWith("  no row and no target, since no batch was of it: ");
        assertThat(t.targets()).isNotEmpty().noneMatch(x -> Double.isNaN(x.got()));
    }

    @Test
    void broodsAreDrawnAsTheirSplitsSay() {
        List<Double> probes = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            Brood b = Brood.draw(SEED + i, i);
            if (i < 48) {
                assertThat(b.past()).hasSize(b.seen());
            }
            assertThat(1 / Math.sqrt(b.lot().stages())).isBetween(0.095, 0.29);
            probes.add(b.probeOffC(0));
        }
        double square = probes.stream().mapToDouble(p -> p * p).average().orElseThrow();
        assertThat(Math.sqrt(square)).isCloseTo(0.2, within(0.02));
    }
}

package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.conetender.core.unit.Text;
import org.conetender.sim.Jobs;

/**
 * The trial of the forecast: many lots, each watched so and so often before, and one more batch of each,
 * whose true harvest point is set against what was told of it at the start, half-way and three hours before.
 * Seeds are fixed; those of heaters that hold their water were not looked at while anything was chosen.
 */
public final class ForecastTrial {

    /** Whether the heater can hold what is wanted. */
    public enum Heating {
        /** In the coldest hour too. */
        ABLE(760_000_000),
        /** It cannot, by a degree or more: the water follows the room. Seeds that were developed with. */
        WEAK(751_000_000),
        /** There is none, in a room of 22 °C and more. Seeds that were developed with. */
        NONE(752_000_000);

        private final long firstSeed;

        Heating(long firstSeed) {
            this.firstSeed = firstSeed;
        }
    }

    private static final double LEFT_H = 3;
    private static final double MINUTES = 60;

    /** @param batches at least 1  @param threads that work on it  @param heating of their cones */
    public record Plan(int batches, int threads, Heating heating) {

        /** Of batches that are held. */
        public Plan(int batches, int threads) {
            this(batches, threads, Heating.ABLE);
        }
    }

    /** When a forecast is judged. */
    enum Point { START, HALF, LAST }

    /**
     * What others would have said, h left.
     *
     * @param textbook by hand  @param fixed a day  @param usual who knows the lot and not the batch
     */
    record Others(double textbook, double fixed, double usual) {}

    /**
     * One forecast and what came.
     *
     * @param truthH true hours left  @param others what they would have said
     * @param roomMeasured whether a probe measures its room
     */
    record Judged(Brood brood, Point point, Seer.Told told, double truthH, Others others,
                  boolean roomMeasured) {

        boolean inside(double from, double to) {
            return truthH >= from && truthH <= to;
        }

        boolean in80() {
            return inside(told.p10(), told.p90());
        }

        boolean in50() {
            return inside(told.p25(), told.p75());
        }

        double offMin() {
            return MINUTES * Math.abs(told.p50() - truthH);
        }
    }

    private final List<Judged> all = new ArrayList<>();
    private final Plan plan;
    private int hopeless;

    private ForecastTrial(Plan plan) {
        this.plan = plan;
    }

    /**
     * Runs it on so many threads of its own.
     *
     * @param school makes a seer for each lot
     * @param progress hears the share that is done, 0..1, on the calling thread
     * @throws InterruptedException if the caller was interrupted; what was begun is given up
     */
    public static ForecastTrial run(Plan plan, Seer.School school, Consumer<Double> progress)
            throws InterruptedException {
        return run(plan.heating().firstSeed, plan, school, progress);
    }

    /** Fewer leave every split to chance (*guess*: the two thousand, split in twelve). */
    private static final int ENOUGH = 2_000;

    /** The same on other seeds. */
    static ForecastTrial run(long firstSeed, Plan plan, Seer.School school, Consumer<Double> progress)
            throws InterruptedException {
        ForecastTrial trial = new ForecastTrial(plan);
        List<Callable<Runnable>> jobs = new ArrayList<>();
        for (int i = 0; i < plan.batches(); i++) {
            Brood brood = Brood.draw(firstSeed + i, i);
            jobs.add(() -> {
                Seer seer = school.anew();
                brood.past().forEach(seer::learns);
                ForecastRun.End end = new ForecastRun(brood, plan.heating()).run(seer);
                return () -> trial.file(brood, end);
            });
        }
        Jobs.run(jobs, plan.threads(), progress);
        return trial;
    }

    private void file(Brood brood, ForecastRun.End end) {
        if (Double.isNaN(end.t90H())) {
            hopeless++;
            return;
        }
        for (Point p : Point.values()) {
            double hour = switch (p) {
                case START -> 0;
                case HALF -> end.t90H() / 2;
                case LAST -> end.t90H() - LEFT_H;
            };
            ForecastRun.Moment m = end.moments().stream().filter(x -> x.hour() <= Math.max(hour, 1))
                    .reduce((a, b) -> p == Point.START ? a : b).orElseThrow();
            all.add(new Judged(brood, p, m.told(), end.t90H() - m.hour(), new Others(
                    Textbook.hoursLeft(m, plan.heating() == Heating.ABLE ? brood.setC() : m.waterC()),
                    Textbook.FIXED_H - m.hour(), end.usualH() - m.hour()), end.roomMeasured()));
        }
    }

    /** Every forecast that was judged. */
    List<Judged> judged() {
        return List.copyOf(all);
    }

    /** What came out, a row for each split. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        if (plan.heating() != Heating.ABLE) {
            lines.add(Text.of(plan.heating() == Heating.WEAK
                    ? "The same where the heater cannot hold it: %d batches, %d never came to it"
                    : "The same without a heater, in a room of 22 °C and more: %d batches, %d never came "
                    + "to it",
                    plan.batches(), hopeless));
            lines.addAll(new ForecastTable(all).loose());
            return lines;
        }
        lines.add(Text.of("Forecasts of the harvest point: %d batches, %d never came to it", plan.batches(),
                hopeless));
        if (plan.batches() < ENOUGH) {
            lines.add(Text.of("So few tell nothing of how often a stated share holds: take %d or more",
                    ENOUGH));
        }
        lines.addAll(new ForecastTable(all).lines());
        return lines;
    }

    /** What was aimed at (issue), of batches that are held. */
    public List<Target> targets() {
        return plan.heating() != Heating.ABLE ? List.of() : new ForecastTable(all).targets();
    }
}

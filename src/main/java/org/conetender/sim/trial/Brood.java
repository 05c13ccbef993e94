package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.conetender.sim.LoneBatch;
import org.conetender.sim.Lot;
import org.conetender.sim.Seeds;

/**
 * One lot, its batches and the person who looks at them, as they were drawn (issue, *guesses*): log-sd 0.20
 * between lots and 0.03 between batches, spread 0.10 to 0.28, probes 0.2 °C off, first nauplii reported half
 * an hour early or late; the speed by another form than the daemon's, the spread by a chain of stages.
 *
 * @param seed that drew it
 * @param lot of the cysts
 * @param habit what its person reports
 * @param seen batches of it that were watched before
 * @param setC where the present batch is held, °C
 */
record Brood(long seed, Lot lot, Habit habit, int seen, double setC) {

    /** What a person reports. */
    enum Habit {
        /** First nauplii. */
        FIRST,
        /** And whether the harvest was right. */
        VERDICT,
        /** And a count of a sub-sample. */
        COUNT,
        /** And three counts in all, of large ones. */
        COUNTS
    }

    /** Sub-samples that are counted of a batch. */
    int counts() {
        return switch (habit) {
            case FIRST, VERDICT -> 0;
            case COUNT -> 1;
            case COUNTS -> 3;
        };
    }

    static final int[] SEEN = {0, 1, 3, 10};
    /** Bands in which batches are held, °C (issue). */
    static final double[] BANDS_C = {22, 24, 27, 30};

    private static final double BATCH_LOG_SD = 0.03;
    private static final double PROBE_SD_C = 0.2;
    private static final double FIRST_SD_H = 0.5;
    /** The share at which nauplii are seen, log-uniform (guess: one in three hundred to one in thirty). */
    private static final double EYES_FROM = 1 / 300.0;
    private static final double EYES_TO = 1 / 30.0;
    /** A harvest misses the ripe hour by so much, h, one standard deviation (guess). */
    private static final double HARVEST_SD_H = 3;
    /** As in {@code Handwork}: called early below it; late so many hours after the ripe hour (guesses). */
    private static final double EARLY = 0.8;
    private static final double LATE_H = 6;
    private static final int SLICE_S = 30;
    private static final double STEP_H = SLICE_S / 3_600.0;
    /** Water warms up to its set-point within about so long, h (science.md §9). */
    private static final double WARMS_H = 0.7;
    private static final double GIVEN_UP_H = 150;
    private static final double NEAR_C = 0.5;

    /** @param i counts the broods of a trial: bands, habits and numbers seen take turns */
    static Brood draw(long seed, int i) {
        SplittableRandom r = Seeds.of(seed, "brood");
        int band = i / SEEN.length % (BANDS_C.length - 1);
        Habit habit = Habit.values()[i / SEEN.length / (BANDS_C.length - 1) % Habit.values().length];
        return new Brood(seed, Lot.drawWide(seed, "L-0417"), habit, SEEN[i % SEEN.length],
                r.nextDouble(BANDS_C[band], BANDS_C[band + 1]));
    }

    /** Factor of a batch on its lot's speed. @param number of the batch, 0 for the present one */
    double speed(int number) {
        return Math.exp(BATCH_LOG_SD * Seeds.of(seed, "batch " + number).nextGaussian());
    }

    /** What that batch's probe shows too much, °C. */
    double probeOffC(int number) {
        return PROBE_SD_C * Seeds.of(seed, "probe " + number).nextGaussian();
    }

    /** The batches watched before: of half the lots at any temperature, else near the present one. */
    List<Seer.Past> past() {
        SplittableRandom r = Seeds.of(seed, "past");
        boolean anywhere = r.nextBoolean();
        List<Seer.Past> all = new ArrayList<>();
        for (int n = 1; n <= seen; n++) {
            double c = anywhere ? r.nextDouble(BANDS_C[0], BANDS_C[BANDS_C.length - 1])
                    : setC + r.nextDouble(-NEAR_C, NEAR_C);
            all.add(past(n, c, r));
        }
        return all;
    }

    private Seer.Past past(int n, double heldC, SplittableRandom r) {
        LoneBatch batch = new LoneBatch(lot, speed(n));
        double off = probeOffC(n);
        double fromC = r.nextDouble(19, 24);
        List<Double> shown = new ArrayList<>();
        List<Double> shares = new ArrayList<>();
        double missedH = HARVEST_SD_H * r.nextGaussian();
        // Followed until the ripe hour is known, and the harvest's, which may come before it.
        double until = GIVEN_UP_H;
        for (double h = 0; h < until; h += STEP_H) {
            double shownC = heldC + (fromC - heldC) * Math.exp(-h / WARMS_H);
            shown.add(shownC);
            shares.add(batch.hatched());
            batch.step(shownC - off, SLICE_S);
            until = Double.isNaN(batch.hoursTo(90)) ? until : batch.hoursTo(90) + Math.max(0, missedH);
        }
        double harvestH = Math.max(batch.hoursTo(50), batch.hoursTo(90) + missedH);
        int last = Math.min(shares.size() - 1, (int) (harvestH / STEP_H));
        List<Report> reports = new ArrayList<>();
        reports.addAll(first(shares.stream().mapToDouble(s -> s).toArray(), STEP_H, r));
        for (int k = 0; k < counts(); k++) {
            int from = at(shares, 0.2);
            int to = Math.max(from + 1, at(shares, 0.95));
            int i = Math.min(last, r.nextInt(from, to));
            reports.add(count(i * STEP_H, shares.get(i), r));
        }
        if (habit != Habit.FIRST) {
            reports.add(new Report(last * STEP_H, shares.get(last) < EARLY ? Report.What.TOO_EARLY
                    : missedH > LATE_H ? Report.What.LATE : Report.What.RIGHT, 0, 0));
        }
        reports.sort(Comparator.comparingDouble(Report::hour));
        return new Seer.Past(shown.stream().mapToDouble(c -> c).toArray(), STEP_H, reports);
    }

    private static int at(List<Double> shares, double share) {
        int i = 0;
        while (i < shares.size() - 1 && shares.get(i) < share) {
            i++;
        }
        return i;
    }

    /**
     * The look in vain and the one that saw the first nauplii, as a person sees and tells: who knows them to
     * half an hour has looked an hour before. @param shares hatched, one a step
     */
    static List<Report> first(double[] shares, double stepH, SplittableRandom r) {
        double eyes = Math.exp(r.nextDouble(Math.log(EYES_FROM), Math.log(EYES_TO)));
        int i = 0;
        while (i < shares.length - 1 && shares[i] < eyes) {
            i++;
        }
        double hour = Math.max(1, i * stepH + FIRST_SD_H * r.nextGaussian());
        double before = Math.max(0.5, Math.min(hour, i * stepH) - r.nextDouble(0, 2 * FIRST_SD_H));
        return List.of(new Report(before, Report.What.NONE, 0, 0),
                new Report(hour, Report.What.FIRST, 0, 0));
    }

    /** A sub-sample of 50 to 200 animals, or twice as many. @param share of the hatchable that has hatched */
    Report count(double hour, double share, SplittableRandom r) {
        int all = r.nextInt(50, 201) * (habit == Habit.COUNTS ? 2 : 1);
        int nauplii = 0;
        for (int i = 0; i < all; i++) {
            nauplii += r.nextDouble() < lot.viable() * share ? 1 : 0;
        }
        return new Report(hour, Report.What.COUNT, nauplii, all - nauplii);
    }
}

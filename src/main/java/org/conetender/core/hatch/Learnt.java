package org.conetender.core.hatch;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a lot's batches have taught of it: the exact posterior, on a grid, over ln K50, sigma, the lower
 * threshold, the share that can hatch and the eyes that see the first. Each batch speaks through its own
 * random effect, which is integrated out: its cysts are a little quicker or slower than their lot's, its
 * probe shows a little too much or too little. So no look is ever believed for more than one batch can say.
 *
 * <p>Pure: the same lessons in any order give the same figures, and a lesson that is taken away leaves what
 * there was without it. Some milliseconds for a lot that was seen ten times: one in a tick ({@link Known}).
 */
public final class Learnt {

    /**
     * What is believed of a lot's speed before anybody saw it hatch.
     *
     * @param lnK50 mean of it  @param sd its standard deviation
     */
    public record Prior(double lnK50, double sd) {

        /** Nobody has seen any lot of its source (science.md §3.5.5). */
        public static final Prior UNKNOWN = new Prior(Math.log(Speed.UNKNOWN_LOT.k50DegreeHours()), 0.20);

        /** Lots of one source share so much of the 0.20 between lots; most is theirs alone (*guess*). */
        private static final double SHARED_SD = 0.10;

        /** How far one batch and its spread may lie from their lot, standard deviation of ln K (*guess*). */
        private static final double BATCH_SD = 0.15;

        /** Those that can tell anything to who believes this. */
        private List<Lesson> heard(List<Lesson> lessons) {
            // Who looked in vain before knows how new the first nauplii are: those looks tell that much.
            boolean seen = lessons.stream().anyMatch(l -> l.sight() instanceof Lesson.Sight.First);
            return lessons.stream().filter(l -> seen && l.sight() instanceof Lesson.Sight.NoneYet
                    || l.says(lnK50, Math.hypot(sd, BATCH_SD))).toList();
        }

        /**
         * After other lots of the same source: conjugate, since all is normal. Each counts by what its own
         * batches told of it, so what was believed of it before is taken out again.
         *
         * @param lots what each was found to be, beginning from {@link #UNKNOWN}
         */
        public static Prior of(List<Speed> lots) {
            if (lots.isEmpty()) {
                return UNKNOWN;
            }
            double ownVar = UNKNOWN.sd * UNKNOWN.sd - SHARED_SD * SHARED_SD;
            double precision = 1 / (SHARED_SD * SHARED_SD);
            double sum = precision * UNKNOWN.lnK50;
            for (Speed s : lots) {
                double believed = 1 / (UNKNOWN.sd * UNKNOWN.sd);
                double found = 1 / (s.doubt().lot() * s.doubt().lot());
                if (found <= believed) {
                    continue;
                }
                double told = found - believed;
                double toldLnK50 = (found * Math.log(s.k50DegreeHours()) - believed * UNKNOWN.lnK50) / told;
                double p = 1 / (ownVar + 1 / told);
                precision += p;
                sum += p * toldLnK50;
            }
            return new Prior(sum / precision, Math.sqrt(ownVar + 1 / precision));
        }
    }

    /** Of ln K50 either way of the prior's mean: four deviations of a lot that nobody has seen. */
    private static final double REACH = 0.8;
    /** Half of what ten batches leave uncertain. */
    private static final int K = 97;
    private static final double STEP = 2 * REACH / (K - 1);
    /** All sigmas of science.md §2.3 are as likely. */
    private static final double[] SIGMAS = centres(Speed.LEAST_SIGMA, Speed.MOST_SIGMA, 9);
    /** Shares of full cysts that can hatch, and their weights (science.md §4: 64 to 99 %; *guesses*). */
    private static final double[] VIABLE = {0.55, 0.70, 0.82, 0.94};
    private static final double[] VIABLE_WEIGHT = {0.10, 0.25, 0.35, 0.30};
    /** First nauplii, in all batches alike, as scores, and their weights (*guesses*). */
    private static final double[] FIRST_Z = {-0.45, 0, 0.45};
    private static final double[] FIRST_WEIGHT = {0.25, 0.5, 0.25};
    /** The threshold, to beyond the other one and as far the other way. */
    private static final double[] FORMS = steps(-1.5, 1.5, 5);
    /** Only the newest so many batches speak (*guess*: a tin changes while it stands open). */
    public static final int NEWEST = 10;

    private static final int CELLS = K * SIGMAS.length;

    private final List<List<Lesson>> others;
    private final List<Lesson> own;
    private final double baseC;
    /** The lot as it was believed to be, and the least ln K50 of the grid around it. */
    private final Prior prior;
    private final double from;

    private Learnt(Prior prior, List<List<Lesson>> others, List<Lesson> own) {
        this.prior = prior;
        this.from = prior.lnK50 - REACH;
        this.others = others.stream().filter(b -> !b.isEmpty()).toList();
        this.own = own;
        this.baseC = Rate.USUAL.baseC();
    }

    /**
     * What is known of a batch.
     *
     * @param prior of its lot
     * @param others lessons of the lot's other batches, a list for each
     * @param own lessons of this batch
     * @return at {@value Rate#ANCHOR_C} °C; without any lesson, what is believed of an unknown lot
     */
    public static Speed of(Prior prior, List<List<Lesson>> others, List<Lesson> own) {
        List<List<Lesson>> newest = others.subList(Math.max(0, others.size() - NEWEST), others.size());
        Learnt l = new Learnt(prior, newest.stream().map(prior::heard).toList(), prior.heard(own));
        return l.others.isEmpty() && l.own.isEmpty() && prior.equals(Prior.UNKNOWN) ? Speed.UNKNOWN_LOT
                : l.speed();
    }

    /** What a lot's batches have taught of it, whatever others did. */
    public static Speed alone(List<List<Lesson>> batches) {
        return of(Prior.UNKNOWN, batches, List.of());
    }

    private Speed speed() {
        boolean counts = new Odds(own).counts() || others.stream().anyMatch(b -> new Odds(b).counts());
        List<Odds.Besides> besides = new ArrayList<>();
        List<Double> weights = new ArrayList<>();
        for (int f = 0; f < FIRST_Z.length; f++) {
            for (int v = 0; v < (counts ? VIABLE.length : 1); v++) {
                besides.add(new Odds.Besides(VIABLE[v], FIRST_Z[f]));
                weights.add(FIRST_WEIGHT[f] * VIABLE_WEIGHT[v]);
            }
        }
        Voice self = new Voice(own, besides);
        List<Voice> voices = others.stream().map(b -> new Voice(b, besides)).toList();
        Moments m = new Moments(prior.lnK50);
        for (int i = 0; i < besides.size(); i++) {
            for (double form : FORMS) {
                add(m, voices, new Slice(self, form, i, weights.get(i)));
            }
        }
        int seen = (int) others.stream().filter(b -> b.stream().anyMatch(Lesson::teaches)).count()
                + (own.stream().anyMatch(Lesson::teaches) ? 1 : 0);
        return m.speed(seen, own.isEmpty());
    }

    /** @param self this batch  @param besides index of what is not asked  @param weight of it */
    private record Slice(Voice self, double form, int besides, double weight) {}

    /** Two of a cell's coordinates. */
    private record Where(double sigma, double form) {}

    /** Adds all of one slice. */
    private void add(Moments m, List<Voice> voices, Slice slice) {
        double formZ = (slice.form - Doubt.Form.UNKNOWN.mean()) / Doubt.Form.UNKNOWN.sd();
        double[] logs = new double[CELLS];
        for (int k = 0; k < K; k++) {
            double z = (k * STEP - REACH) / prior.sd;
            double log = Math.log(slice.weight) - formZ * formZ / 2 - z * z / 2;
            for (int s = 0; s < SIGMAS.length; s++) {
                logs[k * SIGMAS.length + s] = log;
            }
        }
        voices.forEach(v -> v.addTo(logs, slice));
        for (int i = 0; i < CELLS; i++) {
            if (logs[i] > m.top - Moments.NOTHING) {
                slice.self.addTo(m, logs[i], i, slice);
            }
        }
    }

    /** The weighted sums of one posterior. Sums are kept against the largest logarithm so far. */
    private static final class Moments {

        /** What is so much less likely than the likeliest is left out: a part in ten thousand million. */
        static final double NOTHING = 25;

        private final double[] sums = new double[10];
        private final double mid;
        private double top = Double.NEGATIVE_INFINITY;

        /** @param mid from which ln K50 is counted */
        Moments(double mid) {
            this.mid = mid;
        }

        /** @param k mean of ln K50 in the cell  @param kk mean of its square */
        void add(double log, double k, double kk, Where where) {
            if (log > top) {
                double shrink = Math.exp(top - log);
                for (int i = 0; i < sums.length; i++) {
                    sums[i] *= shrink;
                }
                top = log;
            }
            double w = Math.exp(log - top);
            double s = where.sigma;
            double f = where.form;
            sums[0] += w;
            sums[1] += w * k;
            sums[2] += w * kk;
            sums[3] += w * s;
            sums[4] += w * s * s;
            sums[5] += w * f;
            sums[6] += w * f * f;
            sums[7] += w * k * s;
            sums[8] += w * k * f;
            sums[9] += w * s * f;
        }

        Speed speed(int seen, boolean scattered) {
            double[] m = sums.clone();
            for (int i = 0; i < m.length; i++) {
                m[i] /= sums[0];
            }
            Doubt doubt = new Doubt(root(m[2] - m[1] * m[1]), scattered ? Doubt.BATCH_LOG_SD : 0,
                    root(m[4] - m[3] * m[3]), new Doubt.Form(m[5], root(m[6] - m[5] * m[5])),
                    new Doubt.Together(m[7] - m[1] * m[3], m[8] - m[1] * m[5], m[9] - m[3] * m[5]));
            return new Speed(Math.exp(mid + m[1]), m[3], doubt, seen);
        }

        private static double root(double variance) {
            return Math.sqrt(Math.max(0, variance));
        }
    }

    /** What the lessons of one batch say of each ln K50 and sigma of its lot, at its own temperature. */
    private final class Voice {

        /** By how much ln K50 moves there if the other threshold holds. */
        private final double reach;
        /** By what is not asked, and cell: log-likelihood, the batch's own effect and its square. */
        private final double[][] log;
        private final double[][] mean;
        private final double[][] square;

        Voice(List<Lesson> lessons, List<Odds.Besides> besides) {
            double waterC = lessons.stream().map(Lesson::at)
                    .max(Comparator.comparingDouble(Lesson.At::degreeHours)).map(a -> a.waterC(baseC))
                    .orElse(Rate.ANCHOR_C);
            this.reach = Doubt.Form.reach(waterC, baseC);
            this.log = new double[besides.size()][CELLS];
            this.mean = new double[besides.size()][CELLS];
            this.square = new double[besides.size()][CELLS];
            if (!lessons.isEmpty()) {
                heard(new Odds(lessons), besides, effects(Math.hypot(Doubt.BATCH_LOG_SD,
                        Spread.PROBE_SD_K / (waterC - baseC))));
            }
        }

        private void heard(Odds odds, List<Odds.Besides> besides, double[] effects) {
            double[][] raw = new double[besides.size()][K];
            double[] logs = new double[besides.size()];
            for (int s = 0; s < SIGMAS.length; s++) {
                for (int k = 0; k < K; k++) {
                    odds.log(from + k * STEP, SIGMAS[s], besides, logs);
                    for (int v = 0; v < besides.size(); v++) {
                        raw[v][k] = Math.exp(logs[v]);
                    }
                }
                for (int v = 0; v < besides.size(); v++) {
                    integrated(raw[v], effects, v, s);
                }
            }
        }

        /** Integrates the batch's own effect out. */
        private void integrated(double[] raw, double[] effects, int v, int s) {
            int wide = effects.length / 2;
            for (int k = 0; k < K; k++) {
                double all = 0;
                double shift = 0;
                double squared = 0;
                for (int j = 0; j < effects.length; j++) {
                    double w = effects[j] * raw[Math.clamp(k + j - wide, 0, K - 1)];
                    double b = (j - wide) * STEP;
                    all += w;
                    shift += w * b;
                    squared += w * b * b;
                }
                int i = k * SIGMAS.length + s;
                log[v][i] = Math.log(all);
                mean[v][i] = shift / all;
                square[v][i] = squared / all;
            }
        }

        /** A batch of the past. */
        void addTo(double[] logs, Slice at) {
            for (int i = 0; i < CELLS; i++) {
                logs[i] += moved(log[at.besides], i, at.form);
            }
        }

        /** The present batch: its own effect is part of what is asked. @param i the cell */
        void addTo(Moments m, double lot, int i, Slice at) {
            double lnK50 = (i / SIGMAS.length) * STEP - REACH;
            double b = moved(mean[at.besides], i, at.form);
            double bb = moved(square[at.besides], i, at.form);
            m.add(lot + moved(log[at.besides], i, at.form), lnK50 + b,
                    lnK50 * lnK50 + 2 * lnK50 * b + bb,
                    new Where(SIGMAS[i % SIGMAS.length], at.form));
        }

        /** Of that cell, where the threshold moves ln K50: between the two nearest. */
        private double moved(double[] table, int i, double form) {
            int s = i % SIGMAS.length;
            double x = Math.clamp(i / SIGMAS.length + reach * form / STEP, 0, K - 1.0001);
            int low = (int) x;
            double part = x - low;
            return (1 - part) * table[low * SIGMAS.length + s] + part * table[(low + 1) * SIGMAS.length + s];
        }
    }

    /** Weights of a batch's own effect, in steps of the grid, the middle one for none. @param sd of it */
    private static double[] effects(double sd) {
        int wide = (int) Math.ceil(3.5 * sd / STEP);
        double[] w = new double[2 * wide + 1];
        double sum = 0;
        for (int j = 0; j < w.length; j++) {
            double z = (j - wide) * STEP / sd;
            w[j] = Math.exp(-z * z / 2);
            sum += w[j];
        }
        for (int j = 0; j < w.length; j++) {
            w[j] /= sum;
        }
        return w;
    }

    private static double[] centres(double from, double to, int n) {
        double half = (to - from) / n / 2;
        return steps(from + half, to - half, n);
    }

    private static double[] steps(double from, double to, int n) {
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            out[i] = from + i * (to - from) / (n - 1);
        }
        return out;
    }
}

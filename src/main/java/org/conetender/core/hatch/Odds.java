package org.conetender.core.hatch;

import java.util.List;
import java.util.Optional;

/**
 * How likely it is that people saw what they saw of one batch, if its figures were such and such. Each look
 * is allowed to be a mistake.
 */
final class Odds {

    /** One look in so many is a slip: another cone, another hour, a word out of habit (*guess*). */
    private static final double SLIP = 0.03;
    /** Density of a time that is a slip, per ln: any within about a factor e is as likely (*guess*). */
    private static final double ANYWHERE = 1;
    /** First nauplii are seen as T0 says… */
    private static final double FIRST_SHARE_Z = Normal.quantile(Speed.FIRST_SHARE);
    /** …by eyes that see between three in a thousand and three in a hundred: scores apart (*guess*). */
    private static final double FIRST_EYES_Z = 0.35;
    /** Who watches reports them within half an hour, one standard deviation (issue, *guess*). */
    private static final double REPORTED_H = 0.5;
    /**
     * Sub-samples differ by more than chance, since cysts sink and nauplii gather: counts are worth those
     * of animals that resemble their neighbours by so much (*guess*; science.md §4 names the error only).
     */
    static final double ALIKE = 0.002;
    /** Harvests are called early below four in five hatched, as scores; late where… (*guesses*) */
    private static final double EARLY_Z = 0.84;
    /** …most have been swimming for half a day, at a usual spread… */
    private static final double LATE_Z = 2.8;
    /** …by eyes that differ by so much: little where many cysts lie, more in how pale is pale. */
    private static final double EARLY_EYES_Z = 0.4;
    private static final double LATE_EYES_Z = 0.8;

    /**
     * What is not asked, but must be reckoned with, in all batches of a lot alike.
     *
     * @param viable share of full cysts that can hatch
     * @param firstZ by how much first nauplii are seen later than as the first hundredth, as a score: eyes
     *     that are always sharper or duller, and first animals that hatch earlier than a lognormal has them
     */
    record Besides(double viable, double firstZ) {}

    private final List<Lesson> lessons;
    private final Optional<Lesson.At> lastNone;
    private final Optional<Lesson.At> first;

    Odds(List<Lesson> lessons) {
        this.lessons = lessons;
        this.lastNone = lessons.stream().filter(l -> l.sight() instanceof Lesson.Sight.NoneYet)
                .map(Lesson::at).reduce((a, b) -> a.degreeHours() > b.degreeHours() ? a : b);
        this.first = lessons.stream().filter(l -> l.sight() instanceof Lesson.Sight.First)
                .map(Lesson::at).reduce((a, b) -> a.degreeHours() <= b.degreeHours() ? a : b);
    }

    /** Whether the share that can hatch at all matters. */
    boolean counts() {
        return lessons.stream().anyMatch(l -> l.sight() instanceof Lesson.Sight.Counted);
    }

    /**
     * Logarithm of the likelihood, but for a constant.
     *
     * @param lnK50 of this batch, in its water  @param sigma of its lot
     */
    double log(double lnK50, double sigma, Besides besides) {
        double[] one = new double[1];
        log(lnK50, sigma, List.of(besides), one);
        return one[0];
    }

    /** The same for several at once, into {@code logs}: what costs most is common to them. */
    void log(double lnK50, double sigma, List<Besides> besides, double[] logs) {
        double sum = 0;
        for (int i = 0; i < logs.length; i++) {
            double middle = lnK50 + sigma * (FIRST_SHARE_Z + besides.get(i).firstZ);
            boolean same = i > 0 && besides.get(i).firstZ == besides.get(i - 1).firstZ;
            logs[i] = same ? logs[i - 1] : first.isPresent() ? first(first.get(), middle, sigma)
                    : lastNone.isPresent() ? noneYet(lastNone.get(), middle, sigma) : 0;
        }
        double[] counted = new double[logs.length];
        double[] now = new double[logs.length];
        for (Lesson l : lessons) {
            switch (l.sight()) {
                case Lesson.Sight.NoneYet _, Lesson.Sight.First _ -> { }
                case Lesson.Sight.Counted c when c.all() > 0 -> {
                    double sd = Math.hypot(sigma, l.at().logSd());
                    double share = Normal.share((Math.log(l.at().degreeHours()) - lnK50) / sd);
                    Sample sample = Sample.of(c);
                    for (int i = 0; i < logs.length; i++) {
                        int same = sameViable(besides, i);
                        now[i] = same < i ? now[same] : sample.log(besides.get(i).viable * share);
                        counted[i] += now[i];
                    }
                }
                case Lesson.Sight.Counted _ -> { }
                case Lesson.Sight.Judged j -> sum += judged(j.word(), l.at(), lnK50, sigma);
            }
        }
        for (int i = 0; i < logs.length; i++) {
            logs[i] += sum + counted[i];
        }
    }

    /** Seen now; and not yet at the last look before, if there was one. */
    private double first(Lesson.At at, double middle, double sigma) {
        double eyes = sigma * FIRST_EYES_Z;
        Optional<Lesson.At> none = lastNone.filter(n -> n.degreeHours() < at.degreeHours());
        if (none.isPresent()) {
            double sd = Math.hypot(eyes, at.logSd());
            double from = Math.log(none.get().degreeHours());
            double to = Math.log(at.degreeHours());
            return slips(Normal.share((to - middle) / sd) - Normal.share((from - middle) / sd),
                    ANYWHERE * (to - from));
        }
        // Nobody knows for how long they have been there: it tells that they came by then, and no more.
        double sd = Math.hypot(Math.hypot(eyes, at.logSd()), REPORTED_H / at.hours());
        return slips(Normal.share((Math.log(at.degreeHours()) - middle) / sd), 0.5);
    }

    private static double noneYet(Lesson.At at, double middle, double sigma) {
        double sd = Math.hypot(sigma * FIRST_EYES_Z, at.logSd());
        return slips(Normal.share((middle - Math.log(at.degreeHours())) / sd), 0.5);
    }

    /** The first with the same share that can hatch: what was counted says the same of both. */
    private static int sameViable(List<Besides> besides, int i) {
        int same = 0;
        while (besides.get(same).viable != besides.get(i).viable) {
            same++;
        }
        return same;
    }

    /**
     * A counted sub-sample.
     *
     * @param n nauplii, as far as they are worth it  @param rest of the others
     * @param best log-likelihood of the share that fits best  @param any what a slip is worth against it
     */
    private record Sample(double n, double rest, double best, double any) {

        static Sample of(Lesson.Sight.Counted c) {
            double worth = 1 / (1 + (c.all() - 1) * ALIKE);
            double n = c.nauplii() * worth;
            double rest = (c.umbrella() + c.unhatched()) * worth;
            double mean = n / (n + rest);
            double best = (n > 0 ? n * Math.log(mean) : 0) + (rest > 0 ? rest * Math.log(1 - mean) : 0);
            // A slip makes every share as likely.
            return new Sample(n, rest, best, Math.min(1, Math.sqrt(2 * Math.PI
                    * (mean * (1 - mean) + 1 / (n + rest)) / (n + rest))));
        }

        /** @param swims share of full cysts that swim as nauplii */
        double log(double swims) {
            double p = Math.clamp(swims, 1e-12, 1 - 1e-12);
            return slips(Math.exp(n * Math.log(p) + rest * Math.log1p(-p) - best), any);
        }
    }

    private static double judged(Lesson.Word word, Lesson.At at, double lnK50, double sigma) {
        double z = (Math.log(at.degreeHours()) - lnK50) / sigma;
        double early = Normal.share((EARLY_Z - z) / Math.hypot(EARLY_EYES_Z, at.logSd() / sigma));
        double late = Normal.share((z - LATE_Z) / Math.hypot(LATE_EYES_Z, at.logSd() / sigma));
        return slips(switch (word) {
            case TOO_EARLY -> early;
            case RIGHT -> Math.max(0, 1 - early - late);
            case LATE -> late;
        }, 1.0 / 3);
    }

    private static double slips(double likelihood, double ofSlip) {
        return Math.log((1 - SLIP) * likelihood + SLIP * ofSlip);
    }
}

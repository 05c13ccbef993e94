package org.conetender.core.hatch;

import java.util.Optional;

/**
 * When a batch is worth most as food. Cysts hatch, and what has hatched lives on its yolk: the energy in
 * the cone grows while more hatches than is used up, is greatest where hatch flow = k·E, and falls after
 * (science.md §6). Reckoned for the median of the lot; hours count from now and are infinite for what lies
 * beyond the look-ahead.
 *
 * @param best the moment of greatest total energy
 * @param fromHours from then on at least {@value #STILL_THERE} of that is there
 * @param untilHours until then
 * @param twice two harvests, where the animals hatch so far apart that the first would moult before
 */
public record Harvest(Best best, double fromHours, double untilHours, Optional<Twice> twice) {

    /**
     * @param hours when
     * @param hatched share of the hatchable that has hatched by then, 0..1
     * @param energy total then, as a share of what all would hold fresh from the shell, 0..1
     */
    public record Best(double hours, double hatched, double energy) {}

    /**
     * @param firstHours when the earliest tenth is about to moult
     * @param firstShare of the hatchable that it takes, 0..1
     * @param secondHours when the rest is worth most
     * @param energy of both together, as a share of what all would hold fresh from the shell, 0..1
     */
    public record Twice(double firstHours, double firstShare, double secondHours, double energy) {}

    /** The window is where so much of the greatest energy is there. */
    public static final double STILL_THERE = 0.95;

    /**
     * From hatching to the moult into instar II: 8 h at 28 °C, by the same thermal law 128 °C·h above 12 °C.
     * science.md §6 calls it an assumption: 6 to 12 h are told, and no series over temperature is known.
     */
    public static final double MOULT_DEGREE_HOURS = 128;

    /**
     * Energy lost per hour at 25 °C: 27 % in the first 24 h for the coastal strain, 22 to 37 % by strain
     * (science.md §6, S7; that it was at 25 °C is recalled).
     */
    static final double LOSS_PER_H_AT_25C = 0.0131;

    /** The temperature of that figure, °C. */
    private static final double LOSS_AT_C = 25;

    /** Its rise over 10 K: 2 to 2.8, as respiration has (science.md §6, §7.1); in between a *guess*. */
    private static final double Q10 = 2.4;

    /** A batch that stops before a tenth has hatched is not harvested for food (*guess*). */
    private static final double WORTH_IT = 0.1;

    /** Before so few have hatched nothing is summed. */
    private static final double NOBODY = 1e-7;

    /** When less than this share of the most is left, no more is asked: it never comes back. */
    private static final double LONG_PAST = 0.85;

    private static final double TABLE_TO = 6;
    private static final double TABLE_STEP = 0.01;
    private static final double[] TABLE = table();

    /** Share of the energy that an animal uses up in an hour of that water, 1/h. @param waterC °C */
    public static double lossPerH(double waterC) {
        return LOSS_PER_H_AT_25C * Math.pow(Q10, (waterC - LOSS_AT_C) / 10);
    }

    /** Of a batch on that course. */
    public static Harvest of(Course course, Speed speed) {
        return of(course, speed, LOSS_PER_H_AT_25C);
    }

    /** The same with another loss at 25 °C, 1/h: what is published runs from 0.0073 to 0.0193. */
    static Harvest of(Course course, Speed speed, double lossAt25C) {
        double scale = lossAt25C / LOSS_PER_H_AT_25C;
        double[] energy = energy(course, speed, scale, 0);
        int best = peak(energy);
        double hatched = speed.hatchedShare(course.done(best));
        if (best == energy.length - 1 || hatched < WORTH_IT) {
            // Still growing at the end of the look-ahead, or nothing ever hatches but the very first.
            return new Harvest(new Best(Double.POSITIVE_INFINITY, 0, 0), Double.POSITIVE_INFINITY,
                    Double.POSITIVE_INFINITY, Optional.empty());
        }
        double least = STILL_THERE * energy[best];
        int from = best;
        while (from > 0 && energy[from - 1] >= least) {
            from--;
        }
        int until = best;
        while (until < energy.length && energy[until] >= least) {
            until++;
        }
        double untilH = until == energy.length ? Double.POSITIVE_INFINITY : course.hours(until - 1);
        return new Harvest(new Best(course.hours(best), hatched, energy[best]),
                course.hours(from), untilH, twice(course, speed, scale, energy));
    }

    /**
     * Better twice if T90 − T10 is longer than an animal takes to its first moult (science.md §6): in three
     * of four lots that may be this one, since nobody should catch twice for a lot that hatches at once.
     */
    private static Optional<Twice> twice(Course course, Speed speed, double scale, double[] once) {
        double moult = speed.k10() + MOULT_DEGREE_HOURS;
        double firstH = course.hoursAt(moult);
        double narrow = Math.max(0, speed.sigma() - Normal.Z75 * speed.doubt().spread());
        double apart = 2 * speed.k50DegreeHours() * Math.sinh(Normal.Z90 * narrow);
        if (apart <= MOULT_DEGREE_HOURS || firstH == Double.POSITIVE_INFINITY) {
            return Optional.empty();
        }
        double share = speed.hatchedShare(moult);
        int first = 0;
        while (first < course.size() - 1 && course.hours(first) < firstH) {
            first++;
        }
        double[] rest = energy(course, speed, scale, first);
        int second = peak(rest);
        return second == rest.length - 1 ? Optional.empty() : Optional.of(new Twice(course.hours(first),
                share, course.hours(second), once[first] + rest[second]));
    }

    /**
     * Total energy at each point, as a share of what all would hold fresh, of what hatches after the point
     * {@code from}. Where it is long past its peak it is left at nothing.
     */
    private static double[] energy(Course course, Speed speed, double scale, int from) {
        double[] energy = new double[course.size()];
        double none = speed.degreeHoursAt(NOBODY);
        double perLog = 1 / speed.sigma();
        double atLog = Math.log(speed.k50DegreeHours());
        double hatched = speed.hatchedShare(course.done(from));
        double most = 0;
        double atC = LOSS_AT_C;
        double loss = LOSS_PER_H_AT_25C;
        energy[from] = from == 0 ? hatched : 0;
        for (int i = from + 1; i < energy.length && energy[i - 1] >= LONG_PAST * most; i++) {
            if (course.done(i) < none) {
                continue;
            }
            double c = (course.waterC(i) + course.waterC(i - 1)) / 2;
            loss = c == atC ? loss : lossPerH(c);
            atC = c;
            // The first terms of the exponential: a step loses about a thousandth.
            double lost = scale * loss * (course.hours(i) - course.hours(i - 1));
            double kept = 1 - lost + lost * lost / 2;
            double now = share((Math.log(course.done(i)) - atLog) * perLog);
            // What hatched within the step has lived for half of it.
            energy[i] = energy[i - 1] * kept + (now - hatched) * (1 - lost / 2);
            hatched = now;
            most = Math.max(most, energy[i]);
        }
        return energy;
    }

    /** {@link Normal#share} from a table, which is a hundred times as quick and errs by 3e-6 at most. */
    static double share(double z) {
        double place = Math.clamp((z + TABLE_TO) / TABLE_STEP, 0, TABLE.length - 1.001);
        int i = (int) place;
        return TABLE[i] + (place - i) * (TABLE[i + 1] - TABLE[i]);
    }

    private static double[] table() {
        double[] shares = new double[(int) Math.round(2 * TABLE_TO / TABLE_STEP) + 1];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = Normal.share(i * TABLE_STEP - TABLE_TO);
        }
        return shares;
    }

    private static int peak(double[] energy) {
        int best = 0;
        for (int i = 1; i < energy.length; i++) {
            best = energy[i] >= energy[best] ? i : best;
        }
        return best;
    }
}

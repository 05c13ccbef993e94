package org.conetender.core.hatch;

import org.conetender.core.unit.Text;

/**
 * How fast a lot of cysts hatches, and how well that is known: hatch times are lognormal in thermal
 * time, with one sigma at all temperatures (science.md §3.5.4).
 *
 * <p>Variation between lots is the dominant fact (science.md §2.2); what is learnt from reports
 * arrives here as a smaller {@code logSdOfK50} and a higher {@code timesSeen}.
 *
 * @param k50DegreeHours degree-hours at which half of what hatches has hatched, °C·h above base
 * @param sigma spread of the animals of one batch, standard deviation of ln(thermal time)
 * @param logSdOfK50 how uncertain the lot's K50 is, standard deviation of its logarithm
 * @param timesSeen batches of this lot that taught something
 */
public record Speed(double k50DegreeHours, double sigma, double logSdOfK50, int timesSeen) {

    /**
     * The prior of a lot nobody has seen hatch: K50 271 °C·h, log-sd 0.2 (science.md §3.5.5); sigma
     * 0.15, the middle of the 0.13 to 0.18 of good lots (science.md §2.3).
     */
    public static final Speed UNKNOWN_LOT = new Speed(271, 0.15, 0.20, 0);

    /** A lot seen this often is announced by its median instead of the later quartile (*guess*). */
    public static final int KNOWN_AFTER = 3;

    /** Batches of one lot differ by this log-sd (*guess*; no published figure). */
    static final double BATCH_LOG_SD = 0.03;

    /** Uncertainty of sigma: lots run from 0.10 to 0.28 (science.md §2.3), the figures are *guesses*. */
    private static final double SIGMA_SD_UNKNOWN = 0.04;
    private static final double SIGMA_SD_KNOWN = 0.02;

    /** @throws IllegalArgumentException if a figure is not one a lot can have */
    public Speed {
        boolean possible = k50DegreeHours > 0 && k50DegreeHours < 10_000 && sigma > 0 && sigma < 1
                && logSdOfK50 >= 0 && logSdOfK50 < 2 && timesSeen >= 0;
        if (!possible) {
            throw new IllegalArgumentException(
                    Text.of("no lot hatches like this: K50 %s °C·h, sigma %s, log-sd %s, seen %d",
                    k50DegreeHours, sigma, logSdOfK50, timesSeen));
        }
    }

    /** Degree-hours at which that share of the hatchable has hatched. @param share inside 0..1 */
    public double degreeHoursAt(double share) {
        return k50DegreeHours * Math.exp(sigma * Normal.quantile(share));
    }

    /** The share of the hatchable that has hatched after so many degree-hours, 0..1. */
    public double hatchedShare(double degreeHours) {
        return degreeHours <= 0 ? 0 : Normal.share(Math.log(degreeHours / k50DegreeHours) / sigma);
    }

    /** First animals in numbers: 10 % hatched. */
    public double k10() {
        return degreeHoursAt(0.1);
    }

    /** The field's harvest point: 90 % hatched (science.md §6). */
    public double k90() {
        return degreeHoursAt(0.9);
    }

    /**
     * Degree-hours at which a batch is called ready: the harvest point of a lot that is known; the later
     * quartile of one that is not, so that three harvests in four are not too early (design.md).
     */
    public double calledReadyAt() {
        return known() ? k90() : k90() * Math.exp(Normal.Z75 * logSdOfK50);
    }

    /** Whether reports of this lot have replaced the prior. */
    public boolean known() {
        return timesSeen >= KNOWN_AFTER;
    }

    /** Log-sd of this batch's degree-hours at a share, {@code z} being that share's standard score. */
    double logSdAt(double z) {
        double sigmaSd = known() ? SIGMA_SD_KNOWN : SIGMA_SD_UNKNOWN;
        return Math.sqrt(logSdOfK50 * logSdOfK50 + BATCH_LOG_SD * BATCH_LOG_SD + z * z * sigmaSd * sigmaSd);
    }
}

package org.conetender.core.hatch;

import org.conetender.core.unit.Text;

/**
 * How fast a lot of cysts hatches, and how well that is known: hatch times are lognormal in thermal
 * time, with one sigma at all temperatures (science.md §3.5.4).
 *
 * <p>Variation between lots is the dominant fact (science.md §2.2); what is learnt from reports
 * arrives here as a smaller {@code doubt} and a higher {@code timesSeen} ({@link Learnt}).
 *
 * @param k50DegreeHours degree-hours at which half of what hatches has hatched, °C·h above base
 * @param sigma spread of the animals of one batch, standard deviation of ln(thermal time)
 * @param doubt how uncertain both are
 * @param timesSeen batches of this lot that taught something
 */
public record Speed(double k50DegreeHours, double sigma, Doubt doubt, int timesSeen) {

    /** A lot seen this often is announced by its median instead of the later quartile (*guess*). */
    public static final int KNOWN_AFTER = 3;

    /** And if its harvest point is known to this log-sd, about three hours of a day (*guess*). */
    static final double KNOWN_LOG_SD = 0.12;

    /** The first nauplii that a person sees, T0: read as the first hundredth (science.md §2.3). */
    static final double FIRST_SHARE = 0.01;

    /** Sigmas of lots: good ones have 0.13 to 0.18, poor ones up to about 0.28 (science.md §2.3). */
    static final double LEAST_SIGMA = 0.10;
    static final double MOST_SIGMA = 0.28;

    /** Any of them is as likely as another (*guess*), so its standard deviation is the width by √12. */
    private static final double SIGMA_SD_UNKNOWN = (MOST_SIGMA - LEAST_SIGMA) / Math.sqrt(12);
    /** Where a lot's speed was told by somebody who watched it (*guess*). */
    private static final double SIGMA_SD_KNOWN = 0.02;

    /**
     * The prior of a lot nobody has seen hatch: K50 271 °C·h, log-sd 0.2 (science.md §3.5.5), and sigma in
     * the middle of what lots have. It is the same prior that {@link Learnt} begins with, so that the first
     * report moves a forecast by what it tells and by nothing else.
     */
    public static final Speed UNKNOWN_LOT = new Speed(271, (LEAST_SIGMA + MOST_SIGMA) / 2, 0.20, 0);

    /** @throws IllegalArgumentException if a figure is not one a lot can have */
    public Speed {
        boolean possible = k50DegreeHours > 0 && k50DegreeHours < 10_000 && sigma > 0 && sigma < 1
                && doubt.possible() && timesSeen >= 0;
        if (!possible) {
            throw new IllegalArgumentException(
                    Text.of("no lot hatches like this: K50 %s °C·h, sigma %s, log-sd %s, seen %d",
                    k50DegreeHours, sigma, doubt.lot(), timesSeen));
        }
    }

    /** A lot whose speed was told. @param logSdOfK50 how uncertain it is, standard deviation of ln K50 */
    public Speed(double k50DegreeHours, double sigma, double logSdOfK50, int timesSeen) {
        this(k50DegreeHours, sigma, Doubt.told(logSdOfK50,
                timesSeen >= KNOWN_AFTER ? SIGMA_SD_KNOWN : SIGMA_SD_UNKNOWN), timesSeen);
    }

    /** The same lot in other water than at {@value Rate#ANCHOR_C} °C. @param baseC of the rate */
    public Speed at(double waterC, double baseC) {
        double reach = Doubt.Form.reach(waterC, baseC);
        return new Speed(k50DegreeHours * Math.exp(reach * doubt.form().mean()), sigma, doubt.at(reach),
                timesSeen);
    }

    /** Degree-hours at which that share of the hatchable has hatched. @param share inside 0..1 */
    public double degreeHoursAt(double share) {
        return degreeHoursAtScore(Normal.quantile(share));
    }

    private double degreeHoursAtScore(double z) {
        return k50DegreeHours * Math.exp(sigma * z);
    }

    /** The share of the hatchable that has hatched after so many degree-hours, 0..1. */
    public double hatchedShare(double degreeHours) {
        return degreeHours <= 0 ? 0 : Normal.share(Math.log(degreeHours / k50DegreeHours) / sigma);
    }

    /** By then the first nauplii swim, T0. */
    public double k0() {
        return degreeHoursAt(FIRST_SHARE);
    }

    /** First animals in numbers: 10 % hatched. */
    public double k10() {
        return degreeHoursAtScore(Normal.Z10);
    }

    /** The field's harvest point: 90 % hatched (science.md §6). */
    public double k90() {
        return degreeHoursAtScore(Normal.Z90);
    }

    /** Where one in ten batches is riper already, or one in ten is not yet. @param late the latter */
    public double k90Within(boolean late) {
        return within(0.9, late);
    }

    /** The same of any share. @param share inside 0..1 */
    public double within(double share, boolean late) {
        return degreeHoursAt(share) * Math.exp((late ? 1 : -1) * Normal.Z90
                * logSdAt(Normal.quantile(share)));
    }

    /**
     * Degree-hours at which a batch is called ready: the harvest point of a lot that is known; the later
     * quartile of one that is not, so that three harvests in four are not too early (design.md).
     */
    public double calledReadyAt() {
        return known() ? k90() : k90() * Math.exp(Normal.Z75 * logSdAt(Normal.Z90));
    }

    /** Whether reports of this lot have replaced the prior. */
    public boolean known() {
        return timesSeen >= KNOWN_AFTER && logSdAt(Normal.Z90) <= KNOWN_LOG_SD;
    }

    /** Log-sd of this batch's degree-hours at a share, {@code z} being that share's standard score. */
    double logSdAt(double z) {
        return doubt.logSdAt(z);
    }
}

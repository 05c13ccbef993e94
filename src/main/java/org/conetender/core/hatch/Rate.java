package org.conetender.core.hatch;

/**
 * How fast cysts develop at a water temperature, in degree-hours gained per hour.
 *
 * <p>Every form here is zero outside {@code baseC..ceilingC}, positive inside, and has a single peak;
 * {@link #least} and {@link #most} rely on that. All but {@link Salted} agree at {@link #ANCHOR_C}, where
 * published hatch times for the competing thresholds meet; elsewhere a lot's figures belong to the form they
 * were learnt with.
 */
public sealed interface Rate permits BaseDeviationCeiling, Briere, SharpeSchoolfield, Salted {

    /** Base 12, deviation 30, ceiling 33 °C (science.md §3.5). */
    Rate USUAL = new BaseDeviationCeiling(12, 30, 33);

    /** Where all forms give as many degree-hours an hour, °C (science.md §2.3: T80 = 25 h at 24 °C). */
    double ANCHOR_C = 24;

    /** Degree-hours per hour at that temperature; never negative. @param waterC °C, finite */
    double perHour(double waterC);

    /** At or below it nothing is gained, °C. Slow life goes on above about 4 °C (science.md §3.5.6). */
    double baseC();

    /** The temperature of fastest development, °C. */
    double bestC();

    /** At or above it development is arrested, °C; progress is kept (science.md §3.5.2). */
    double ceilingC();

    /**
     * The water for which a lot's lower threshold is to be reckoned with, °C. Only the usual form leaves that
     * threshold open; the others have it settled, as at the anchor.
     *
     * @param perHour degree-hours gained an hour on the average
     */
    default double thresholdAtC(double perHour) {
        return ANCHOR_C;
    }

    /** The least rate anywhere between two temperatures: one peak, so it is at one of the ends. */
    default double least(double lowC, double highC) {
        return Math.min(perHour(lowC), perHour(highC));
    }

    /** The greatest rate anywhere between two temperatures. */
    default double most(double lowC, double highC) {
        return perHour(Math.clamp(bestC(), lowC, highC));
    }
}

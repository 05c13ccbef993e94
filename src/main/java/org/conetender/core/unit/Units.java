package org.conetender.core.unit;

/** Conversions that would otherwise stand as bare factors all over the core. */
public final class Units {

    public static final long SECOND_MS = 1_000;
    public static final long MINUTE_MS = 60_000;
    public static final long HOUR_MS = 3_600_000;

    /** Volumetric heat capacity of brine near 28 °C in J/(L·K), good to 1 % (science.md §9). */
    public static final double BRINE_J_PER_L_K = 4_100;

    private Units() {}

    public static double hours(long ms) {
        return ms / (double) HOUR_MS;
    }

    public static double minutes(long ms) {
        return ms / (double) MINUTE_MS;
    }

    public static long msOfMinutes(double minutes) {
        return Math.round(minutes * MINUTE_MS);
    }

    public static long msOfHours(double hours) {
        return Math.round(hours * HOUR_MS);
    }
}

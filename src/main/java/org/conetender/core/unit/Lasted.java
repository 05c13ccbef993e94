package org.conetender.core.unit;

/** How long something lasted, in words; the same everywhere. */
public final class Lasted {

    /** Bounds that lie so near are told as one, ms. */
    private static final long SAME_MS = 2 * Units.MINUTE_MS;

    private static final long HOUR = 60;
    private static final long DAY = 24 * HOUR;

    private Lasted() {}

    /** {@code 35 min}, {@code 2 h 10 min}, {@code 3 days 4 h}. */
    public static String words(long ms) {
        long min = Math.round(Units.minutes(ms));
        if (min < 1) {
            return "less than a minute";
        }
        return min < 2 * HOUR ? min + " min"
                : min < 2 * DAY ? min / HOUR + (min % HOUR < 10 ? " h 0" : " h ") + min % HOUR + " min"
                : min / DAY + " days " + min % DAY / HOUR + " h";
    }

    /** A length with bounds; that of none above is told as "or longer", bounds of the same words as one. */
    public static String words(Span s) {
        String least = words(s.leastMs());
        String most = words(s.mostMs());
        return !s.bounded() ? least + " or longer"
                : s.mostMs() - s.leastMs() <= SAME_MS || least.equals(most)
                ? most.startsWith("less") ? most : "about " + most
                : "between " + least + " and " + most;
    }
}

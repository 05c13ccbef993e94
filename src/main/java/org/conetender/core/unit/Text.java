package org.conetender.core.unit;

import java.util.Locale;

/** Sentences with figures in them: the same text on every machine, whatever its language. */
public final class Text {

    /** So near to a half only the figure's own digits tell which way it is rounded. */
    private static final double TIE = 1e-6;
    private static final double PLAIN = 1e9;

    private Text() {}

    /** As {@link String#format}, with a point in 27.0 also where the machine would write a comma. */
    public static String of(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures);
    }

    /** As {@code %.1f} writes it, or with other decimals; no zero has a sign of its own. */
    public static String decimals(double d, int digits) {
        double scaled = Math.abs(d) * (digits == 0 ? 1 : 10);
        // A quarter is written as it is, so its half is rounded away from zero, as below.
        boolean tie = Math.abs(scaled - Math.floor(scaled) - 0.5) < TIE && d * 4 != Math.rint(d * 4);
        if (digits > 1 || tie || !(scaled < PLAIN)) {
            return unsigned(String.format(Locale.ROOT, "%." + digits + "f", d));
        }
        // A page has dozens of them, and a formatter takes ten times as long.
        long n = Math.round(scaled);
        return (d < 0 && n > 0 ? "-" : "") + (digits == 0 ? String.valueOf(n) : n / 10 + "." + n % 10);
    }

    private static String unsigned(String figure) {
        return figure.matches("-[0.]+") ? figure.substring(1) : figure;
    }
}

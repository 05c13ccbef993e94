package org.conetender.sim.trial;

import java.util.Locale;
import org.conetender.core.unit.Text;

/**
 * One figure that was aimed at.
 *
 * @param what in words, with its unit
 * @param got measured
 * @param most may be reached, not passed
 */
public record Target(String what, double got, double most) {

    /** Whether it was met; what could not be measured was not. */
    public boolean met() {
        return got <= most;
    }

    /** For a person; a missed one in capitals. */
    public String line() {
        return Text.of("  %-7s %s: %s (at most %s)", met() ? "met" : "MISSED", what, figure(got),
                figure(most));
    }

    private static String figure(double v) {
        return Double.isNaN(v) ? "not measured" : Math.abs(v) >= 100 ? Text.of("%.0f", v)
                : String.valueOf(Double.parseDouble(String.format(Locale.ROOT, "%.3g", v)));
    }
}

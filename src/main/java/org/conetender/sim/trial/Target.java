package org.conetender.sim.trial;

import java.util.Locale;
import org.conetender.core.unit.Text;

/**
 * One figure that was aimed at.
 *
 * @param what in words, with its unit
 * @param got measured
 * @param most may be reached, not passed
 * @param enough whether so much was measured that the figure has a meaning
 */
public record Target(String what, double got, double most, boolean enough) {

    /** Of fewer than this no share tells anything (guess). */
    static final int LEAST = 10;

    /** What is counted, and so means something however little there was. */
    public Target(String what, double got, double most) {
        this(what, got, most, true);
    }

    /** A quantile: of too few it is only their worst. @param share 0..1 */
    static Target of(String what, Quantiles q, double share, double most) {
        return new Target(what, q.at(share), most, q.count() >= Math.max(LEAST, Math.rint(1 / (1 - share))));
    }

    /** @param should 0..1  @param off by which it may differ, 0..1 */
    record Share(double should, double off) {}

    /** By how much a share is off: of so few it may be so by chance alone (one standard deviation). */
    static Target off(String what, double got, Share s, int count) {
        return new Target(what, Math.abs(got - s.should), s.off,
                count >= Math.max(LEAST, s.should * (1 - s.should) / (s.off * s.off)));
    }

    /** Whether it was met; what could not be measured was not. */
    public boolean met() {
        return enough && got <= most;
    }

    /** For a person; a missed one in capitals. */
    public String line() {
        return Text.of("  %-7s %s: %s (at most %s)", !enough ? "too few" : met() ? "met" : "MISSED", what,
                figure(got), figure(most));
    }

    private static String figure(double v) {
        return Double.isNaN(v) ? "not measured" : Math.abs(v) >= 100 ? Text.of("%.0f", v)
                : String.valueOf(Double.parseDouble(String.format(Locale.ROOT, "%.3g", v)));
    }
}

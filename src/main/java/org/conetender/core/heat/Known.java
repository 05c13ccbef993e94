package org.conetender.core.heat;

import org.conetender.core.judge.Estimate;
import org.conetender.core.judge.Thermal;

/**
 * How well a cone is known. While it is not, the plain law holds it. On random cones that made no difference
 * of more than a step of the probe, since the law that knows the coast begins with sensible traits.
 */
public enum Known {
    /**
     * Neither how fast it warms nor how late, nor has it been held for ten minutes; or it behaves as no model
     * of this form can.
     */
    NOT_YET("not yet"),
    /** One of the three. */
    ROUGHLY("roughly"),
    /** How fast and how late. */
    WELL("well");

    private final String word;

    Known(String word) {
        this.word = word;
    }

    /** As it is shown. */
    public String word() {
        return word;
    }

    /** Of that cone. */
    public static Known of(Thermal t) {
        Estimate e = t.estimate();
        boolean rise = e.riseDoubt() < Thermal.RISE_KNOWN;
        boolean lag = e.lagDoubtS() < Thermal.LAG_KNOWN_S;
        if (!t.fits()) {
            return NOT_YET;
        }
        return rise && lag ? WELL : rise || lag || t.proof().passed() ? ROUGHLY : NOT_YET;
    }
}

package org.conetender.core.hatch;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BrentSolver;

/**
 * What makes a forecast uncertain, as standard deviations of the logarithm of degree-hours, which
 * add as squares: they are independent, and small enough for the sum to stay close to normal.
 *
 * @param speed the lot in this water, with the scatter of its batches, of its sigma and of its threshold
 * @param rest development so far, probe and projection
 * @param water by which what is still to come may be quicker or slower, all of it
 */
public record Spread(Speed speed, double rest, Water water) {

    /** @param logSd of what is gained after now  @param nowDegreeHours done by now, °C·h */
    record Water(double logSd, double nowDegreeHours) {

        static final Water CERTAIN = new Water(0, 0);

        /** No doubt about what is to come may make the past doubtful (*guess*; 1 / 1.28 would). */
        private static final double MOST = 0.5;

        /** At so many degree-hours. */
        double logSdAt(double degreeHours) {
            return logSd * Math.clamp(1 - nowDegreeHours / degreeHours, 0, 1);
        }
    }

    /** Of a logarithm; beyond it no batch lies. */
    private static final double FAR = 5;
    private static final double CLOSE = 1e-9;
    private static final int MOST_STEPS = 200;

    /** A probe calibrated in place, and where the control will really hold the water, K (*guess*). */
    static final double PROBE_SD_K = 0.2;

    /** @param lossier degree-hours done after so many hours in a cone that loses more */
    static Spread of(Development done, Speed speed, Ahead ahead, DoubleUnaryOperator lossier) {
        double way = Math.max(1, ahead.meanRate(speed.k90()));
        double past = (done.mostDegreeHours() - done.leastDegreeHours()) / Math.sqrt(12) / speed.k90();
        // A batch that was looked at was seen through its own probe.
        double probe = speed.doubt().batch() > 0 ? perK(way, ahead.fallPerK(speed.k90())) : 0;
        // Where the heater holds the set-point either way it makes no difference.
        double hours = ahead.hoursUntil(speed.k90());
        double projected = hours > 0 && hours < Double.POSITIVE_INFINITY
                ? Math.log(speed.k90() / lossier.applyAsDouble(hours)) : 0;
        return new Spread(speed, Math.sqrt(past * past + probe * probe + projected * projected),
                Water.CERTAIN);
    }

    /** Beyond its best temperature the rate falls, and more steeply than it rose. */
    private static double perK(double way, double fallPerK) {
        return Math.min(Water.MOST, PROBE_SD_K * Math.max(1 / way, fallPerK));
    }

    /** Log-sd of the degree-hours of this batch at a share whose standard score is {@code z}. */
    double logSdAt(double z) {
        double lot = speed.logSdAt(z);
        return Math.sqrt(lot * lot + rest * rest);
    }

    /** The same where the water ahead may be so much warmer or colder than projected. @param doubtK K */
    Spread doubting(double doubtK, Development done, Ahead ahead) {
        double way = Math.max(1, ahead.rateAhead(speed.k90()));
        return new Spread(speed, rest, new Water(Math.min(Water.MOST, doubtK / way), done.degreeHours()));
    }

    /** Of a batch that has come so far, log-sd at a share whose standard score is {@code z}. */
    double logSdAt(double z, double degreeHours) {
        return Math.hypot(logSdAt(z), water.logSdAt(degreeHours));
    }

    /** The chance that a batch is at its harvest point after so many degree-hours, 0..1. */
    double ready(double degreeHours) {
        return degreeHours <= 0 ? 0 : Normal.share(score(degreeHours));
    }

    /** The other way round. @param z standard score of a chance */
    double readyAt(double z) {
        if (water.logSd == 0) {
            return speed.k90() * Math.exp(z * logSdAt(Normal.Z90));
        }
        return speed.k90() * Math.exp(new BrentSolver(CLOSE, CLOSE).solve(MOST_STEPS,
                log -> score(speed.k90() * Math.exp(log)) - z, -FAR, FAR));
    }

    /**
     * Degree-hours at which a batch is called ready, of all that is doubted: the harvest point of a lot that
     * is known; the later quartile of one that is not, so that three harvests in four are not too early
     * (design.md).
     */
    double calledReadyAt() {
        return readyAt(speed.known() ? 0 : Normal.Z75);
    }

    /** Grows with what is done, the doubt by less than the logarithm. */
    private double score(double degreeHours) {
        return Math.log(degreeHours / speed.k90()) / logSdAt(Normal.Z90, degreeHours);
    }
}

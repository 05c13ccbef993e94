package org.conetender.sim.trial;

import java.util.List;

/**
 * Who forecasts the batches of one lot. Told what a daemon measures and hears, never the truth; keeps its own
 * memory, one instance for one lot.
 */
public interface Seer {

    /**
     * A batch of the past.
     *
     * @param shownC what its probe showed, from the wetting on, °C
     * @param stepH time from one reading to the next, h
     * @param reports in order
     */
    record Past(double[] shownC, double stepH, List<Report> reports) {}

    /**
     * When nine in ten will have hatched, h from now: one in ten, one in four, half, three in four and nine
     * in ten batches are ready before.
     */
    record Told(double p10, double p25, double p50, double p75, double p90) {}

    /** A batch of the lot is over. */
    void learns(Past batch);

    /**
     * The present batch is wetted.
     *
     * @param hatch it and its cone  @param setC where it is held, °C; NaN without heater
     */
    void begins(TrialHatch hatch, double setC);

    /** Before anything is seen of it, its cone stands there. @param roomC around it, as it is seen, °C */
    default void waits(double seconds, double roomC) {}

    /** What is seen now. @param seconds since the last look */
    void sees(double seconds, Pilot.Look look);

    /** Something is reported of the present batch, now. */
    void hears(Report report);

    /** The forecast of this moment. */
    Told tells();

    /** Makes one. */
    interface School {
        Seer anew();
    }
}

package org.conetender.core.heat;

/**
 * What a heater's switch has done: every closing is counted as it happens, whoever caused it, so that what
 * doubts, guards and turns cost is taken from the law's share of the budget.
 *
 * @param closings in all
 * @param ahead how many more than the budget of a day allows until now, 0 or more; what was spared is not
 *     kept for later
 */
public record Wear(long closings, double ahead) {

    private static final double DAY_S = 86_400;
    /** The first closing of a cycle is no excess. */
    private static final double OWN = 1;
    /** Each cycle in excess widens the band by so much; a day's doubts cost a handful (guess). */
    private static final double WIDER = 0.1;
    /** Kept by a little, so that no day of a day's cycles and one begun has more than stated (guess). */
    private static final double SPARING = 1.01;
    /** It is widened no further than this (guess): the water is dearer than the relay. */
    private static final double WIDEST = 1.5;

    /**
     * A life begins with what was counted before it. What it was ahead of its budget is forgotten: a restart
     * may cost a few cycles more than a day's.
     */
    public static Wear begun(long closings) {
        return new Wear(closings, 0);
    }

    /**
     * A step later.
     *
     * @param closed whether the switch closed in it
     * @param dtS its length, s
     * @param kind what the switch may do
     */
    public Wear after(boolean closed, double dtS, Predict.Switching kind) {
        double done = closed ? 1 : 0;
        return new Wear(closings + (closed ? 1 : 0),
                kind.spared() ? Math.max(0, ahead + done - kind.cyclesPerDay() / SPARING * dtS / DAY_S) : 0);
    }

    /** What is left for the law of what the switch may do. */
    public Predict.Switching left(Predict.Switching kind) {
        double wider = Math.min(WIDEST, 1 + WIDER * Math.max(0, ahead - OWN));
        return new Predict.Switching(kind.cyclesPerDay() / wider, kind.leastS());
    }
}

package org.conetender.core.judge;

/**
 * Another cone's heater, as this cone's water would know it.
 *
 * @param way what this reading would feel of it if it hung here
 * @param fit how the water has gone with it, while its own heater was quiet and nobody was at either cone
 */
record Neighbour(Underway way, Fit fit) {

    static final Neighbour NONE = new Neighbour(Underway.NONE, Fit.NONE);

    Neighbour after(Crossing.Other o, double dtS, double lagS) {
        return new Neighbour(way.after(o.on() ? 1 : 0, dtS, lagS), o.touched() ? Fit.NONE : fit.fading(dtS));
    }

    /** The water warmed by so much in this step, K; NaN when its own heater says more. */
    Neighbour seen(double dtS, double takenK) {
        return Double.isNaN(takenK) ? this : new Neighbour(way, fit.and(dtS, way.felt(), takenK));
    }

    Neighbour unseen() {
        return new Neighbour(way, Fit.NONE);
    }
}

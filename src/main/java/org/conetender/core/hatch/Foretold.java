package org.conetender.core.hatch;

/**
 * All that is foretold of a batch, for which its water is walked once.
 *
 * @param forecast when it is ready  @param harvest when most of its food is in the cone
 */
public record Foretold(Forecast forecast, Harvest harvest) {

    /** Of a batch of that lot that has come so far, in the water that is projected for it. */
    public static Foretold of(Development done, Speed lot, Projection water, Rate rate) {
        Ahead ahead = Ahead.walk(done.degreeHours(), lot.calledReadyAt(), water, rate);
        return new Foretold(Forecast.of(done, lot, ahead, rate),
                Harvest.of(Course.from(done, water, rate), ahead.there(lot)));
    }
}

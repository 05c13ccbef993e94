package org.conetender.app.plot;

/**
 * A panel of the sheet: times across, a quantity upwards.
 *
 * @param place where it stands  @param fromMs its left edge, ms since 1970 UTC  @param toMs its right edge
 * @param range its lower and upper edge
 */
record Frame(Place place, long fromMs, long toMs, Range range) {

    /** Points of the sheet. */
    record Place(double left, double top, double right, double bottom) {

        boolean overlaps(Place o) {
            return left < o.right && o.left < right && top < o.bottom && o.top < bottom;
        }

        boolean holds(Place o) {
            return left <= o.left && o.right <= right && top <= o.top && o.bottom <= bottom;
        }
    }

    /** In the unit of the panel. */
    record Range(double low, double high) {

        /** The least range of a water's scale, K: noise of a probe must not fill the panel. */
        private static final double LEAST_K = 4;

        /** Of water between these, °C, with some room around it. */
        static Range ofWater(double low, double high) {
            double spare = Math.max(0.15 * (high - low), (LEAST_K - high + low) / 2);
            return new Range(Math.floor(low - spare), Math.ceil(high + spare));
        }
    }

    double x(long ms) {
        return place.left + (place.right - place.left) * (ms - fromMs) / (toMs - fromMs);
    }

    double y(double value) {
        return place.bottom - (place.bottom - place.top) * (value - range.low) / (range.high - range.low);
    }

    Pen.Point at(long ms, double value) {
        return new Pen.Point(x(ms), y(Math.clamp(value, range.low, range.high)));
    }

    boolean holds(long ms) {
        return ms >= fromMs && ms <= toMs;
    }
}

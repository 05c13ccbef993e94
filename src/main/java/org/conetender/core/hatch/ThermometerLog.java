package org.conetender.core.hatch;

import java.util.Arrays;
import org.conetender.core.unit.Units;

/**
 * Temperatures of one cone as a thermometer wrote them down, in order of time. Immutable; two
 * primitive arrays, so that a month at one reading a second stays small.
 */
public final class ThermometerLog {

    /** A pause shorter than this is never called a gap, ms (*guess*: water moves little in it). */
    private static final long SHORTEST_GAP_MS = 30 * Units.MINUTE_MS;

    /** A gap is longer than this many usual intervals (*guess*). */
    private static final int USUAL_INTERVALS = 4;

    /** A median of so many is as good as one of all (*guess*). */
    private static final int ENOUGH_INTERVALS = 10_000;

    private final long[] timesMs;
    private final double[] waterC;
    private final long gapMs;

    /**
     * @param timesMs milliseconds since 1970 UTC, strictly rising, at least one
     * @param waterC as many water temperatures, °C, finite
     * @throws IllegalArgumentException if they are not
     */
    public static ThermometerLog of(long[] timesMs, double[] waterC) {
        return new ThermometerLog(timesMs.clone(), waterC.clone());
    }

    /** The same of the first {@code n} of each. */
    public static ThermometerLog of(long[] timesMs, double[] waterC, int n) {
        return new ThermometerLog(Arrays.copyOf(timesMs, n), Arrays.copyOf(waterC, n));
    }

    private ThermometerLog(long[] timesMs, double[] waterC) {
        if (timesMs.length == 0 || timesMs.length != waterC.length) {
            throw new IllegalArgumentException("a log needs as many times as temperatures, at least one");
        }
        for (int i = 0; i < timesMs.length; i++) {
            if (!Double.isFinite(waterC[i]) || i > 0 && timesMs[i] <= timesMs[i - 1]) {
                throw new IllegalArgumentException("reading " + i + " is no temperature or out of order");
            }
        }
        this.timesMs = timesMs;
        this.waterC = waterC;
        this.gapMs = Math.max(SHORTEST_GAP_MS, USUAL_INTERVALS * usualIntervalMs());
    }

    public int size() {
        return timesMs.length;
    }

    public long timeMs(int i) {
        return timesMs[i];
    }

    public double waterC(int i) {
        return waterC[i];
    }

    public long firstMs() {
        return timesMs[0];
    }

    public long lastMs() {
        return timesMs[timesMs.length - 1];
    }

    /** Whether so much lies between reading {@code i} and the one before that nobody knows the water. */
    public boolean gapBefore(int i) {
        return i > 0 && timesMs[i] - timesMs[i - 1] > gapMs;
    }

    /** What the cysts did under this log, hour by hour, and when they will be ready. */
    public Replay replay(Replay.Question question) {
        return new Replayer(this, question).run();
    }

    /** Only how far the cysts came under this log, which takes a part of the time. */
    public Development development(Replay.Question question) {
        return new Replayer(this, question).walk();
    }

    /** The median interval, ms; in a long log that of every so many, which is as good. */
    private long usualIntervalMs() {
        int stride = 1 + timesMs.length / ENOUGH_INTERVALS;
        long[] intervals = new long[(timesMs.length - 1 + stride - 1) / stride];
        for (int i = 0; i < intervals.length; i++) {
            intervals[i] = timesMs[i * stride + 1] - timesMs[i * stride];
        }
        Arrays.sort(intervals);
        return intervals.length == 0 ? 0 : intervals[intervals.length / 2];
    }
}

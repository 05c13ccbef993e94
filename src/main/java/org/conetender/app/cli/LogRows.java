package org.conetender.app.cli;

import java.util.Arrays;
import org.conetender.core.hatch.ThermometerLog;
import org.conetender.core.unit.Text;

/**
 * The readings of a log as they stand in the file: time, temperature, line. Primitive arrays, twenty bytes
 * a reading, so that a month of one a second is read in a quarter of a gigabyte. One use, one thread.
 */
final class LogRows {

    /** A log of one hatch does not run longer; a wrong year would (*guess*). */
    private static final long LONGEST_MS = 62L * 24 * 3_600_000;

    /** So many bits hold the place of a reading beside its time; those of 62 days take the other 33. */
    private static final int PLACE_BITS = 30;

    private final int most;
    private int n;
    private long[] ms = new long[1024];
    private double[] waterC = new double[1024];
    private int[] lines = new int[1024];
    private boolean inOrder = true;

    /** @param most readings, at most 2^30 */
    LogRows(int most) {
        this.most = most;
    }

    boolean isEmpty() {
        return n == 0;
    }

    /** The time of the last line, ms since 1970 UTC. */
    long lastMs() {
        return n > 0 ? ms[n - 1] : Long.MIN_VALUE;
    }

    int line(int i) {
        return lines[i];
    }

    /** @throws BadLog as a sentence, when there are more than anybody needs */
    void add(long timeMs, double c, int line) throws BadLog {
        if (n == most) {
            throw new BadLog(Text.of("holds more than %d readings; thin it out: one reading a minute says as "
                    + "much about a hatch", most));
        }
        if (n == ms.length) {
            int larger = Math.min(most, n + n / 2);
            ms = Arrays.copyOf(ms, larger);
            waterC = Arrays.copyOf(waterC, larger);
            lines = Arrays.copyOf(lines, larger);
        }
        inOrder &= timeMs >= lastMs();
        ms[n] = timeMs;
        waterC[n] = c;
        lines[n++] = line;
    }

    /** Into the order of time, and of lines where times are equal. @throws BadLog as a sentence */
    void sort() throws BadLog {
        int first = 0;
        int last = 0;
        for (int i = 1; i < n; i++) {
            first = ms[i] < ms[first] ? i : first;
            last = ms[i] > ms[last] ? i : last;
        }
        if (ms[last] - ms[first] > LONGEST_MS) {
            throw new BadLog(Text.of("lines %d and %d lie more than 62 days apart; give the log of one "
                    + "hatch, and check the year", lines[first], lines[last]));
        }
        if (!inOrder) {
            // Times with their places in the low bits: sorted as plain numbers, equal times keep their order.
            long[] keys = new long[n];
            for (int i = 0; i < n; i++) {
                keys[i] = ms[i] - ms[first] << PLACE_BITS | i;
            }
            Arrays.sort(keys);
            arrange(keys);
        }
    }

    private void arrange(long[] keys) {
        long[] oldMs = ms;
        double[] oldC = waterC;
        int[] oldLines = lines;
        ms = new long[n];
        waterC = new double[n];
        lines = new int[n];
        for (int i = 0; i < n; i++) {
            int from = (int) (keys[i] & (1L << PLACE_BITS) - 1);
            ms[i] = oldMs[from];
            waterC[i] = oldC[from];
            lines[i] = oldLines[from];
        }
    }

    /** Of readings at one time the first is kept. */
    void dropRepeats(Sentences remarks) {
        int kept = 0;
        for (int i = 1; i < n; i++) {
            if (ms[i] == ms[kept]) {
                remarks.add("line %d repeats the time of line %d (%.2f and %.2f °C): the first was kept.",
                        lines[i], lines[kept], waterC[i], waterC[kept]);
            } else {
                kept++;
                ms[kept] = ms[i];
                waterC[kept] = waterC[i];
                lines[kept] = lines[i];
            }
        }
        n = kept + 1;
    }

    ThermometerLog log() {
        return ThermometerLog.of(ms, waterC, n);
    }
}

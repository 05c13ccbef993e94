package org.conetender.sim.search;

import java.util.Arrays;

/**
 * The likenesses that were reached, by their digests, with the way to each: the state it came from and the
 * move. Open addressing; not for two threads that write.
 */
final class Seen {

    private static final int FIRST = 1 << 16;
    /** Fuller than this it grows. */
    private static final double FULL = 0.6;

    private long[] high = new long[FIRST];
    private long[] low = new long[FIRST];
    private int[] from = new int[FIRST];
    private byte[] by = new byte[FIRST];
    private int size;

    /** Files a new one. @param parent its number, or −1  @return its own number; −1 if it was known */
    int add(Hash h, int parent, int move) {
        return add(h.high(), h.low(), parent, move);
    }

    /** Files all of them; the way to each stays there. */
    void add(Seen other) {
        for (int i = 0; i < other.high.length; i++) {
            if (other.high[i] != 0 || other.low[i] != 0) {
                add(other.high[i], other.low[i], -1, 0);
            }
        }
    }

    private int add(long h, long l, int parent, int move) {
        int at = place(high, low, h, l);
        if (high[at] != 0 || low[at] != 0) {
            return -1;
        }
        high[at] = h;
        low[at] = l;
        if (size == from.length) {
            from = Arrays.copyOf(from, 2 * size);
            by = Arrays.copyOf(by, 2 * size);
        }
        from[size] = parent;
        by[size] = (byte) move;
        size++;
        if (size > FULL * high.length) {
            grow();
        }
        return size - 1;
    }

    int size() {
        return size;
    }

    /** The moves that lead to that one, from the beginning. */
    int[] way(int number) {
        int[] way = new int[64];
        int n = 0;
        for (int at = number; from[at] >= 0; at = from[at]) {
            way = n == way.length ? Arrays.copyOf(way, 2 * n) : way;
            way[n++] = by[at];
        }
        int[] out = new int[n];
        for (int i = 0; i < n; i++) {
            out[i] = way[n - 1 - i];
        }
        return out;
    }

    private void grow() {
        long[] h = new long[2 * high.length];
        long[] l = new long[h.length];
        for (int i = 0; i < high.length; i++) {
            if (high[i] != 0 || low[i] != 0) {
                int at = place(h, l, high[i], low[i]);
                h[at] = high[i];
                l[at] = low[i];
            }
        }
        high = h;
        low = l;
    }

    private static int place(long[] high, long[] low, long h, long l) {
        int at = (int) l & high.length - 1;
        while ((high[at] != 0 || low[at] != 0) && (high[at] != h || low[at] != l)) {
            at = at + 1 & high.length - 1;
        }
        return at;
    }
}

package org.conetender.sim.search;

import java.util.Optional;

/** A 128-bit digest of figures added one by one; of 10^7 states two meet by chance once in 10^24 searches. */
final class Hash {

    private static final long ODD = 0x9E3779B97F4A7C15L;
    private static final long OTHER = 0xC2B2AE3D27D4EB4FL;

    private long high = ODD;
    private long low = OTHER;

    Hash add(long v) {
        high = mixed(high ^ v * OTHER) + ODD;
        low = mixed(low + v * ODD) ^ high;
        return this;
    }

    Hash add(boolean v) {
        return add(v ? 1 : 2);
    }

    Hash add(String word) {
        return add(word.hashCode());
    }

    Hash add(Optional<?> there) {
        return add(there.isPresent());
    }

    /** How many of these bounds it has reached. */
    Hash add(long ms, long... boundsMs) {
        int n = 0;
        for (long b : boundsMs) {
            n += ms >= b ? 1 : 0;
        }
        return add(n);
    }

    private static long mixed(long v) {
        long x = (v ^ v >>> 30) * 0xBF58476D1CE4E5B9L;
        x = (x ^ x >>> 27) * 0x94D049BB133111EBL;
        return x ^ x >>> 31;
    }

    long high() {
        return high;
    }

    long low() {
        return low;
    }
}

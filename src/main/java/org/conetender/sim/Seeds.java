package org.conetender.sim;

import java.util.SplittableRandom;

/**
 * Turns one seed and a name into an independent stream, so that adding a part to the world never moves
 * the draws of another part. Any thread; each stream belongs to whoever asked for it.
 */
public final class Seeds {

    // FNV-1a, 64 bit: offset basis and prime as published with the algorithm.
    static final long BASIS = 0xcbf29ce484222325L;
    static final long PRIME = 0x100000001b3L;

    private Seeds() {}

    /** The stream of that name under that seed; the same pair always gives the same numbers. */
    public static SplittableRandom of(long seed, String name) {
        long h = BASIS;
        for (int i = 0; i < name.length(); i++) {
            h = (h ^ name.charAt(i)) * PRIME;
        }
        // The splittable generator mixes its seed itself; rotating keeps seed and name from cancelling.
        return new SplittableRandom(h ^ Long.rotateLeft(seed * PRIME, 17));
    }

    /** A factor with median 1 and this log-standard deviation, kept within 2.5 deviations. */
    static double logFactor(SplittableRandom random, double logSd) {
        double z = Math.clamp(random.nextGaussian(), -2.5, 2.5);
        return Math.exp(logSd * z);
    }
}

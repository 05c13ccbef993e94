package org.conetender.sim.search;

import java.util.Set;

/**
 * How far the search goes.
 *
 * @param states it stops when so many were reached
 * @param depth moves one after another, at most
 * @param faults things that are wrong at the same time, at most
 * @param kills unexpected ends of the process within ten minutes, at most
 * @param troubles what may go wrong
 * @param threads that work
 */
public record Bounds(int states, int depth, int faults, int kills, Set<String> troubles, int threads) {

    /** For a build: minutes at most. */
    public static Bounds reduced(int threads) {
        return new Bounds(Integer.MAX_VALUE, 9, 1, 1, Set.of(), threads);
    }

    /** By command. */
    public static Bounds full(int threads) {
        return new Bounds(Integer.MAX_VALUE, Integer.MAX_VALUE, 1, 3, Set.of(), threads);
    }
}

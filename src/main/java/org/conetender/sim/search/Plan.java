package org.conetender.sim.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The passes of a search: each fitting with nothing wrong, in haste, with sudden ends of the process, and
 * with each trouble, alone and with a sudden end.
 *
 * @param fitted the cone  @param bounds of that pass
 */
public record Plan(Fitted fitted, Bounds bounds) {

    /** States of the least pass for a build, together a minute or two of one processor. */
    public static final int REDUCED = 1_500;
    /** And by command; together more than a million different ones. */
    public static final int FULL = 25_000;

    /** @param states of the least pass; those in which several things may happen have more */
    public static List<Plan> passes(int states) {
        List<Plan> all = new ArrayList<>();
        for (Fitted f : Fitted.values()) {
            all.add(new Plan(f, new Bounds(4 * states, Set.of(), 0, false)));
            all.add(new Plan(f, new Bounds(2 * states, Set.of(), 0, true)));
            all.add(new Plan(f, new Bounds(2 * states, Set.of(), 3, false)));
            for (Move.Trouble t : Move.Trouble.values()) {
                if (fits(f, t)) {
                    all.add(new Plan(f, new Bounds(states, Set.of(t), 0, false)));
                    all.add(new Plan(f, new Bounds(states, Set.of(t), 1, false)));
                }
            }
        }
        return all;
    }

    private static boolean fits(Fitted f, Move.Trouble t) {
        return f == Fitted.SIPHONING || t != Move.Trouble.LEVEL_LIES && t != Move.Trouble.NO_AIR;
    }
}

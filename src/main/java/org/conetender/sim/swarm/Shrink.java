package org.conetender.sim.swarm;

import java.util.ArrayList;
import java.util.List;
import org.conetender.sim.Invariants.Violation;
import org.conetender.sim.Parts;

/**
 * Makes a story that breaks an invariant as short as it can be while it still breaks the same one: first
 * halves of its events are left out, then quarters, down to single ones, until none can be spared
 * (Zeller's ddmin), and nothing is told after the end. Each attempt is a telling, and they are counted: what
 * a report costs must not hang on what was found.
 */
final class Shrink {

    private static final int HOUR_S = 3_600;

    private final Parts parts;
    private final String rule;
    private final Runnable telling;
    private int left;

    private Shrink(Parts parts, String rule, Most most) {
        this.parts = parts;
        this.rule = rule;
        this.telling = most.telling();
        this.left = most.tellings();
    }

    /** @param tellings that it may take  @param telling is run before each */
    record Most(int tellings, Runnable telling) {}

    /** @param tale still breaks it  @param whole whether no event can be spared; else tellings ran out */
    record Shrunk(Tale tale, boolean whole) {}

    /** @param found what the story broke */
    static Shrunk of(Tale tale, Violation found, Parts parts, Most most) {
        Shrink s = new Shrink(parts, found.rule(), most);
        Tale ended = tale.until((int) (found.atMs() / 1_000 / HOUR_S) + 1);
        Tale least = s.breaks(ended) ? s.shorter(ended) : tale;
        return new Shrunk(least, s.left >= 0);
    }

    private boolean breaks(Tale t) {
        left = Math.max(-1, left - 1);
        telling.run();
        return left >= 0 && Play.of(t, parts).broken().stream().anyMatch(v -> v.rule().equals(rule));
    }

    private Tale shorter(Tale tale) {
        Tale best = tale;
        int parts = 2;
        while (!best.events().isEmpty()) {
            int size = Math.ceilDiv(best.events().size(), parts);
            Tale less = without(best, size);
            if (less != null) {
                best = less;
                parts = Math.max(2, parts - 1);
            } else if (size == 1) {
                return best;
            } else {
                parts = Math.min(best.events().size(), 2 * parts);
            }
        }
        return best;
    }

    /** The story without one of its pieces of that size, if it still breaks; null when it needs them all. */
    private Tale without(Tale tale, int size) {
        for (int from = 0; from < tale.events().size(); from += size) {
            List<Event> left = new ArrayList<>(tale.events());
            left.subList(from, Math.min(left.size(), from + size)).clear();
            Tale less = tale.with(left);
            if (breaks(less)) {
                return less;
            }
        }
        return null;
    }
}

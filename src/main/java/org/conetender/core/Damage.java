package org.conetender.core;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Lives;
import org.conetender.core.unit.Moment;

/**
 * What is written down of a record that was found damaged, before the life begins that goes on with what
 * could be read of it: that the heaters are locked. Whoever had seen an earlier damage has not seen this one.
 */
public final class Damage {

    private Damage() {}

    /**
     * The facts still owed, numbered after those kept; none when each damage stands among them. Pure.
     *
     * @param damages every damage that the store knows of, in words that no other has, oldest first
     */
    public static List<Fact> facts(List<Fact> kept, List<String> damages, Moment now) {
        if (damages.isEmpty()) {
            return List.of();
        }
        Set<String> known = new HashSet<>();
        for (Fact f : kept) {
            if (f.change() instanceof Change.Tripped(String guard, String why)
                    && guard.equals(Lives.DAMAGED)) {
                known.add(why);
            }
        }
        List<Fact> out = new ArrayList<>();
        long seq = kept.isEmpty() ? 1 : kept.getLast().seq() + 1;
        for (String what : damages) {
            if (known.add(what)) {
                out.add(new Fact(seq + out.size(), now, "", "", new Change.Tripped(Lives.DAMAGED, what)));
            }
        }
        if (!out.isEmpty()) {
            out.addAll(Opening.unseen(kept, Set.of(Lives.DAMAGED), seq + out.size(), now));
        }
        return List.copyOf(out);
    }
}

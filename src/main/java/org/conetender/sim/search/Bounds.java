package org.conetender.sim.search;

import java.util.Set;
import java.util.stream.Stream;
import org.conetender.core.unit.Text;

/**
 * How far one pass of the search goes.
 *
 * @param states it stops when so many were reached
 * @param troubles what may go wrong, one at a time, as often as it likes
 * @param exits unexpected ends of the process within ten minutes, at most
 * @param haste whether people say the next before the last is recorded
 */
public record Bounds(int states, Set<Move.Trouble> troubles, int exits, boolean haste) {

    /** As a report has it. */
    public String words() {
        String what = troubles.isEmpty() ? "" : String.join(", ", troubles.stream().sorted()
                .map(Move.Trouble::word).toList());
        String ends = exits == 0 ? "" : exits == 1 ? "one sudden end" : Text.of("%d sudden ends", exits);
        String said = haste ? "in haste" : "";
        String all = String.join("; ", Stream.of(what, ends, said).filter(s -> !s.isEmpty()).toList());
        return all.isEmpty() ? "nothing wrong" : all;
    }
}

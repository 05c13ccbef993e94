package org.conetender.sim.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Settings;

/**
 * Breadth first through every likeness that can be reached within bounds. Each state is a real one; each
 * move is one or more real ticks, judged one by one. One thread; the same bounds always give the same states.
 */
public final class Search {

    /** Progress is told after so many states. */
    private static final int BLOCK = 256;
    /** What is tried from every state without being a move of its own. */
    private static final String GOES_HOME = "mend all, clean the cone, acknowledge every alarm, begin anew";

    private final Moves moves;
    private final Bounds bounds;
    private final Turn turn;
    private final Home home;
    private final Seen seen = new Seen();
    private final Map<String, Finding> broken = new TreeMap<>();
    private final Consumer<Integer> progress;
    private long edges;
    private int depth;

    /**
     * A rule that broke, and how. @param what in words  @param course the moves, in words, from the
     * beginning
     */
    public record Finding(String what, List<String> course) {}

    /**
     * What came of it.
     *
     * @param states told apart  @param edges moves tried  @param ticks real ones, all judged
     * @param depth moves away from a calm batch up to which everything was tried
     * @param complete whether nothing more can be reached within the bounds
     * @param findings by rule, the shortest of each
     */
    public record Outcome(int states, long edges, long ticks, int depth, boolean complete,
                          Map<String, Finding> findings) {}

    private record Standing(int number, Node node) {}

    /** @param progress hears how many states were reached */
    public Search(Settings settings, Daemon daemon, Bounds bounds, Consumer<Integer> progress) {
        this.bounds = bounds;
        this.moves = new Moves(bounds, settings.cones().getFirst());
        this.turn = new Turn(settings, daemon);
        this.home = new Home(settings, turn);
        this.progress = progress;
    }

    /** Searches until nothing new is reached, there are enough states, or so many rules broke. */
    public Outcome run(int mostFindings) {
        List<Standing> frontier = calm();
        while (!frontier.isEmpty()) {
            List<Standing> next = new ArrayList<>();
            for (int i = 0; i < frontier.size(); i++) {
                if (seen.size() >= bounds.states() || broken.size() >= mostFindings) {
                    return outcome(false);
                }
                expand(frontier.get(i), next);
                if (i % BLOCK == 0) {
                    progress.accept(seen.size());
                }
            }
            depth++;
            frontier = next;
        }
        return outcome(true);
    }

    /**
     * The states of one calm batch, from which it begins: else most of a bounded search would see none ripe.
     */
    private List<Standing> calm() {
        Node at = turn.first();
        List<Standing> out = new ArrayList<>(List.of(new Standing(seen.add(Likeness.of(at), -1, 0), at)));
        for (Move move : Move.CALM) {
            if (moves.possible(at, move)) {
                int from = out.getLast().number();
                at = turn.after(at, move);
                int number = seen.add(Likeness.of(at), from, Move.ALL.indexOf(move));
                broke(from, Move.ALL.indexOf(move));
                if (number < 0) {
                    return out;
                }
                out.add(new Standing(number, at));
            }
        }
        return out;
    }

    /** The states that were reached. */
    Seen seen() {
        return seen;
    }

    private Outcome outcome(boolean complete) {
        return new Outcome(seen.size(), edges, turn.ticks(), depth, complete, broken);
    }

    private void expand(Standing s, List<Standing> next) {
        Optional<Ask> named = s.node().settled() ? home.named(s.node()) : Optional.empty();
        home.leaves(s.node());
        home.works(s.node());
        broke(s.number(), -1);
        for (int m = 0; m < Move.ALL.size(); m++) {
            Move move = Move.ALL.get(m);
            if (moves.possible(s.node(), move)) {
                edges++;
                Node n = turn.after(s.node(), move);
                judge(s.node(), move, n, named);
                if (!broke(s.number(), m)) {
                    int number = seen.add(Likeness.of(n), s.number(), m);
                    if (number >= 0) {
                        next.add(new Standing(number, n));
                    }
                }
            }
        }
    }

    private void judge(Node before, Move move, Node after, Optional<Ask> named) {
        if (move instanceof Move.Misfits) {
            home.refused(before, turn.last());
        } else if (move instanceof Move.Says(Ask said)) {
            if (said instanceof Ask.Did(Step s) && (s == Step.CLEANED || s == Step.DRAINED)
                    && before.settled()) {
                home.reachable(before, after, s);
            }
            if (named.filter(said::equals).isPresent()) {
                home.taken(before, said, turn.last());
            }
        }
    }

    /** Files what broke. @param move the last; −1 for what was tried from there without being one */
    private boolean broke(int number, int move) {
        List<String> what = turn.takeBroken();
        for (String w : what) {
            broken.computeIfAbsent(w.substring(0, w.indexOf(':')), _ -> new Finding(w, course(number, move)));
        }
        return !what.isEmpty();
    }

    private List<String> course(int number, int move) {
        List<String> out = new ArrayList<>();
        for (int m : seen.way(number)) {
            out.add(Move.ALL.get(m).words());
        }
        out.add(move < 0 ? GOES_HOME : Move.ALL.get(move).words());
        return out;
    }

    /** Leads through a course once more. @return what breaks on it, in words */
    public List<String> replay(List<String> course) {
        List<String> what = new ArrayList<>();
        Node at = turn.first();
        for (String words : course) {
            Optional<Move> move = Move.ALL.stream().filter(m -> m.words().equals(words)).findFirst();
            if (move.isEmpty()) {
                home.leaves(at);
                home.works(at);
            } else {
                Node n = turn.after(at, move.get());
                judge(at, move.get(), n, at.settled() ? home.named(at) : Optional.empty());
                at = n;
            }
            what.addAll(turn.takeBroken());
        }
        return what;
    }
}

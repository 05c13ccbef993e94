package org.conetender.sim.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import org.conetender.core.settings.Settings;

/**
 * Breadth first through every likeness that can be reached. Each state is a real one; each move is one or more
 * real ticks, judged one by one. Blocks of states are expanded on all threads and filed in order by one, so that
 * the same bounds always give the same states, whatever the threads.
 */
public final class Search {

    private static final int BLOCK = 4096;
    private static final int PART = 64;

    private final Settings settings;
    private final Daemon daemon;
    private final Bounds bounds;
    private final Moves moves;
    private final Seen seen = new Seen();
    private final Map<String, Finding> broken = new TreeMap<>();
    private final Consumer<Progress> progress;
    private long edges;
    private int depth;

    /** @param states reached  @param edges tried  @param depth moves from the beginning  @param left in it */
    public record Progress(long states, long edges, int depth, int left) {}

    /** A rule that broke, and how. @param what in words  @param course the moves, in words, from the beginning */
    public record Finding(String what, List<String> course) {}

    /**
     * What came of it.
     *
     * @param states told apart  @param edges moves tried  @param depth of the last state
     * @param complete whether nothing more could be reached within the bounds
     * @param findings by rule, the shortest of each
     */
    public record Outcome(long states, long edges, int depth, boolean complete, Map<String, Finding> findings) {}

    private record Child(Hash key, int parent, int move, Node node, List<String> broke) {}

    private record Standing(int number, Node node) {}

    public Search(Settings settings, Daemon daemon, Bounds bounds, Consumer<Progress> progress) {
        this.settings = settings;
        this.daemon = daemon;
        this.bounds = bounds;
        this.moves = new Moves(bounds, settings.cones().getFirst());
        this.progress = progress;
    }

    /**
     * Searches until nothing new is reached, a bound is met, or so many rules broke.
     *
     * @throws InterruptedException if the caller was interrupted
     */
    public Outcome run(int mostFindings) throws InterruptedException {
        ExecutorService pool = Executors.newFixedThreadPool(bounds.threads());
        try {
            Turn turn = new Turn(settings, daemon);
            Node first = turn.first();
            seen.add(Likeness.of(first), -1, 0);
            List<Standing> frontier = List.of(new Standing(0, first));
            while (!frontier.isEmpty() && depth < bounds.depth() && seen.size() < bounds.states()
                    && broken.size() < mostFindings) {
                depth++;
                frontier = next(frontier, pool, mostFindings);
            }
            return new Outcome(seen.size(), edges, depth, frontier.isEmpty(), broken);
        } catch (ExecutionException e) {
            throw new IllegalStateException("the search itself failed: " + e.getCause(), e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private List<Standing> next(List<Standing> frontier, ExecutorService pool, int mostFindings)
            throws InterruptedException, ExecutionException {
        List<Standing> next = new ArrayList<>();
        for (int at = 0; at < frontier.size() && seen.size() < bounds.states(); at += BLOCK) {
            List<Future<List<Child>>> parts = new ArrayList<>();
            int end = Math.min(frontier.size(), at + BLOCK);
            for (int i = at; i < end; i += PART) {
                List<Standing> part = frontier.subList(i, Math.min(end, i + PART));
                parts.add(pool.submit(() -> children(part)));
            }
            // Nobody reads what was seen while it is written.
            List<Child> all = new ArrayList<>();
            for (Future<List<Child>> p : parts) {
                all.addAll(p.get());
            }
            all.forEach(c -> file(c, next));
            progress.accept(new Progress(seen.size(), edges, depth, frontier.size() - end));
            if (broken.size() >= mostFindings) {
                break;
            }
        }
        return next;
    }

    private void file(Child c, List<Standing> next) {
        edges++;
        for (String what : c.broke()) {
            String rule = what.substring(0, what.indexOf(':'));
            broken.computeIfAbsent(rule, _ -> new Finding(what, course(c)));
        }
        if (c.node() != null && c.broke().isEmpty()) {
            int number = seen.add(c.key(), c.parent(), c.move());
            if (number >= 0) {
                next.add(new Standing(number, c.node()));
            }
        }
    }

    private List<String> course(Child c) {
        List<String> out = new ArrayList<>();
        for (int m : seen.way(c.parent())) {
            out.add(Move.ALL.get(m).words());
        }
        out.add(Move.ALL.get(c.move()).words());
        return out;
    }

    private List<Child> children(List<Standing> part) {
        List<Child> out = new ArrayList<>();
        Turn turn = new Turn(settings, daemon);
        for (Standing s : part) {
            for (int m = 0; m < Move.ALL.size(); m++) {
                Move move = Move.ALL.get(m);
                if (moves.possible(s.node(), move)) {
                    Node n = turn.after(s.node(), move);
                    Hash key = Likeness.of(n);
                    out.add(new Child(key, s.number(), m, seen.has(key) ? null : n, turn.takeBroken()));
                }
            }
        }
        return out;
    }
}

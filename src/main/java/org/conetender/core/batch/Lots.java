package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.conetender.core.hatch.Lesson;

/**
 * What the batches of every lot have taught, across all cones, as the facts have it. Nothing is reckoned
 * here: what is known of a lot follows from its lessons ({@link org.conetender.core.hatch.Learnt}).
 *
 * @param all oldest first
 * @param densities what the sub-samples say of nauplii a gram
 */
public record Lots(List<Kept> all, Densities densities) {

    /** Lessons alone, without the volumes of what was counted. */
    public Lots(List<Kept> all) {
        this(all, Densities.NONE);
    }

    /** @param cone where it was learnt  @param seq of its fact  @param source of its fact */
    public record Kept(String cone, long seq, String source, Change.Taught what) {

        static Optional<Kept> of(Fact f) {
            return f.change() instanceof Change.Taught t
                    ? Optional.of(new Kept(f.cone(), f.seq(), f.source(), t)) : Optional.empty();
        }

        /** Whether that report taught it: the lesson stands beside its report, in one transaction. */
        public boolean by(Fact report) {
            return by(report.cone(), report.seq(), report.source());
        }

        boolean by(String reportCone, long reportSeq, String reportSource) {
            return cone.equals(reportCone) && (source.isEmpty()
                    ? reportSource.isEmpty() && seq == reportSeq + 1
                    : Fact.oneRequest(seq, source, reportSeq, reportSource));
        }
    }

    public static final Lots NONE = new Lots(List.of());

    /** The oldest go beyond that (guess: a year of three cones, looked at four times a batch). */
    static final int MOST = 4_000;

    /** So many other lots of a source are asked (guess: more would change little). */
    private static final int RELATIVES = 3;

    Lots after(Fact f) {
        Optional<Kept> taught = Kept.of(f);
        if (taught.isEmpty()) {
            return this;
        }
        // One copy of references: a start folds years of lessons, one after the other.
        Object[] before = all.toArray();
        int forgotten = Math.max(0, before.length + 1 - MOST);
        Kept[] next = new Kept[before.length + 1 - forgotten];
        System.arraycopy(before, forgotten, next, 0, next.length - 1);
        next[next.length - 1] = taught.get();
        return new Lots(Collections.unmodifiableList(Arrays.asList(next)), densities);
    }

    /** With what was just counted in that batch. */
    Lots counted(Fact f, Batch b) {
        Densities next = densities.after(f, b);
        return next == densities ? this : new Lots(all, next);
    }

    /**
     * Nauplii that a gram in that batch gives, by all counts of its lot, or by its own where nobody named it.
     *
     * @param lot its label  @param ripe degree-hours by which nine in ten have hatched
     */
    public double naupliiPerGram(String lot, String cone, long batch, double ripe) {
        return densities.perGram(ripe, all.stream().filter(k -> unnamed(lot) ? is(k, lot, cone, batch)
                : k.what().lot().equals(lot)));
    }

    /** As if that report had never been made. */
    Lots without(Fact report) {
        List<Kept> left = all.stream().filter(k -> !k.by(report)).toList();
        return left.size() == all.size() ? this : new Lots(left, densities);
    }

    /** What a tin is called as long as nobody names it (the default of cone.usual.lot). */
    private static final String UNNAMED = "unknown";

    /** Whether that is no label: such tins have nothing to do with one another. */
    public static boolean unnamed(String lot) {
        return lot.isEmpty() || lot.equals(UNNAMED);
    }

    /** Lessons of that batch. */
    public List<Lesson> own(String lot, String cone, long batch) {
        return once(all.stream().filter(k -> is(k, lot, cone, batch)).map(k -> k.what().lesson()).toList());
    }

    /** Lessons of the lot's other batches, a list for each, in the order in which they began to teach. */
    public List<List<Lesson>> others(String lot, String cone, long batch) {
        return byBatch(k -> k.what().lot().equals(lot) && !is(k, lot, cone, batch));
    }

    /** Lessons of other lots of the same source, lot by lot and batch by batch; of the newest few. */
    public List<List<List<Lesson>>> relatives(String lot) {
        String source = source(lot);
        Map<String, Long> last = new TreeMap<>();
        all.stream().filter(k -> !source.isEmpty() && source(k.what().lot()).equals(source)
                && !k.what().lot().equals(lot)).forEach(k -> last.put(k.what().lot(), k.seq()));
        return last.entrySet().stream().sorted(Map.Entry.<String, Long>comparingByValue().reversed())
                .limit(RELATIVES).map(e -> byBatch(k -> k.what().lot().equals(e.getKey()))).toList();
    }

    /**
     * The source of a lot: what its label begins with up to the first digit, as in {@code Lake-0417}; empty
     * where it begins with one, and nobody can tell.
     */
    static String source(String lot) {
        int digit = 0;
        while (digit < lot.length() && !Character.isDigit(lot.charAt(digit))) {
            digit++;
        }
        return lot.substring(0, digit).strip();
    }

    private List<List<Lesson>> byBatch(Predicate<Kept> which) {
        Map<String, List<Lesson>> batches = new LinkedHashMap<>();
        all.stream().filter(which).forEach(k -> batches.computeIfAbsent(k.what().batch() + "/" + k.cone(),
                _ -> new ArrayList<>()).add(k.what().lesson()));
        return batches.values().stream().map(Lots::once).toList();
    }

    /**
     * Of one batch: the first nauplii came once, so the first who saw them counts, and nobody has seen none
     * after that; of verdicts on its harvest the last counts.
     */
    private static List<Lesson> once(List<Lesson> lessons) {
        List<Lesson> out = new ArrayList<>();
        for (Lesson l : lessons) {
            boolean seen = out.stream().anyMatch(o -> o.sight() instanceof Lesson.Sight.First);
            switch (l.sight()) {
                case Lesson.Sight.First _, Lesson.Sight.NoneYet _ -> {
                    if (!seen) {
                        out.add(l);
                    }
                }
                case Lesson.Sight.Judged _ -> {
                    out.removeIf(o -> o.sight() instanceof Lesson.Sight.Judged);
                    out.add(l);
                }
                case Lesson.Sight.Counted _ -> out.add(l);
            }
        }
        return List.copyOf(out);
    }

    private static boolean is(Kept k, String lot, String cone, long batch) {
        return k.what().lot().equals(lot) && k.cone().equals(cone) && k.what().batch() == batch;
    }
}

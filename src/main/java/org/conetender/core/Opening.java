package org.conetender.core;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Lives;
import org.conetender.core.face.Versions;
import org.conetender.core.image.Ask;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;

/**
 * What each life of the process writes down first, before anything is carried on from the record: that it
 * began, and under which version each device is described, where that changed. If the lives before kept
 * dying, also that the heaters are locked, and that the last request is set aside; and that what it brings
 * about anew was seen by nobody. No batch is folded here,
 * so that a request that kills the fold cannot hide its own deaths.
 */
public final class Opening {

    private Opening() {}

    /** The facts with which this life begins, numbered after those kept. Pure. */
    public static List<Fact> facts(Settings settings, List<Fact> kept, Optional<Checkpoint> checkpoint,
            Moment now) {
        List<Fact> out = new ArrayList<>(life(kept, checkpoint, now));
        out.addAll(unseen(kept, out));
        out.addAll(Versions.of(kept).due(settings, now, out.getLast().seq() + 1));
        return List.copyOf(out);
    }

    private static List<Fact> life(List<Fact> kept, Optional<Checkpoint> checkpoint, Moment now) {
        long seq = kept.isEmpty() ? 1 : kept.getLast().seq() + 1;
        Fact began = new Fact(seq, now, "", "", new Change.Began(lastSeen(kept, checkpoint)));
        Lives before = Lives.of(kept);
        Lives lives = before.after(began);
        // A life that was left in good order proves nothing against what was asked in it.
        if (!before.running() || !lives.died()) {
            return List.of(began);
        }
        Boots boots = boots(kept, began);
        if (!lives.looping(boots)) {
            return List.of(began);
        }
        List<Fact> out = new ArrayList<>(List.of(began));
        Optional<Change.SetAside> aside = last(kept, lives, boots);
        aside.ifPresent(a -> out.add(new Fact(seq + out.size(), now, "", "", a)));
        String why = "the daemon died three times within ten minutes"
                + aside.map(a -> "; the last report (" + a.what() + ") was set aside")
                        .orElse("");
        out.add(new Fact(seq + out.size(), now, "", "", new Change.Tripped(Lives.LOOP, why)));
        return List.copyOf(out);
    }

    /** Whoever had seen an earlier power cut, or an earlier loop of deaths, has not seen this one. */
    private static List<Fact> unseen(List<Fact> kept, List<Fact> begun) {
        Moment now = begun.getFirst().at();
        Optional<Fact> before = kept.stream().filter(f -> f.change() instanceof Change.Began)
                .reduce((a, b) -> b);
        Set<String> anew = new HashSet<>();
        if (before.filter(b -> b.at().sameBoot(now)).isEmpty()) {
            anew.add(AlarmKind.DOUBTFUL.id());
        }
        if (begun.stream().anyMatch(f -> f.change() instanceof Change.Tripped)) {
            anew.add(AlarmKind.CRASH_LOOP.id());
        }
        return unseen(kept, anew, begun.getLast().seq() + 1, now);
    }

    /**
     * That nobody has seen these alarms, wherever somebody had and their end was not written down.
     *
     * @param seq number of the first fact
     */
    static List<Fact> unseen(List<Fact> kept, Set<String> alarms, long seq, Moment now) {
        Map<String, Set<String>> conesOf = new TreeMap<>();
        for (Fact f : kept) {
            if (f.change() instanceof Change.Told(Ask.Acknowledge(String alarm)) && alarms.contains(alarm)) {
                conesOf.computeIfAbsent(alarm, _ -> new TreeSet<>()).add(f.cone());
            } else if (f.change() instanceof Change.AlarmOver(String alarm)) {
                conesOf.getOrDefault(alarm, new TreeSet<>()).remove(f.cone());
            }
        }
        List<Fact> out = new ArrayList<>();
        conesOf.forEach((alarm, cones) -> cones.forEach(cone ->
                out.add(new Fact(seq + out.size(), now, cone, "", new Change.AlarmOver(alarm)))));
        return out;
    }

    /**
     * Facts that are left out of the book, by number: of each request that was set aside, and of no other
     * that had, or will have, the same id. All of one request have one moment.
     */
    public static Set<Long> aside(List<Fact> facts) {
        return aside(facts, List.of());
    }

    /** The same of a record and the opening that follows it, which belongs to no request. */
    static Set<Long> aside(List<Fact> kept, List<Fact> opening) {
        Set<Long> out = new HashSet<>();
        for (int i = 0; i < kept.size(); i++) {
            if (kept.get(i).change() instanceof Change.SetAside a) {
                out.addAll(of(a, kept.subList(0, i)));
            }
        }
        for (Fact f : opening) {
            if (f.change() instanceof Change.SetAside a) {
                out.addAll(of(a, kept));
            }
        }
        return out;
    }

    private static List<Long> of(Change.SetAside a, List<Fact> before) {
        List<Fact> its = before.stream().filter(f -> f.source().equals(a.request())).toList();
        return its.stream().filter(f -> f.at().equals(its.getLast().at())).map(Fact::seq).toList();
    }

    private static Boots boots(List<Fact> kept, Fact began) {
        Boots boots = Boots.NONE.heard(kept.stream().map(Fact::at)::iterator);
        Optional<Moment> last = ((Change.Began) began.change()).lastSeen();
        return (last.isEmpty() ? boots : boots.heard(last.get())).heard(began.at());
    }

    /**
     * The last request that was carried out in a life that died, if it came at most ten minutes before the
     * first of the exits: one that was lived with for longer is not what kills us.
     */
    private static Optional<Change.SetAside> last(List<Fact> kept, Lives lives, Boots boots) {
        Set<Long> gone = aside(kept);
        Optional<Fact> found = Optional.empty();
        Optional<Fact> died = Optional.empty();
        for (Fact f : kept) {
            boolean first = found.isEmpty() || !f.source().equals(found.get().source());
            if (!f.source().isEmpty() && !gone.contains(f.seq()) && first) {
                found = Optional.of(f);
            }
            // A life that was left in good order takes its requests with it; one that begins anew does not.
            died = f.change() instanceof Change.Began ? found : died;
            found = f.change() instanceof Change.Left ? died : found;
        }
        return found.filter(f -> boots.between(f.at(), lives.exits().getFirst()).leastMs()
                <= Lives.WITHIN_MS)
                .map(f -> new Change.SetAside(f.source(), told(f) ? f.cone() : "", words(f)));
    }

    /** Whether the person must say anew how that cone stands. */
    private static boolean told(Fact f) {
        return f.change() instanceof Change.Told(Ask ask) && Lives.wanted(ask);
    }

    private static String words(Fact f) {
        return f.change() instanceof Change.Told(Ask ask) ? Lives.words(ask, f.cone())
                : "a request" + (f.cone().isEmpty() ? "" : " of cone " + f.cone());
    }

    /** The last moment the record knows: of two boots the checkpoint's is later if no fact saw it. */
    private static Optional<Moment> lastSeen(List<Fact> facts, Optional<Checkpoint> checkpoint) {
        Optional<Moment> fact = facts.isEmpty() ? Optional.empty() : Optional.of(facts.getLast().at());
        if (checkpoint.isEmpty() || fact.isEmpty()) {
            return checkpoint.map(Checkpoint::at).or(() -> fact);
        }
        Moment a = checkpoint.get().at();
        boolean met = facts.stream().anyMatch(f -> f.at().sameBoot(a));
        boolean later = a.sameBoot(fact.get()) && a.monoMs() > fact.get().monoMs();
        return Optional.of(!met || later ? a : fact.get());
    }
}

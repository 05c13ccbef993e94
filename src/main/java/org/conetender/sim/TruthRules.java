package org.conetender.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.conetender.core.Opening;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.ConeBook.Latch;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Stage;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.settings.Cone;

/**
 * The rules about what the daemon may never do whatever it believes: heat that no reading bears out, an
 * output older than its lease, a latch that nobody released, an answer before its commit, a life that
 * stands elsewhere than its record.
 */
final class TruthRules {

    /** A reading may be used for a minute (control.md §3.3), and what was set then holds for a lease, ms. */
    private static final long OLD_MS = 60_000 + 5_000;
    private static final long LEASE_MS = 4_000;
    /** A tick, and the second in which leases are looked at, ms. */
    private static final long SLACK_MS = 1_000;

    private final Rig rig;
    private final Invariants rules;
    private final Map<String, List<Latch>> latched = new TreeMap<>();
    /** When a probe of that cone last gave a figure, by the world's count, ms. */
    private final Map<String, Long> heardMs = new TreeMap<>();
    /** Latches whose release is on the disk. */
    private final Set<String> ended = new TreeSet<>();
    private long seenSeq;
    private Book expected;
    /** Whether the end of the record was lost since, and more may be written of that. */
    private boolean refolds;

    TruthRules(Rig rig, Invariants rules) {
        this.rig = rig;
        this.rules = rules;
    }

    /** With or without a living daemon. */
    void always() {
        for (SimSwitch s : rig.world().devices().switches().values()) {
            rules.lasting("lease", s.id(), s.commanded() && s.heldForMs() > LEASE_MS + SLACK_MS, 0,
                    "an output was driven for longer than its lease");
        }
        for (SimCone c : rig.world().cones()) {
            boolean heat = rules.on(c, Fixtures.HEAT);
            List<ProbeSample> now = probes(c);
            long atMs = rig.world().clock().elapsedMs();
            boolean heard = false;
            double guardC = c.settings().limits().guardC();
            boolean allHot = !now.isEmpty();
            for (ProbeSample p : now) {
                heard |= p.reading() instanceof Reading.Value && p.ageMs() <= OLD_MS;
                allHot &= p.reading() instanceof Reading.Value(double shown) && shown > guardC;
            }
            if (heard) {
                heardMs.put(c.settings().id(), atMs);
            }
            rules.lasting("blind-heat", c, heat && atMs - heardMs.getOrDefault(c.settings().id(), 0L)
                    > OLD_MS, 0, "heat was on though no probe had answered for a minute");
            rules.lasting("ceiling", c, heat && allHot, 4,
                    "heat was on though every probe showed more than the guard temperature");
        }
    }

    private List<ProbeSample> probes(SimCone c) {
        long mono = rig.world().clock().now().monoMs();
        List<ProbeSample> all = new ArrayList<>();
        for (String id : c.settings().fittings().probes().water()) {
            all.add(rig.world().devices().probes().get(id).latest(mono));
        }
        return all;
    }

    /** The process dies: what it knew to be durable, and what became so, is where the next life stands. */
    void dying(State last) {
        Book b = last.ledger().committed();
        for (Fact f : rig.process().disk().since(last.ledger().committedSeq())) {
            b = b.after(f);
        }
        expected = b;
        latched.clear();
    }

    /** The next life stands where the rest of the record ends. */
    void damaged() {
        seenSeq = Math.min(seenSeq, rig.process().disk().lastSeq());
        expected = folded(Long.MAX_VALUE);
        refolds = true;
        latched.clear();
        ended.clear();
    }

    void look(State s) {
        if (expected != null) {
            begun(s);
            expected = null;
        }
        released(s);
        for (Result.Reply r : rig.process().control().replies()) {
            // A question changes nothing, so there is nothing to record.
            boolean asks = r.request().ask() instanceof Ask.Alarms;
            rules.lasting("answered", r.request().cone(), r.accepted() && !asks
                    && !rig.process().disk().knows(r.request().id()), 0,
                    "'" + r.request().ask().word() + "' was said to be recorded and is in no record");
        }
    }

    /** A new life stands where its record ends, but for what its beginning itself writes down. */
    private void begun(State s) {
        // What is set aside, alarms that are asked for anew, and what is written of a damage, change what was
        // there before.
        if (refolds || rig.process().disk().since(seenSeq).stream().anyMatch(f ->
                f.change() instanceof Change.SetAside || f.change() instanceof Change.AlarmOver)) {
            expected = folded(s.ledger().committedSeq());
            refolds = false;
        }
        for (Cone c : rig.settings().cones()) {
            ConeBook was = expected.cone(c.id());
            ConeBook is = s.ledger().committed().cone(c.id());
            rules.lasting("restart", c.id(), !same(was, is), 0,
                    "a new life stands elsewhere than its record");
            rules.lasting("latch", c.id(), !guards(is).containsAll(guards(was)), 0,
                    "a latch was gone after a restart");
        }
    }

    /** What the disk has up to that fact. */
    private Book folded(long lastSeq) {
        List<Fact> all = rig.process().disk().all().stream().filter(f -> f.seq() <= lastSeq).toList();
        return Book.empty(rig.settings(), all.isEmpty() ? rig.world().clock().now() : all.getFirst().at())
                .after(all, Opening.aside(all));
    }

    /** In all that was told of it, and in what is kept of its alarms and its heater. */
    private static boolean same(ConeBook was, ConeBook is) {
        // A cone of which nothing was ever told is clean since its record was opened.
        boolean untold = was.batch().number() == 0 && was.facts().isEmpty() && is.facts().isEmpty()
                && was.batch().stage() instanceof Stage.Clean && is.batch().stage() instanceof Stage.Clean;
        boolean batch = untold ? is.batch().marks().equals(was.batch().marks())
                : is.batch().equals(was.batch());
        return batch && is.usual().equals(was.usual())
                && is.alarms().equals(was.alarms()) && is.heater().equals(was.heater())
                && is.bridges().equals(was.bridges());
    }

    private static Set<String> guards(ConeBook b) {
        Set<String> all = new TreeSet<>();
        b.latches().forEach(l -> all.add(l.guard()));
        return all;
    }

    /** A latch ends by a fact, and that fact by a person's acknowledgement. */
    private void released(State s) {
        Map<String, String> acknowledged = new TreeMap<>();
        for (Fact f : rig.process().disk().since(seenSeq)) {
            seenSeq = f.seq();
            if (f.change() instanceof Change.Told(Ask.Acknowledge(String alarm))) {
                acknowledged.put(f.source(), alarm);
            } else if (f.change() instanceof Change.Released r) {
                ended.add(f.cone() + "/" + r.guard());
                rules.lasting("latch", f.cone(), !Latched.alarm(r.guard())
                        .equals(acknowledged.get(f.source())), 0,
                        "a latch was released and nobody had acknowledged its alarm");
            }
        }
        for (Cone c : rig.settings().cones()) {
            ConeBook now = s.book().cone(c.id());
            List<Latch> before = latched.put(c.id(), now.latches());
            boolean gone = false;
            // Latches that are the very same list have not changed.
            for (Latch l : before == null || before == now.latches() ? List.<Latch>of() : before) {
                gone |= now.latch(l.guard()).isEmpty() && !ended.remove(c.id() + "/" + l.guard());
            }
            rules.lasting("latch", c.id(), gone, 0, "a latch ended by itself");
        }
    }
}

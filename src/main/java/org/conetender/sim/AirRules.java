package org.conetender.sim;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Stage;
import org.conetender.core.image.Ask;

/**
 * The rules about want of air that look at more than one second: what is left of a lack that is over, what
 * the oxygen really did while the daemon held the air off, and what it began by itself.
 */
final class AirRules {

    /** Nauplii bear no more (science.md §7.3); the house's cap and what is by the book end before, s. */
    private static final long LONGEST_S = 15 * 60;
    /** Below it they are at risk, mg/L (science.md §5, §7.3). */
    private static final double RISK_MG_PER_L = 2;
    /** Short of oxygen for so long they live yet: two thirds of the least that {@link Oxygen} draws, s. */
    private static final double SHORT_S = 14 * 60 * 2 / 3.0;
    /** Fewer are a remnant whose breath nobody could reckon with (guess: a thousandth of a harvest). */
    private static final double MANY = 1_000;
    /** A lack of air as long as most of a cap, and air too short to make it good (guesses), ms. */
    private static final long LACK_MS = 8 * 60_000;
    private static final long AIRED_MS = 5 * 60_000;
    /** A separation that was begun so lately begins now, ms. */
    private static final long BEGUN_MS = 5_000;
    /** Within the half hour in which a report can be withdrawn, as the world's clock has it, ms. */
    private static final long WITHDRAWABLE_MS = 29 * 60_000;
    /** Two minutes, but for a tick and what is announced after a look; ms. */
    private static final long DUE_MS = 117_000;
    /** For what is only counted, s. */
    static final long NEVER_S = 1_000_000_000;

    private final Rig rig;
    private final Invariants rules;
    private final Map<String, Track> tracks = new TreeMap<>();

    /** What one cone's air has done so far. */
    private static final class Track {
        /** The batch that was without air for too long; -1 for none. */
        long lacked = -1;
        /** The stage that the book had. */
        Stage stage;
        /** Whether the present stage, or one just before it, took the water out. */
        boolean emptied;
        /** Whether it did so lately that the report may be withdrawn, and no level contact knows better. */
        boolean fresh;
        /** Whether a restart would read that it is in doubt. */
        boolean recorded;
        boolean paused;
        /** Whether what comes of the present pause is the daemon's doing. */
        boolean answerable;
        /** Of the present pause: how long the valve was reported shut, somebody drew, it was told, ms. */
        long shutMs;
        long drawnMs;
        long dueMs;
        long lackMs;
        long lastLackMs;
        long airedMs;
    }

    AirRules(Rig rig, Invariants rules) {
        this.rig = rig;
        this.rules = rules;
    }

    /** The process ended: what no record had is nobody's knowledge any more. */
    void died() {
        for (Track t : tracks.values()) {
            t.lacked = t.recorded ? t.lacked : -1;
            t.paused = false;
        }
    }

    /** Nor what the record lost: that reports may be missing is told instead. */
    void damaged() {
        for (Track t : tracks.values()) {
            t.lacked = -1;
            t.stage = null;
            t.fresh = false;
        }
    }

    void look(SimCone c, State s, ConeRules cone) {
        String id = c.settings().id();
        Track t = tracks.computeIfAbsent(id, k -> new Track());
        ConeBook book = s.book().cone(id);
        boolean paused = rules.on(c, Fixtures.AIR_PAUSE);
        lack(c, s, cone.honest(Fixtures.PROOF) || paused || book.batch().marks().valveShut());
        overFull(c, s, cone);
        if (paused && !t.paused) {
            begins(c, book, cone.honest(Fixtures.PROOF));
        }
        due(c, book, paused);
        rules.lasting("air-back-told", c, cameBack(c, s) && !rules.told().any(id, "air-back"), 2,
                "a separation came to nothing and the person who has not seen it is not told any more");
        breath(c, paused && t.answerable && told(c, book.batch()));
        count(t, c, paused);
        t.paused = paused;
    }

    /** A lack of air that was long stays known when it is over. @param known whether anything shows it */
    private void lack(SimCone c, State s, boolean known) {
        String id = c.settings().id();
        Track t = tracks.get(id);
        Batch b = s.book().cone(id).batch();
        boolean animals = b.stage().hasAnimals();
        rules.lasting("lack", c, animals && known && c.air().offTrueMs() > 0, NEVER_S, "");
        t.lacked = !animals ? -1 : rules.lastedS("lack", id) > LONGEST_S ? b.number() : t.lacked;
        t.recorded = doubted(s.ledger().committed().cone(id).batch());
        boolean told = rules.told().any(id, "doubtful");
        rules.lasting("lack-kept", c, t.lacked == b.number() && !doubted(b) && !told, 5,
                "nauplii were without air for too long, and nothing says so any more");
    }

    private static boolean doubted(Batch b) {
        return !b.marks().words().doubts().isEmpty();
    }

    /** A cone with water that was reported empty by mistake keeps its air, as far as anybody can know. */
    private void overFull(SimCone c, State s, ConeRules cone) {
        Stage stage = s.book().cone(c.settings().id()).batch().stage();
        boolean full = c.cysts().isPresent() && c.water().heaterCovered();
        Track t = tracks.get(c.settings().id());
        if (!stage.equals(t.stage)) {
            t.emptied = t.fresh || t.stage != null && t.stage.hasWater();
            t.stage = stage;
        }
        t.fresh = t.emptied && !stage.hasWater()
                && s.book().since(stage.since(), rig.world().clock().now()).leastMs() < WITHDRAWABLE_MS;
        rules.lasting("air-off-full", c, rules.on(c, Fixtures.AIR_PAUSE) && stage.airOff() == null && full
                && (t.fresh || cone.honest(Fixtures.LEVEL)), 5,
                "air was off without a separation in a cone that held a batch");
    }

    /** Air that comes back to a shut valve at the cap has been announced two minutes before. */
    private void due(SimCone c, ConeBook book, boolean paused) {
        Batch b = book.batch();
        String id = c.settings().id();
        Track t = tracks.get(id);
        boolean atCap = t.paused && !paused && b.stage().hasAnimals() && rules.told().any(id, "air-back");
        boolean shut = b.marks().valveShut() && t.shutMs >= DUE_MS;
        rules.lasting("due-before", c, atCap && shut && t.dueMs < DUE_MS, 0,
                "air came back to a shut valve at the cap and this was not told 2 min before");
        List<Fact> facts = book.facts();
        boolean ended = !facts.isEmpty()
                && facts.getLast().change() instanceof Change.Moved(String _, String why)
                && why.contains("as long as the nauplii stand it");
        rules.lasting("drawing-due", c, atCap && ended && t.drawnMs >= DUE_MS && t.dueMs < DUE_MS, 0,
                "air came back to a person who drew and this was not told 2 min before");
        t.drawnMs = paused && b.stage() instanceof Stage.Drawing ? t.drawnMs + 1_000 : 0;
        t.shutMs = paused && b.marks().valveShut() ? t.shutMs + 1_000 : 0;
        t.dueMs = paused && rules.told().any(id, "air-due") ? t.dueMs + 1_000 : 0;
    }

    /** Whether the last that is recorded is that the cap was over, in this life, and nobody has seen it. */
    private boolean cameBack(SimCone c, State s) {
        String id = c.settings().id();
        List<Fact> facts = s.book().cone(id).facts();
        if (s.ledger().committed().cone(id).acknowledged().contains("air-back") || quieted(id)) {
            rules.saw(id, facts);
        }
        return s.book().cone(id).batch().stage() instanceof Stage.Ready && !facts.isEmpty()
                && facts.getLast().change() instanceof Change.Moved(String _, String why)
                && why.contains("back on") && rig.process().livedMs()
                        > rig.world().clock().now().since(facts.getLast().at()).mostMs()
                && !rules.saw(id, facts.getLast());
    }

    /** Without a record an acknowledgement is known to this life alone, and shows in its answer only. */
    private boolean quieted(String cone) {
        return rig.process().keptWhileFailing().isPresent()
                && rig.process().control().replies().stream().map(Result.Reply::request).anyMatch(r ->
                        r.cone().equals(cone) && r.ask().equals(new Ask.Acknowledge("air-back")));
    }

    private void begins(SimCone c, ConeBook book, boolean proven) {
        Track t = tracks.get(c.settings().id());
        boolean own = !book.facts().isEmpty() && book.batch().stage() instanceof Stage.Settling
                && book.facts().getLast().change() instanceof Change.Moved;
        boolean well = c.oxygen().shortS() == 0 && c.oxygen().bulk() > RISK_MG_PER_L;
        t.answerable = well || own && proven;
        boolean spent = t.lackMs > LACK_MS || t.lastLackMs > LACK_MS && t.airedMs < AIRED_MS;
        // By whomever; after a stall the pause of before goes on.
        boolean anew = book.batch().stage() instanceof Stage.Settling s
                && rig.world().clock().now().since(s.since()).leastMs() < BEGUN_MS;
        long lackS = rules.lastedS("lack", c.settings().id());
        rules.lasting("lack-settled", c, anew && 1_000 * lackS > LACK_MS, 0,
                "air was commanded off though none had come to nauplii for minutes");
        rules.lasting("by-itself", c, own && proven && spent, 0,
                "a separation was begun by itself in water that had been without air");
    }

    /** Whether the daemon was told what is really in the cone, and not that it is empty. */
    private static boolean told(SimCone c, Batch b) {
        return b.stage().hasWater() && b.stock().isPresent()
                && b.fill().filter(f -> c.water().litres() > 0.9 * f.litres()).isPresent()
                && c.cysts().filter(k -> k.alive() > MANY).isPresent();
    }

    private void breath(SimCone c, boolean judged) {
        rules.lasting("oxygen", c, judged && c.oxygen().shortS() > SHORT_S, 5,
                "air was commanded off until the nauplii had been short of oxygen for too long");
        rules.lasting("deaths", c, judged && c.oxygen().dying(), 5,
                "nauplii died while air was commanded off");
    }

    private static void count(Track t, SimCone c, boolean paused) {
        if (paused) {
            return;
        }
        if (c.air().offTrueMs() > 0) {
            t.lackMs += 1_000;
            t.airedMs = 0;
        } else {
            t.lastLackMs = t.lackMs > 0 ? t.lackMs : t.lastLackMs;
            t.lackMs = 0;
            t.airedMs += 1_000;
        }
    }
}

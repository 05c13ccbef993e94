package org.conetender.core;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.face.Sentences;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.guard.Power;
import org.conetender.core.guard.StuckHeater;
import org.conetender.core.guard.TooManyWatts;
import org.conetender.core.guard.View;
import org.conetender.core.heat.Hold;
import org.conetender.core.heat.Share;
import org.conetender.core.image.Image;
import org.conetender.core.image.Request;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.judge.Judge;
import org.conetender.core.judge.Proving;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Units;

/**
 * The only verb of the core: settings, state and image in, the next state and all decisions out.
 * Pure: no clock, no I/O, no thread; the same arguments always give the same result.
 *
 * <p>Three passes, one direction. <b>Judge</b>: what do we believe. <b>Decide</b>: requests are taken
 * or refused, batches move, the law wants, the guards forbid; output = demand ∧ permits. <b>Tell</b>:
 * alarms, forecasts, the record.
 */
public final class Tick {

    /** The output that beats for whatever watches the daemon from outside. */
    static final String HEARTBEAT = "site.heartbeat";

    private final Settings settings;
    private final List<Guard> guards;
    private final List<Outlet> outlets;

    public Tick(Settings settings) {
        this(settings, Guards.ALL);
    }

    /** With other guards than all of them; for the tests that prove each one needed. */
    public Tick(Settings settings, List<Guard> guards) {
        this.settings = settings;
        this.guards = guards;
        this.outlets = Outlet.all(settings);
    }

    /**
     * What one cone's law is shown.
     *
     * @param aimC what its stage wants held  @param dtMs since the last one  @param was what is remembered
     */
    record Now(ConeJudgement judged, OptionalDouble aimC, long dtMs, ConeLive was) {}

    /** One tick. */
    public Result step(State before, Image image) {
        Ledger.Settled settled = before.ledger().settled(image.inbox().commits());
        Work work = new Work(settings, before, image, settled.ledger());
        if (!work.ledger.book().boots().placed(image.now())) {
            work.write("", new Change.ClockSet());
        }
        work.judge();

        Desk desk = new Desk(work, guards);
        List<Request> waiting = desk.serve(withButtons(work, image));
        Ripening.move(work);
        Map<String, Hold> holds = holds(work);
        Map<String, Share.Credit> credits = credits(work, holds);
        Map<String, List<Finding>> findings = findings(work, credits);
        Map<String, ConeLive.ConeOut> outs = outputs(work, desk, credits, findings);
        consequences(work, findings);
        credits.replaceAll((cone, c) -> withheld(findings.get(cone)) ? Share.Credit.NONE : c);
        holds.replaceAll((cone, h) -> permits(findings.get(cone), Power.HEAT) ? h
                : h.withheld(work.live(cone).hold()));

        Proofs.keep(work);
        RelayLife.keep(work);
        Telling telling = new Telling(work);
        Alarms.Turn alarms = telling.alarms(settled, findings);
        telling.answers(settled, alarms.next());
        Map<String, ConeLive> cones = new LinkedHashMap<>();
        for (Cone c : settings.cones()) {
            cones.put(c.id(), telling.grown(c, holds.get(c.id()), credits.get(c.id()), outs.get(c.id())));
        }
        return telling.result(new Telling.Parts(cones, alarms, waiting, findings),
                levels(work, outs, findings));
    }

    private static List<Request> withButtons(Work work, Image image) {
        List<Request> all = new ArrayList<>(image.inbox().requests());
        for (Cone c : work.settings.cones()) {
            Buttons.pressed(work, c).ifPresent(all::add);
        }
        return all;
    }

    private static Map<String, Hold> holds(Work work) {
        Map<String, Hold> holds = new HashMap<>();
        for (Cone c : work.settings.cones()) {
            holds.put(c.id(), Demand.hold(c, work.batch(c.id()),
                    new Now(work.judged.get(c.id()), work.aimC(c), work.dtMs, work.live(c.id()))));
        }
        return holds;
    }

    private static Map<String, Share.Credit> credits(Work work, Map<String, Hold> holds) {
        Map<String, Share.Credit> credits = new HashMap<>();
        for (Cone c : work.settings.cones()) {
            Cone.Heat heat = c.fittings().heat();
            long window = Hold.most(c, work.judged.get(c.id()).heat()) < 1
                    ? HeatTrack.trialMs(heat.riseKPerS(Judge.warmedLitres(c, work.batch(c.id()))))
                    : Hold.dutyWindowMs(heat, work.live(c.id()).wear());
            Hold h = holds.get(c.id());
            Share.Credit was = work.live(c.id()).credit();
            boolean on = work.live(c.id()).out().heat();
            credits.put(c.id(), alone(work, c) ? Share.trying(was, on, work.dtMs)
                    : h.rules() ? Share.wanting(was, h.want(work.judged.get(c.id()).thermal()), on, work.dtMs)
                    : Share.after(was, h.duty(), on, new Share.Window(work.dtMs, window)));
        }
        return credits;
    }

    /** Whether the heater's own switch is tried, behind an open cut-out. */
    private static boolean alone(Work work, Cone c) {
        return work.judged.get(c.id()).proving().part() == Proving.Part.HEATER;
    }

    /** Every guard looks at every cone, in the order in which power is shared out. */
    private Map<String, List<Finding>> findings(Work work, Map<String, Share.Credit> credits) {
        List<Share.Claim> claims = new ArrayList<>();
        for (Cone c : settings.cones()) {
            claims.add(new Share.Claim(c.id(), credits.get(c.id()), work.live(c.id()).out().heat(),
                    Hold.turnMs(c.fittings().heat())));
        }
        Map<String, List<Finding>> findings = new TreeMap<>();
        Share.Supply supply = Share.Supply.of(settings.site().supply().limitWatts(),
                StuckHeater.wattsAtLarge(settings, work.ledger.book(), work.image));
        for (Share.Claim claim : Share.order(claims)) {
            Cone c = settings.cone(claim.cone()).orElseThrow();
            View v = Readings.all(work, work.view(c, new View.Wants(claim.credit().wants(),
                    Demand.airOff(c, work.batch(c.id())), claim.wasOn()),
                    new View.SiteLoad(supply.takenW(),
                            work.before.live().timers().wallUntrustedForMs())), guards);
            List<Finding> found = new ArrayList<>();
            for (Guard g : guards) {
                look(g, v, found);
            }
            findings.put(c.id(), found);
            supply = supply.after(claim, c.fittings().heat().watts(),
                    claim.credit().wants() && permits(found, Power.HEAT));
        }
        return findings;
    }

    /** What it finds; a trip whose cause is gone is only held by its latch, and says so. */
    private static void look(Guard g, View v, List<Finding> found) {
        List<Finding> all = g.look(v);
        if (all.isEmpty()) {
            return;
        }
        boolean over = v.latch(g.id()).isPresent() && g.causeGone(v);
        for (Finding f : all) {
            found.add(over && f.clears() == Finding.Clears.ACKNOWLEDGED ? f.latchOnly() : f);
        }
    }

    /** Heat held back for its own sake is not owed afterwards; heat that waits for its turn is. */
    private static boolean withheld(List<Finding> found) {
        for (Finding f : found) {
            if (f.denies().contains(Power.HEAT) && !f.guard().equals(TooManyWatts.ID)) {
                return true;
            }
        }
        return false;
    }

    private static boolean permits(List<Finding> found, Power p) {
        for (Finding f : found) {
            if (f.denies().contains(p)) {
                return false;
            }
        }
        return true;
    }

    /** output = demand ∧ permits; all power passes here. */
    private static Map<String, ConeLive.ConeOut> outputs(Work work, Desk desk,
                                                         Map<String, Share.Credit> credits,
                                                         Map<String, List<Finding>> findings) {
        Map<String, ConeLive.ConeOut> outs = new HashMap<>();
        for (Cone c : work.settings.cones()) {
            List<Finding> found = findings.get(c.id());
            Batch b = work.batch(c.id());
            boolean cutOut = c.fittings().heat().cutOut();
            boolean closed = cutOut && work.aimC(c).isPresent() && permits(found, Power.CUT_OUT);
            boolean heat = credits.get(c.id()).wants() && permits(found, Power.HEAT)
                    && (closed || !cutOut || alone(work, c));
            boolean light = permits(found, Power.LAMPS);
            outs.put(c.id(), new ConeLive.ConeOut(heat, closed,
                    Demand.airOff(c, b) && permits(found, Power.AIR_OFF),
                    light && Demand.lamp(c, b), light && Demand.trigger(c, b, work),
                    Buttons.lit(work, c, desk)));
        }
        return outs;
    }

    /** What the findings do to the book: latches, doubts, and a separation that is over. */
    private void consequences(Work work, Map<String, List<Finding>> findings) {
        for (Cone c : work.settings.cones()) {
            List<Finding> found = findings.get(c.id());
            for (Finding f : found) {
                if (f.clears() == Finding.Clears.ACKNOWLEDGED
                        && work.ledger.book().latch(c.id(), f.guard()).isEmpty()) {
                    work.write(c.id(), new Change.Tripped(f.guard(), f.what()));
                }
                if (f.doubt().isPresent()
                        && !work.batch(c.id()).marks().words().doubts().contains(f.doubt().get())) {
                    work.write(c.id(), new Change.Doubted(f.doubt().get()));
                }
            }
            if (!work.batch(c.id()).marks().words().doubts().isEmpty() && !work.ledger.busy(c.id())
                    && work.image.pipes().store().isEmpty()) {
                View view = work.view(c);
                for (Guard g : guards) {
                    g.takesBack(view).forEach(d -> work.write(c.id(), new Change.Undoubted(d)));
                }
            }
            if (work.overdue(c.id()) && !work.batch(c.id()).marks().words().doubts()
                    .contains(Sentences.OVERDUE)) {
                work.write(c.id(), new Change.Doubted(Sentences.OVERDUE));
            }
            if (work.batch(c.id()).stage().airOff() != null && !permits(found, Power.AIR_OFF)) {
                String why = found.stream().filter(f -> f.denies().contains(Power.AIR_OFF)).findFirst()
                        .map(Finding::what).orElseThrow();
                work.write(c.id(), new Change.Moved("ready", why));
            }
        }
    }

    /**
     * Every output by id. The heartbeat turns over with each tick: only edges keep what watches it
     * closed (control.md §1.5), so a line that sticks high says nothing. Withheld, it stays low.
     */
    private Map<String, Boolean> levels(Work work, Map<String, ConeLive.ConeOut> outs,
                                        Map<String, List<Finding>> findings) {
        boolean beat = !work.before.live().beat();
        for (List<Finding> found : findings.values()) {
            beat &= permits(found, Power.HEARTBEAT);
        }
        Map<String, Boolean> levels = LinkedHashMap.newLinkedHashMap(outlets.size());
        for (Outlet o : outlets) {
            levels.put(o.id(), o.cone().isEmpty() ? beat : o.level().test(outs.get(o.cone())));
        }
        return levels;
    }

    /** Alarms that concern everything stand once, for the site. */
    static String place(AlarmKind kind, String cone) {
        return kind.siteWide() ? "" : cone;
    }

    /** Whether a minute has passed. */
    static boolean minutePassed(long sinceMs, long nowMs) {
        return nowMs - sinceMs >= Units.MINUTE_MS;
    }
}

package org.conetender.sim.search;

import org.conetender.core.ConeLive;
import org.conetender.core.State;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fits;
import org.conetender.core.batch.Lives;
import org.conetender.core.batch.Stage;
import org.conetender.core.guard.Handled;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * What of a state tells it from others: two that agree here are taken for one, and the first that was reached
 * speaks for all.
 *
 * <p>Kept: the batch in three readings of the record, its stage and marks; whether a report can be withdrawn;
 * latches, sudden ends, what was set aside; whether the water is known, and between which limits it lies;
 * what the judgement suspects and how far a trial has come; every output but the heater's own; each alarm,
 * whether it was told, seen and only its latch is left; what is wrong around it and what waits for the
 * record. Times count by which of the bounds that anything is decided by they have passed. Merged: numbers
 * of batches and facts, litres, lots, the hour of the day, temperatures within the limits, degree-hours
 * within a stage, the heater's own coming and going (every tick of it is judged), estimates of it, alarms
 * that are about to fade, the wording of doubts, salt, all reports but whether the last can be withdrawn. So
 * a defect that needs two exact figures together, or a certain report before the last, may stay unseen.
 */
final class Likeness {

    private static final long MIN = Units.MINUTE_MS;
    private static final long S = Units.SECOND_MS;

    private final Node n;
    private final Hash h = new Hash();

    private Likeness(Node n) {
        this.n = n;
    }

    /** The digest of everything that is kept. */
    static Hash of(Node n) {
        return new Likeness(n).all();
    }

    private Hash all() {
        world();
        State s = n.state();
        readings(s);
        lives(s.book().lives());
        h.add(s.book().away()).add(s.live().timers().waiting().size());
        s.live().timers().waiting().forEach(r -> h.add(r.ask().word()));
        h.add(s.live().timers().wallUntrustedForMs(), Units.HOUR_MS);
        h.add(s.live().alarms().seen().alarms().isEmpty() || sinceMs(s.live().begun()) >= 5 * MIN);
        judged(n.live().judged());
        live(n.live());
        alarms();
        return h;
    }

    private void world() {
        World.Senses s = n.world().senses();
        h.add(s.probe().answers().ordinal()).add(s.climate().ordinal()).add(s.levelLies()).add(s.noAir());
        h.add(s.unset().contains("a.heat")).add(s.unset().contains("a.air-pause"));
        Paper p = n.world().paper();
        h.add(p.mood().ordinal()).add(p.trouble()).add(Math.min(2, p.queue().size()))
                .add(p.waitsForMs(n.world().now().monoMs()), 2 * S, 30 * S);
        h.add(n.world().now().wallTrusted());
        h.add(Math.min(2, n.state().ledger().pending().size()));
    }

    private void readings(State s) {
        ConeBook book = s.book().cone(Fitted.CONE);
        book(s.book(), book);
        for (Book other : new Book[] {s.ledger().kept(), s.ledger().hoped()}) {
            ConeBook c = other.cone(Fitted.CONE);
            h.add(c == book);
            if (c != book) {
                book(other, c);
            }
        }
    }

    private void book(Book all, ConeBook c) {
        batch(c.batch());
        // Bound to no order: the same latches in another order are the same.
        h.add(c.latches().stream().mapToLong(l -> l.guard().hashCode() * 31L).sum());
        h.add(!c.bridges().isEmpty()).add(c.heater().tried(c.batch()));
        boolean last = c.lastReport().filter(f -> all.since(f.at(), n.world().now()).leastMs()
                < Fits.WITHDRAW_WITHIN_MS).isPresent();
        h.add(last);
    }

    private void batch(Batch b) {
        Stage s = b.stage();
        h.add(s.word());
        if (s.airOff() != null) {
            h.add(sinceMs(s.airOff()), 4 * MIN, 6 * MIN - 6 * S, 8 * MIN - 4 * S, 10 * MIN - 6 * S,
                    12 * MIN - 4 * S);
        } else if (!s.hasWater()) {
            h.add(b.stock().isPresent() && sinceMs(s.since()) < Fits.WITHDRAW_WITHIN_MS);
        }
        Batch.Marks m = b.marks();
        h.add(m.valveShut()).add(Math.min(1, m.harvests()));
        h.add(m.handsIn().filter(x -> sinceMs(x) < Handled.HANDS_MS))
                .add(m.toppedUp().filter(x -> sinceMs(x) < Handled.HANDS_MS))
                .add(b.fill().filter(f -> sinceMs(f.at()) < 3 * MIN));
        h.add(Math.min(2, m.words().doubts().size()));
    }

    private void lives(Lives l) {
        h.add(l.running()).add(l.lock()).add(l.damage()).add(l.aside().size());
        l.aside().forEach(a -> h.add(a.cone()));
        h.add(exits(n));
    }

    private void judged(ConeJudgement j) {
        belief(j.belief());
        h.add(j.water().doubt()).add(j.water().departures().size());
        h.add(j.heat().failed()).add(j.heat().riseWhileOffK(j.belief()) >= 0.3);
        h.add(j.thermal().map(t -> t.watch().suspect().ordinal()).orElse(-1));
        h.add(j.thermal().filter(t -> t.proof().passed())).add(j.proving().part().ordinal());
        h.add(j.air().proof().ordinal()).add(n.batch().marks().valveShut() ? j.air().onForMs() : 0, MIN)
                .add(j.air().offForMs() > 0);
        h.add(j.air().breath().restMs() > 0).add(j.air().breath().withoutMs(), 10 * MIN);
    }

    private void belief(Belief b) {
        h.add(b.known());
        double c = b.middleC();
        h.add(c >= 38 ? 5 : c >= 33 ? 4 : c >= 31 ? 3 : 2);
    }

    private void live(ConeLive c) {
        ConeLive.ConeOut o = c.out();
        h.add(o.cutOut()).add(o.airPause()).add(o.lamp()).add(o.trigger());
        h.add(n.batch().stage() instanceof Stage.Ready && c.unripe(n.batch()));
    }

    private void alarms() {
        for (Alarm a : n.state().live().alarms().standing().values()) {
            h.add(a.kind().ordinal()).add(a.raised()).add(a.acknowledged()).add(a.held().ordinal())
                    .add(a.follows()).add(a.told().times() > 0);
        }
        h.add(n.state().live().alarms().seen().alarms().size());
    }

    /** Unexpected exits in the last ten minutes. */
    static long exits(Node n) {
        Moment now = n.world().now();
        return n.state().book().lives().exits().stream()
                .filter(x -> n.state().book().since(x, now).leastMs() <= Lives.WITHIN_MS).count();
    }

    /** Since that moment, ms; of another boot, for ever. */
    private long sinceMs(Moment m) {
        Moment now = n.world().now();
        return now.sameBoot(m) ? now.monoMs() - m.monoMs() : Long.MAX_VALUE;
    }
}

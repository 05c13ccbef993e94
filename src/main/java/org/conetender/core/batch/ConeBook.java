package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.settings.Cone.Usual;
import org.conetender.core.unit.Moment;

/**
 * What is durable of one cone.
 *
 * @param before the batch before the present one: to withdraw what began this one is to stand in that again
 * @param facts of the present batch, so that a withdrawn one can be left out and the rest refolded
 * @param batch the present one: the batch before after all {@code facts}
 * @param usual the charge {@code started} stands for
 * @param latches what tripped and waits for a person
 * @param alarms what is kept of its alarms
 * @param heater what is known of its heater
 * @param bridges times of unknown length in the development of the present cysts
 */
public record ConeBook(Before before, List<Fact> facts, Batch batch, Usual usual, List<Latch> latches,
                       AlarmBook alarms, List<Bridge> bridges, HeaterBook heater) {

    /**
     * @param batch as it last stood
     * @param facts of it
     * @param base the batch as it stood before them
     * @param bridges of its cysts
     * @param unseen the alarms that ended with it
     * @param before the one before that, where it could yet come back too
     */
    public record Before(Batch batch, List<Fact> facts, Batch base, List<Bridge> bridges,
                         List<AlarmBook.Unseen> unseen, Optional<Before> before) {

        private static Before empty(Batch b) {
            return new Before(b, List.of(), b, List.of(), List.of(), Optional.empty());
        }
    }

    /** @param guard which one tripped  @param why in words  @param since when */
    public record Latch(String guard, String why, Moment since) {

        /** That guard's among these. Every guard asks in every tick: so it goes without a stream. */
        static Optional<Latch> of(List<Latch> among, String guard) {
            for (int i = 0; i < among.size(); i++) {
                if (among.get(i).guard().equals(guard)) {
                    return Optional.of(among.get(i));
                }
            }
            return Optional.empty();
        }
    }

    static ConeBook empty(Usual usual, Moment at) {
        Batch none = Batch.none(at);
        return new ConeBook(Before.empty(none), List.of(), none, usual, List.of(), AlarmBook.EMPTY,
                List.of(), HeaterBook.NONE);
    }

    /** Whether that guard waits for a person. */
    public Optional<Latch> latch(String guard) {
        return Latch.of(latches, guard);
    }

    /** The last report that can still be withdrawn, newest first; empty when there is none. */
    public Optional<Fact> lastReport() {
        for (int i = facts.size() - 1; i >= 0; i--) {
            if (Reports.withdrawable(facts.get(i))) {
                return Optional.of(facts.get(i));
            }
        }
        return Optional.empty();
    }

    /** Ids of alarms a person has seen. */
    public List<String> acknowledged() {
        return alarms.acknowledged();
    }

    ConeBook after(Fact f) {
        return switch (f.change()) {
            case Change.Told(Ask.Withdraw _) -> withdrawn();
            case Change.Told(Ask.SetUsual u) -> withUsual(u);
            case Change.Told(Ask.Acknowledge a) -> with(alarms.acknowledged(a.alarm()));
            case Change.Told(Ask.Shelve a) -> with(alarms.shelved(new AlarmBook.Shelf(a.alarm(), a.hours(),
                    f.at())));
            case Change.Tripped t -> tripped(t, f.at());
            case Change.Released r -> released(r.guard());
            case Change.AlarmRaised a -> with(alarms.raised(new AlarmBook.Unseen(a.alarm(), a.what(),
                    f.at())));
            case Change.AlarmOver a -> with(alarms.over(a.alarm()));
            case Change.Bridged b -> bridged(b.bridge());
            case Change.Worn w -> with(heater.worn(w.closings(), f.at()));
            case Change.Told _ when Reports.exchange(f) -> with(heater.relayExchanged()).folded(f);
            case Change.Tried _ -> with(heater.tried(batch.fill().map(Batch.Fill::at)));
            case Change.Learned l -> with(heater.learned(l.what(), f.at()));
            case Change.Told _ -> folded(f);
            case Change.Moved _ -> folded(f);
            case Change.Drawn _ -> folded(f);
            case Change.Doubted _ -> folded(f);
            case Change.Undoubted _ -> folded(f);
            case Change.Began _ -> this;
            case Change.Left _ -> this;
            case Change.ClockSet _ -> this;
            case Change.SetAside _ -> this;
            case Change.Described _ -> this;
            case Change.Taught _ -> this;
        };
    }

    private ConeBook folded(Fact f) {
        Batch next = Life.after(batch, f);
        if (next.number() != batch.number()) {
            return begun(f, next);
        }
        List<Fact> kept = new ArrayList<>(facts);
        kept.add(f);
        return new ConeBook(before, List.copyOf(kept), next, usual, latches, alarms, bridges(next),
                heater);
    }

    /** Other cysts have not lived through them. */
    private List<Bridge> bridges(Batch next) {
        return next.stock().equals(batch.stock()) ? bridges : List.of();
    }

    private ConeBook bridged(Bridge b) {
        List<Bridge> next = new ArrayList<>(bridges);
        next.add(b);
        return new ConeBook(before, facts, batch, usual, latches, alarms, List.copyOf(next), heater);
    }

    /**
     * A new batch has other facts than the old one, save those of the request that began it: to withdraw
     * {@code started} is to stand where the cone stood before all of it.
     */
    private ConeBook begun(Fact f, Batch next) {
        List<Fact> kept = new ArrayList<>();
        List<Fact> old = new ArrayList<>();
        Batch was = before.batch();
        for (Fact one : facts) {
            if (one.sameRequest(f)) {
                kept.add(one);
            } else {
                old.add(one);
                was = Life.after(was, one);
            }
        }
        kept.add(f);
        Optional<Before> back = facts.isEmpty() || !f.at().sameBoot(facts.getFirst().at())
                || f.at().since(facts.getFirst().at()).leastMs() > Fits.WITHDRAW_WITHIN_MS
                ? Optional.empty() : Optional.of(before);
        return new ConeBook(new Before(was, List.copyOf(old), before.batch(), bridges, alarms.unseen(),
                back),
                List.copyOf(kept), next, usual, latches, alarms.filled(), bridges(next), heater);
    }

    /** Without every fact of the last report's request, and what the daemon itself derived after it. */
    public ConeBook withdrawn() {
        Optional<Fact> report = lastReport();
        if (report.isEmpty()) {
            return this;
        }
        Fact gone = report.get();
        List<Fact> kept = new ArrayList<>();
        Batch b = before.batch();
        HeaterBook h = heater;
        for (Fact f : facts) {
            boolean same = f.sameRequest(gone);
            boolean derived = f.seq() > gone.seq() && f.change() instanceof Change.Moved;
            if (!same && !derived) {
                kept.add(f);
                b = Life.after(b, f);
            }
            h = same && Reports.exchange(f) ? h.relayNotExchanged() : h;
        }
        if (b.number() == batch.number()) {
            return new ConeBook(before, List.copyOf(kept), b, usual, latches, alarms, bridges(b), h);
        }
        kept.addAll(0, before.facts());
        return new ConeBook(before.before().orElse(Before.empty(before.base())), List.copyOf(kept), b, usual,
                latches, alarms.notFilled(before.unseen()), before.bridges(), h);
    }

    private ConeBook withUsual(Ask.SetUsual u) {
        Usual next = new Usual(u.lot().orElse(usual.lot()), u.litres().orElse(usual.litres()),
                u.cystsG().orElse(usual.cystsG()), u.ppt().orElse(usual.ppt()));
        return new ConeBook(before, facts, batch, next, latches, alarms, bridges, heater);
    }

    private ConeBook tripped(Change.Tripped t, Moment at) {
        if (latch(t.guard()).isPresent()) {
            return this;
        }
        List<Latch> next = new ArrayList<>(latches);
        next.add(new Latch(t.guard(), t.why(), at));
        // Whatever tripped: a life that begins behind it tries the switches again.
        return new ConeBook(before, facts, batch, usual, List.copyOf(next), alarms, bridges,
                heater.tried(Optional.empty()));
    }

    private ConeBook with(HeaterBook h) {
        return new ConeBook(before, facts, batch, usual, latches, alarms, bridges, h);
    }

    private ConeBook released(String guard) {
        List<Latch> next = latches.stream().filter(l -> !l.guard().equals(guard)).toList();
        return new ConeBook(before, facts, batch, usual, next, alarms, bridges, heater);
    }

    private ConeBook with(AlarmBook next) {
        return new ConeBook(before, facts, batch, usual, latches, next, bridges, heater);
    }
}

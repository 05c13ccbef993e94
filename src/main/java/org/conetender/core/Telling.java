package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.core.face.Answers;
import org.conetender.core.face.LotWords;
import org.conetender.core.face.NextStep;
import org.conetender.core.face.Sentences;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.View;
import org.conetender.core.hatch.Foretold;
import org.conetender.core.hatch.Growth;
import org.conetender.core.hatch.Oxygen;
import org.conetender.core.hatch.Zones;
import org.conetender.core.heat.Hold;
import org.conetender.core.heat.Share;
import org.conetender.core.heat.Wear;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Breath;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Judge;
import org.conetender.core.settings.Cone;

/** The last pass of a tick: alarms, answers, development and forecast, the checkpoint, the next state. */
final class Telling {

    private final Work work;

    Telling(Work work) {
        this.work = work;
    }

    /** @param cones, alarms, waiting, findings what the passes before came to */
    record Parts(Map<String, ConeLive> cones, Alarms.Turn alarms, List<Request> waiting,
                 Map<String, List<Finding>> findings) {}

    /** Alarms after this tick; those that ended while acknowledged are struck from the book. */
    Alarms.Turn alarms(Ledger.Settled settled, Map<String, List<Finding>> findings) {
        List<Alarms.Cause> causes = new ArrayList<>();
        findings.forEach((cone, found) -> found.forEach(f -> f.alarm().ifPresent(k ->
                causes.add(new Alarms.Cause(Tick.place(k, cone), k, f.what(), held(f), f.nearly(),
                        work.judged.get(cone).belief() instanceof Belief.Trusted)))));
        for (Cone c : work.settings.cones()) {
            new Appointments(work).missed(c).ifPresent(causes::add);
            RelayLife.worn(work, c).ifPresent(causes::add);
            OutOfReach.cause(work, c).ifPresent(causes::add);
        }
        Alarms acked = Silence.after(work, settled.done());
        for (Cone c : work.settings.cones()) {
            // Once it is durable: a filling that the record refuses ends nothing.
            Book book = work.settled.committed();
            boolean filled = work.before.ledger().committed().cone(c.id()).batch().number()
                    != book.cone(c.id()).batch().number();
            acked = !filled ? acked : acked.filled(c.id(), State.unseen(book, Set.of(c.id())),
                    work.image.now());
        }
        Alarms.Turn turn = acked.shelving(Shelving.until(work)).after(causes, work.image.now());
        for (Alarm a : turn.raised()) {
            if (a.kind().standsUntilSeen()) {
                work.write(a.cone(), new Change.AlarmRaised(a.kind().id(), a.what()));
            }
        }
        turn.over().forEach(this::over);
        return turn;
    }

    private static Alarm.Held held(Finding f) {
        return f.mended() ? Alarm.Held.ONLY_BY_LATCH : f.clears() == Finding.Clears.ACKNOWLEDGED
                ? Alarm.Held.BY_LATCH : Alarm.Held.BY_CAUSE;
    }

    /** An alarm of the site was acknowledged through any of the cones. */
    private void over(Alarm a) {
        String id = a.kind().id();
        for (Cone c : work.settings.cones()) {
            boolean here = a.cone().isEmpty() || a.cone().equals(c.id());
            if (here && work.ledger.book().cone(c.id()).alarms().knows(id)) {
                work.write(c.id(), new Change.AlarmOver(id));
            }
        }
    }

    /** Answers to what became durable or could not. @param alarms as they stand now */
    void answers(Ledger.Settled settled, Alarms alarms) {
        for (Pending p : settled.done()) {
            p.request().ifPresent(r -> work.reply(r, true,
                    Answers.recorded(work.settings, work.ledger.book(), new Answers.Asked(r, p.besides()),
                            when(r, alarms)) + more(r) + (saidAtOnce(r.ask()) ? "" : p.besides())));
        }
        for (Pending p : settled.failed()) {
            String why = work.image.pipes().store().orElse("the record refused it");
            boolean perhaps = work.image.inbox().commits().stream()
                    .anyMatch(c -> c.seq() == p.lastSeq() && c.mayBeKept());
            p.request().ifPresent(r -> work.reply(r, false, Sentences.place(work.settings, r.cone())
                    + (perhaps && !p.takesAway() ? Sentences.perhaps(why)
                    : Sentences.unrecorded(p.takesAway(), why))));
        }
    }

    /** Whether what is said besides is part of the answer, not what follows it. */
    private static boolean saidAtOnce(Ask ask) {
        return ask instanceof Ask.Withdraw || ask instanceof Ask.Acknowledge || ask instanceof Ask.Shelve;
    }

    private NextStep.When when(Request r, Alarms alarms) {
        return work.settings.cone(r.cone()).map(c -> NextStep.When.of(c, work.live(c.id()).judged(
                work.judged.get(c.id())), work.ledger.book(), work.image.now()).beside(alarms, c))
                .orElse(new NextStep.When(work.image.now(), 0));
    }

    /** What only some answers have besides. */
    private String more(Request r) {
        Cone c = work.settings.cone(r.cone()).orElse(work.settings.cones().getFirst());
        return r.ask() instanceof Ask.ReadyBy ? new Appointments(work).answer(c)
                : r.ask() instanceof Ask.SetSetpoint p ? OutOfReach.warning(work, c, p.degreesC())
                : Teaching.looks(r.ask()) ? LookAnswer.of(work, c, r) : hurried(r);
    }

    /** Told at stocking: how long this charge will stand without air at its harvest (science.md §7.3). */
    private String hurried(Request r) {
        boolean stocked = switch (r.ask()) {
            case Ask.DidStock _ -> true;
            case Ask.DidStockAsUsual _ -> true;
            case Ask.Did(Step s) -> s == Step.STARTED || s == Step.STOCKED;
            case Ask.DidFill _, Ask.DidCount _, Ask.DidWeigh _, Ask.TinHolds _, Ask.SetUsual _,
                 Ask.SetSetpoint _, Ask.ReadyBy _, Ask.Withdraw _, Ask.Acknowledge _, Ask.Shelve _,
                 Ask.Alarms _, Ask.Away _ -> false;
        };
        if (!stocked) {
            return "";
        }
        // By now the water is as cold as it came; the air will be stopped when it is warm.
        Cone c = work.settings.cone(r.cone()).orElseThrow();
        double warmC = AirOff.harvestC(c, work.batch(c.id()), work.judged.get(c.id()));
        double perGram = Teaching.known(work, c).naupliiPerGram();
        View.Caps caps = AirOff.caps(c, work.batch(c.id()), warmC, perGram);
        return (caps.tooHurried() ? Sentences.hurried(caps, warmC) : Sentences.withoutAir(caps, warmC))
                + (perGram == Oxygen.USUAL_NAUPLII_PER_G ? "" : LotWords.dense(perGram));
    }

    /** One cone's memory for the next tick. */
    ConeLive grown(Cone c, Hold hold, Share.Credit credit, ConeLive.ConeOut out) {
        Batch b = work.batch(c.id());
        ConeJudgement j = Refreshed.of(work.judged.get(c.id()), work.settled.book().cone(c.id()),
                work.ledger.book().cone(c.id()));
        Growth growth = work.live(c.id()).growth().after(b, j.belief(), new Growth.Around(j.roomOrUsualC(),
                Proofs.cooling(work, c), Zones.of(work.settings.site(), c, b)),
                new Growth.When(work.image.now(), work.ledger.book().boots(),
                        work.ledger.book().cone(c.id()).bridges()));
        growth.crossings().fresh().ifPresent(bridge -> work.write(c.id(), new Change.Bridged(bridge)));
        ConeLive was = work.live(c.id());
        Wear wear = was.wear().after(out.heat() && !was.out().heat(), work.dtMs / 1000.0,
                Hold.switching(c.fittings().heat()));
        // Who shares its watts is reckoned by letting them run: too much for every tick.
        double power = minute(work.image.now().monoMs()) ? work.power.share(c)
                : was.heating().power();
        return new ConeLive(j, work.beside.get(c.id()), growth, new ConeLive.Heating(hold, credit, wear,
                was.heating().felt().after(work.image.now(), work.dtMs, j.feltRoomC()), power), out,
                outlook(c, growth), work.known(c.id()), Buttons.heldMs(work, c));
    }

    /** Renewed each minute, and when batch, trust, the clock, heat or what is known of its lot changes. */
    private ConeLive.Outlook outlook(Cone c, Growth growth) {
        ConeLive.Outlook was = work.live(c.id()).outlook();
        Batch b = work.batch(c.id());
        ConeJudgement j = work.judged.get(c.id());
        long now = work.image.now().monoMs();
        boolean news = !work.before.book().boots().placed(work.image.now())
                || !work.live(c.id()).known().speed().equals(work.known(c.id()).speed());
        boolean changed = !work.before.book().cone(c.id()).batch().equals(b)
                || was.water().known() != j.belief().known()
                || PowerAhead.locked(work, c) != PowerAhead.locked(work.settings, work.before.book(), c)
                || news;
        if (!changed && (!Tick.minutePassed(was.atMs(), now) || !j.belief().known() && !minute(now))) {
            return was;
        }
        if (!b.stage().develops() || !j.belief().known()) {
            // What was told keeps the date at which it was reckoned: else its hour would slide along.
            return b.stage().develops()
                    ? new ConeLive.Outlook(was.forecast(), was.harvest(), was.atMs(), j.belief(),
                            was.promise(), !news && was.foretold(work.image.now()).isPresent()
                            ? was.appointment()
                            : new Appointments(work).renewed(c, growth, was.appointment()))
                    : new ConeLive.Outlook(Optional.empty(), Optional.empty(), now, j.belief(), Promise.NONE,
                            Optional.empty());
        }
        Optional<Appointment> made = new Appointments(work).renewed(c, growth, was.appointment());
        Foresight foresight = Foresight.of(work, c, growth.done());
        Foretold told = foresight.foretold(Appointment.setC(c, b, made));
        Promise promise = !b.stage().growing() ? Promise.NONE : was.promise().after(told.forecast(),
                work.settings.site().feeding(), work.image.now());
        return new ConeLive.Outlook(Optional.of(told.forecast()), Optional.of(told.harvest()), now,
                j.belief(), promise, made);
    }

    /** Whether this tick ends a minute. */
    private boolean minute(long nowMs) {
        return Tick.minutePassed(work.before.live().timers().checkpointAtMs(), nowMs);
    }

    Result result(Parts parts, Map<String, Boolean> outputs) {
        long now = work.image.now().monoMs();
        State.Timers was = work.before.live().timers();
        boolean minute = minute(now);
        long untrusted = work.image.now().wallTrusted() ? 0 : was.wallUntrustedForMs() + work.dtMs;
        State.Timers timers = new State.Timers(Optional.of(work.image.now()), minute ? now
                : was.checkpointAtMs(),
                untrusted, parts.waiting(), Owed.minute(was, work.image, minute), Map.copyOf(work.refused));
        // Nothing new is handed over before what the record refused, so that it is kept in order.
        List<Fact> again = minute || !work.transactions.isEmpty() ? work.ledger.refused() : List.of();
        Ledger ledger = again.isEmpty() ? work.ledger : work.ledger.offeredAgain(now);
        Diary diary = work.before.live().diary().after(work, parts.alarms().next());
        State next = new State(ledger, new State.Live(work.before.live().begun(), parts.cones(),
                parts.alarms().next(), timers, outputs.getOrDefault(Tick.HEARTBEAT, false),
                minute ? Diary.EMPTY : diary, work.before.live().day().after(work.image.now(), work.dtMs,
                        Judge.room(work.settings.site(), work.image))));
        List<List<Fact>> transactions = new ArrayList<>(work.transactions);
        if (!again.isEmpty()) {
            transactions.addFirst(again);
        }
        return new Result(next, outputs,
                new Result.Record(transactions, minute ? Optional.of(new Minute(checkpoint(parts.cones()),
                        diary.outputs(work), diary.turns())) : Optional.empty()),
                new Result.Words(List.copyOf(work.replies), parts.alarms().messages(),
                        Owed.notes(work, parts.waiting())), parts.findings());
    }

    private static Checkpoint.Air air(ConeLive live) {
        Breath b = live.judged().air().breath();
        return new Checkpoint.Air(b.spent(), b.withoutMs());
    }

    private Checkpoint checkpoint(Map<String, ConeLive> cones) {
        Map<String, Double> warm = new TreeMap<>();
        List<Checkpoint.ConePoint> points = new ArrayList<>();
        cones.forEach((id, live) -> {
            if (live.judged().belief().known()) {
                warm.put(id, live.judged().belief().middleC());
            }
            live.judged().roomC().ifPresent(r -> warm.put("room", r));
            Batch b = work.batch(id);
            // Whoever said that it is over may take that back, in another life.
            if (b.stock().isPresent() && live.growth().stock().equals(b.stock())) {
                points.add(new Checkpoint.ConePoint(id, b.number(), live.growth().sure(),
                        new Checkpoint.At(live.growth().lastAt().boot(), live.growth().lastAt().monoMs()),
                        Appointment.of(b, live.outlook().appointment()).map(x -> OptionalDouble.of(x.setC()))
                                .orElse(OptionalDouble.empty()), Optional.of(air(live))));
            }
        });
        List<Checkpoint.Temperature> t = new ArrayList<>();
        warm.forEach((series, c) -> t.add(new Checkpoint.Temperature(series, c)));
        return new Checkpoint(work.image.now(), t, points, work.before.live().day().kept());
    }
}

package org.conetender.core.batch;

import java.util.List;
import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;

/**
 * The one place where a batch changes: a fold of facts. Total, so that a record that was accepted
 * once can always be read back; whether a step is welcome is {@link Fits}' question, not this one's.
 */
public final class Life {

    private Life() {}

    /** The batch after that fact. */
    public static Batch after(Batch b, Fact f) {
        return switch (f.change()) {
            case Change.Told t -> told(b, t.ask(), f.at());
            case Change.Moved m -> moved(b, m.stage(), f.at());
            case Change.Doubted d -> b.doubted(d.why());
            case Change.Undoubted u -> b.undoubted(u.why());
            case Change.Tripped _ -> b;
            case Change.Released _ -> b;
            case Change.AlarmRaised _ -> b;
            case Change.AlarmOver _ -> b;
            case Change.Began _ -> b;
            case Change.Left _ -> b;
            case Change.Bridged _ -> b;
            case Change.Tried _ -> b;
            case Change.Learned _ -> b;
            case Change.Worn _ -> b;
            case Change.ClockSet _ -> b;
            case Change.Taught _ -> b;
            case Change.Drawn _ -> b;
            case Change.SetAside _ -> b;
            case Change.Described _ -> b;
        };
    }

    private static Batch told(Batch b, Ask ask, Moment at) {
        return switch (ask) {
            case Ask.Did d -> did(b, d.step(), at);
            case Ask.DidFill d -> fill(b, d, at);
            case Ask.DidStock d -> stock(b, d, at);
            case Ask.DidStockAsUsual _ -> b;
            case Ask.SetSetpoint s -> b.with(b.marks().held(new Batch.Held.At(s.degreesC())));
            case Ask.ReadyBy r -> readyBy(b, r);
            case Ask.DidCount _ -> b;
            case Ask.DidWeigh _ -> b;
            case Ask.TinHolds _ -> b;
            case Ask.SetUsual _ -> b;
            case Ask.Withdraw _ -> b;
            case Ask.Acknowledge _ -> b;
            case Ask.Shelve _ -> b;
            case Ask.Alarms _ -> b;
            case Ask.Away _ -> b;
        };
    }

    /** Who gives an hour up leaves a set-point alone that was told since. */
    private static Batch readyBy(Batch b, Ask.ReadyBy r) {
        Batch.Held now = b.marks().held();
        return b.with(b.marks().held(r.hour().isPresent() ? new Batch.Held.ReadyBy(r.hour().get())
                : now instanceof Batch.Held.ReadyBy ? new Batch.Held.Usual() : now));
    }

    private static Batch did(Batch b, Step step, Moment at) {
        return switch (step) {
            case STARTED -> b.stage() instanceof Stage.Clean ? b
                    : clean(b.assumed(Implied.before(b.stage(), Step.CLEANED)), at);
            case SALTED -> b.with(b.marks().salted(true));
            case FIRST_SEEN -> b.stage() instanceof Stage.Hydrating || b.stage() instanceof Stage.Incubating
                    ? b.to(new Stage.Hatching(at)) : b;
            case VALVE_SHUT -> b.with(b.marks().valveShut(true));
            case VALVE_OPEN -> b.with(b.marks().valveShut(false));
            case SETTLE -> b.to(new Stage.Settling(at));
            case DRAWING -> b.stage().airOff() == null ? b : b.to(new Stage.Drawing(at, b.stage().airOff()));
            case PART_DRAWN -> b.to(new Stage.Hatching(at)).with(b.marks().harvested());
            case DRAINED -> b.assumed(Implied.before(b.stage(), Step.DRAINED)).to(new Stage.Drained(at));
            case CLEANED -> clean(b.assumed(Implied.before(b.stage(), Step.CLEANED)), at);
            case TOPPED_UP -> b.with(b.marks().toppedUp(at));
            case HANDS_IN -> handsIn(b, at);
            case ABANDONED -> b.to(new Stage.Abandoned(at));
            case FILLED, STOCKED, RINSED, DISINFECTED, RELAY_EXCHANGED, TOO_EARLY, RIGHT, LATE,
                 NONE_SEEN -> b;
        };
    }

    /** Hands in the water end a separation: the air comes back (design.md). */
    private static Batch handsIn(Batch b, Moment at) {
        Batch marked = b.with(b.marks().handsIn(at));
        return b.stage().airOff() == null ? marked : marked.to(new Stage.Ready(at));
    }

    private static Batch clean(Batch b, Moment at) {
        return b.to(new Stage.Clean(at));
    }

    private static Batch fill(Batch b, Ask.DidFill d, Moment at) {
        Optional<Batch.Fill> fill = Optional.of(new Batch.Fill(d.litres(), d.ppt(), at));
        if (b.stage() instanceof Stage.Filled) {
            return new Batch(b.number(), b.stage(), fill, b.stock(), b.marks().salted(d.ppt() > 0));
        }
        List<String> assumed = Implied.before(b.stage(), Step.FILLED);
        return new Batch(b.number() + 1, new Stage.Filled(at), fill, Optional.empty(),
                Batch.Marks.NONE.salted(d.ppt() > 0)).assumed(assumed);
    }

    private static Batch stock(Batch b, Ask.DidStock d, Moment at) {
        return new Batch(b.number(), new Stage.Hydrating(at), b.fill(),
                Optional.of(new Batch.Stock(d.lot(), d.cystsG(), at)), b.marks());
    }

    /**
     * A move of our own only goes on from the stage it was decided in: a report that was on its way to
     * the record at that moment comes before it and may have ended that stage.
     *
     * @throws IllegalArgumentException for a word no release has written
     */
    private static Batch moved(Batch b, String stage, Moment at) {
        Stage s = b.stage();
        return switch (stage) {
            case "incubating" -> s instanceof Stage.Hydrating ? b.to(new Stage.Incubating(at)) : b;
            case "hatching" -> s instanceof Stage.Incubating ? b.to(new Stage.Hatching(at)) : b;
            case "ready" -> s instanceof Stage.Hatching || s.airOff() != null ? b.to(new Stage.Ready(at)) : b;
            case Reconsidered.INCUBATING -> s instanceof Stage.Hatching ? b.to(new Stage.Incubating(at)) : b;
            case Reconsidered.HATCHING -> s instanceof Stage.Ready ? b.to(new Stage.Hatching(at)) : b;
            case "settling" -> s instanceof Stage.Ready ? b.to(new Stage.Settling(at)) : b;
            case "settled" -> s instanceof Stage.Settling ? b.to(new Stage.Settled(at, s.since())) : b;
            default -> throw new IllegalArgumentException("a batch cannot move itself to '" + stage + "'");
        };
    }
}

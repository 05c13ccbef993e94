package org.conetender.core;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Stage;
import org.conetender.core.face.Sentences;
import org.conetender.core.guard.Handled;
import org.conetender.core.guard.View;
import org.conetender.core.hatch.Known;
import org.conetender.core.hatch.Speed;
import org.conetender.core.image.Image;
import org.conetender.core.image.Request;
import org.conetender.core.judge.Beside;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Judge;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/** The desk of one tick: what has been settled so far. Lives for that tick only, on one thread. */
final class Work {

    /** While people are away a ripe batch is kept warm this long (design.md, the life of a batch). */
    private static final long OVERDUE_MS = 12 * Units.HOUR_MS;

    final Settings settings;
    final State before;
    final Image image;
    final long dtMs;
    final Map<String, ConeJudgement> judged = new HashMap<>();
    final Map<String, Beside> beside = new HashMap<>();
    /** As far as it was asked for in this tick ({@link #known}). */
    final Map<String, Known> known = new HashMap<>();
    /** What was reckoned of the air, which every guard's view asks for and which takes powers. */
    private final Map<String, Capped> capped = new HashMap<>();
    /** Asked once all cones are judged. */
    final PowerAhead power = new PowerAhead(this);
    private boolean learnt;
    /** Mostly the cone is asked about that was asked about last. */
    private Asked asked = new Asked(null, "", null);
    private String liveOf = "";
    private ConeLive live;
    /** The book's boots, and the same after this tick's moment, by which times across boots are reckoned. */
    private Boots boots;
    private Boots heard;
    final List<List<Fact>> transactions = new ArrayList<>();
    final List<Result.Reply> replies = new ArrayList<>();
    /** Acknowledgements that no record can keep: they only silence, and only in this life. */
    final List<Request> quieted = new ArrayList<>();
    /** By cone, what was refused since its last report. */
    final Map<String, State.Refused> refused;
    final Ledger settled;
    Ledger ledger;

    /** @param batch, judged, perGram that it was reckoned from */
    private record Capped(Batch batch, ConeJudgement judged, double perGram, View.Caps caps) {}

    /** @param batch of that cone in that book */
    private record Asked(Book book, String cone, Batch batch) {}

    /** @param settled the ledger after what the record answered */
    Work(Settings settings, State before, Image image, Ledger settled) {
        this.settings = settings;
        this.before = before;
        this.image = Owed.seen(before, settled, image);
        this.settled = settled;
        this.ledger = settled;
        this.refused = new HashMap<>(before.live().timers().refused());
        this.dtMs = before.live().timers().last()
                .map(t -> Math.clamp(image.now().monoMs() - t.monoMs(), 0, Units.MINUTE_MS)).orElse(0L);
    }

    Batch batch(String cone) {
        Book book = ledger.book();
        if (book != asked.book() || !cone.equals(asked.cone())) {
            asked = new Asked(book, cone, book.cone(cone).batch());
        }
        return asked.batch();
    }

    ConeLive live(String cone) {
        if (!cone.equals(liveOf)) {
            liveOf = cone;
            live = before.live().cones().get(cone);
        }
        return live;
    }

    /**
     * What is known of the cysts in that cone, by the book as it stands. Only one lot is learnt in a tick, as
     * that takes time; all else keeps what it had for so long.
     */
    Known known(String cone) {
        Known was = known.getOrDefault(cone, live(cone).known());
        if (learnt && was.canWait(ledger.book().lots(), cone, batch(cone))) {
            return was;
        }
        Known next = was.after(ledger.book().lots(), cone, batch(cone));
        learnt |= next.speed() != was.speed() || !next.whole();
        if (next != was) {
            known.put(cone, next);
        }
        return next;
    }

    /** How fast they are in the water they stand in. */
    Speed speed(String cone) {
        return known(cone).at(live(cone).growth().lastC());
    }

    void write(String cone, List<Change> changes, Ledger.Reason why) {
        Ledger.Written w = ledger.write(cone, changes, image.now(), why);
        ledger = w.ledger();
        transactions.add(w.facts());
    }

    void write(String cone, Change change) {
        write(cone, List.of(change), Ledger.Reason.OWN);
    }

    void reply(Request r, boolean accepted, String sentence) {
        replies.add(new Result.Reply(r, accepted, sentence));
    }

    /** Whether the water was touched so lately that its probes prove nothing. */
    boolean handled(String cone) {
        return Handled.lately(batch(cone), this::since);
    }

    /** How long ago that was, as far as the clocks tell. */
    Span since(Moment m) {
        Boots known = ledger.book().boots();
        if (known != boots) {
            boots = known;
            heard = known.heard(image.now());
        }
        return heard.between(m, image.now());
    }

    /** Whether nobody came for a ripe batch while people are away, until it is no food any more. */
    boolean overdue(String cone) {
        Batch b = batch(cone);
        if (!(b.stage() instanceof Stage.Ready r)) {
            return false;
        }
        return b.marks().words().doubts().contains(Sentences.OVERDUE)
                || since(r.since()).leastMs() >= OVERDUE_MS && ledger.book().away()
                        .filter(a -> since(a.since()).leastMs() >= OVERDUE_MS).isPresent();
    }

    /** The temperature to hold, °C; empty where heat is not wanted. */
    OptionalDouble aimC(Cone cone) {
        ConeLive live = live(cone.id());
        return overdue(cone.id()) ? OptionalDouble.empty()
                : Readings.lowest(this, cone, Demand.aimC(cone, batch(cone.id()), live,
                        live.outlook().appointment()));
    }

    /** How long air may be off for this batch, and how long that lets it settle. */
    View.Caps caps(Cone cone) {
        Batch b = batch(cone.id());
        ConeJudgement j = judged.get(cone.id());
        double perGram = known(cone.id()).naupliiPerGram();
        Capped c = capped.get(cone.id());
        if (c == null || c.batch() != b || c.judged() != j || c.perGram() != perGram) {
            c = new Capped(b, j, perGram, AirOff.caps(cone, b, j, perGram));
            capped.put(cone.id(), c);
        }
        return c.caps();
    }

    /** What the stage wants of the cone's air and heat, before anybody forbids it. */
    View view(Cone cone, View.Wants wants, View.SiteLoad site) {
        View.Scene scene = new View.Scene(image, before.live().begun(), wants, site, beside.get(cone.id()),
                caps(cone), Set.of());
        return new View(settings, cone, ledger.book(), ledger.book().cone(cone.id()), judged.get(cone.id()),
                scene);
    }

    /** A view in which nothing is wanted, for requests. */
    View view(Cone cone) {
        Stage s = batch(cone.id()).stage();
        return view(cone, new View.Wants(false, s.airOff() != null, live(cone.id()).out().heat()),
                new View.SiteLoad(0, before.live().timers().wallUntrustedForMs()));
    }

    void judge() {
        Optional<Double> measured = Judge.room(settings.site(), image);
        for (Cone c : settings.cones()) {
            ConeLive was = live(c.id());
            Optional<Double> room = Besides.warms(this, c) ? Optional.empty() : measured;
            judged.put(c.id(), Judge.look(Refreshed.of(was.judged(), before.book().cone(c.id()),
                    ledger.book().cone(c.id())),
                    new Judge.About(c, ledger.book().cone(c.id()), handled(c.id()), room,
                            was.known().naupliiPerGram(), ledger.book().lives().valveUnheard(c.id())),
                    image,
                    new Judge.Did(was.switches(c), !was.out().airPause(), was.hold().aimC(), dtMs)));
        }
        beside.putAll(Besides.of(this));
    }
}

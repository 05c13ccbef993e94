package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.BiPredicate;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Stage;
import org.conetender.core.guard.Handled;
import org.conetender.core.guard.View;
import org.conetender.core.hatch.Oxygen;
import org.conetender.core.image.Image;
import org.conetender.core.image.Request;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.Judge;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/** The desk of one tick: what has been settled so far. Lives for that tick only, on one thread. */
final class Work {

    /** A probe takes this long to come to the temperature of water just poured in (guess: 10 lags). */
    private static final long FILLING_MS = 3 * Units.MINUTE_MS;

    /** While people are away a ripe batch is kept warm this long (design.md, the life of a batch). */
    private static final long OVERDUE_MS = 12 * Units.HOUR_MS;

    final Settings settings;
    final State before;
    final Image image;
    final long dtMs;
    final Map<String, ConeJudgement> judged = new TreeMap<>();
    final List<List<Fact>> transactions = new ArrayList<>();
    final List<Result.Reply> replies = new ArrayList<>();
    Ledger ledger;

    Work(Settings settings, State before, Image image) {
        this.settings = settings;
        this.before = before;
        this.image = image;
        this.ledger = before.ledger();
        this.dtMs = before.live().timers().last()
                .map(t -> Math.clamp(image.now().monoMs() - t.monoMs(), 0, Units.MINUTE_MS)).orElse(0L);
    }

    Batch batch(String cone) {
        return ledger.book().cone(cone).batch();
    }

    ConeLive live(String cone) {
        return before.live().cones().get(cone);
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
        Batch b = batch(cone);
        BiPredicate<Optional<Moment>, Long> lately = (m, ms) -> m.filter(t -> since(t).leastMs() < ms)
                .isPresent();
        return lately.test(b.marks().handsIn(), Handled.HANDS_MS)
                || lately.test(b.marks().toppedUp(), Handled.HANDS_MS)
                || lately.test(b.fill().map(Batch.Fill::at), FILLING_MS);
    }

    /** How long ago that was, as far as the clocks tell. */
    Span since(Moment m) {
        return ledger.book().since(m, image.now());
    }

    /** Whether nobody came for a ripe batch while people are away, until it is no food any more. */
    boolean overdue(String cone) {
        return ledger.book().away().isPresent() && batch(cone).stage() instanceof Stage.Ready r
                && since(r.since()).leastMs() >= OVERDUE_MS;
    }

    /** The temperature to hold, °C; empty where heat is not wanted. */
    OptionalDouble aimC(Cone cone) {
        return overdue(cone.id()) ? OptionalDouble.empty() : Demand.aimC(cone, batch(cone.id()));
    }

    /** How long air may be off for this batch, and how long that lets it settle. */
    View.Caps caps(Cone cone) {
        Batch b = batch(cone.id());
        double house = org.conetender.core.guard.Suffocation.LONGEST_MINUTES;
        double oxygen = b.stock().isEmpty() || b.fill().isEmpty() ? house
                : oxygenMinutes(b.stock().get(), b.fill().get(), cone);
        double drawing = Math.min(house, oxygen);
        double settled = Math.min(drawing, cone.timing().airOffCapMinutes());
        return new View.Caps(Units.msOfMinutes(settled), Units.msOfMinutes(drawing),
                Units.msOfMinutes(Math.max(0, Math.min(cone.timing().settleMinutes(), settled - 2))));
    }

    private double oxygenMinutes(Batch.Stock stock, Batch.Fill fill, Cone cone) {
        double c = judged.get(cone.id()).belief().middleC();
        double water = Double.isNaN(c) ? cone.limits().setpointC() : Math.clamp(c, 10, 35);
        return Oxygen.airOffMinutes(new Oxygen.Charge(stock.cystsG(), fill.litres(), fill.ppt(),
                Oxygen.USUAL_NAUPLII_PER_G, 1), water);
    }

    /** What the stage wants of the cone's air and heat, before anybody forbids it. */
    View view(Cone cone, View.Wants wants, View.SiteLoad site) {
        return new View(settings, cone, ledger.book(), judged.get(cone.id()), new View.Scene(image,
                before.live().begun(), wants, site, caps(cone)));
    }

    /** A view in which nothing is wanted, for requests. */
    View view(Cone cone) {
        Stage s = batch(cone.id()).stage();
        return view(cone, new View.Wants(false, s.airOff() != null, live(cone.id()).out().heat()),
                new View.SiteLoad(0, before.live().timers().wallUntrustedForMs()));
    }

    void judge() {
        Optional<Double> room = Judge.room(settings.site(), image);
        for (Cone c : settings.cones()) {
            ConeLive was = live(c.id());
            judged.put(c.id(), Judge.look(refreshed(c.id(), was.judged()),
                    new Judge.About(c, batch(c.id()), handled(c.id()), room), image,
                    new Judge.Did(was.out().heat(), !was.out().airPause(), dtMs)));
        }
    }

    /** A released latch forgives the tracks behind it; a new filling must be proven wet again. */
    private ConeJudgement refreshed(String cone, ConeJudgement j) {
        var old = before.book().cone(cone);
        var now = ledger.book().cone(cone);
        boolean released = now.latches().size() < old.latches().size();
        boolean filled = now.batch().number() != old.batch().number();
        return new ConeJudgement(released ? j.water().forgiven() : j.water(), j.roomC(), j.level(),
                released ? j.heat().forgiven() : filled ? j.heat().untested() : j.heat(), j.air());
    }
}

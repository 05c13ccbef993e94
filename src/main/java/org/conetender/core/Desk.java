package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Fits;
import org.conetender.core.batch.Reports;
import org.conetender.core.batch.Verdict;
import org.conetender.core.face.AlarmList;
import org.conetender.core.face.Sentences;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.View;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Text;

/**
 * Where requests are judged: refused with a reason, or written down. A grant waits until an earlier
 * grant of its cone is durable, so that each is judged against what really holds.
 */
final class Desk {

    /** More than this many waiting requests are refused (guess). */
    private static final int MOST_WAITING = 32;

    /** Why a latch is released. */
    static final String RELEASED = "acknowledged";

    private final Work work;
    private final List<Guard> guards;
    private final List<Request> waiting = new ArrayList<>();

    Desk(Work work, List<Guard> guards) {
        this.work = work;
        this.guards = guards;
    }

    /** Serves what waited and what came in; answers what must wait on. */
    List<Request> serve(List<Request> came) {
        List<Request> all = new ArrayList<>(work.before.live().timers().waiting());
        all.addAll(came);
        for (Request r : all) {
            serve(r);
        }
        return List.copyOf(waiting);
    }

    private void serve(Request r) {
        boolean site = r.cone().isEmpty();
        Optional<Cone> cone = site ? work.settings.cones().stream().findFirst()
                : work.settings.cone(r.cone());
        if (cone.isEmpty()) {
            work.reply(r, false, "There is no cone '" + r.cone() + "' here; the cones are "
                    + String.join(", ", work.settings.cones().stream().map(Cone::id).toList()) + ".");
            return;
        }
        if (site && !(r.ask() instanceof Ask.Away || r.ask() instanceof Ask.TinHolds
                || r.ask() instanceof Ask.Acknowledge
                || r.ask() instanceof Ask.Shelve s && Shelving.site(s, work.settings)
                || r.ask() instanceof Ask.Alarms)) {
            work.reply(r, false, "Name the cone this is about.");
            return;
        }
        if (r.ask() instanceof Ask.Alarms) {
            work.reply(r, true, AlarmList.of(work.settings, work.before.live().alarms(),
                    site ? Optional.empty() : Optional.of(r.cone()), work.image.now()));
            return;
        }
        Optional<String> no = refusal(r, cone.get());
        if (work.ledger.busy(r.cone()) && waits(r.ask(), no.isPresent())) {
            hold(r);
        } else if (no.isPresent()) {
            TakenBack.heard(work, r, false);
            work.reply(r, false, Sentences.place(work.settings, r.cone()) + no.get());
        } else if (Silence.unrecorded(work, r.ask())) {
            Silence.keep(work, r);
        } else {
            accept(r, cone.get());
        }
    }

    /**
     * Whether it waits for a grant on its way. What takes away does not, unless it fits only afterwards:
     * then it must not be lost, or the grant would come true without it. A withdrawal must know what it
     * takes back. Nothing else waits for a record that gives no answer.
     */
    private boolean waits(Ask ask, boolean refused) {
        boolean takes = Reports.takesAway(new Change.Told(ask));
        return ask instanceof Ask.Withdraw || (takes ? refused : work.image.pipes().store().isEmpty());
    }

    private void hold(Request r) {
        if (waiting.size() < MOST_WAITING) {
            waiting.add(r);
        } else {
            work.reply(r, false, "Too many requests at once; send it again in a few seconds.");
        }
    }

    /** Why that cannot be taken now, in words; empty when it can. */
    Optional<String> refusal(Request r, Cone cone) {
        View view = work.view(cone);
        for (Guard g : guards) {
            Optional<String> no = g.refuses(r, view);
            if (no.isPresent()) {
                return no;
            }
        }
        Ask ask = whole(r.ask(), view.coneBook());
        return Fits.badFigures(ask).or(() -> unfit(ask, view));
    }

    private Optional<String> unfit(Ask ask, View v) {
        ConeBook book = v.coneBook();
        return switch (ask) {
            case Ask.Did(Step s) when s == Step.RELAY_EXCHANGED && !v.cone().fittings().heat().wears() ->
                    Optional.of("no relay switches a heater here, so none is counted; name the cone whose "
                            + "relay was exchanged.");
            case Ask.Did d -> Fits.refusal(book, d.step());
            case Ask.DidFill f -> Fits.refusal(book, Step.FILLED)
                    .or(() -> Fits.tooMuch(f.litres(), book.usual()));
            case Ask.DidStock _, Ask.DidStockAsUsual _ -> Fits.refusal(book, Step.STOCKED);
            case Ask.DidCount _ -> Fits.countRefusal(v.stage());
            case Ask.DidWeigh _ -> Verdict.weighRefusal(book);
            case Ask.SetUsual u -> usual(book.usual(), u);
            case Ask.Shelve s -> Shelving.refusal(s, v);
            case Ask.TinHolds _, Ask.Away _, Ask.Alarms _ -> Optional.empty();
            case Ask.SetSetpoint s -> setpoint(s.degreesC(), v);
            case Ask.ReadyBy r -> new Appointments(work).refusal(r, v.cone());
            case Ask.Withdraw w -> withdraw(w.what(), v);
            case Ask.Acknowledge a -> acknowledge(a.alarm(), v);
        };
    }

    private static Optional<String> usual(Cone.Usual was, Ask.SetUsual u) {
        Cone.Usual next = new Cone.Usual(u.lot().orElse(was.lot()), u.litres().orElse(was.litres()),
                u.cystsG().orElse(was.cystsG()), u.ppt().orElse(was.ppt()));
        return next.tooDense() ? Optional.of(Text.of("%s g of cysts in %s L is too dense to be usual and "
                + "only injures them; give at most %s g, or more water.", next.cystsG(), next.litres(),
                next.litres() * Cone.Usual.MOST_CYSTS_G_PER_L)) : Optional.empty();
    }

    private static Optional<String> setpoint(double c, View v) {
        double least = Cone.Limits.LEAST_SETPOINT_C;
        double most = v.cone().limits().mostSetpointC();
        if (!v.stage().hasWater()) {
            return Optional.of("a set-point belongs to its batch; fill the cone first.");
        }
        if (!v.cone().fittings().heat().fitted()) {
            return Optional.of("it has no heater, so its water goes by the room and nothing holds it at a "
                    + "set-point.");
        }
        return c >= least && c <= most ? Optional.empty()
                : Optional.of(Text.of("set-point = %s °C is not safe; give %s to %s °C.", Sentences.plain(c),
                        Sentences.plain(least), Sentences.plain(most)));
    }

    private static Optional<String> withdraw(String what, View v) {
        Optional<Fact> last = v.coneBook().lastReport();
        String hands = Step.HANDS_IN.word();
        if (what.equals(hands) || what.equals("last") && Reports.newest(v.coneBook())
                .filter(hands::equals).isPresent()) {
            return Optional.of("'hands-in' cannot be withdrawn, it ends by itself; to take back the report "
                    + "before it, name that one.");
        }
        if (last.isEmpty()) {
            return Optional.of("there is no report to withdraw.");
        }
        Span age = v.since(last.get().at());
        if (age.mostMs() > Fits.WITHDRAW_WITHIN_MS) {
            return Optional.of(age.leastMs() > Fits.WITHDRAW_WITHIN_MS
                    ? "the last report is over half an hour old and stands; what you see or count next "
                    + "outvotes a look, and 'abandoned' ends a batch that is not as it was told."
                    : "the power was off since the last report and the clock is not set yet, so it may be "
                    + "over half an hour old; wait for the clock, or report 'abandoned' to start over.");
        }
        List<String> words = TakenBack.words(v.coneBook(), last.get());
        return what.equals("last") || words.contains(what) ? Optional.empty()
                : Optional.of("the last report was '" + TakenBack.name(v.coneBook(), last.get())
                        + "', not '" + what + "'; only the last one can be withdrawn.");
    }

    private Optional<String> acknowledge(String alarm, View v) {
        List<String> standing = work.before.live().alarms().raised().stream()
                .filter(a -> a.cone().equals(v.cone().id()) || a.cone().isEmpty()).map(a -> a.kind().id())
                .toList();
        return standing.contains(alarm) ? Optional.empty()
                : Optional.of("no alarm '" + alarm + "' stands" + (standing.isEmpty() ? "."
                        : "; standing: " + String.join(", ", standing) + "."));
    }

    private void accept(Request r, Cone cone) {
        List<Change> changes = new ArrayList<>();
        if (r.ask() instanceof Ask.Did(Step step) && step == Step.RELAY_EXCHANGED) {
            changes.add(new Change.Worn(work.live(cone.id()).wear().closings()));
        }
        ConeBook before = work.ledger.book().cone(cone.id());
        for (Ask a : expanded(whole(r.ask(), before), before)) {
            changes.add(new Change.Told(a));
        }
        Teaching.drawn(work, cone, r.ask()).ifPresent(changes::add);
        Teaching.of(work, cone, r.ask()).ifPresent(changes::add);
        TakenBack.airStays(work, cone, r.ask()).ifPresent(changes::add);
        List<Change> releases = releases(r.ask(), cone);
        changes.addAll(releases);
        // The site's alarms may be acknowledged without a cone; what is noted of them is noted at the first.
        // A tin belongs to no cone, and nothing of a cone follows from it.
        String at = r.ask() instanceof Ask.TinHolds ? "" : r.ask() instanceof Ask.Acknowledge ? cone.id()
                : r.ask() instanceof Ask.Shelve s ? Shelving.place(work.settings, s, cone) : r.cone();
        String besides = r.ask() instanceof Ask.Withdraw w ? TakenBack.of(work, cone, w)
                : r.ask() instanceof Ask.Acknowledge a ? new Seen(work, guards).of(cone, a.alarm(), releases)
                : Ending.of(work, cone, r.ask());
        TakenBack.heard(work, r, true);
        work.write(at, changes, new Ledger.Reason(Optional.of(r),
                besides));
        // What a report makes untried is untried from this tick on.
        work.judged.computeIfPresent(cone.id(), (id, j) -> j.proven(Refreshed.of(j, before,
                work.ledger.book().cone(id)).proving()));
    }

    /** With the figures that nobody said, where they are the usual ones. */
    private static Ask whole(Ask ask, ConeBook book) {
        return ask instanceof Ask.DidStockAsUsual(Optional<String> lot, Optional<Double> cystsG)
                ? new Ask.DidStock(lot.orElse(book.usual().lot()), cystsG.orElse(book.usual().cystsG()))
                : ask;
    }

    /** A short word stands for several reports, an hour for its day; all is written with its figures. */
    private List<Ask> expanded(Ask ask, ConeBook book) {
        var u = book.usual();
        Ask fill = new Ask.DidFill(u.litres(), u.ppt());
        Ask stock = new Ask.DidStock(u.lot(), u.cystsG());
        boolean dry = !book.batch().stage().hasWater();
        return switch (ask) {
            case Ask.Did(Step s) when s == Step.STARTED ->
                    List.of(ask, fill, new Ask.Did(Step.SALTED), stock);
            case Ask.Did(Step s) when s == Step.FILLED -> List.of(fill);
            case Ask.Did(Step s) when s == Step.STOCKED -> dry ? List.of(fill, stock) : List.of(stock);
            case Ask.DidStock _ when dry -> List.of(fill, ask);
            case Ask.ReadyBy r -> List.of(new Appointments(work).dated(r));
            // Written with its name, so that the record says what is taken back.
            case Ask.Withdraw _ -> List.of(book.lastReport().<Ask>map(f -> new Ask.Withdraw(
                    TakenBack.name(book, f))).orElse(ask));
            case Ask.Did _, Ask.DidFill _, Ask.DidStock _, Ask.DidStockAsUsual _, Ask.DidCount _,
                 Ask.DidWeigh _, Ask.TinHolds _, Ask.SetUsual _, Ask.SetSetpoint _, Ask.Acknowledge _,
                 Ask.Shelve _, Ask.Alarms _, Ask.Away _ -> List.of(ask);
        };
    }

    /** Acknowledging an alarm releases the latch behind it, if its cause is gone. */
    private List<Change> releases(Ask ask, Cone cone) {
        List<Change> out = new ArrayList<>();
        if (!(ask instanceof Ask.Acknowledge(String id))) {
            return out;
        }
        View v = work.view(cone);
        for (Guard g : guards) {
            boolean behind = g.look(v).stream()
                    .anyMatch(f -> f.clears() == Finding.Clears.ACKNOWLEDGED
                            && f.alarm().filter(k -> k.id().equals(id)).isPresent());
            if (behind && v.latch(g.id()).isPresent() && g.causeGone(v)) {
                out.add(new Change.Released(g.id(), RELEASED));
            }
        }
        return out;
    }
}

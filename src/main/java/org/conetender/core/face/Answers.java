package org.conetender.core.face;

import static org.conetender.core.face.Sentences.plain;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Lives;
import org.conetender.core.batch.Lots;
import org.conetender.core.batch.Stage;
import org.conetender.core.batch.Verdict;
import org.conetender.core.batch.Yield;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Text;

/** What a person is answered whose request is durable now: what was understood, and what comes next. */
public final class Answers {

    private static final String USUAL = " Taken as usual: ";

    private Answers() {}

    /**
     * @param request that is durable now
     * @param before what is said of what it took back, or of what follows from it, if it did
     */
    public record Asked(Request request, String before) {}

    /** The answer to a request that is durable now. */
    public static String recorded(Settings s, Book book, Asked asked, NextStep.When when) {
        Request r = asked.request();
        String what = switch (r.ask()) {
            case Ask.Did d -> "'" + d.step().word() + "' is recorded." + asked(d.step(), book.cone(r.cone()));
            case Ask.DidFill f ->
                    Text.of("filled with %s L at %s ppt, recorded.", plain(f.litres()), plain(f.ppt()));
            case Ask.DidStock k -> LotWords.grams(k.cystsG(), k.lot()) + ", recorded."
                    + usual(Stream.empty(), book.cone(r.cone()).batch());
            case Ask.DidStockAsUsual k -> stocked(k, book.cone(r.cone()).batch());
            case Ask.DidCount c -> Text.of("count of %d nauplii, %d umbrella, %d unhatched, recorded%s.",
                    c.nauplii(), c.umbrella(), c.unhatched(), hatched(c));
            case Ask.DidWeigh w -> weighed(w, book.cone(r.cone()));
            case Ask.TinHolds t -> Text.of("Lot %s: %s g are left, recorded; what is stocked from now on is "
                    + "taken off. A slip is put right by saying anew what is left.%s", t.lot(),
                    plain(t.cystsG()), used(book, t.lot()) ? "" : LotWords.unheardOf(t.lot()));
            case Ask.SetUsual _ -> usual(book.cone(r.cone()).usual());
            case Ask.SetSetpoint p -> Text.of("this batch is held at %s °C.", plain(p.degreesC()));
            case Ask.ReadyBy h -> h.hour().isEmpty() ? "no hour is wanted for this batch any more."
                    : "wanted ready by " + book.cone(r.cone()).batch().marks().readyBy().or(h::hour)
                            .orElseThrow().withWeekday() + ", recorded.";
            case Ask.Withdraw _ -> asked.before() + "; the "
                    + stands(book.cone(r.cone()).batch().stage(), when);
            case Ask.Acknowledge a -> "alarm '" + a.alarm() + "' is acknowledged"
                    + locked(book, a.alarm(), asked.before());
            case Ask.Shelve h -> h.hours() == 0 ? "alarm '" + h.alarm() + "' is told again."
                    : !asked.before().isEmpty() ? asked.before()
                    : Text.of("alarm '%s' is not told for %s h, then again if it still stands; it stays in "
                            + "the list.", h.alarm(), plain(h.hours()));
            case Ask.Alarms _ -> "nothing is recorded of a question.";
            case Ask.Away a -> a.helper().isEmpty() ? "Somebody is near again." : "Away is noted; helper: "
                    + a.helper() + ".";
        };
        if (r.cone().isEmpty() || r.ask() instanceof Ask.TinHolds) {
            return r.ask() instanceof Ask.Acknowledge || r.ask() instanceof Ask.Shelve
                    ? Sentences.place(s, r.cone()) + what : what;
        }
        Cone cone = s.cone(r.cone()).orElseThrow();
        return Sentences.place(s, r.cone()) + what + " Next: "
                + NextStep.of(s, cone, book.cone(r.cone()), when);
    }

    /** Not "again": many a report changes no stage. Nor does air that came back make a batch ripe. */
    private static String stands(Stage stage, NextStep.When when) {
        return when.unripe().isPresent() ? "batch goes on hatching."
                : (stage instanceof Stage.Clean ? "cone is " : "batch is ") + stage.word() + ".";
    }

    /** Whether a cone holds it or is charged with it as usual, or anything was ever learnt of it. */
    private static boolean used(Book book, String lot) {
        return book.cones().values().stream().anyMatch(c -> c.usual().lot().equals(lot)
                || c.batch().stock().filter(k -> k.lot().equals(lot)).isPresent())
                || book.lots().all().stream().anyMatch(k -> k.what().lot().equals(lot));
    }

    private static String usual(Cone.Usual u) {
        return Text.of("its usual values are now %s L at %s ppt with %s.", plain(u.litres()),
                plain(u.ppt()), LotWords.grams(u.cystsG(), u.lot()));
    }

    /** With all that was weighed of the batch, so that a slip is seen at once. */
    private static String weighed(Ask.DidWeigh w, ConeBook book) {
        return Text.of("%s g wet, recorded.", plain(w.wetG())) + Yield.of(book.batch(), book.facts()).map(y ->
                (y.wetG() > w.wetG() ? Text.of(" %.1f g in all of this batch:", y.wetG()) : " That is")
                + Text.of(" %.1f g of each gram of cysts.", y.perGram()) + (y.possible() ? ""
                : " No cysts give so much: was the sieve weighed with them, or much water? 'withdraw' takes "
                + "it back.")).orElse("");
    }

    /** What follows; and by which alarm all heat is opened if it is locked off yet, and what comes first. */
    private static String locked(Book book, String alarm, String follows) {
        Lives lives = book.lives();
        String aside = lives.aside().stream().map(Change.SetAside::what).collect(Collectors.joining(", "));
        String cones = lives.aside().stream().map(Change.SetAside::cone).filter(c -> !c.isEmpty()).distinct()
                .flatMap(c -> lives.wanted(c).stream()).collect(Collectors.joining(", "));
        if (lives.locks().isEmpty()) {
            return follows + (aside.isEmpty() ? "" : " Still set aside: " + aside + ". Say it again if it "
                    + "is to hold.");
        }
        boolean report = lives.lock().isPresent() && !cones.isEmpty();
        String first = !report ? "" : "you report again " + cones + ", for " + aside + " was set aside";
        boolean own = lives.lock().isPresent() && alarm.equals(Lives.LOOP);
        String others = lives.locks().stream().map(ConeBook.Latch::guard)
                .filter(g -> !own || !g.equals(alarm)).map(g -> "'" + g + "'")
                .collect(Collectors.joining(" and "));
        String once = !own ? "" : "; heat stays locked off until " + (report ? first
                + "; then acknowledge it once more" : "it is acknowledged once more");
        return once + follows + (others.isEmpty() ? "" : " All heat stays locked off until "
                + (report && !own ? first + ", and then acknowledge " + others
                : others + (others.contains(" and ") ? " are" : " is") + " acknowledged") + ".");
    }

    /** The hatching percentage, 100 N / (N + U + E) with E full cysts only (science.md §4). */
    private static String hatched(Ask.DidCount c) {
        long full = (long) c.nauplii() + c.umbrella() + c.unhatched();
        return Text.of("; %.0f %% of this sub-sample have hatched, if empty shells were left out",
                100.0 * c.nauplii() / full);
    }

    /** What that step makes one ask, once, or what it was taken for. */
    private static String asked(Step step, ConeBook book) {
        return switch (step) {
            case DISINFECTED -> " Was the chlorine neutralised, and tested for? What is left of it kills "
                    + "nauplii.";
            case RELAY_EXCHANGED -> " Its closings are counted from the beginning; before the next heat its"
                    + " switches are tried, which takes some minutes.";
            case CLEANED -> Verdict.wantedOnlyNow(book) ? " " + NextStep.VERDICT : "";
            case STARTED, STOCKED, FILLED -> taken(step, book.batch());
            default -> "";
        };
    }

    /** The usual values that a word without figures stood for, so that another tin is seen at once. */
    private static String taken(Step step, Batch b) {
        Optional<Batch.Stock> stock = b.stock().filter(_ -> step != Step.FILLED);
        Optional<Batch.Fill> fill = b.fill().filter(f -> stock.filter(k -> !k.at().equals(f.at())).isEmpty());
        // Its batch may be over by the time it is answered.
        return stock.isEmpty() && fill.isEmpty() ? "" : USUAL + Stream.concat(
                stock.map(k -> LotWords.grams(k.cystsG(), k.lot())).stream(), fill.map(Answers::water)
                .stream()).collect(Collectors.joining(" in ")) + ".";
    }

    /** What was recorded, and which of it nobody said. */
    private static String stocked(Ask.DidStockAsUsual said, Batch b) {
        Optional<Batch.Stock> stock = b.stock();
        if (stock.isEmpty()) {
            return "'" + said.word() + "' is recorded.";
        }
        String lot = stock.get().lot();
        String grams = plain(stock.get().cystsG()) + " g";
        return LotWords.grams(stock.get().cystsG(), lot) + ", recorded." + usual(Stream.concat(
                Stream.of("lot " + lot).filter(_ -> said.lot().isEmpty() && !Lots.unnamed(lot)),
                Stream.of(grams).filter(_ -> said.cystsG().isEmpty())), b);
    }

    /** With the filling, where the stocking stood for one. */
    private static String usual(Stream<String> taken, Batch b) {
        String all = Stream.concat(taken, b.fill().filter(f -> b.stock().filter(k -> k.at().equals(f.at()))
                .isPresent()).map(Answers::water).stream()).collect(Collectors.joining(", "));
        return all.isEmpty() ? "" : USUAL + all + ".";
    }

    private static String water(Batch.Fill f) {
        return Text.of("%s L at %s ppt", plain(f.litres()), plain(f.ppt()));
    }
}

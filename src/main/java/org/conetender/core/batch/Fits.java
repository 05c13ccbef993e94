package org.conetender.core.batch;

import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone.Usual;

/**
 * Whether a report fits where the batch stands. Forgiving by design: a later report implies the
 * earlier ones. Refused is what would confuse one batch with another or endanger animals; what
 * endangers pump or heater is refused by the guards. Each refusal says what to do.
 */
public final class Fits {

    /** So much more than usual is rather a slip than a fuller cone, a factor (guess). */
    private static final double MOST_OF_USUAL = 1.5;

    /** A report can be withdrawn within this time (guess: one round of chores). */
    public static final long WITHDRAW_WITHIN_MS = 30 * 60_000;

    private Fits() {}

    /** Why the step does not fit, as a sentence without the cone's name; empty when it does. */
    public static Optional<String> refusal(ConeBook book, Step step) {
        Stage stage = book.batch().stage();
        return Optional.ofNullable(switch (step) {
            case STARTED -> stage instanceof Stage.Clean || stage instanceof Stage.Drained
                    || stage.hasAnimals()
                    ? null : holds(book, "started");
            case FILLED -> fill(stage, book);
            case STOCKED -> stock(stage, book);
            case SALTED -> stage.hasWater() && !(stage instanceof Stage.Abandoned) ? null
                    : "there is no water in it to salt; report 'filled' first.";
            case FIRST_SEEN, NONE_SEEN -> stage.develops() ? null
                    : "no cysts are in it; report 'stocked' first.";
            case VALVE_SHUT, VALVE_OPEN, HANDS_IN, RELAY_EXCHANGED -> null;
            case TOPPED_UP -> stage.hasWater() ? null : "there is no water in it; report 'filled' instead.";
            case SETTLE -> settle(stage);
            case DRAWING -> stage instanceof Stage.Settling || stage instanceof Stage.Settled ? null
                    : stage instanceof Stage.Drawing
                    ? "drawing was reported already; report 'drained' when it is done."
                    : "nothing has settled yet; report 'settle' and wait for the layer first.";
            case PART_DRAWN -> partDrawn(stage);
            case DRAINED -> stage.hasWater() ? null
                    : "it holds no water as far as reported; nothing to drain.";
            case CLEANED -> cleaned(stage);
            case RINSED, DISINFECTED -> stage instanceof Stage.Drained || stage instanceof Stage.Clean ? null
                    : "it still holds a batch, as far as reported; if the cone really is empty, report "
                    + "'drained' first.";
            case TOO_EARLY, RIGHT, LATE -> Verdict.judgeRefusal(book).orElse(null);
            case ABANDONED -> stage.hasWater() && !(stage instanceof Stage.Abandoned) ? null
                    : "there is no batch to abandon.";
        });
    }

    /** Why a count of a sub-sample does not fit; empty when it does. */
    public static Optional<String> countRefusal(Stage stage) {
        return stage.develops() ? Optional.empty() : Optional.of("no cysts are in it to count.");
    }

    private static String holds(ConeBook book, String word) {
        if (book.batch().stage() instanceof Stage.Abandoned) {
            return "the abandoned batch is still in it; report 'drained' or 'cleaned' before '" + word + "'.";
        }
        if (book.batch().stage() instanceof Stage.Filled) {
            return "its filling is reported already; report " + (book.batch().marks().salted() ? ""
                    : "'salted' when the salt is in, and ") + "'stocked' when the cysts are. If the cone "
                    + "stands empty, report 'drained' before '" + word + "'.";
        }
        return "batch " + book.batch().number() + " is " + book.batch().stage().word()
                + " in it; report 'drained' "
                + "or 'abandoned' before '" + word + "', or 'withdraw' the report that was a mistake.";
    }

    private static String fill(Stage stage, ConeBook book) {
        return stage instanceof Stage.Clean || stage instanceof Stage.Filled || stage instanceof Stage.Drained
                ? null : holds(book, "filled");
    }

    private static String stock(Stage stage, ConeBook book) {
        return stage instanceof Stage.Clean || stage instanceof Stage.Filled || stage instanceof Stage.Drained
                ? null : holds(book, "stocked");
    }

    private static String settle(Stage stage) {
        return switch (stage) {
            case Stage.Hatching _ -> null;
            case Stage.Ready _ -> null;
            case Stage.Settling _, Stage.Settled _, Stage.Drawing _ -> "it is settling already.";
            case Stage.Hydrating _, Stage.Incubating _ ->
                    "nothing has hatched yet; wait for the ready time, or "
                    + "report 'first-seen' if nauplii swim.";
            case Stage.Clean _, Stage.Filled _, Stage.Drained _, Stage.Abandoned _ ->
                    "there is nothing to harvest.";
        };
    }

    private static String partDrawn(Stage stage) {
        return stage instanceof Stage.Drawing ? null : stage.airOff() != null
                ? "nobody is drawing; report 'drawing' first, then 'part-drawn'."
                : stage.hasAnimals() ? "no separation was reported of which a part could be drawn; report "
                + "'settle', 'drawing' and 'part-drawn' as you do them, or one after the other if some is "
                + "drawn already." : settle(stage);
    }

    private static String cleaned(Stage stage) {
        return stage.holds() != Stage.Holds.CYSTS ? null : "its cysts have not hatched; if the cone really "
                + "is empty report 'drained' first, then 'cleaned'.";
    }

    /** Why that ask's figures cannot be right, with the bound; empty when they can. */
    public static Optional<String> badFigures(Ask ask) {
        return Optional.ofNullable(switch (ask) {
            case Ask.DidFill f -> first(litres(f.litres()), range("ppt", f.ppt(), 0, Usual.MOST_PPT));
            case Ask.DidStock s -> first(range("cysts-g", s.cystsG(), 0.01, 200), lot(s.lot()));
            case Ask.DidCount c -> first(c.nauplii() < 0 || c.umbrella() < 0 || c.unhatched() < 0
                    || c.nauplii() > 1_000_000 || c.umbrella() > 1_000_000 || c.unhatched() > 1_000_000
                    ? "counts must lie between 0 and 1000000." : null,
                    c.nauplii() + c.umbrella() + c.unhatched() == 0 ? "nothing was counted; count a "
                    + "sub-sample with cysts or nauplii in it, or report 'none-seen' if nothing swims yet."
                    : null,
                    range("sample-ml", c.sampleMl(), 0.01, 1_000));
            case Ask.DidWeigh w -> range("wet-g", w.wetG(), 0.01, 5_000);
            case Ask.TinHolds t -> first(range("cysts-g", t.cystsG(), 0, 50_000), lot(t.lot()),
                    Lots.unnamed(t.lot()) ? "'" + t.lot() + "' is what a tin without a label is called; "
                    + "write one on it, such as L-0417, and say that." : null);
            case Ask.SetUsual u -> first(u.litres().map(Fits::litres).orElse(null),
                    u.ppt().map(v -> range("ppt", v, Usual.LEAST_PPT, Usual.MOST_PPT)).orElse(null),
                    u.cystsG().map(v -> range("cysts-g", v, 0.01, 200)).orElse(null),
                    u.lot().map(Fits::lot).orElse(null));
            case Ask.Shelve h -> range("hours", h.hours(), 0, Ask.Shelve.MOST_HOURS);
            case Ask.Did _ -> null;
            case Ask.DidStockAsUsual _ -> null;
            case Ask.SetSetpoint _ -> null;
            case Ask.ReadyBy _ -> null;
            case Ask.Withdraw _ -> null;
            case Ask.Acknowledge _ -> null;
            case Ask.Alarms _ -> null;
            case Ask.Away _ -> null;
        });
    }

    /** Why so much is not believed of a cone that is usually filled with less. @param litres told */
    public static Optional<String> tooMuch(double litres, Usual usual) {
        return litres <= MOST_OF_USUAL * usual.litres() ? Optional.empty()
                : Optional.of("litres = " + trim(litres) + " does not fit: the cone is usually filled with "
                        + trim(usual.litres()) + " L. Give what is in it; if it does hold that much, say "
                        + "'usual litres=" + trim(litres) + "' first.");
    }

    private static String first(String... found) {
        for (String s : found) {
            if (s != null) {
                return s;
            }
        }
        return null;
    }

    private static String range(String name, double v, double least, double most) {
        return v >= least && v <= most ? null
                : name + " = " + v + " cannot be right; give a number from " + trim(least) + " to "
                + trim(most) + ".";
    }

    private static String litres(double v) {
        return range("litres", v, Usual.LEAST_LITRES, Usual.MOST_LITRES);
    }

    private static String trim(double d) {
        return d == Math.rint(d) ? String.valueOf((long) d) : String.valueOf(d);
    }

    private static String lot(String lot) {
        return lot.isBlank() || lot.length() > 40 || lot.chars().anyMatch(c -> c < 32)
                ? "a lot needs a label of 1 to 40 characters, such as L-0417." : null;
    }
}

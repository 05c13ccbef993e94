package org.conetender.core.batch;

import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;

/**
 * After a harvest one answer is asked, and may be ignored: whether it came too early, right or late. It
 * teaches the lot, so nothing is asked of a batch that never hatched or was given up.
 */
public final class Verdict {

    private Verdict() {}

    /** Whether something was drawn; where nobody reports the harvest, the emptying of what had hatched. */
    public static boolean harvested(ConeBook book) {
        Batch b = book.batch();
        boolean drawn = b.marks().harvests() > 0 || b.stage() instanceof Stage.Drawing
                || b.stage() instanceof Stage.Abandoned && Reports.told(book, Step.DRAWING);
        return drawn || emptied(b) && (Reports.told(book, Step.DRAWING)
                || swam(book) && !Reports.told(book, Step.ABANDONED));
    }

    /** Why there is nothing to weigh; a weight itself tells that something came out of what was emptied. */
    public static Optional<String> weighRefusal(ConeBook book) {
        boolean out = emptied(book.batch()) && !Reports.told(book, Step.ABANDONED);
        return harvested(book) || out ? Optional.empty()
                : Optional.of("there is no harvest to weigh; say it after the next one, before the cone is "
                        + "stocked again.");
    }

    /** Why there is no hour to judge. */
    static Optional<String> judgeRefusal(ConeBook book) {
        boolean unhatched = emptied(book.batch()) && !swam(book) && !Reports.told(book, Step.ABANDONED);
        return harvested(book) ? Optional.empty() : Optional.of("there is no harvest to judge" + (unhatched
                ? ": as far as was told nothing had hatched in it. If nauplii came out, say what they weigh."
                : "; say it after the next one, before the cone is stocked again."));
    }

    private static boolean emptied(Batch b) {
        boolean empty = b.stage() instanceof Stage.Drained || b.stage() instanceof Stage.Clean;
        return empty && b.stock().isPresent();
    }

    private static boolean swam(ConeBook book) {
        boolean swam = false;
        for (Fact f : book.facts()) {
            boolean back = f.change() instanceof Change.Moved(String stage, String _)
                    && stage.equals(Reconsidered.INCUBATING);
            swam = !back && (swam || hatched(f));
        }
        return swam;
    }

    /** Whether the present batch was harvested and nobody has said yet how its hour was. */
    public static boolean wanted(ConeBook book) {
        return emptied(book.batch()) && swam(book) && book.facts().stream().noneMatch(Verdict::answers);
    }

    /** The same, where no {@code drained} was reported whose answer could have asked. */
    public static boolean wantedOnlyNow(ConeBook book) {
        return wanted(book) && book.batch().stage() instanceof Stage.Clean
                && book.batch().marks().words().assumed().contains(Step.DRAINED.word());
    }

    private static boolean hatched(Fact f) {
        return switch (f.change()) {
            case Change.Moved(String stage, String _) -> stage.equals("hatching") || stage.equals("ready");
            case Change.Told(Ask.Did(Step s)) -> s == Step.FIRST_SEEN || s == Step.SETTLE;
            case Change.Told(Ask.DidCount c) -> c.nauplii() > 0;
            case Change.Told(Ask.DidWeigh _) -> true;
            default -> false;
        };
    }

    private static boolean answers(Fact f) {
        return f.change() instanceof Change.Told(Ask.Did(Step s)) && (s == Step.TOO_EARLY || s == Step.RIGHT
                || s == Step.LATE || s == Step.ABANDONED);
    }
}

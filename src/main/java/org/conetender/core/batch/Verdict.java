package org.conetender.core.batch;

import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;

/**
 * After a harvest one answer is asked, and may be ignored: whether it came too early, right or late. It
 * teaches the lot, so nothing is asked of a batch that never hatched or was given up.
 */
public final class Verdict {

    private Verdict() {}

    /** Whether something was drawn; where nobody reports the harvest, the cleaning tells of it. */
    static boolean harvested(Batch b) {
        boolean over = b.stage() instanceof Stage.Drawing || b.stage() instanceof Stage.Drained
                || b.stage() instanceof Stage.Clean;
        return b.marks().harvests() > 0 || over && b.stock().isPresent();
    }

    /** Whether the present batch was harvested and nobody has said yet how its hour was. */
    public static boolean wanted(ConeBook book) {
        Batch b = book.batch();
        boolean over = b.stage() instanceof Stage.Drained || b.stage() instanceof Stage.Clean;
        return over && b.stock().isPresent() && book.facts().stream().anyMatch(Verdict::hatched)
                && book.facts().stream().noneMatch(Verdict::answers);
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
            default -> false;
        };
    }

    private static boolean answers(Fact f) {
        return f.change() instanceof Change.Told(Ask.Did(Step s)) && (s == Step.TOO_EARLY || s == Step.RIGHT
                || s == Step.LATE || s == Step.ABANDONED);
    }
}

package org.conetender.core.judge;

import java.util.Optional;
import java.util.function.Function;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Fits;
import org.conetender.core.batch.Life;
import org.conetender.core.hatch.Oxygen;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/**
 * How short of oxygen the animals may be, reckoned from the time with and without air, since nothing
 * measures it. Air that is stopped again too soon would let a cap be used twice in a row.
 *
 * @param spent share used up of what the mixed water holds above the level of risk, 0 to 1
 * @param withoutMs how long without a break no air has come to animals, for whatever reason: stopped, failed,
 *     shut in, or through an output that nobody commands; 0 while it comes
 * @param goneMs how long there have been no animals as far as was told: those of a report that is withdrawn
 *     were there all along; 0 while there are
 */
public record Breath(double spent, long withoutMs, long goneMs) {

    /** Nothing is used up: fresh water. */
    public static final Breath FULL = new Breath(0, 0, 0);
    private static final Breath ALL_SPENT = new Breath(1, 0, 0);
    /** Nor where none can be, for no report is withdrawn that is so old. */
    private static final Breath NOBODYS = new Breath(0, 0, Fits.WITHDRAW_WITHIN_MS + 1);

    /**
     * With no more than this used up the air may be stopped again (guess): a cap takes 0.6 of the whole
     * (science.md §7.3), and a fifth must be left at its end.
     */
    static final double MOST_AT_START = 0.2;

    /** However few the animals, the house's 12 min (design.md, dangers) count as those 0.6: they gather. */
    public static final double LONGEST_WHOLE_MINUTES = 12 / Oxygen.SHARE_OF_WHOLE_VOLUME_TIME;

    /**
     * A daemon that was heard of so lately may have kept the air off until now: once it is dead, outputs let
     * go within seconds (style.md, leases), and a checkpoint is written each minute; ms (guess).
     */
    private static final long LETS_GO_MS = 2 * Units.MINUTE_MS;

    /** A contact that trembles says for moments that no air comes; for so long it has failed, ms (guess). */
    private static final long FAILED_MS = 30_000;

    /** Water that is colder than this is not taken at its word, °C (guess: science.md §7.1). */
    private static final double COLDEST_C = 10;
    /** Nor is warmer water; and one that nobody knows is taken for so warm, °C (guess, likewise). */
    public static final double WARMEST_C = 35;

    /** The warmest that water can credibly be, °C; one that nobody knows counts as the warmest there is. */
    public static double warmestC(Belief water) {
        return Math.clamp(water.hottestC(), COLDEST_C, WARMEST_C);
    }

    /** What breathes in that batch; empty while it was not told. @param naupliiPerGram that its lot gives */
    public static Optional<Oxygen.Charge> charge(Batch b, double naupliiPerGram) {
        return b.stock().flatMap(s -> b.fill().map(f -> new Oxygen.Charge(s.cystsG(), f.litres(), f.ppt(),
                naupliiPerGram, 1)));
    }

    /**
     * What may be missing when a life of the process begins: what was at the last checkpoint, and what became
     * of it since. Air that failed then, or that a shut valve keeps away, has not come since, and nobody
     * knows how much of the whole that used up; nor after a cut, or where no checkpoint tells. Of a
     * separation the book tells, also where it is newer than the checkpoint.
     */
    public static Breath begun(String cone, Book all, Optional<Checkpoint> last, Moment now) {
        ConeBook book = perhaps(all.cone(cone), m -> all.since(m, now));
        Batch b = book.batch();
        if (!b.stage().hasAnimals()) {
            return NOBODYS;
        }
        Optional<Checkpoint.Air> air = last.flatMap(c -> c.air(cone));
        if (air.isEmpty()) {
            return ALL_SPENT;
        }
        Moment then = last.get().at();
        long withoutMs = air.get().withoutMs();
        long downMs = all.since(then, now).leastMs();
        boolean atOnce = then.sameBoot(now) && downMs < LETS_GO_MS;
        if (b.stage().airOff() != null && !b.marks().valveShut()) {
            return new Breath(1, atOnce ? withoutMs + downMs : 0, 0);
        }
        Optional<Moment> back = backSince(book).filter(m -> !all.boots().earlier(m, then));
        if (b.marks().valveShut() || withoutMs > 0 && back.isEmpty()) {
            boolean failed = b.marks().valveShut() || withoutMs >= FAILED_MS || atOnce;
            return new Breath(1, withoutMs + (failed ? downMs : 0), 0);
        }
        Moment from = back.orElse(then);
        return !from.sameBoot(now) ? ALL_SPENT : new Breath(Oxygen.missingAfterAir(
                back.isPresent() ? 1 : air.get().spent(), Units.minutes(now.since(from).leastMs())), 0, 0);
    }

    /** When a separation of that batch last ended, or its valve was opened; empty if neither did. */
    private static Optional<Moment> backSince(ConeBook book) {
        Optional<Moment> back = Optional.empty();
        Batch b = book.before().batch();
        for (Fact f : book.facts()) {
            boolean away = away(b);
            b = Life.after(b, f);
            back = away && !away(b) ? Optional.of(f.at()) : back;
        }
        return back;
    }

    private static boolean away(Batch b) {
        return b.stage().airOff() != null || b.marks().valveShut();
    }

    /** With the animals that a withdrawal may bring back, where there are none. */
    private static ConeBook perhaps(ConeBook recorded, Function<Moment, Span> since) {
        ConeBook book = recorded;
        while (!book.batch().stage().hasAnimals() && book.lastReport()
                .filter(f -> since.apply(f.at()).leastMs() <= Fits.WITHDRAW_WITHIN_MS).isPresent()) {
            book = book.withdrawn();
        }
        return book;
    }

    /**
     * The same after {@code dtMs} in which air came or did not. Whatever is told of them, animals breathe on
     * for as long as that may be withdrawn.
     *
     * @param about the cone and what is in it  @param waterC as {@link #warmestC} has it
     */
    Breath after(boolean airArrives, Judge.About about, double waterC, long dtMs) {
        if (dtMs == 0) {
            // The first tick of a life: whether air comes is known, and what was missing is missing still.
            return this;
        }
        long gone = about.batch().stage().hasAnimals() ? 0 : goneMs + dtMs;
        if (gone > Fits.WITHDRAW_WITHIN_MS) {
            return NOBODYS;
        }
        if (airArrives) {
            return new Breath(Oxygen.missingAfterAir(spent, Units.minutes(dtMs)), 0, gone);
        }
        double whole = Math.min(LONGEST_WHOLE_MINUTES,
                charge(breathing(about.book()), about.naupliiPerGram())
                        .map(c -> Oxygen.wholeVolumeMinutes(c, waterC)).orElse(LONGEST_WHOLE_MINUTES));
        return new Breath(Math.min(1, spent + Units.minutes(dtMs) / Math.max(whole, 1)), withoutMs + dtMs,
                gone);
    }

    /** The batch whose animals may be in the cone: another that was begun over them may be a mistake. */
    private static Batch breathing(ConeBook book) {
        Batch before = book.before().batch();
        return !book.batch().stage().hasAnimals() && before.stage().hasAnimals() ? before : book.batch();
    }

    /** How long air must yet run before it may be stopped again, ms; 0 when it may be. */
    public long restMs() {
        return spent <= MOST_AT_START ? 0
                : Units.msOfMinutes(Oxygen.minutesOfAir(spent, MOST_AT_START));
    }
}

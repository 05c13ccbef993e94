package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Reports;
import org.conetender.core.face.Sentences;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Moment;

/** The report that a withdrawal takes back: what it may be called, and what is said of it. */
final class TakenBack {

    private static final String FILLED = Step.FILLED.word();
    /** Whichever it is. */
    private static final Ask.Withdraw LAST = new Ask.Withdraw("last");
    private static final String STOCKED = Step.STOCKED.word();

    private TakenBack() {}

    /** The words under which that report can be named: every step of its request. */
    static List<String> words(ConeBook book, Fact report) {
        List<String> words = new ArrayList<>();
        for (Fact f : book.facts()) {
            if (f.sameRequest(report) && f.change() instanceof Change.Told(Ask ask)) {
                words.add(ask.word());
            }
        }
        return words;
    }

    /** As whoever reported it said it; a stocking may stand for a filling, which is written before it. */
    static String name(ConeBook book, Fact report) {
        List<String> words = words(book, report);
        return alone(words) ? words.getFirst() : STOCKED;
    }

    private static boolean alone(List<String> words) {
        return !words.getFirst().equals(FILLED) || !words.contains(STOCKED);
    }

    /** What is said of it, while it is in the book; empty where there is none. */
    static String of(Work work, Cone cone, Ask.Withdraw ask) {
        ConeBook book = work.ledger.book().cone(cone.id());
        return book.lastReport().map(f -> "'" + name(book, f) + "'" + at(work, f.at()) + " is withdrawn"
                + (alone(words(book, f)) ? "" : ", and with it the filling that it stood for")
                + (ask.equals(LAST) ? refused(work, cone, name(book, f)) : "")
                + wanted(book.batch(), without(work, cone))).orElse("");
    }

    /** The hour that was given up, or that a set-point or another hour had taken the place of. */
    private static String wanted(Batch now, Batch without) {
        return without.marks().readyBy().filter(h -> now.marks().readyBy().filter(h::equals).isEmpty())
                .map(h -> ", and " + h.withWeekday() + " is wanted again").orElse("");
    }

    /** Air that has come back stays on: what ended a separation was said, and nobody draws by now. */
    static Optional<Change> airStays(Work work, Cone cone, Ask ask) {
        ConeBook book = work.ledger.book().cone(cone.id());
        return ask instanceof Ask.Withdraw && book.batch().stage().airOff() == null
                && without(work, cone).stage().airOff() != null
                ? book.lastReport().map(f -> new Change.Moved("ready", "'" + name(book, f)
                        + "' was withdrawn; its air is on")) : Optional.empty();
    }

    /** The batch as it stands without its last report. */
    private static Batch without(Work work, Cone cone) {
        return work.ledger.book().after(new Fact(work.ledger.nextSeq(), work.image.now(), cone.id(), "",
                new Change.Told(LAST))).cone(cone.id()).batch();
    }

    /** Notes that a report was refused, or that there is a later one that was taken. */
    static void heard(Work work, Request r, boolean taken) {
        if (taken && (Reports.withdrawable(r.ask()) || r.ask() instanceof Ask.Withdraw)) {
            work.refused.remove(r.cone());
        } else if (!taken && Reports.withdrawable(r.ask())) {
            work.refused.put(r.cone(), new State.Refused(r.ask().word(), work.image.now()));
        }
    }

    /** Whoever was refused just before may have meant that, of which there is nothing to take back. */
    private static String refused(Work work, Cone cone, String name) {
        return Optional.ofNullable(work.refused.get(cone.id())).map(r -> " ('" + r.word() + "'"
                + at(work, r.at()) + " had been refused, so there was nothing of it to take back; if '" + name
                + "' was right, report it again)").orElse("");
    }

    private static String at(Work work, Moment t) {
        return !t.wallTrusted() || !work.image.now().wallTrusted() ? "" : " of " + Sentences.clock(
                t.wallMs(), work.settings.site().feeding().zone(), work.image.now().wallMs());
    }
}

package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.face.Sentences;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;

/** The report that a withdrawal takes back: what it may be called, and what is said of it. */
final class TakenBack {

    private static final String FILLED = Step.FILLED.word();
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
    static String of(Work work, Cone cone) {
        ConeBook book = work.ledger.book().cone(cone.id());
        return book.lastReport().map(f -> "'" + name(book, f) + "'" + at(work, f) + " is withdrawn"
                + (alone(words(book, f)) ? "" : ", and with it the filling that it stood for")).orElse("");
    }

    private static String at(Work work, Fact f) {
        return !f.at().wallTrusted() || !work.image.now().wallTrusted() ? "" : " of " + Sentences.clock(
                f.at().wallMs(), work.settings.site().feeding().zone(), work.image.now().wallMs());
    }
}

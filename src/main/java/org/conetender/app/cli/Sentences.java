package org.conetender.app.cli;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.unit.Text;

/** Sentences to tell: the first ones in full, the rest as a number, so that a bad file stays small. */
final class Sentences {

    /** Told one by one; the rest is counted. */
    private static final int TOLD = 20;

    private final List<String> told = new ArrayList<>();
    private int untold;
    private String once = "";
    private int onceAt;
    private int alike;

    /** What is wrong with most lines in the same way. */
    void addOnce(String sentence) {
        if (once.isEmpty()) {
            once = sentence;
            onceAt = told.size();
        } else {
            alike++;
        }
    }

    boolean isEmpty() {
        return told.isEmpty() && once.isEmpty();
    }

    /** Put into words only if it is told: a million of them would take longer than the log. */
    void add(String sentence, Object... figures) {
        if (told.size() < TOLD) {
            told.add(figures.length == 0 ? sentence : Text.of(sentence, figures));
        } else {
            untold++;
        }
    }

    List<String> list(String rest) {
        List<String> all = new ArrayList<>();
        all.addAll(told);
        if (!once.isEmpty()) {
            all.add(onceAt, once + (alike == 0 ? "" : Text.of(" It is the same with %d more %s.", alike,
                    alike == 1 ? "line" : "lines")));
        }
        if (untold > 0) {
            all.add("and " + untold + " more " + rest + ".");
        }
        return List.copyOf(all);
    }
}

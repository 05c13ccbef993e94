package org.conetender.adapter.socket;

import java.util.Locale;
import java.util.Optional;

/**
 * The one line that comes back.
 *
 * @param kind what became of the request
 * @param sentence for the person
 */
public record Answer(Kind kind, String sentence) {

    /** Where a list goes on in a new line, in the one line on the wire: Unicode's line separator. */
    private static final char BREAK = 0x2028;

    /** What became of a request. */
    public enum Kind {
        /** Accepted and recorded. */
        OK,
        /** Nothing changed. */
        REFUSED,
        /** Taken, but not answered in time: it may still be carried out. */
        UNKNOWN;

        private String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    String line() {
        return kind.word() + " " + sentence.replace('\n', BREAK);
    }

    /** Empty for a line that no answer of ours looks like. */
    static Optional<Answer> of(String line) {
        for (Kind k : Kind.values()) {
            if (line.startsWith(k.word() + " ")) {
                return Optional.of(new Answer(k, line.substring(k.word().length() + 1)
                        .replace(BREAK, '\n')));
            }
        }
        return Optional.empty();
    }
}

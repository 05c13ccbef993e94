package org.conetender.core.image;

import java.util.Locale;
import java.util.Optional;

/** The hand steps a person can report, as plain words (design.md, the life of a batch). */
public enum Step {
    STARTED, FILLED, SALTED, STOCKED, FIRST_SEEN, VALVE_SHUT, VALVE_OPEN, SETTLE, DRAWING, PART_DRAWN,
    DRAINED, RINSED, CLEANED, DISINFECTED, TOPPED_UP, HANDS_IN, TOO_EARLY, RIGHT, LATE, ABANDONED,
    RELAY_EXCHANGED, NONE_SEEN;

    /** The word a person types: {@code part-drawn}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The step of that word; empty for any other text. */
    public static Optional<Step> of(String word) {
        for (Step s : values()) {
            if (s.word().equals(word)) {
                return Optional.of(s);
            }
        }
        return Optional.empty();
    }
}

package org.conetender.adapter.socket;

import org.conetender.core.image.Ask;

/** Knows what the words after {@code conetender tell} mean. Called from several threads at once. */
@FunctionalInterface
public interface LineReader {

    /** What a line says. */
    sealed interface Line {}

    /** @param cone its id; empty for the whole site  @param ask what is asked */
    record Asks(String cone, Ask ask) implements Line {}

    /** @param sentence why it is not understood, and what would be */
    record Refuses(String sentence) implements Line {}

    /** @param words as typed, without the {@code id=} that this face keeps to itself; never null */
    Line read(String words);
}

package org.conetender.core.guard;

import java.util.List;
import java.util.Optional;
import org.conetender.core.image.Request;

/**
 * One danger. Every guard looks at every cone every tick, also when nothing is demanded; it holds no
 * memory of its own: what it must remember is in the judgement (progress, times) or in the book
 * (latches).
 */
public interface Guard {

    /** Its id: a plain word that stands in latches, reasons and topics. */
    String id();

    /** What it finds at one cone; empty when all is well. */
    default List<Finding> look(View view) {
        return List.of();
    }

    /** Whether the cause of its trip is gone, so that a person's acknowledgement may release the latch. */
    default boolean causeGone(View view) {
        return true;
    }

    /** Words of doubts that it once raised and that are known by now not to hold. */
    default List<String> takesBack(View view) {
        return List.of();
    }

    /** Why that request is refused, as a sentence that says what to do; empty when it may pass. */
    default Optional<String> refuses(Request request, View view) {
        return Optional.empty();
    }
}

package org.conetender.core.batch;

import java.util.Optional;
import org.conetender.core.image.Ask;

/** What a fact says has happened. Self-contained: every figure is resolved before it is recorded. */
public sealed interface Change {

    /** A person or client reported or asked; usual values are already filled in. */
    record Told(Ask ask) implements Change {}

    /** The daemon itself moved the batch on. @param stage word of the new stage  @param why in words */
    record Moved(String stage, String why) implements Change {}

    /** A guard latched. @param guard its id  @param why in words */
    record Tripped(String guard, String why) implements Change {}

    /** A latch was released. @param guard its id  @param why in words */
    record Released(String guard, String why) implements Change {}

    /** The batch is in doubt from now on. @param why in words, for the person about to feed */
    record Doubted(String why) implements Change {}

    /** An alarm ended, so that its acknowledgement no longer counts. @param alarm its id */
    record AlarmOver(String alarm) implements Change {}

    /** A life of the process began. @param gap words about how long nothing was measured, if known */
    record Began(Optional<String> gap) implements Change {}
}

package org.conetender.core.batch;

import java.util.Optional;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Moment;

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

    /** An alarm was raised that stands until a person sees it. @param alarm its id  @param what in words */
    record AlarmRaised(String alarm, String what) implements Change {}

    /** An alarm ended, so that its acknowledgement no longer counts. @param alarm its id */
    record AlarmOver(String alarm) implements Change {}

    /** A doubt did not come true, and is taken back. @param why the words of the doubt */
    record Undoubted(String why) implements Change {}

    /** The switches of the heater were tried before this batch's first heat. @param how in words */
    record Tried(String how) implements Change {}

    /** A proof of the heater was passed that says something new. */
    record Learned(HeaterBook.Learned what) implements Change {}

    /**
     * A report says something of how fast a lot hatches.
     *
     * @param lot label of the tin
     * @param batch number of the cone's batch
     * @param lesson what was seen, and how far the cysts were
     */
    record Taught(String lot, long batch, Lesson lesson) implements Change {}

    /**
     * How far the cysts were when they were drawn: their harvest is judged by that, whenever somebody does.
     *
     * @param batch number of the cone's batch
     * @param at how far
     */
    record Drawn(long batch, Lesson.At at) implements Change {}

    /** A heater's relay has closed so often, ever. @param closings of all relays the cone had */
    record Worn(long closings) implements Change {}

    /** Development was carried across a time of unknown length. */
    record Bridged(Bridge bridge) implements Change {}

    /** The wall clock is trusted from now on, or was set anew: the fact's own moment tells the hour. */
    record ClockSet() implements Change {}

    /** A life of the process began. @param lastSeen the last moment that the record knew from before */
    record Began(Optional<Moment> lastSeen) implements Change {}

    /** A life of the process ended in good order, because it was asked to. */
    record Left() implements Change {}

    /**
     * A device is published under another description than before, or for the first time.
     *
     * @param device its id in the topics  @param version counts up  @param digest of the description's text
     */
    record Described(String device, long version, String digest) implements Change {}

    /**
     * A request is left out whenever the book is folded, because the process kept dying after it.
     *
     * @param request its id, the {@code source} of its facts
     * @param cone its cone; empty when it needs no new report
     * @param what it asked, in words
     */
    record SetAside(String request, String cone, String what) implements Change {}
}

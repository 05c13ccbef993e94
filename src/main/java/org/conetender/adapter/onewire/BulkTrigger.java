package org.conetender.adapter.onewire;

import java.util.Optional;

/** Has every probe of a bus convert at once, so that sixteen take as long as one. */
interface BulkTrigger {

    enum Outcome {
        /** All have converted; each next read of {@code temperature} gives that conversion. */
        DONE,
        /** Each read converts by itself. */
        NONE,
        /**
         * Somebody else's bulk conversion, of unknown age, waits to be read: the first read of each
         * probe must be thrown away.
         */
        LEFT_OVER
    }

    /** Returns when the conversion is over (0.8 s at 12 bit). Reader thread only. */
    Outcome convert();

    /** Why it does not work though the kernel offers it, as a sentence; else empty. Any thread. */
    Optional<String> trouble();
}

package org.conetender.adapter.mqtt;

import java.util.concurrent.atomic.LongAdder;

/** Counts what is not logged one by one. Any thread; since the start of the process. */
final class Tally {

    final LongAdder acknowledged = new LongAdder();
    final LongAdder refused = new LongAdder();
    final LongAdder coalesced = new LongAdder();
    final LongAdder letGo = new LongAdder();
    final LongAdder outboxFull = new LongAdder();
    final LongAdder inboxFull = new LongAdder();
    final LongAdder unreadable = new LongAdder();
    final LongAdder losses = new LongAdder();

    Counters read() {
        return new Counters(acknowledged.sum(), refused.sum(), coalesced.sum(), letGo.sum(),
                outboxFull.sum(), inboxFull.sum(), unreadable.sum(), losses.sum());
    }
}

package org.conetender.sim;

import java.util.SortedMap;

/** What a person can read of the daemon: its retained topics, as any client sees them. */
public interface Eyes {

    /** The retained payload of that topic; null when there is none. */
    String payload(String topic);

    /** Every retained topic that begins so, in order, with its payload. */
    SortedMap<String, String> under(String prefix);
}

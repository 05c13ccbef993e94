package org.conetender.adapter.mqtt;

/**
 * What became of the messages and connections since the process began.
 *
 * @param acknowledged sent: confirmed by the broker, or written to the wire at QoS 0
 * @param refused that the broker would not have, and never will
 * @param coalesced retained payloads never sent because a newer one took their place
 * @param letGo QoS 0 messages that found no connection
 * @param outboxFull offers that were not taken
 * @param inboxFull messages that came in faster than they were polled
 * @param unreadable messages that came in and were not UTF-8
 * @param losses connections lost and attempts that failed
 */
public record Counters(
        long acknowledged, long refused, long coalesced, long letGo, long outboxFull, long inboxFull,
        long unreadable, long losses) {}

package org.conetender.port;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Moves messages, knows no meaning. Four methods, none of which waits; an implementation keeps its
 * own threads and its own reconnecting. Called from the publish agent's thread.
 */
public interface Transport extends AutoCloseable {

    /**
     * A message on its way out. What is retained or has a correlation is sent at least once, in order;
     * the rest at most once, and not at all while there is no connection.
     *
     * @param topic where
     * @param payload bytes as text, UTF-8; an empty payload clears a retained topic
     * @param retained whether the broker keeps it
     * @param correlation correlation data of the request this answers, hexadecimal; empty otherwise
     */
    record Outgoing(String topic, String payload, boolean retained, String correlation) {}

    /**
     * A message that came in.
     *
     * @param topic where
     * @param payload as text, UTF-8; U+FFFD alone if it was none, see {@code unreadable}
     * @param retained whether it lay at the broker, or was sent to lie there: both make a command stale
     * @param properties {@code response-topic} (a proper topic), {@code correlation} (hexadecimal),
     *     {@code request-id} and {@code expires-in-s} (what is left at the poll; 0 is too late) where the
     *     client gave them; {@code unreadable}, in words, where the payload was not UTF-8
     */
    record Incoming(String topic, String payload, boolean retained, Map<String, String> properties) {}

    /**
     * @param generation counts connections; when it changes everything retained is published again
     * @param trouble empty while connected; else why not, in words
     */
    record Link(long generation, Optional<String> trouble) {
        public boolean up() {
            return trouble.isEmpty();
        }
    }

    /**
     * Takes a message for sending; false when the outbox is full, or closed, and it was not taken. Of
     * retained messages that wait for a connection only the newest of each topic is sent.
     */
    boolean offer(Outgoing message);

    /** Up to {@code most} messages that came in, oldest first. */
    List<Incoming> poll(int most);

    /** How the connection stands. */
    Link link();

    /** Says goodbye (the retained state {@code disconnected} first, if connected) and lets go. */
    @Override
    void close();
}

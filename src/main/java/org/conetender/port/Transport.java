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
     * A message on its way out.
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
     * @param payload as text, UTF-8; text that is not UTF-8 is refused before it gets here
     * @param retained whether it was lying at the broker, which makes it stale
     * @param properties {@code response-topic}, {@code correlation} (hexadecimal), {@code request-id} and
     *     {@code expires-in-s} where the client gave them
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

    /** Takes a message for sending; false when the outbox is full and it was not taken. */
    boolean offer(Outgoing message);

    /** Up to {@code most} messages that came in, oldest first. */
    List<Incoming> poll(int most);

    /** How the connection stands. */
    Link link();

    /** Says goodbye (the retained state {@code disconnected} first, if connected) and lets go. */
    @Override
    void close();
}

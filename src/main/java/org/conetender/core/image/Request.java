package org.conetender.core.image;

import java.util.Optional;

/**
 * Something a person or a client asked for, already understood but not yet judged.
 *
 * @param id unique; a repeat of an id is refused. Made by the shell when the client gave none
 * @param from where it came in, which is where its answer goes
 * @param cone the cone's id; empty for the whole site
 * @param ask what is asked
 */
public record Request(String id, Origin from, String cone, Ask ask) {

    /**
     * @param face {@code mqtt}, {@code socket}, {@code button}
     * @param address whatever that face needs to send the answer back; opaque to the core
     * @param stale why it is too old to be obeyed (retained, expired); empty for a fresh one
     */
    public record Origin(String face, String address, Optional<String> stale) {

        /** A request that came in just now. */
        public static Origin fresh(String face, String address) {
            return new Origin(face, address, Optional.empty());
        }
    }
}

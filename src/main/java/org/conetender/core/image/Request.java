package org.conetender.core.image;

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
     */
    public record Origin(String face, String address) {}
}

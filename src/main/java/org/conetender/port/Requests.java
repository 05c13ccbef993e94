package org.conetender.port;

import java.util.List;
import org.conetender.core.image.Request;

/** Requests that do not come through the transport: the local socket. Neither method waits. */
public interface Requests {

    /** Up to {@code most} waiting requests, oldest first. Called from the control thread. */
    List<Request> poll(int most);

    /**
     * The answer to a request of this face, as one sentence.
     *
     * @param accepted whether it was accepted and recorded
     */
    void answer(Request request, boolean accepted, String sentence);
}

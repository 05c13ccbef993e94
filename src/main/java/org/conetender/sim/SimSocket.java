package org.conetender.sim;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import org.conetender.core.face.Heard;
import org.conetender.core.face.TellLine;
import org.conetender.core.image.Request;
import org.conetender.port.Requests;

/** The local socket: lines that somebody types at the board itself. One thread, as all of the world. */
public final class SimSocket implements Requests {

    private final Queue<Request> waiting = new ArrayDeque<>();
    private final Coverage coverage;
    private long count;

    SimSocket(Coverage coverage) {
        this.coverage = coverage;
    }

    /** Somebody types that line. */
    void tell(String line) {
        switch (TellLine.read(line)) {
            case Heard.Refused(String sentence) -> coverage.heard(sentence);
            case Heard.Understood(String cone, var ask) -> waiting.add(
                    new Request("socket-" + ++count, Request.Origin.fresh("socket", ""), cone, ask));
        }
    }

    @Override
    public List<Request> poll(int most) {
        List<Request> out = new ArrayList<>();
        while (out.size() < most && !waiting.isEmpty()) {
            out.add(waiting.remove());
        }
        return out;
    }

    @Override
    public void answer(Request request, boolean accepted, String sentence) {
        coverage.heard(sentence);
    }
}

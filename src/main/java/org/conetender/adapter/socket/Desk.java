package org.conetender.adapter.socket;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicLong;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Where lines wait to be polled and clients wait for their answer. {@link #ask} is called on a client's
 * own thread and waits; {@link #poll} and {@link #answer} are the control thread's and do not.
 */
final class Desk {

    private static final Logger LOG = LoggerFactory.getLogger(Desk.class);

    private final LineReader reader;
    private final long patienceMs;
    private final BlockingQueue<Request> waiting;
    private final Map<String, CompletableFuture<Answer>> asking = new ConcurrentHashMap<>();
    private final AtomicLong asked = new AtomicLong();

    Desk(LineReader reader, int most, long patienceMs) {
        this.reader = reader;
        this.patienceMs = patienceMs;
        this.waiting = new ArrayBlockingQueue<>(most);
    }

    static Answer refused(String sentence) {
        return new Answer(Answer.Kind.REFUSED, sentence);
    }

    /** The answer to one line, waiting for the daemon at most as long as its patience. */
    Answer ask(String line) {
        RequestId id = RequestId.of(line);
        if (id.id().isEmpty()) {
            return refused("id= takes 1 to 64 letters, digits and . _ : -");
        }
        return switch (reader.read(id.words())) {
            case LineReader.Refuses r -> refused(r.sentence());
            case LineReader.Asks a -> wait(id.id().get(), a.cone(), a.ask());
        };
    }

    private Answer wait(String id, String cone, Ask ask) {
        String address = Long.toString(asked.incrementAndGet());
        Request request = new Request(id, Request.Origin.fresh(TellSocket.FACE, address), cone, ask);
        CompletableFuture<Answer> answer = new CompletableFuture<>();
        asking.put(address, answer);
        try {
            if (!waiting.offer(request)) {
                return refused("the daemon has not taken earlier requests yet; try again in a few seconds");
            }
            return answer.get(patienceMs, TimeUnit.MILLISECONDS);
        } catch (TimeoutException late) {
            return late(request);
        } catch (InterruptedException | ExecutionException e) {
            throw new IllegalStateException("a client's thread was disturbed", e);
        } finally {
            asking.remove(address);
        }
    }

    /** What was not even taken is taken back, so that no stale request is ever carried out. */
    private Answer late(Request request) {
        if (waiting.remove(request)) {
            return refused("the daemon takes no requests at present, so nothing was done; see"
                    + " systemctl status conetender");
        }
        return new Answer(Answer.Kind.UNKNOWN, "the daemon took the request but has not answered yet; look at"
                + " the cone before you repeat it");
    }

    /** How many requests wait to be polled. */
    int waiting() {
        return waiting.size();
    }

    List<Request> poll(int most) {
        List<Request> out = new ArrayList<>();
        waiting.drainTo(out, most);
        return out;
    }

    void answer(Request request, boolean accepted, String sentence) {
        CompletableFuture<Answer> client = asking.get(request.from().address());
        if (client == null) {
            LOG.debug("nobody waits any more for the answer to {}: {}", request.id(), sentence);
            return;
        }
        client.complete(new Answer(accepted ? Answer.Kind.OK : Answer.Kind.REFUSED, sentence));
    }

    /** Sends everybody home, saying whether their request was taken. */
    void close() {
        for (Request untaken : poll(Integer.MAX_VALUE)) {
            answer(untaken, false, "the daemon is stopping; nothing was done");
        }
        asking.values().forEach(a -> a.complete(new Answer(Answer.Kind.UNKNOWN, "the daemon is stopping and"
                + " had not answered yet; look at the cone before you repeat it")));
    }
}

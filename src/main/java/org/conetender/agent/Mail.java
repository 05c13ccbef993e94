package org.conetender.agent;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicReference;
import org.conetender.core.Result;
import org.conetender.core.image.Commit;
import org.conetender.core.image.Request;
import org.conetender.core.unit.Moment;

/**
 * What the agents hand each other: the only thing they share, safe for all threads. Nothing in it
 * waits; what has bounds says so by returning false.
 */
public final class Mail {

    /** More requests than this at once are refused (guess: a person taps, a script is told to wait). */
    private static final int MOST_REQUESTS = 64;

    /** One tick's decisions and its moment, for publishing. */
    record Shown(Result result, Moment at) {}

    private final Queue<Request> requests = new ArrayBlockingQueue<>(MOST_REQUESTS);
    private final Queue<Commit> commits = new ConcurrentLinkedQueue<>();
    private final Queue<Result.Record> records = new ConcurrentLinkedQueue<>();
    private final Queue<Result.Words> words = new ConcurrentLinkedQueue<>();
    private final AtomicReference<Shown> shown = new AtomicReference<>();
    private final AtomicReference<Optional<String>> storeTrouble = new AtomicReference<>(Optional.empty());
    /** Why minutes are not kept for reports; empty while they are. */
    final AtomicReference<Optional<String>> historyTrouble =
            new AtomicReference<>(Optional.empty());
    private final AtomicReference<Optional<String>> brokerTrouble = new AtomicReference<>(Optional.empty());

    private final String life;

    /** @param life a word that no other life of the process has, for ids made by us */
    Mail(String life) {
        this.life = life;
    }

    String life() {
        return life;
    }

    /** False when too many wait already. */
    boolean ask(Request r) {
        return requests.offer(r);
    }

    List<Request> requests(int most) {
        return drain(requests, most);
    }

    void committed(Commit c) {
        commits.add(c);
    }

    List<Commit> commits() {
        return drain(commits, Integer.MAX_VALUE);
    }

    /** While the record fails also an empty one, lest nobody try it again, but one and not each tick's. */
    void record(Result.Record r) {
        if (!r.empty() || storeTrouble().isPresent() && records.isEmpty()) {
            records.add(r);
        }
    }

    List<Result.Record> records() {
        return drain(records, Integer.MAX_VALUE);
    }

    void show(Result r, Moment at) {
        shown.set(new Shown(r, at));
        Result.Words w = r.words();
        if (!w.replies().isEmpty() || !w.messages().isEmpty() || !w.notes().isEmpty()) {
            words.add(r.words());
        }
    }

    Optional<Shown> shown() {
        return Optional.ofNullable(shown.get());
    }

    List<Result.Words> words() {
        return drain(words, Integer.MAX_VALUE);
    }

    void storeTrouble(Optional<String> why) {
        storeTrouble.set(why);
    }

    Optional<String> storeTrouble() {
        return storeTrouble.get();
    }

    void brokerTrouble(Optional<String> why) {
        brokerTrouble.set(why);
    }

    Optional<String> brokerTrouble() {
        return brokerTrouble.get();
    }

    private static <T> List<T> drain(Queue<T> q, int most) {
        List<T> out = new ArrayList<>();
        for (T t = q.poll(); t != null; t = out.size() < most ? q.poll() : null) {
            out.add(t);
        }
        return out;
    }
}

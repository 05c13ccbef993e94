package org.conetender.app.remote;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import org.conetender.adapter.mqtt.Onlooker;
import org.conetender.core.face.Names;
import org.conetender.port.Clock;

/**
 * A site at a broker: its topics, and its cones as its own description lists them. One thread.
 */
public final class RemoteSite implements AutoCloseable {

    /** How long retained topics may take to arrive after subscribing, ms: guess. */
    public static final long SETTLING_MS = 3_000;

    private final Onlooker client;
    private final Names names;
    private final Clock clock;
    private final Semaphore news = new Semaphore(0);
    private List<String> followed = List.of();

    private RemoteSite(Onlooker client, Names names, Clock clock) {
        this.client = client;
        this.names = names;
        this.clock = clock;
        client.listen((topic, payload) -> news.release());
    }

    /** @throws IOException with a sentence, if the broker cannot be reached */
    public static RemoteSite connect(Onlooker.Address at, Names names, Clock clock) throws IOException {
        RemoteSite site = new RemoteSite(Onlooker.connect(at), names, clock);
        site.client.follow(List.of(names.root() + "/#"));
        site.await(() -> site.topics().containsKey(names.root() + "/$description"), SETTLING_MS);
        site.refresh();
        site.await(site::conesAreThere, SETTLING_MS);
        return site;
    }

    /** Whether every cone that the description lists has been heard of. */
    public boolean conesAreThere() {
        return cones().stream().allMatch(c -> topics().containsKey(names.cone(c) + "/hand/next-step"));
    }

    /** Follows cones that were added since. */
    public void refresh() throws IOException {
        List<String> now = cones();
        List<String> fresh = now.stream().filter(c -> !followed.contains(c))
                .map(c -> names.cone(c) + "/#").toList();
        if (!fresh.isEmpty()) {
            client.follow(fresh);
        }
        followed = now;
    }

    /** Waits until something holds; whether it did within so many ms. Looked at again when news come. */
    public boolean await(BooleanSupplier holds, long ms) {
        long untilMs = clock.now().monoMs() + ms;
        try {
            for (long left = ms; !holds.getAsBoolean(); left = untilMs - clock.now().monoMs()) {
                if (left <= 0) {
                    return false;
                }
                if (news.tryAcquire(left, TimeUnit.MILLISECONDS)) {
                    news.drainPermits();
                }
            }
            return true;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Waits for news, at most so many ms. */
    public void awaitNews(long ms) {
        boolean[] first = {true};
        await(() -> {
            boolean was = first[0];
            first[0] = false;
            return !was;
        }, ms);
    }

    /** Every topic with its last word. */
    public SortedMap<String, String> topics() {
        return client.last();
    }

    public Names names() {
        return names;
    }

    /** The ids of the cones, as the root's description lists them; empty while there is none. */
    public List<String> cones() {
        String d = topics().get(names.root() + "/$description");
        return d == null ? List.of() : RootDescription.children(d).stream()
                .filter(c -> c.startsWith(names.site() + "-"))
                .map(c -> c.substring(names.site().length() + 1)).toList();
    }

    /** The root's state, such as {@code ready} or {@code lost}; empty when nobody ever was there. */
    public Optional<String> state() {
        return Optional.ofNullable(topics().get(names.root() + "/$state"));
    }

    public boolean connected() {
        return client.connected();
    }

    /** What stands under a key of the root's description. */
    public Optional<String> name() {
        String d = topics().get(names.root() + "/$description");
        return d == null ? Optional.empty() : RootDescription.name(d);
    }

    /** @see Onlooker#ask */
    public Optional<String> ask(Onlooker.Question q, long patienceMs) throws IOException {
        return client.ask(q, patienceMs);
    }

    /** @see Onlooker#listen */
    public void listen(BiConsumer<String, String> listener) {
        client.listen(listener);
    }

    /** @see Onlooker#say */
    public void say(String topic, String payload) throws IOException {
        client.say(topic, payload);
    }

    @Override
    public void close() throws IOException {
        client.close();
    }
}

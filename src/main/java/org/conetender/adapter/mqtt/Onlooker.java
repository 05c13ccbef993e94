package org.conetender.adapter.mqtt;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BiConsumer;
import org.eclipse.paho.mqttv5.client.IMqttToken;
import org.eclipse.paho.mqttv5.client.MqttAsyncClient;
import org.eclipse.paho.mqttv5.client.MqttConnectionOptions;
import org.eclipse.paho.mqttv5.client.persist.MemoryPersistence;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.MqttSubscription;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;
import org.eclipse.paho.mqttv5.common.packet.UserProperty;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The other side of the broker: a client that follows topics, remembers the last word on each and can
 * say or ask something. One connection, which is not looked after: whoever loses it makes a new one.
 *
 * <p>Any thread but Paho's: every method that speaks to the broker waits for it, a few seconds at most.
 */
public final class Onlooker implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(Onlooker.class);

    /** How long the broker may take for each thing, ms: guess, a phone's patience. */
    private static final long BROKER_MS = 5_000;
    /** Seconds to wait for our own mark: guess. */
    private static final int MARK_S = 2;
    /** Seconds between pings: guess. */
    private static final int KEEP_ALIVE_S = 20;
    /** An Onlooker has no last will; the options want one, which is never spoken. */
    private static final MqttOptions.Farewell NONE = new MqttOptions.Farewell("none", "", "");

    /** Where to go. @param login user name and password, if the broker wants them */
    public record Address(URI broker, Optional<MqttOptions.Login> login) {}

    /**
     * A question.
     *
     * @param topic where
     * @param payload what
     * @param requestId tells a repetition from a second question
     * @param expiryS the broker drops it after this many seconds; above 0
     */
    public record Question(String topic, String payload, String requestId, int expiryS) {}

    private final MqttAsyncClient client;
    private final Trouble trouble;
    private final String answerTopic;
    private final AtomicBoolean closed = new AtomicBoolean();
    private final SortedMap<String, String> last = new ConcurrentSkipListMap<>();
    private final ConcurrentMap<String, CompletableFuture<String>> asking = new ConcurrentHashMap<>();
    private final List<BiConsumer<String, String>> listeners = new CopyOnWriteArrayList<>();

    private Onlooker(MqttOptions options) throws MqttException {
        this.trouble = new Trouble(options);
        this.client = new MqttAsyncClient(options.pahoUri(), options.clientId(), new MemoryPersistence());
        this.answerTopic = "answers/" + options.clientId();
        client.setCallback(new Hearing(this::arrived));
    }

    /** @throws IOException with a sentence, if the broker cannot be reached or does not want us */
    public static Onlooker connect(Address to) throws IOException {
        PahoLink.quiet();
        MqttOptions options = options(to);
        Trouble words = new Trouble(options);
        try {
            Onlooker o = new Onlooker(options);
            o.connect(options);
            return o;
        } catch (MqttException e) {
            throw new IOException(words.of(e), e);
        }
    }

    private static MqttOptions options(Address to) throws IOException {
        try {
            MqttOptions plain = MqttOptions.plain(to.broker(), "conetender-client-" + UUID.randomUUID(), NONE,
                    List.of());
            return to.login().map(l -> plain.withLogin(l.user(), l.password())).orElse(plain);
        } catch (IllegalArgumentException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private void connect(MqttOptions options) throws MqttException {
        MqttConnectionOptions connect = new MqttConnectionOptions();
        connect.setAutomaticReconnect(false);
        connect.setCleanStart(true);
        connect.setSessionExpiryInterval(0L);
        connect.setKeepAliveInterval(KEEP_ALIVE_S);
        connect.setConnectionTimeout((int) (BROKER_MS / 1_000));
        options.login().ifPresent(l -> {
            connect.setUserName(l.user());
            connect.setPassword(l.password().getBytes(StandardCharsets.UTF_8));
        });
        try {
            client.connect(connect).waitForCompletion(BROKER_MS);
        } catch (MqttException e) {
            client.close(true);
            throw e;
        }
    }

    /** Follows these filters too; what is retained there has been heard when this returns. */
    public void follow(List<String> filters) throws IOException {
        subscribe(filters);
        catchUp();
    }

    private void subscribe(List<String> filters) throws IOException {
        MqttSubscription[] wanted = filters.stream().map(f -> new MqttSubscription(f, 1))
                .toArray(MqttSubscription[]::new);
        waitFor(() -> client.subscribe(wanted, null, null, new MqttProperties()));
    }

    /**
     * Nothing marks the end of what is retained, but a broker keeps the order: our own word to ourselves
     * comes after it. One that forbids such a word leaves us to hear the rest as it comes.
     */
    private void catchUp() {
        try {
            ask(new Question(answerTopic, "mark", "mark", MARK_S), MARK_S * 1_000L);
        } catch (IOException forbidden) {
            LOG.debug("cannot tell when all that is retained has come: {}", forbidden.getMessage());
        }
    }

    /** The last word on every topic that was not taken back: a live view in order, safe to read. */
    public SortedMap<String, String> last() {
        return last;
    }

    /** Hears topic and payload of every message, on Paho's thread: hand over and return. */
    public void listen(BiConsumer<String, String> listener) {
        listeners.add(listener);
    }

    /** Says something at QoS 1, not retained; the broker has it when this returns. */
    public void say(String topic, String payload) throws IOException {
        MqttMessage m = new MqttMessage(payload.getBytes(StandardCharsets.UTF_8), 1, false,
                new MqttProperties());
        waitFor(() -> client.publish(topic, m));
    }

    /** Asks and waits; empty when no answer comes within {@code patienceMs}. */
    public Optional<String> ask(Question q, long patienceMs) throws IOException {
        subscribe(List.of(answerTopic));
        UUID correlation = UUID.randomUUID();
        byte[] bytes = HexFormat.of().parseHex(correlation.toString().replace("-", ""));
        MqttProperties p = new MqttProperties();
        p.setResponseTopic(answerTopic);
        p.setCorrelationData(bytes);
        p.setMessageExpiryInterval((long) q.expiryS());
        p.setUserProperties(List.of(new UserProperty("request-id", q.requestId())));
        CompletableFuture<String> answer = new CompletableFuture<>();
        asking.put(HexFormat.of().formatHex(bytes), answer);
        MqttMessage m = new MqttMessage(q.payload().getBytes(StandardCharsets.UTF_8), 1, false, p);
        waitFor(() -> client.publish(q.topic(), m));
        try {
            return Optional.of(answer.get(patienceMs, TimeUnit.MILLISECONDS));
        } catch (TimeoutException e) {
            return Optional.empty();
        } catch (ExecutionException e) {
            throw new IOException("the answer was lost", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while waiting for the answer", e);
        }
    }

    /** Whether the connection still stands. */
    public boolean connected() {
        return client.isConnected();
    }

    private void arrived(String topic, MqttMessage message) {
        String payload = new String(message.getPayload(), StandardCharsets.UTF_8);
        if (topic.equals(answerTopic)) {
            answered(message, payload);
            return;
        }
        if (payload.isEmpty()) {
            last.remove(topic);
        } else {
            last.put(topic, payload);
        }
        listeners.forEach(l -> l.accept(topic, payload));
    }

    private void answered(MqttMessage message, String payload) {
        byte[] correlation = message.getProperties() == null ? null
                : message.getProperties().getCorrelationData();
        CompletableFuture<String> answer =
                correlation == null ? null : asking.remove(HexFormat.of().formatHex(correlation));
        if (answer != null) {
            answer.complete(payload);
        }
    }

    private interface Call {
        IMqttToken start() throws MqttException;
    }

    private void waitFor(Call call) throws IOException {
        try {
            IMqttToken token = call.start();
            token.waitForCompletion(BROKER_MS);
            int[] reasons = token.getReasonCodes();
            if (reasons != null && reasons.length > 0 && reasons[0] >= 0x80) {
                throw new IOException(trouble.ofReason(reasons[0]));
            }
        } catch (MqttException e) {
            throw new IOException(trouble.of(e), e);
        }
    }

    /** More than once. */
    @Override
    public void close() throws IOException {
        if (closed.getAndSet(true)) {
            return;
        }
        try {
            if (client.isConnected()) {
                client.disconnect(0).waitForCompletion(BROKER_MS);
            }
            client.close(true);
        } catch (MqttException e) {
            throw new IOException(trouble.of(e), e);
        }
    }
}

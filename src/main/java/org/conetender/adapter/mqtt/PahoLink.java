package org.conetender.adapter.mqtt;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.conetender.adapter.mqtt.Outbox.Entry;
import org.conetender.port.Transport.Outgoing;
import org.eclipse.paho.mqttv5.client.IMqttToken;
import org.eclipse.paho.mqttv5.client.MqttActionListener;
import org.eclipse.paho.mqttv5.client.MqttAsyncClient;
import org.eclipse.paho.mqttv5.client.MqttCallback;
import org.eclipse.paho.mqttv5.client.MqttClientException;
import org.eclipse.paho.mqttv5.client.MqttConnectionOptions;
import org.eclipse.paho.mqttv5.client.MqttDisconnectResponse;
import org.eclipse.paho.mqttv5.client.internal.NetworkModule;
import org.eclipse.paho.mqttv5.client.persist.MemoryPersistence;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.MqttSubscription;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;
import org.eclipse.paho.mqttv5.common.packet.MqttReturnCode;

/**
 * One connection: a Paho client that is made, used and thrown away with it. A client that lives longer
 * resends with the topic aliases of a connection that is gone, and loops for ever (dependencies.md §2).
 *
 * <p>Called from the link keeper's thread only. What Paho reports comes on Paho's threads, is put into
 * {@link Listener} and must be handed on from there: no Paho call is made from a Paho callback.
 */
final class PahoLink {

    private static final org.slf4j.Logger LOG = org.slf4j.LoggerFactory.getLogger(PahoLink.class);

    /**
     * Paho's own log says each loss with a stack trace; ours says it once, in words. Held here because
     * a logger that nobody holds forgets its level.
     */
    private static final Logger PAHO_LOG = Logger.getLogger("org.eclipse.paho");

    static {
        quiet();
    }

    /** For every client of Paho's in this process. */
    static void quiet() {
        PAHO_LOG.setLevel(Level.OFF);
    }

    /** Seconds between pings. A broken line shows within twice this time. *Guess*. */
    private static final int KEEP_ALIVE_S = 10;

    /** Seconds for the TCP connection and for the TLS handshake. *Guess*. */
    private static final int CONNECT_S = 5;

    /** Seconds until Paho has certainly started its threads or failed: TCP, TLS and something to spare. */
    private static final int STARTING_S = 3 * CONNECT_S;

    /** Bytes a message to us may have; a broker drops longer ones. A command is below 1 kB. *Guess*. */
    private static final long LARGEST_IN = 262_144;

    /** Sent but not acknowledged at most: mosquitto takes 20, others fewer (dependencies.md §2). */
    private static final int WINDOW = 10;

    /** What Paho reports, on Paho's threads. Implementations hand over and return at once. */
    interface Listener {
        void connected(PahoLink link);

        void subscribed(PahoLink link, int[] reasons);

        void ended(PahoLink link, String why);

        void done(PahoLink link, Entry entry, int reason);

        void arrived(String topic, MqttMessage message);
    }

    private final MqttOptions options;
    private final Listener listener;
    private final Trouble trouble;
    private final MqttAsyncClient client;
    /** Released once Paho has started all its threads, or has failed before: see PatientModule. */
    private final CountDownLatch underWay = new CountDownLatch(1);
    private volatile int window = WINDOW;
    private volatile long largestOut = Long.MAX_VALUE;

    PahoLink(MqttOptions options, Listener listener) throws MqttException {
        this.options = options;
        this.listener = listener;
        this.trouble = new Trouble(options);
        this.client = new PatientClient(options, underWay);
        client.setCallback(new Reports());
    }

    /** Starts connecting; the listener hears {@code connected} or {@code ended}. */
    void connect() throws MqttException {
        client.connect(connectOptions(), null, report(this::connackArrived, this::ended));
    }

    /** Subscribes to every filter; the listener hears {@code subscribed}. */
    void subscribe() throws MqttException {
        MqttSubscription[] wanted =
                options.filters().stream().map(PahoLink::subscription).toArray(MqttSubscription[]::new);
        client.subscribe(wanted, null,
                report(token -> listener.subscribed(this, token.getReasonCodes()), this::ended),
                new MqttProperties());
    }

    /**
     * Hands one message to Paho; the listener hears {@code done} with the broker's reason, or, with the
     * whole window unanswered, {@code ended}.
     */
    void publish(Entry entry) throws MqttException {
        Outgoing outgoing = entry.message();
        // New properties at each publish: Paho writes its topic alias into the object it is given.
        MqttMessage message = new MqttMessage(
                payload(outgoing), entry.qos(), outgoing.retained(), properties(outgoing));
        client.publish(outgoing.topic(), message, null,
                report(token -> listener.done(this, entry, firstReason(token)), lostWithTheLink -> { }));
    }

    /** How many messages may be sent before one is acknowledged. */
    int window() {
        return window;
    }

    /** Whether the broker's limit leaves room for this message. */
    boolean fits(Outgoing message) {
        // 64 bytes: packet header, lengths and our own properties, rounded up.
        return message.topic().length() * 3L + payload(message).length + message.correlation().length() + 64
                <= largestOut;
    }

    /** Leaves: in good order, or so that the broker still speaks our last will. Waits up to a second. */
    void leave(boolean inGoodOrder) throws MqttException {
        int reason = inGoodOrder
                ? MqttReturnCode.RETURN_CODE_SUCCESS
                : MqttReturnCode.RETURN_CODE_DISCONNECT_WITH_WILL_MESSAGE;
        client.disconnect(100, null, null, reason, new MqttProperties()).waitForCompletion(1_000);
    }

    /**
     * Lets go of whatever is left of a connection, if any. Paho waits for threads of its own here, so
     * this runs on one that nobody waits for; what it still reports is no longer listened to.
     */
    static void drop(PahoLink old) {
        if (old != null) {
            Thread.ofPlatform().daemon().name("conetender-mqtt-drop").start(old::cut);
        }
    }

    private void cut() {
        try {
            // Cut off while it still starts threads, Paho would leave some of them running.
            if (!underWay.await(STARTING_S, TimeUnit.SECONDS)) {
                throw new MqttException(MqttClientException.REASON_CODE_CONNECT_IN_PROGRESS);
            }
            // Without a DISCONNECT packet: whoever was cut off is lost, and the broker shall say so.
            client.disconnectForcibly(0, 1, false);
            client.close(true);
        } catch (MqttException | InterruptedException | RuntimeException e) {
            LOG.warn("letting go of a connection to {}: {}", options.broker(), e.toString());
        }
    }

    private MqttConnectionOptions connectOptions() {
        MqttConnectionOptions connect = new MqttConnectionOptions();
        connect.setAutomaticReconnect(false);
        // Nothing may wait for us at the broker: a command for the past is no command (mqtt.md).
        connect.setCleanStart(true);
        connect.setSessionExpiryInterval(0L);
        connect.setKeepAliveInterval(KEEP_ALIVE_S);
        connect.setConnectionTimeout(CONNECT_S);
        connect.setMaximumPacketSize(LARGEST_IN);
        options.login().ifPresent(login -> {
            connect.setUserName(login.user());
            connect.setPassword(login.password().getBytes(StandardCharsets.UTF_8));
        });
        // No will delay: it ends with the session, and ours ends with the connection (MQTT 5, 3.1.3.2.2).
        MqttMessage will = new MqttMessage(options.farewell().ifLost().getBytes(StandardCharsets.UTF_8));
        will.setQos(1);
        will.setRetained(true);
        connect.setWill(options.farewell().topic(), will);
        return connect;
    }

    private static MqttSubscription subscription(String filter) {
        MqttSubscription subscription = new MqttSubscription(filter, 1);
        // What we publish ourselves need not come back.
        subscription.setNoLocal(true);
        // Else a command sent with RETAIN=1 while we are here would look like a proper one.
        subscription.setRetainAsPublished(true);
        return subscription;
    }

    private void connackArrived(IMqttToken token) {
        MqttProperties granted = token.getResponseProperties();
        if (granted != null) {
            Integer receiveMaximum = granted.getReceiveMaximum();
            window = receiveMaximum == null ? WINDOW : Math.clamp(receiveMaximum, 1, WINDOW);
            Long largest = granted.getMaximumPacketSize();
            largestOut = largest == null ? Long.MAX_VALUE : largest;
        }
        listener.connected(this);
    }

    private void ended(Throwable thrown) {
        underWay.countDown();
        listener.ended(this, trouble.of(thrown));
    }

    private static int firstReason(IMqttToken token) {
        int[] reasons = token.getReasonCodes();
        return reasons == null || reasons.length == 0 ? MqttReturnCode.RETURN_CODE_SUCCESS : reasons[0];
    }

    private static byte[] payload(Outgoing message) {
        return message.payload().getBytes(StandardCharsets.UTF_8);
    }

    private static MqttProperties properties(Outgoing message) {
        MqttProperties properties = new MqttProperties();
        if (!message.correlation().isEmpty()) {
            properties.setCorrelationData(HexFormat.of().parseHex(message.correlation()));
        }
        return properties;
    }

    private static MqttActionListener report(Consumer<IMqttToken> done, Consumer<Throwable> failed) {
        return new MqttActionListener() {
            @Override
            public void onSuccess(IMqttToken token) {
                done.accept(token);
            }

            @Override
            public void onFailure(IMqttToken token, Throwable thrown) {
                failed.accept(thrown);
            }
        };
    }

    /** Paho's client, hearing nothing before it speaks. */
    private static final class PatientClient extends MqttAsyncClient {

        private final CountDownLatch spoken;

        PatientClient(MqttOptions options, CountDownLatch spoken) throws MqttException {
            super(options.pahoUri(), options.clientId(), new MemoryPersistence());
            this.spoken = spoken;
        }

        @Override
        protected NetworkModule[] createNetworkModules(String address, MqttConnectionOptions connect)
                throws MqttException {
            return Stream.of(super.createNetworkModules(address, connect))
                    .map(module -> new PatientModule(module, spoken)).toArray(NetworkModule[]::new);
        }
    }

    /** Paho's callback; the per-subscription listeners of this version overflow the stack (§2). */
    private final class Reports implements MqttCallback {
        @Override
        public void disconnected(MqttDisconnectResponse response) {
            listener.ended(PahoLink.this, response.getException() == null
                    ? trouble.ofReason(response.getReturnCode())
                    : trouble.of(response.getException()));
        }

        @Override
        public void messageArrived(String topic, MqttMessage message) {
            listener.arrived(topic, message);
        }

        @Override
        public void mqttErrorOccurred(MqttException exception) {
            listener.ended(PahoLink.this, trouble.of(exception));
        }

        @Override
        public void deliveryComplete(IMqttToken token) {
            // Each publish has a listener of its own, which also hears the broker's reason.
        }

        @Override
        public void connectComplete(boolean reconnect, String serverUri) {
            // The connect token says it, with the broker's limits.
        }

        @Override
        public void authPacketArrived(int reasonCode, MqttProperties properties) {
            // No extended authentication is ever started.
        }
    }
}

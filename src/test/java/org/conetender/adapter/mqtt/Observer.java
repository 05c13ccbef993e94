package org.conetender.adapter.mqtt;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.eclipse.paho.mqttv5.client.IMqttToken;
import org.eclipse.paho.mqttv5.client.MqttAsyncClient;
import org.eclipse.paho.mqttv5.client.MqttCallback;
import org.eclipse.paho.mqttv5.client.MqttConnectionOptions;
import org.eclipse.paho.mqttv5.client.MqttDisconnectResponse;
import org.eclipse.paho.mqttv5.client.persist.MemoryPersistence;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.MqttSubscription;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;

/** Another client at the broker, who hears everything and can say anything. */
public final class Observer implements AutoCloseable, MqttCallback {

    /** One message as it came. */
    public record Heard(String topic, String payload, boolean retained, MqttProperties properties) {}

    private final MqttAsyncClient client;
    private final Queue<Heard> heard = new ConcurrentLinkedQueue<>();

    private Observer(URI uri) throws MqttException {
        this.client = new MqttAsyncClient(
                uri.toString().replace("mqtt:", "tcp:"), "observer-" + UUID.randomUUID(),
                new MemoryPersistence());
        client.setCallback(this);
        MqttConnectionOptions options = new MqttConnectionOptions();
        options.setAutomaticReconnect(false);
        client.connect(options).waitForCompletion(5_000);
    }

    /** Connects and has heard every retained message when this returns. */
    public static Observer at(URI uri) {
        try {
            Observer observer = new Observer(uri);
            MqttSubscription everything = new MqttSubscription("#", 1);
            everything.setRetainAsPublished(true);
            observer.client.subscribe(new MqttSubscription[] {everything}, null, null, new MqttProperties())
                    .waitForCompletion(5_000);
            observer.sync();
            return observer;
        } catch (MqttException e) {
            throw new AssertionError("the observer could not connect", e);
        }
    }

    /** Everything said before this call has been heard: the broker keeps the order. */
    public void sync() {
        String mark = "sync/" + UUID.randomUUID();
        say(mark, "x", 1, false);
        Eventually.holds("the broker answers the observer", 30,
                () -> heard.stream().anyMatch(message -> message.topic().equals(mark)));
    }

    public void say(String topic, String payload, int qos, boolean retained) {
        MqttMessage message = new MqttMessage(payload.getBytes(StandardCharsets.UTF_8));
        message.setQos(qos);
        message.setRetained(retained);
        message.setProperties(new MqttProperties());
        say(topic, message);
    }

    public void say(String topic, MqttMessage message) {
        try {
            client.publish(topic, message).waitForCompletion(5_000);
        } catch (MqttException e) {
            throw new AssertionError("the observer could not publish", e);
        }
    }

    public List<Heard> heard() {
        return List.copyOf(heard);
    }

    /** The payloads on one topic, in order. */
    public List<String> heard(String topic) {
        return heard.stream().filter(message -> message.topic().equals(topic)).map(Heard::payload).toList();
    }

    /** What the broker keeps now, as a newcomer sees it. */
    public static Map<String, String> retainedAt(URI uri) {
        try (Observer newcomer = at(uri)) {
            Map<String, String> retained = new TreeMap<>();
            newcomer.heard.stream().filter(m -> m.retained() && !m.payload().isEmpty())
                    .forEach(message -> retained.put(message.topic(), message.payload()));
            return retained;
        }
    }

    @Override
    public void close() {
        try {
            if (client.isConnected()) {
                client.disconnect(0).waitForCompletion(2_000);
            }
            client.close(true);
        } catch (MqttException e) {
            throw new AssertionError("the observer could not leave", e);
        }
    }

    @Override
    public void messageArrived(String topic, MqttMessage message) {
        heard.add(new Heard(topic, new String(message.getPayload(), StandardCharsets.UTF_8),
                message.isRetained(), message.getProperties()));
    }

    @Override
    public void disconnected(MqttDisconnectResponse response) {
        // Seen by the test as an answer that does not come.
    }

    @Override
    public void mqttErrorOccurred(MqttException exception) {
        throw new AssertionError(exception);
    }

    @Override
    public void deliveryComplete(IMqttToken token) {
        // The token is waited for.
    }

    @Override
    public void connectComplete(boolean reconnect, String serverUri) {
        // The token is waited for.
    }

    @Override
    public void authPacketArrived(int reasonCode, MqttProperties properties) {
        // Not used.
    }
}

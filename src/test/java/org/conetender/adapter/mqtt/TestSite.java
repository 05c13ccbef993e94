package org.conetender.adapter.mqtt;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.conetender.port.Transport.Incoming;
import org.conetender.port.Transport.Outgoing;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;
import org.eclipse.paho.mqttv5.common.packet.UserProperty;

/** The transport as Larkmoor's daemon would open it, with short waits. */
final class TestSite {

    static final String ROOT = "homie/5/larkmoor/";
    static final String STATE = ROOT + "$state";
    static final String STEP_SET = "homie/5/larkmoor-a/hand/step/set";
    static final List<String> SETS = List.of("homie/5/+/+/+/set");
    static final MqttOptions.Farewell FAREWELL = new MqttOptions.Farewell(STATE, "lost", "disconnected");

    /** As in production, but a tenth of the time. */
    static final Backoff.Pace QUICK = new Backoff.Pace(100, 800, 1_000, 4_000, 2_000);

    private TestSite() {}

    static MqttOptions options(URI broker) {
        return MqttOptions.plain(broker, "larkmoor", FAREWELL, SETS);
    }

    static MqttTransport open(URI broker) {
        return open(options(broker));
    }

    static MqttTransport open(MqttOptions options) {
        return MqttTransport.open(options, QUICK, new HandClock(), 42);
    }

    static MqttTransport connected(URI broker) {
        MqttTransport transport = open(broker);
        awaitUp(transport);
        return transport;
    }

    static void awaitUp(MqttTransport transport) {
        Eventually.holds("the transport is connected", 10, () -> transport.link().up());
    }

    static void awaitDown(MqttTransport transport) {
        Eventually.holds("the transport noticed the loss", 10, () -> !transport.link().up());
    }

    static Outgoing kept(String topic, String payload) {
        return new Outgoing(ROOT + topic, payload, true, "");
    }

    /** A step as a client sends it that wants an answer. */
    static MqttMessage command(String step, long expiresInS) {
        MqttProperties properties = new MqttProperties();
        properties.setResponseTopic("reply/here");
        properties.setCorrelationData(new byte[] {0, (byte) 0xFF, 16});
        properties.setMessageExpiryInterval(expiresInS);
        properties.setUserProperties(List.of(new UserProperty("request-id", "r-1")));
        return new MqttMessage(step.getBytes(StandardCharsets.UTF_8), 1, false, properties);
    }

    /** Polls until {@code n} messages are in. */
    static List<Incoming> await(MqttTransport transport, int n) {
        List<Incoming> in = new ArrayList<>();
        Eventually.holds(n + " messages came in", 10, () -> {
            in.addAll(transport.poll(100));
            return in.size() >= n;
        });
        return in;
    }
}

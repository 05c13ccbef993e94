package org.conetender.adapter.mqtt;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.conetender.port.Clock;
import org.conetender.port.Transport.Incoming;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;

/**
 * What came in and was not polled yet. Bounded in number and in bytes, so that a flood costs the
 * flooder's messages and not the daemon's memory. Filled by Paho's callback thread, emptied by the
 * publish agent's; neither waits.
 */
final class Inbox {

    /** Messages waiting at most: a whole tree at the first subscription, several times over. *Guess*. */
    static final int MOST_MESSAGES = 2_000;

    /** Characters of payload waiting at most, about 8 MB of memory. *Guess*. */
    static final int MOST_CHARS = 4_000_000;

    /** Stands for a payload that is not UTF-8; it is no value of any datatype and no name. */
    static final String UNREADABLE = "\uFFFD";

    private record Arrived(Incoming message, long atMonoMs) {}

    private final Clock clock;
    private final Tally tally;
    private final ArrayDeque<Arrived> waiting = new ArrayDeque<>();
    private long chars;

    Inbox(Clock clock, Tally tally) {
        this.clock = clock;
        this.tally = tally;
    }

    /** Takes what Paho delivered, or counts it as dropped. */
    void accept(String topic, MqttMessage message) {
        Map<String, String> properties = properties(message.getProperties());
        String payload = text(message.getPayload(), properties);
        Incoming incoming = new Incoming(topic, payload, message.isRetained(), Map.copyOf(properties));
        Arrived arrived = new Arrived(incoming, clock.now().monoMs());
        synchronized (this) {
            if (waiting.size() >= MOST_MESSAGES || chars + payload.length() > MOST_CHARS) {
                tally.inboxFull.increment();
                return;
            }
            waiting.add(arrived);
            chars += payload.length();
        }
    }

    /** Up to {@code most}, oldest first; the time they lay here is taken off their expiry. */
    List<Incoming> poll(int most) {
        long nowMonoMs = clock.now().monoMs();
        List<Incoming> out = new ArrayList<>();
        synchronized (this) {
            while (out.size() < most && !waiting.isEmpty()) {
                Arrived next = waiting.poll();
                chars -= next.message().payload().length();
                out.add(aged(next, nowMonoMs));
            }
        }
        return out;
    }

    private static Incoming aged(Arrived arrived, long nowMonoMs) {
        Incoming message = arrived.message();
        String expiresInS = message.properties().get("expires-in-s");
        if (expiresInS == null) {
            return message;
        }
        long lainMs = Math.max(0, nowMonoMs - arrived.atMonoMs());
        // Rounded down to whole seconds: a command in its last second is treated as expired.
        long leftS = Math.max(0, Math.floorDiv(Long.parseLong(expiresInS) * 1000 - lainMs, 1000L));
        Map<String, String> properties = new HashMap<>(message.properties());
        properties.put("expires-in-s", Long.toString(leftS));
        return new Incoming(message.topic(), message.payload(), message.retained(), Map.copyOf(properties));
    }

    private String text(byte[] payload, Map<String, String> properties) {
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(payload)).toString();
        } catch (CharacterCodingException notUtf8) {
            tally.unreadable.increment();
            properties.put("unreadable", "the payload's " + payload.length + " bytes are not UTF-8 text");
            return UNREADABLE;
        }
    }

    private static Map<String, String> properties(MqttProperties from) {
        Map<String, String> out = new HashMap<>();
        if (from == null) {
            return out;
        }
        // An answer is published there, so a topic nobody can publish to is as good as none.
        if (from.getResponseTopic() != null && Filters.canPublish(from.getResponseTopic())) {
            out.put("response-topic", from.getResponseTopic());
        }
        if (from.getCorrelationData() != null) {
            out.put("correlation", HexFormat.of().formatHex(from.getCorrelationData()));
        }
        if (from.getMessageExpiryInterval() != null) {
            out.put("expires-in-s", Long.toString(from.getMessageExpiryInterval()));
        }
        from.getUserProperties().stream()
                .filter(user -> user.getKey().equals("request-id"))
                .forEach(user -> out.putIfAbsent("request-id", user.getValue()));
        return out;
    }
}

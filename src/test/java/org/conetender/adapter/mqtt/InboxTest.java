package org.conetender.adapter.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.conetender.port.Transport.Incoming;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;
import org.junit.jupiter.api.Test;

class InboxTest {

    private final HandClock clock = new HandClock();
    private final Tally tally = new Tally();
    private final Inbox inbox = new Inbox(clock, tally);

    private static MqttMessage text(String payload) {
        return new MqttMessage(payload.getBytes(StandardCharsets.UTF_8), 1, false, new MqttProperties());
    }

    @Test
    void theTimeACommandLayHereIsTakenOffItsExpiry() {
        inbox.accept("x/set", TestSite.command("started", 60L));
        clock.advanceMs(45_100);
        assertThat(inbox.poll(1).getFirst().properties()).containsEntry("expires-in-s", "14");
        inbox.accept("x/set", TestSite.command("started", 60L));
        clock.advanceMs(61_000);
        assertThat(inbox.poll(1).getFirst().properties()).containsEntry("expires-in-s", "0");
    }

    @Test
    void messagesComeOutInOrderAndNoMoreThanAskedFor() {
        List.of("1", "2", "3").forEach(payload -> inbox.accept("x", text(payload)));
        assertThat(inbox.poll(2)).extracting(Incoming::payload).containsExactly("1", "2");
        assertThat(inbox.poll(2)).extracting(Incoming::payload).containsExactly("3");
        assertThat(inbox.poll(2)).isEmpty();
    }

    @Test
    void aFloodCostsTheFloodersMessagesOnly() {
        for (int i = 0; i < Inbox.MOST_MESSAGES + 5; i++) {
            inbox.accept("x", text("1"));
        }
        assertThat(tally.read().inboxFull()).isEqualTo(5);
        assertThat(inbox.poll(10_000)).hasSize(Inbox.MOST_MESSAGES);
        String large = "y".repeat(Inbox.MOST_CHARS / 4);
        for (int i = 0; i < 5; i++) {
            inbox.accept("x", text(large));
        }
        assertThat(inbox.poll(10)).hasSize(4);
    }

    @Test
    void aPlaceToAnswerWhereNobodyCanPublishIsLeftOut() {
        MqttMessage message = text("started");
        message.getProperties().setResponseTopic("reply/\u0001");
        inbox.accept("x/set", message);
        assertThat(inbox.poll(1).getFirst().properties()).doesNotContainKey("response-topic");
    }
}

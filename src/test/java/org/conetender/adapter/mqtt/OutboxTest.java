package org.conetender.adapter.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.conetender.adapter.mqtt.Outbox.Entry;
import org.conetender.port.Transport.Outgoing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutboxTest {

    private final Tally tally = new Tally();
    private final Outbox outbox = new Outbox(4, tally);

    private static Outgoing kept(String topic, String payload) {
        return new Outgoing(topic, payload, true, "");
    }

    private static List<String> drain(Outbox outbox) {
        List<String> out = new ArrayList<>();
        for (Optional<Entry> next = outbox.next(100); next.isPresent(); next = outbox.next(100)) {
            out.add(next.get().message().topic() + "=" + next.get().message().payload());
        }
        return out;
    }

    @Test
    void aFullOutboxSaysSoAndTakesAgainWhenThereIsRoom() {
        for (String topic : List.of("a", "b", "c", "d")) {
            assertThat(outbox.offer(kept(topic, "1"))).isTrue();
        }
        assertThat(outbox.offer(kept("e", "1"))).isFalse();
        assertThat(tally.read().outboxFull()).isEqualTo(1);
        outbox.up();
        assertThat(outbox.next(10)).isPresent();
        assertThat(outbox.offer(kept("e", "1"))).isTrue();
    }

    @Test
    void aFullOutboxStillTakesTheNewestOfATopicThatWaits() {
        List.of("a", "b", "c", "d").forEach(topic -> outbox.offer(kept(topic, "1")));
        assertThat(outbox.offer(kept("b", "2"))).isTrue();
        assertThat(drain(outbox)).containsExactly("a=1", "c=1", "d=1", "b=2");
        assertThat(tally.read().coalesced()).isEqualTo(1);
    }

    @Test
    void whileConnectedADeviceIsSeenGoingThroughEachOfItsStates() {
        outbox.up();
        outbox.offer(kept("$state", "init"));
        outbox.offer(kept("$description", "{}"));
        outbox.offer(kept("$state", "ready"));
        assertThat(drain(outbox)).containsExactly("$state=init", "$description={}", "$state=ready");
    }

    @Test
    void whileConnectedAFullOutboxGivesUpOldPayloadsFirst() {
        outbox.up();
        outbox.offer(kept("a", "1"));
        outbox.offer(kept("a", "2"));
        outbox.offer(kept("b", "1"));
        outbox.offer(kept("b", "2"));
        assertThat(outbox.offer(kept("c", "1"))).isTrue();
        assertThat(drain(outbox)).containsExactly("a=2", "b=2", "c=1");
    }

    @Test
    void newsOfTheMomentIsLetGoWhileNobodyIsThereToHearIt() {
        assertThat(outbox.offer(new Outgoing("$log/info", "x", false, ""))).isTrue();
        assertThat(outbox.isEmpty()).isTrue();
        outbox.offer(new Outgoing("reply", "recorded", false, "00"));
        assertThat(outbox.isEmpty()).isFalse();
        assertThat(tally.read().letGo()).isEqualTo(1);
    }

    @Test
    void onlyAWindowFliesAndALossBringsItBackInOrder() {
        outbox.up();
        List.of("a", "b", "c").forEach(topic -> outbox.offer(kept(topic, "1")));
        Entry a = outbox.next(2).orElseThrow();
        assertThat(outbox.next(2)).isPresent();
        assertThat(outbox.next(2)).isEmpty();
        outbox.done(a);
        outbox.down();
        assertThat(drain(outbox)).containsExactly("b=1", "c=1");
    }

    @Test
    void anOldPayloadDoesNotComeBackOnceANewerOneIsAcknowledged() {
        outbox.up();
        outbox.offer(kept("a", "1"));
        outbox.offer(kept("a", "2"));
        outbox.next(10);
        outbox.done(outbox.next(10).orElseThrow());
        outbox.down();
        assertThat(outbox.isEmpty()).isTrue();
    }

    /** A broker that may lose its acknowledgements, and a line that breaks at random. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void whateverBreaksTheBrokerEndsWithTheNewestOfEachTopic(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Outbox box = new Outbox(50, tally);
        Map<String, String> newest = new HashMap<>();
        Map<String, String> broker = new HashMap<>();
        List<Entry> flying = new ArrayList<>();
        for (int i = 0; i < 2_000; i++) {
            int what = random.nextInt(20);
            if (what < 10) {
                Outgoing message = kept("t" + random.nextInt(30), "v" + i);
                assertThat(box.offer(message)).isTrue();
                newest.put(message.topic(), message.payload());
            } else if (what < 17) {
                box.next(10).ifPresent(entry -> {
                    broker.put(entry.message().topic(), entry.message().payload());
                    flying.add(entry);
                });
            } else if (what < 19 && !flying.isEmpty()) {
                box.done(flying.removeFirst());
            } else {
                box.down();
                flying.clear();
                box.up();
            }
        }
        box.down();
        box.up();
        for (Optional<Entry> next = box.next(100); next.isPresent(); next = box.next(100)) {
            broker.put(next.get().message().topic(), next.get().message().payload());
        }
        assertThat(broker).isEqualTo(newest);
    }
}

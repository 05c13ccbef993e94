package org.conetender.adapter.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A broker that goes away and comes back with messages in flight, as after an update or a power cut. */
class MosquittoRestartTest {

    @TempDir
    Path folder;

    private MosquittoProcess broker;

    @BeforeEach
    void startBroker() {
        broker = MosquittoProcess.start(folder);
    }

    @AfterEach
    void stopBroker() {
        broker.close();
    }

    @Test
    void fourHundredTopicsAreAllKeptThoughTheBrokerRestartsFiveTimes() {
        Map<String, String> expected = new TreeMap<>();
        try (MqttTransport transport = TestSite.connected(broker.uri())) {
            for (int i = 0; i < 400; i++) {
                if (i % 80 == 0) {
                    TestSite.awaitUp(transport);
                }
                assertThat(transport.offer(TestSite.kept("n/p" + i, "v" + i))).isTrue();
                expected.put(TestSite.ROOT + "n/p" + i, "v" + i);
                if (i % 80 == 40) {
                    broker.restart();
                }
            }
            Eventually.holds("all acknowledged", 20, () -> transport.counters().acknowledged() >= 400);
            assertThat(transport.link().generation()).isGreaterThanOrEqualTo(6);
            assertThat(keptValues()).isEqualTo(expected);
        }
    }

    @Test
    void eachTopicEndsWithItsNewestPayloadWhenTheBrokerIsKilledWithMessagesInFlight() {
        Map<String, String> newest = new TreeMap<>();
        SplittableRandom random = new SplittableRandom(7);
        try (MqttTransport transport = TestSite.connected(broker.uri())) {
            for (int i = 0; i < 400; i++) {
                String topic = "n/p" + random.nextInt(20);
                assertThat(transport.offer(TestSite.kept(topic, "v" + i))).isTrue();
                newest.put(TestSite.ROOT + topic, "v" + i);
                if (i % 100 == 50) {
                    broker.kill();
                    broker.start();
                }
            }
            TestSite.awaitUp(transport);
            // A killed mosquitto forgets what it had acknowledged: the new generation says publish again.
            newest.forEach((topic, payload) -> transport.offer(
                    TestSite.kept(topic.substring(TestSite.ROOT.length()), payload)));
            int offered = 400 + newest.size();
            Eventually.holds("every message is accounted for", 20, () ->
                    transport.counters().acknowledged() + transport.counters().coalesced() >= offered);
            assertThat(keptValues()).isEqualTo(newest);
        }
    }

    @Test
    void whatWasSentButNotAcknowledgedIsSentAgainOverTheNextConnection() {
        try (CuttableLine line = new CuttableLine(broker.port());
                MqttTransport transport = TestSite.connected(line.uri())) {
            line.swallowReplies();
            for (int i = 0; i < 30; i++) {
                transport.offer(TestSite.kept("n/p" + i, "v"));
            }
            Eventually.holds("a window of ten reached the broker", 10,
                    () -> Observer.retainedAt(broker.uri()).size() == 10);
            assertThat(transport.counters().acknowledged()).isZero();
            line.cut();
            TestSite.awaitDown(transport);
            line.mend();
            Eventually.holds("all acknowledged", 10, () -> transport.counters().acknowledged() == 30);
            assertThat(Observer.retainedAt(broker.uri())).hasSize(31).containsEntry(TestSite.STATE, "lost");
        }
    }

    @Test
    void aFreshValueIsNotUndoneByAnOlderOneThatHadToBeSentAgain() {
        try (CuttableLine line = new CuttableLine(broker.port());
                MqttTransport transport = TestSite.connected(line.uri())) {
            line.swallowReplies();
            transport.offer(TestSite.kept("n/p", "old"));
            Eventually.holds("the old value reached the broker", 10,
                    () -> Observer.retainedAt(broker.uri()).containsValue("old"));
            line.cut();
            TestSite.awaitDown(transport);
            transport.offer(TestSite.kept("n/p", "new"));
            try (Observer observer = Observer.at(broker.uri())) {
                line.mend();
                Eventually.holds("acknowledged", 10, () -> transport.counters().acknowledged() == 1);
                observer.sync();
                assertThat(observer.heard(TestSite.ROOT + "n/p")).containsExactly("old", "new");
            }
        }
    }

    @Test
    void commandsArriveAgainAfterTheBrokerForgotItsSubscriptions() {
        try (MqttTransport transport = TestSite.connected(broker.uri())) {
            long before = transport.link().generation();
            broker.kill();
            TestSite.awaitDown(transport);
            assertThat(transport.link().trouble().orElseThrow()).contains(broker.uri().toString());
            broker.start();
            TestSite.awaitUp(transport);
            assertThat(transport.link().generation()).isEqualTo(before + 1);
            try (Observer person = Observer.at(broker.uri())) {
                person.say(TestSite.STEP_SET, "started", 1, false);
            }
            assertThat(TestSite.await(transport, 1)).singleElement()
                    .satisfies(in -> assertThat(in.payload()).isEqualTo("started"));
        }
    }

    @Test
    void noCommandWaitsAtTheBrokerWhileTheDaemonIsAway() {
        try (CuttableLine line = new CuttableLine(broker.port());
                Observer person = Observer.at(broker.uri());
                MqttTransport transport = TestSite.connected(line.uri())) {
            line.cut();
            TestSite.awaitDown(transport);
            person.say(TestSite.STEP_SET, "settle", 1, false);
            line.mend();
            TestSite.awaitUp(transport);
            person.say(TestSite.STEP_SET, "started", 1, false);
            assertThat(TestSite.await(transport, 1)).extracting("payload").containsExactly("started");
        }
    }

    /** What the broker keeps, but for the last will, which depends on how each connection ended. */
    private Map<String, String> keptValues() {
        Map<String, String> kept = Observer.retainedAt(broker.uri());
        kept.remove(TestSite.STATE);
        return kept;
    }
}

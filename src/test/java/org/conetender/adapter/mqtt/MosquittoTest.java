package org.conetender.adapter.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import org.conetender.port.Transport.Outgoing;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the daemon and the people around it rely on, held against a real mosquitto. */
class MosquittoTest {

    @TempDir
    Path folder;

    @Test
    void aRetainedCommandIsKnownAsOneBothWhenItLiesThereAndWhenItArrives() {
        try (MosquittoProcess broker = MosquittoProcess.start(folder);
                Observer person = Observer.at(broker.uri())) {
            person.say(TestSite.STEP_SET, "settle", 1, true);
            try (MqttTransport transport = TestSite.connected(broker.uri())) {
                person.say(TestSite.STEP_SET, "drained", 1, true);
                person.say(TestSite.STEP_SET, "started", 1, false);
                assertThat(TestSite.await(transport, 3)).extracting("payload", "retained").containsExactly(
                        tuple("settle", true),
                        tuple("drained", true),
                        tuple("started", false));
            }
        }
    }

    @Test
    void aCommandArrivesWithAllItsPropertiesAndItsAnswerGoesBack() {
        try (MosquittoProcess broker = MosquittoProcess.start(folder);
                Observer person = Observer.at(broker.uri());
                MqttTransport transport = TestSite.connected(broker.uri())) {
            person.say(TestSite.STEP_SET, TestSite.command("started", 60L));
            assertThat(TestSite.await(transport, 1)).singleElement()
                    .satisfies(in -> assertThat(in.properties()).isEqualTo(Map.of(
                            "response-topic", "reply/here", "correlation", "00ff10",
                            "request-id", "r-1", "expires-in-s", "60")));
            transport.offer(new Outgoing("reply/here", "Cone a: started.", false, "00ff10"));
            Eventually.holds("the answer came", 5, () -> person.heard("reply/here").size() == 1);
            assertThat(person.heard()).filteredOn(heard -> heard.topic().equals("reply/here")).singleElement()
                    .satisfies(heard -> assertThat(heard.properties().getCorrelationData())
                            .containsExactly(0, 0xFF, 16));
        }
    }

    @Test
    void aPayloadThatIsNotTextArrivesMarkedSoThatItCanBeRefusedInWords() {
        try (MosquittoProcess broker = MosquittoProcess.start(folder);
                Observer person = Observer.at(broker.uri());
                MqttTransport transport = TestSite.connected(broker.uri())) {
            byte[] noText = {(byte) 0xC3, 0x28};
            MqttMessage noise = new MqttMessage(noText, 1, false, new MqttProperties());
            person.say(TestSite.STEP_SET, noise);
            assertThat(TestSite.await(transport, 1)).singleElement().satisfies(in -> {
                assertThat(in.payload()).isEqualTo("\uFFFD");
                assertThat(in.properties()).containsEntry(
                        "unreadable", "the payload's 2 bytes are not UTF-8 text");
            });
            assertThat(transport.counters().unreadable()).isEqualTo(1);
        }
    }

    @Test
    void aDaemonThatSaysGoodbyeIsDisconnectedAndNotLost() {
        try (MosquittoProcess broker = MosquittoProcess.start(folder);
                Observer person = Observer.at(broker.uri())) {
            MqttTransport transport = TestSite.connected(broker.uri());
            transport.offer(TestSite.kept("$state", "ready"));
            transport.close();
            person.sync();
            assertThat(person.heard(TestSite.STATE)).containsExactly("ready", "disconnected");
            assertThat(transport.offer(TestSite.kept("$state", "ready"))).isFalse();
            assertThat(transport.link().up()).isFalse();
            assertThat(Observer.retainedAt(broker.uri()))
                    .containsExactly(Map.entry(TestSite.STATE, "disconnected"));
            awaitNoThreads();
        }
    }

    @Test
    void aDaemonThatIsKilledIsLost() throws Exception {
        try (MosquittoProcess broker = MosquittoProcess.start(folder);
                Observer person = Observer.at(broker.uri())) {
            Process daemon = new ProcessBuilder(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-cp", System.getProperty("java.class.path"), ChildDaemon.class.getName(),
                    broker.uri().toString()).inheritIO().start();
            try {
                Eventually.holds("the child is ready", 20,
                        () -> person.heard(TestSite.STATE).contains("ready"));
            } finally {
                daemon.destroyForcibly().waitFor();
            }
            Eventually.holds("the last will was spoken", 5,
                    () -> person.heard(TestSite.STATE).equals(List.of("ready", "lost")));
            assertThat(Observer.retainedAt(broker.uri())).containsEntry(TestSite.STATE, "lost");
        }
    }

    @Test
    void theTreeOfAnEarlierLifeIsHeardButNotOurOwnWords() {
        try (MosquittoProcess broker = MosquittoProcess.start(folder)) {
            MqttTransport earlier = TestSite.connected(broker.uri());
            earlier.offer(TestSite.kept("old/value", "1"));
            earlier.close();
            MqttOptions whole = MqttOptions.plain(
                    broker.uri(), "larkmoor", TestSite.FAREWELL, List.of("homie/5/larkmoor/#"));
            try (MqttTransport now = TestSite.open(whole)) {
                TestSite.awaitUp(now);
                now.offer(TestSite.kept("new/value", "2"));
                assertThat(TestSite.await(now, 2)).extracting("topic")
                        .containsExactlyInAnyOrder(TestSite.ROOT + "old/value", TestSite.STATE);
                Eventually.holds("sent", 5, () -> now.counters().acknowledged() == 1);
                assertThat(now.poll(10)).isEmpty();
            }
        }
    }

    @Test
    void aMessageTooLongForTheBrokerIsRefusedAndTheNextOnePasses() {
        try (MosquittoProcess broker = MosquittoProcess.start(folder, "max_packet_size 2000");
                MqttTransport transport = TestSite.connected(broker.uri())) {
            transport.offer(TestSite.kept("n/long", "x".repeat(3_000)));
            transport.offer(TestSite.kept("n/short", "x"));
            Eventually.holds("the short one passed", 5, () -> transport.counters().acknowledged() == 1);
            assertThat(transport.counters().refused()).isEqualTo(1);
            assertThat(transport.counters().losses()).isZero();
        }
    }

    @Test
    void aForbiddenTopicIsCountedAndTheRestGoesOn() throws IOException {
        Path acl = Files.writeString(folder.resolve("acl"), "topic write homie/5/larkmoor/ok/#\n");
        Files.setPosixFilePermissions(acl, PosixFilePermissions.fromString("rw-------"));
        try (MosquittoProcess broker = MosquittoProcess.start(folder, "acl_file " + acl);
                MqttTransport transport = TestSite.connected(broker.uri())) {
            transport.offer(TestSite.kept("forbidden/p", "1"));
            transport.offer(TestSite.kept("ok/p", "1"));
            Eventually.holds("the allowed one passed", 5, () -> transport.counters().acknowledged() == 1);
            assertThat(transport.counters().refused()).isEqualTo(1);
            assertThat(transport.link().up()).isTrue();
        }
    }

    @Test
    void aBrokerThatDoesNotKnowUsIsNamedAsTheTrouble() {
        try (MosquittoProcess broker = MosquittoProcess.start(folder, "allow_anonymous false");
                MqttTransport transport = TestSite.open(
                        TestSite.options(broker.uri()).withLogin("larkmoor", "wrong"))) {
            awaitTrouble(transport, "user name");
        }
    }

    @Test
    void aSecondDaemonOfTheSameNameIsNamedAsTheTrouble() {
        try (MosquittoProcess broker = MosquittoProcess.start(folder);
                MqttTransport first = TestSite.connected(broker.uri());
                MqttTransport second = TestSite.connected(broker.uri())) {
            awaitTrouble(first, "is a second daemon running");
            assertThat(second.counters().unreadable()).isZero();
        }
    }

    @Test
    void aPortWhereNobodyListensIsNamedAsTheTrouble() {
        URI nobody = URI.create("mqtt://127.0.0.1:" + MosquittoProcess.freePort());
        try (MqttTransport transport = TestSite.open(nobody)) {
            awaitTrouble(transport, "nothing listens at " + nobody);
        }
    }

    @Test
    void aPortThatTakesTheCallAndSaysNothingIsNamedAsTheTrouble() throws IOException {
        try (ServerSocket mute = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
                MqttTransport transport =
                        TestSite.open(URI.create("mqtt://127.0.0.1:" + mute.getLocalPort()))) {
            awaitTrouble(transport, "does not answer in MQTT");
        }
    }

    @AfterEach
    void nothingIsLeftRunning() {
        awaitNoThreads();
    }

    private static void awaitTrouble(MqttTransport transport, String words) {
        Eventually.holds("the trouble says: " + words, 10,
                () -> transport.link().trouble().orElse("").contains(words));
    }

    @Test
    void aPortThatHangsUpAtOnceCostsNoThread() throws IOException {
        try (ServerSocket rude = new ServerSocket(0, 50, InetAddress.getLoopbackAddress())) {
            Thread.ofVirtual().start(() -> hangUp(rude));
            try (MqttTransport transport =
                    TestSite.open(URI.create("mqtt://127.0.0.1:" + rude.getLocalPort()))) {
                Eventually.holds("several attempts failed", 10, () -> transport.counters().losses() >= 3);
                assertThat(transport.link().trouble().orElseThrow()).contains("broke off");
            }
        }
    }

    private static void hangUp(ServerSocket rude) {
        try {
            while (true) {
                rude.accept().close();
            }
        } catch (IOException closed) {
            assertThat(rude.isClosed()).isTrue();
        }
    }

    /** Whatever a transport started has ended: its own thread, and those of every Paho client it made. */
    private static void awaitNoThreads() {
        Eventually.holds("no thread of a transport is left", 5, () -> threads().isEmpty());
    }

    private static List<String> threads() {
        return Thread.getAllStackTraces().keySet().stream().map(Thread::getName)
                .filter(name -> name.matches("conetender-mqtt.*|MQTT .*: larkmoor")).toList();
    }
}

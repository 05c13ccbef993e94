package org.conetender.adapter.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.ConnectException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.app.demo.LoopbackBroker;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The demonstration's broker must do for the daemon what a real one does. */
class LoopbackBrokerTest {

    private static LoopbackBroker broker;

    @BeforeAll
    static void startBroker() throws IOException {
        broker = LoopbackBroker.start();
    }

    @AfterAll
    static void stopBroker() throws IOException {
        broker.close();
    }

    @Test
    void itListensOnThisMachineOnly() throws IOException {
        assertThat(broker.uri().getHost()).isEqualTo("127.0.0.1");
        assertThat(broker.uri().getPort()).isPositive();
        InetAddress outer = InetAddress.getByAddress(new byte[] {127, 0, 0, 2});
        assertThatThrownBy(() -> new Socket(outer, broker.uri().getPort()).close())
                .isInstanceOf(ConnectException.class);
    }

    @Test
    void itKeepsTheTreeForNewcomersAndForgetsWhatIsCleared() {
        try (MqttTransport transport = TestSite.connected(broker.uri())) {
            for (int i = 0; i < 300; i++) {
                assertThat(transport.offer(TestSite.kept("tree/p" + i % 150, "v" + i))).isTrue();
            }
            transport.offer(TestSite.kept("tree/p0", ""));
            Eventually.holds("all sent", 10, () -> transport.counters().acknowledged() == 301);
            assertThat(Observer.retainedAt(broker.uri()))
                    .containsEntry("homie/5/larkmoor/tree/p149", "v299")
                    .doesNotContainKey("homie/5/larkmoor/tree/p0");
        }
    }

    @Test
    void aCommandArrivesWithAllItsProperties() {
        try (MqttTransport transport = TestSite.connected(broker.uri());
                Observer person = Observer.at(broker.uri())) {
            person.say(TestSite.STEP_SET, TestSite.command("started", 60L));
            assertThat(TestSite.await(transport, 1)).singleElement().satisfies(in -> {
                assertThat(in.payload()).isEqualTo("started");
                assertThat(in.retained()).isFalse();
                assertThat(in.properties()).containsEntry("response-topic", "reply/here")
                        .containsEntry("correlation", "00ff10").containsEntry("request-id", "r-1")
                        .containsEntry("expires-in-s", "60");
            });
        }
    }

    @Test
    void aCommandThatLiesThereIsKnownAsRetained() {
        String set = "homie/5/larkmoor-c/hand/step/set";
        try (Observer person = Observer.at(broker.uri())) {
            person.say(set, "settle", 1, true);
            try (MqttTransport transport = TestSite.connected(broker.uri())) {
                assertThat(TestSite.await(transport, 1)).allMatch(in -> in.retained());
            }
            person.say(set, "", 1, true);
        }
    }

    @Test
    void itSpeaksTheLastWillOfAClientThatWasCutOff() {
        try (CuttableLine line = new CuttableLine(broker.uri().getPort());
                MqttTransport transport = TestSite.connected(line.uri())) {
            transport.offer(TestSite.kept("$state", "ready"));
            Eventually.holds("ready", 5, () -> transport.counters().acknowledged() == 1);
            line.cut();
            Eventually.holds("lost", 5,
                    () -> "lost".equals(Observer.retainedAt(broker.uri()).get(TestSite.STATE)));
        }
    }

    @Test
    void severalRunAtOnceAndLeaveNothingBehind() throws IOException {
        Set<Path> before = folders();
        URI gone;
        try (LoopbackBroker second = LoopbackBroker.start()) {
            gone = second.uri();
            assertThat(gone).isNotEqualTo(broker.uri());
            MqttTransport transport = TestSite.connected(gone);
            transport.close();
        }
        assertThat(folders()).isEqualTo(before);
        assertThatThrownBy(() -> new Socket("127.0.0.1", gone.getPort()).close())
                .isInstanceOf(ConnectException.class);
    }

    private static Set<Path> folders() throws IOException {
        try (Stream<Path> all = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return all.filter(path -> path.getFileName().toString().startsWith("conetender-broker"))
                    .collect(Collectors.toSet());
        }
    }
}

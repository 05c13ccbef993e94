package org.conetender.adapter.systemd;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(20)
class SdNotifyTest {

    @TempDir
    Path folder;

    private final List<String> logged = new ArrayList<>();
    private final Logger logger = Logger.getLogger(SdNotify.class.getName());
    private final Handler listener = new Handler() {
        @Override
        public void publish(LogRecord line) {
            logged.add(line.getMessage());
        }

        @Override
        public void flush() {
            // nothing is kept back
        }

        @Override
        public void close() {
            // nothing is open
        }
    };

    @BeforeEach
    void listen() {
        logger.addHandler(listener);
    }

    @AfterEach
    void stopListening() {
        logger.removeHandler(listener);
    }

    private String path() {
        return folder.resolve("notify").toString();
    }

    private static void wholeLife(SdNotify notify) {
        notify.ready();
        notify.status("a: incubating, 27.1 °C");
        notify.alive();
        notify.stopping();
    }

    private static final List<String> WHOLE_LIFE = List.of("READY=1", "STATUS=a: incubating, 27.1 °C",
            "WATCHDOG=1", "STOPPING=1");

    @Test
    void theServiceManagerHearsAWholeLifeThroughAPath() throws Throwable {
        try (DatagramReceiver manager = new DatagramReceiver(path())) {
            wholeLife(new SdNotify(Optional.of(path())));
            assertThat(manager.received()).isEqualTo(WHOLE_LIFE);
        }
    }

    @Test
    void theServiceManagerHearsAWholeLifeThroughAnAbstractName() throws Throwable {
        String name = "@conetender-test-" + ProcessHandle.current().pid();
        try (DatagramReceiver manager = new DatagramReceiver(name)) {
            wholeLife(new SdNotify(Optional.of(name)));
            assertThat(manager.received()).isEqualTo(WHOLE_LIFE);
        }
    }

    @Test
    void aStatusOfSeveralLinesCannotFeedTheWatchdog() throws Throwable {
        try (DatagramReceiver manager = new DatagramReceiver(path())) {
            new SdNotify(Optional.of(path())).status("cone a\nWATCHDOG=1\r\n" + "x".repeat(5_000));
            assertThat(manager.received()).singleElement().asString().startsWith("STATUS=cone a WATCHDOG=1 x")
                    .doesNotContain("\n").hasSizeLessThan(300);
        }
    }

    @Test
    void theSameStatusIsSaidOnce() throws Throwable {
        try (DatagramReceiver manager = new DatagramReceiver(path())) {
            SdNotify notify = new SdNotify(Optional.of(path()));
            notify.status("a");
            notify.status("a");
            notify.status("b");
            notify.status("a");
            assertThat(manager.received()).containsExactly("STATUS=a", "STATUS=b", "STATUS=a");
        }
    }

    @Test
    void withoutAServiceManagerOneLineSaysSoAndNothingElseHappens() {
        SdNotify notify = new SdNotify(Optional.empty());
        wholeLife(notify);
        wholeLife(notify);
        assertThat(logged).singleElement().asString().contains("NOTIFY_SOCKET is not set");
    }

    @Test
    void anAddressThatIsNoneIsToldOnceAndNothingElseHappens() {
        for (String bad : List.of("@", "relative", "vsock:2:1234", "/" + "x".repeat(108))) {
            logged.clear();
            wholeLife(new SdNotify(Optional.of(bad)));
            assertThat(logged).as(bad).hasSize(1);
        }
    }

    @Test
    void aVanishedServiceManagerIsToldOnceForEachCause() {
        SdNotify notify = new SdNotify(Optional.of(path()));
        wholeLife(notify);
        wholeLife(notify);
        assertThat(logged).singleElement().asString().contains("could not be told");
    }

    /** A full queue answers EAGAIN at once; a sender that waited would hang here until the time limit. */
    @Test
    void aServiceManagerThatDoesNotListenNeverHoldsUpTheControlLoop() throws Throwable {
        try (DatagramReceiver manager = new DatagramReceiver(path())) {
            SdNotify notify = new SdNotify(Optional.of(path()));
            for (int i = 0; i < 5_000; i++) {
                notify.alive();
            }
            assertThat(manager.received()).isNotEmpty().hasSizeLessThan(5_000);
            assertThat(logged).hasSize(1);
            notify.alive();
            assertThat(manager.received()).containsExactly("WATCHDOG=1");
        }
    }
}

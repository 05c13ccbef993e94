package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.ArrayList;
import java.util.List;
import org.conetender.adapter.sqlite.SqliteStore;
import org.conetender.agent.Ports;
import org.conetender.app.config.Config;
import org.conetender.app.config.ConfigLoader;
import org.conetender.app.config.Outcome;
import org.conetender.port.Clock;
import org.conetender.port.Requests;
import org.conetender.port.Store;
import org.conetender.port.Supervisor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The record and the outputs at a start that does not succeed. */
class WiringTest {

    @TempDir
    Path folder;

    private final List<String> happened = new ArrayList<>();

    /** A ground of which nothing is used but that it is opened and closed. */
    private final class Seen implements Ground {

        Seen() {
            happened.add("opened");
        }

        @Override
        public Clock clock() {
            throw new AssertionError("no clock is needed to refuse");
        }

        @Override
        public Ports.Devices devices() {
            throw new AssertionError("no device is needed to refuse");
        }

        @Override
        public Requests requests() {
            throw new AssertionError("no request is taken");
        }

        @Override
        public Supervisor supervisor() {
            throw new AssertionError("nobody is told");
        }

        @Override
        public void outputsSafe() {
            happened.add("safe");
        }

        @Override
        public void close() {
            happened.add("closed");
        }
    }

    private Config config() throws IOException {
        String text = Files.readString(Path.of("config/minimal.toml")) + "\n[record]\nfolder = \"" + folder
                + "\"\n";
        return switch (ConfigLoader.parse(text)) {
            case Outcome.Accepted good -> good.config();
            case Outcome.Refused bad -> throw new AssertionError(bad.errors());
        };
    }

    private Path record() {
        return folder.resolve(Wiring.RECORD);
    }

    @Test
    void whileAnotherDaemonHasTheRecordNoOutputIsTouched() throws Exception {
        try (SqliteStore other = SqliteStore.open(record())) {
            assertThatThrownBy(() -> Wiring.open(config(), Seen::new)).isInstanceOf(Unavailable.class)
                    .hasMessageContaining("in use by another conetender");
            assertThat(happened).as("beside " + other).isEmpty();
        }
    }

    @Test
    void aRecordThatCannotBeReadLetsGoOfTheOutputsAndOfItself() throws Exception {
        try (var db = DriverManager.getConnection("jdbc:sqlite:" + record()); var s = db.createStatement()) {
            s.execute("CREATE TABLE letter (text)");
        }
        assertThatThrownBy(() -> Wiring.open(config(), Seen::new)).isInstanceOf(Unavailable.class)
                .hasMessageContaining("database of another program");
        assertThat(happened).containsExactly("opened", "closed");
        Files.delete(record());
        SqliteStore.open(record()).close();
    }

    @Test
    void withoutItsOutputsItLetsGoOfTheRecord() throws Exception {
        assertThatThrownBy(() -> Wiring.open(config(), () -> {
            throw new Unavailable("The relays: there are none.", null);
        })).isInstanceOf(Unavailable.class).hasMessage("The relays: there are none.");
        try (Store again = SqliteStore.open(record())) {
            assertThat(again.load().facts()).as("no life has begun").isEmpty();
        }
    }
}

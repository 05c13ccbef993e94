package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.adapter.mqtt.MosquittoProcess;
import org.conetender.adapter.mqtt.Onlooker;
import org.conetender.app.remote.RemoteSite;
import org.conetender.core.face.Names;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/**
 * What the tests of the real process have in common: a real broker, the bench beside it, and somebody who
 * looks on through that broker. Each test has its own, and nothing of it outlives the test.
 */
abstract class OnTheBench {

    static final String ROOT = "homie/5/larkmoor";

    @TempDir
    Path folder;

    MosquittoProcess broker;
    TestBench bench;
    /** Hears everything from before the first start, and is asked at the end. */
    Witness witness;
    /** Null until somebody looks on. */
    RemoteSite site;

    @BeforeEach
    void begin() throws IOException {
        broker = MosquittoProcess.start(Files.createDirectories(folder.resolve("broker")));
        witness = Witness.at(broker.uri());
        bench = new TestBench(folder, broker.uri());
    }

    /** The daemon first, so that it does not have to see its broker go. */
    @AfterEach
    void end() throws IOException {
        bench.close();
        try (Witness all = witness) {
            assertThat(all.wrong()).as("all that was ever said at the broker").isEmpty();
        }
        if (site != null) {
            site.close();
        }
        broker.close();
    }

    /** Begins to look on. */
    void connect() throws IOException {
        site = RemoteSite.connect(new Onlooker.Address(broker.uri(), Optional.empty()),
                new Names("homie", "larkmoor"), new LinuxClock());
    }

    /** What is retained: without the log, which is not. */
    Map<String, String> tree() {
        // One by one: a sorted map is copied by its size, and messages come and go meanwhile.
        Map<String, String> all = new TreeMap<>();
        site.topics().forEach(all::put);
        all.keySet().removeIf(t -> t.contains("/$log/") || t.endsWith("/set"));
        return all;
    }
}

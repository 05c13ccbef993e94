package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.adapter.mqtt.Onlooker;
import org.conetender.app.demo.Demo;
import org.conetender.app.remote.RemoteSite;
import org.conetender.core.face.Names;
import org.junit.jupiter.api.Test;

/** The demonstration as fast as it goes, and somebody who looks on from outside. */
class DemoTest {

    private static final long HOUR_MS = 3_600_000;
    /** The command's own limit. */
    private static final long LIMIT_MS = 48 * HOUR_MS;

    @Test
    void aDayBringsThreeHarvestsAndItsBrokerCarriesAValidTree() throws IOException, Unavailable {
        try (Demo demo = Demo.open(10);
                RemoteSite stranger = stranger(demo)) {
            boolean everReady = false;
            for (long hour = 1; demo.harvests() < 3 && demo.elapsedMs() < LIMIT_MS; hour++) {
                while (demo.elapsedMs() < hour * HOUR_MS && demo.harvests() < 3) {
                    demo.second();
                }
                assertThat(DaemonEndToEndTest.violations(tree(stranger))).as("hour " + hour).isEmpty();
                everReady |= demo.view().cones().stream().anyMatch(c -> c.hatch().ready().at().isPresent());
            }
            assertThat(demo.harvests()).as(demo.person() + " " + demo.view()).isEqualTo(3);
            assertThat(everReady).as("a harvest was announced").isTrue();
            assertThat(demo.score()).filteredOn(l -> l.matches("[abc]\\s.*")).hasSize(3)
                    .allMatch(l -> l.matches(".*\\([+-]\\d+ min\\).*\\([+-]\\d+ min\\).*(yes|no).*"));
        }
    }

    @Test
    void whatNobodySaidStaysUndone() throws IOException, Unavailable {
        try (Demo demo = Demo.open(10);
                RemoteSite stranger = stranger(demo)) {
            demo.silence();
            while (demo.elapsedMs() < 3 * HOUR_MS) {
                demo.second();
            }
            stranger.await(() -> false, 500);
            assertThat(stranger.cones()).hasSize(3)
                    .extracting(c -> stranger.topics().get("homie/5/larkmoor-" + c + "/hatch/stage"))
                    .containsOnly("clean");
            assertThat(stranger.topics().get("homie/5/larkmoor/$state")).isEqualTo("ready");
            assertThat(demo.person()).contains("could not be said");
        }
    }

    private static RemoteSite stranger(Demo demo) throws IOException {
        return RemoteSite.connect(new Onlooker.Address(demo.broker(), Optional.empty()),
                new Names("homie", "larkmoor"), new LinuxClock());
    }

    private static Map<String, String> tree(RemoteSite site) {
        Map<String, String> all = new TreeMap<>(site.topics());
        all.keySet().removeIf(t -> t.contains("/$log/") || t.endsWith("/set"));
        return all;
    }
}

package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.adapter.mqtt.Eventually;
import org.conetender.adapter.mqtt.Onlooker;
import org.conetender.app.cli.DemoCommand;
import org.conetender.app.demo.Demo;
import org.conetender.app.remote.RemoteSite;
import org.conetender.app.view.Screen;
import org.conetender.app.view.Terminal;
import org.conetender.core.face.Names;
import org.junit.jupiter.api.Test;

/** The demonstration as fast as it goes, and somebody at its broker who hears every message. */
class DemoTest {

    private static final long HOUR_MS = 3_600_000;
    /** The command's own limit. */
    private static final long LIMIT_MS = 48 * HOUR_MS;

    /** While the air is off minutes count: a second lasts so long, lest it outrun the broker. */
    private static final long ON_ITS_WAY_NS = 4_000_000;

    @Test
    void aDayBringsThreeHarvestsAndAllThatItsBrokerEverCarriesIsValid() throws IOException, Unavailable {
        try (Demo demo = Demo.open(10);
                Witness witness = Witness.atLoopback(demo.broker())) {
            boolean everReady = false;
            for (long hour = 1; demo.harvests() < 3 && demo.elapsedMs() < LIMIT_MS; hour++) {
                while (demo.elapsedMs() < hour * HOUR_MS && demo.harvests() < 3) {
                    demo.second();
                    if (demo.separating()) {
                        LockSupport.parkNanos(ON_ITS_WAY_NS);
                    }
                }
                assertThat(witness.wrongWithWhatIsKept()).as("hour " + hour).isEmpty();
                everReady |= demo.view().cones().stream().anyMatch(c -> c.hatch().ready().at().isPresent());
            }
            assertThat(demo.harvests()).as(demo.person() + " " + demo.view()).isEqualTo(3);
            assertThat(everReady).as("a harvest was announced").isTrue();
            assertThat(demo.score()).filteredOn(l -> l.matches("[abc]\\s.*")).hasSize(3)
                    .allMatch(l -> l.matches(".*\\([+-]\\d+\\).*\\([+-]\\d+\\).*(yes|no).*"));
            assertThat(demo.score()).allMatch(l -> l.length() <= 80, "eighty columns");
            Eventually.holds("what was said last is what is kept", 20, witness::theLastWordIsKept);
            assertThat(witness.wrong()).isEmpty();
            assertThat(witness.said("/hand/step/set")).as("the person spoke").isGreaterThan(15);
            assertThat(witness.said("/hatch/degree-hours")).as("the listening was real").isGreaterThan(1_000);
        }
    }

    @Test
    void whatNobodySaidStaysUndone() throws IOException, Unavailable {
        try (Demo demo = Demo.open(10);
                Witness witness = Witness.atLoopback(demo.broker());
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
            assertThat(witness.wrong()).isEmpty();

            witness.plant("homie/5/larkmoor-a/hatch/stage", "overcooked");
            witness.plant("homie/5/larkmoor-b/hand/step/set", "right");
            assertThat(witness.wrong()).as("what is wrong is noticed").singleElement().asString()
                    .contains("overcooked");
            assertThat(witness.wrongWithWhatIsKept()).hasSize(2).anyMatch(v -> v.contains("overcooked"))
                    .anyMatch(v -> v.contains("a command must not be retained"));
        }
    }

    /** The README shows what its command shows: the same words; figures, bars and switching differ. */
    @Test
    void theReadmeShowsWhatTheDemonstrationShows() throws IOException, Unavailable {
        String readme = Files.readString(Path.of("README.md"));
        int from = readme.indexOf("```\nLarkmoor Fry Room") + 4;
        String shown = readme.substring(from, readme.indexOf("\n```", from));
        assertThat(shown.lines()).hasSizeLessThanOrEqualTo(24).allMatch(l -> l.length() <= 80);
        try (Demo demo = Demo.open(10)) {
            while (demo.elapsedMs() < 11 * HOUR_MS) {
                demo.second();
            }
            Screen.Around around = new Screen.Around("Mon 19:30, simulated, 900 times as fast", "",
                    DemoCommand.foot(demo));
            assertThat(shape(String.join(" ", Screen.of(demo.view(), new Screen.Frame(
                    new Terminal.Size(80, 24), false, demo.now(), around))))).isEqualTo(shape(shown));
        }
    }

    private static String shape(String page) {
        return page.replaceAll("[█░]+", "█").replaceAll("\\s+", " ").replaceAll("[0-9]+", "0")
                .replaceAll("heat (on|off in between) \\((on )?", "heat (")
                .replaceAll("heat off \\((warm enough|withheld: the site's 0 W are taken)\\)",
                        "heat (0 % of the time)").strip();
    }

    private static RemoteSite stranger(Demo demo) throws IOException {
        return RemoteSite.connect(new Onlooker.Address(demo.broker(), Optional.empty()),
                new Names("homie", "larkmoor"), new LinuxClock());
    }
}

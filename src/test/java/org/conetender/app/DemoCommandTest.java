package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.conetender.adapter.mqtt.Eventually;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demonstration as a person starts it: a process, its lines and its exit code. */
class DemoCommandTest {

    private static final Pattern BROKER = Pattern.compile("--broker (mqtt://127\\.0\\.0\\.1:\\d+) --site");

    @TempDir
    Path folder;

    private Process demo;

    private void start(String... words) throws IOException {
        List<String> line = new ArrayList<>(List.of("env", "--default-signal=INT",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED", "-Djava.io.tmpdir=" + temporary(), "-cp",
                System.getProperty("java.class.path"), Main.class.getName(), "demo"));
        line.addAll(List.of(words));
        demo = new ProcessBuilder(line).redirectErrorStream(true).redirectOutput(lines().toFile()).start();
    }

    private Path temporary() throws IOException {
        return Files.createDirectories(folder.resolve("tmp"));
    }

    private Path lines() {
        return folder.resolve("lines");
    }

    private String text() {
        try {
            return Files.exists(lines()) ? Files.readString(lines()) : "";
        } catch (IOException e) {
            throw new AssertionError("what it wrote cannot be read", e);
        }
    }

    private int ended(int seconds) throws InterruptedException {
        assertThat(demo.waitFor(seconds, TimeUnit.SECONDS)).as(text()).isTrue();
        return demo.exitValue();
    }

    /** Nothing of a test runs on after it. */
    @AfterEach
    void end() {
        if (demo != null) {
            demo.destroyForcibly();
        }
    }

    @Test
    void onceItEndsByItselfAfterThreeHarvestsWithForecastBesideTruth() throws Exception {
        // Faster, its person's words come minutes late: the broker's time is real.
        start("--once", "--speed", "2500");
        assertThat(ended(300)).as(text()).isZero();
        for (String cone : List.of("a", "b", "c")) {
            assertThat(text()).containsPattern("Cone " + cone + ": hydrating, ready about")
                    .containsPattern("Cone " + cone + ": drained")
                    .containsPattern("(?m)^" + cone + "\\s.*\\([+-]\\d+\\).*\\([+-]\\d+\\)");
        }
        assertThat(text()).doesNotContain("Exception");
        assertNothingIsLeft();
    }

    /** The goodbye comes after the outputs went safe (Wiring.close), so whoever hears it knows both. */
    @Test
    void ctrlCEndsItInGoodOrder() throws Exception {
        start("--speed", "300");
        Eventually.holds("it works; " + text(), 120, () -> text().contains("Cone a: hydrating"));
        Matcher m = BROKER.matcher(text());
        assertThat(m.find()).as(text()).isTrue();
        URI broker = URI.create(m.group(1));
        try (Witness witness = Witness.atLoopback(broker)) {
            new ProcessBuilder("kill", "-INT", Long.toString(demo.pid())).inheritIO().start();
            assertThat(ended(60)).as(text()).isEqualTo(130);
            assertThat(witness.words("homie/5/larkmoor/$state")).as(text()).endsWith("disconnected");
            assertThat(witness.wrong()).isEmpty();
        }
        assertThat(text()).doesNotContain("Exception");
        assertNothingIsLeft();
        try (Socket s = new Socket(broker.getHost(), broker.getPort())) {
            throw new AssertionError("somebody still listens at " + s);
        } catch (java.net.ConnectException gone) {
            assertThat(gone).hasMessageContaining("refused");
        }
    }

    private void assertNothingIsLeft() throws IOException {
        try (Stream<Path> left = Files.list(temporary())) {
            assertThat(left.map(p -> p.getFileName().toString()))
                    .noneMatch(n -> n.contains("conetender"));
        }
    }
}

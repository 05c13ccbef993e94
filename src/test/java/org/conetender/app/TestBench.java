package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.SocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import org.conetender.adapter.mqtt.Eventually;
import org.conetender.adapter.sqlite.SqliteStore;
import org.conetender.app.cli.RunCommand;
import org.conetender.core.batch.Fact;
import org.conetender.port.Store;
import picocli.CommandLine;

/**
 * A folder that looks like a small board: probes as the kernel shows them, a configuration, the file in
 * which the wires are recorded, and the daemon's real process on it.
 */
final class TestBench implements AutoCloseable {

    static final String PROBE_A = "28-00000a000001";
    static final String PROBE_B = "28-00000a000002";

    private final Path folder;
    private final URI broker;
    private Process daemon;
    private int linesBefore;

    TestBench(Path folder, URI broker) throws IOException {
        this.folder = folder;
        Path w1 = Files.createDirectories(folder.resolve("w1"));
        Files.createDirectories(folder.resolve("record"));
        Path master = Files.createDirectories(w1.resolve("w1_bus_master1"));
        Files.writeString(master.resolve("therm_bulk_read"), "0\n");
        for (String probe : List.of(PROBE_A, PROBE_B)) {
            Path p = Files.createDirectories(w1.resolve(probe));
            Files.writeString(p.resolve("resolution"), "12\n");
            Files.writeString(p.resolve("ext_power"), "1\n");
            water(probe, "21000");
        }
        this.broker = broker;
        Files.writeString(config(), configuration(cone("a", PROBE_A, 9) + cone("b", PROBE_B, 13)));
    }

    /** From the next start on there is no cone b. */
    void takeAwayConeB() throws IOException {
        Files.writeString(config(), configuration(cone("a", PROBE_A, 9)));
    }

    private String configuration(String cones) {
        return """
                [site]
                id = "larkmoor"
                name = "Larkmoor Fry Room"
                zone = "Europe/London"
                feeds = ["07:30", "12:30", "18:00"]
                power-limit-w = 60
                [gpio]
                chip = "/dev/gpiochip0"
                [one-wire]
                root = "%s"
                period-s = 1
                [mqtt]
                uri = "%s"
                [record]
                folder = "%s"
                [socket]
                path = "%s"
                """.formatted(folder.resolve("w1"), broker, folder.resolve("record"), socket()) + cones;
    }

    /** A mat under a solid-state switch: no response test, short windows. */
    private static String cone(String id, String probe, int line) {
        return """
                [[cone]]
                id = "%s"
                  [cone.water]
                  probes = ["%s"]
                  [cone.heat]
                  kind = "mat"
                  watts = 25
                  switch = "solid-state"
                  line = %d
                  cut-out-line = %d
                  [cone.air]
                  line = %d
                  [cone.geometry]
                  pump-outlet-cm = 60
                  waterline-cm = 45
                  [cone.lamp]
                  harvest-line = %d
                  [cone.usual]
                  lot = "L-0417"
                  litres = 2
                  cysts-g = 2
                  ppt = 25
                """.formatted(id, probe, line, line + 1, line + 2, line + 3);
    }

    /** Another configuration from the next start on. */
    void settings(UnaryOperator<String> edit) throws IOException {
        Files.writeString(config(), edit.apply(Files.readString(config())));
    }

    Path config() {
        return folder.resolve("conetender.toml");
    }

    Path socket() {
        return folder.resolve("tell.sock");
    }

    /** Another process rewrites what a probe says. @param text as the kernel writes it, thousandths of °C */
    void water(String probe, String text) throws IOException {
        Files.writeString(folder.resolve("w1").resolve(probe).resolve("temperature"), text + "\n");
    }

    /** The daemon in a process of its own, with interrupts as a terminal would send them. */
    void start() throws IOException {
        linesBefore = lines().size();
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        // As the launcher starts it.
        daemon = new ProcessBuilder("env", "--default-signal=INT", java, "--enable-native-access=ALL-UNNAMED",
                "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx128m", "-cp",
                System.getProperty("java.class.path"), RunOnRecordingWires.class.getName(),
                config().toString(), wires().toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve("log").toFile())).start();
    }

    /** Whether somebody listens at the socket; the file alone may be left over from a life before. */
    boolean listens() {
        try (SocketChannel c = SocketChannel.open(UnixDomainSocketAddress.of(socket()))) {
            return c.isConnected();
        } catch (IOException nobody) {
            return false;
        }
    }

    /** As a power cut, or the kernel out of memory: nothing of ours runs any more. */
    void kill() {
        daemon.destroyForcibly();
        ended();
    }

    /** As Ctrl-C or systemctl stop. @return the exit code */
    int signal(String name) throws IOException {
        new ProcessBuilder("kill", "-" + name, Long.toString(daemon.pid())).inheritIO().start();
        return ended();
    }

    private int ended() {
        try {
            assertThat(daemon.waitFor(30, TimeUnit.SECONDS)).as("the daemon ends; %s", log()).isTrue();
            return daemon.exitValue();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted", e);
        }
    }

    String log() {
        try {
            return Files.readString(folder.resolve("log"));
        } catch (IOException e) {
            return "no log: " + e;
        }
    }

    private Path wires() {
        return folder.resolve("wires");
    }

    /** Where every output stands: its last change. */
    /** The last level of each output since the last start; empty until the daemon has opened them. */
    Map<String, String> outputs() {
        Map<String, String> last = new TreeMap<>();
        List<String> all = lines();
        for (String line : all.subList(Math.min(linesBefore, all.size()), all.size())) {
            String[] w = line.split(" ");
            last.put(w[0], w[1]);
        }
        return last;
    }

    List<String> lines() {
        try {
            return Files.exists(wires()) ? Files.readAllLines(wires()) : List.of();
        } catch (IOException e) {
            throw new AssertionError("the wires cannot be read", e);
        }
    }

    /** What the record holds; only while no daemon does. */
    List<Fact> facts() throws Store.StoreException {
        try (SqliteStore store = SqliteStore.open(record())) {
            return List.copyOf(store.load().facts());
        }
    }

    Path record() {
        return folder.resolve("record").resolve("conetender.db");
    }

    /** What a command came to. */
    record Told(int code, String text) {}

    /** A command as a person types it, through the broker unless said otherwise. */
    Told command(String... words) {
        StringWriter text = new StringWriter();
        List<String> all = new ArrayList<>(List.of(words));
        all.addAll(List.of("--config", config().toString()));
        CommandLine line = Main.commandLine(new RunCommand())
                .setOut(new PrintWriter(text, true)).setErr(new PrintWriter(text, true));
        return new Told(line.execute(all.toArray(String[]::new)), text.toString());
    }

    /** Waits for a line of {@code watch --once --json} that says so. */
    void shows(String what, String regex) {
        Eventually.holds(what, 60, () -> command("watch", "--once", "--json").text().matches(
                "(?s).*" + regex + ".*"));
    }

    @Override
    public void close() {
        if (daemon != null && daemon.isAlive()) {
            kill();
        }
    }
}

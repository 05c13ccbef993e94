package org.conetender.adapter.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A real mosquitto on a free loopback port, in a directory of its own, that can come and go. */
public final class MosquittoProcess implements AutoCloseable {

    private final Path binary;
    private final Path folder;
    private final int port;
    private Process process;

    private MosquittoProcess(Path binary, Path folder, int port) {
        this.binary = binary;
        this.folder = folder;
        this.port = port;
    }

    /** Starts one with retained messages on disk; {@code more} are further lines of its configuration. */
    public static MosquittoProcess start(Path folder, String... more) {
        MosquittoProcess broker = new MosquittoProcess(binary(), folder, freePort());
        List<String> lines = new ArrayList<>(List.of(
                "listener " + broker.port + " 127.0.0.1",
                "user root",
                "persistence true",
                "persistence_location " + folder + "/",
                "log_dest stderr"));
        lines.addAll(Stream.of(more).anyMatch(line -> line.startsWith("allow_anonymous"))
                ? List.of() : List.of("allow_anonymous true"));
        lines.addAll(List.of(more));
        try {
            Files.write(broker.conf(), lines);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        broker.start();
        return broker;
    }

    public static int freePort() {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path binary() {
        Stream<String> folders = Stream.concat(
                Stream.of(System.getenv("PATH").split(":")), Stream.of("/usr/sbin", "/usr/local/sbin"));
        return folders.map(folder -> Path.of(folder, "mosquitto")).filter(Files::isExecutable).findFirst()
                .orElseThrow(() -> new AssertionError(
                        "this test needs a real mosquitto broker: apt install mosquitto, then run it again"));
    }

    private Path conf() {
        return folder.resolve("mosquitto.conf");
    }

    public URI uri() {
        return URI.create("mqtt://127.0.0.1:" + port);
    }

    public int port() {
        return port;
    }

    public void start() {
        try {
            process = new ProcessBuilder(binary.toString(), "-c", conf().toString())
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve("log").toFile()))
                    .start();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Eventually.holds("mosquitto listens on " + port, 10, this::listens);
    }

    private boolean listens() {
        assertThat(process.isAlive()).as("mosquitto runs; see " + folder.resolve("log")).isTrue();
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            return socket.isConnected();
        } catch (IOException e) {
            return false;
        }
    }

    /** Ends it in good order: it writes its retained messages. */
    public void stop() {
        process.destroy();
        awaitEnd();
    }

    /** Ends it as a power cut does. */
    public void kill() {
        process.destroyForcibly();
        awaitEnd();
    }

    public void restart() {
        stop();
        start();
    }

    private void awaitEnd() {
        try {
            assertThat(process.waitFor(10, TimeUnit.SECONDS)).as("mosquitto ended").isTrue();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while mosquitto ended", e);
        }
    }

    @Override
    public void close() {
        kill();
    }
}

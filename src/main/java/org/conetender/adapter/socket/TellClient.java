package org.conetender.adapter.socket;

import java.io.IOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.SocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** The other end of {@link TellSocket}: what {@code conetender tell} uses where there is no broker. */
public final class TellClient {

    private TellClient() {}

    /**
     * Sends one line and waits for the answer; {@link Answer.Kind#UNKNOWN} when none comes in time.
     *
     * @param words as typed after {@code conetender tell}
     * @throws IOException with a sentence, if nobody listens or this person may not ask: nothing was done
     */
    public static Answer tell(Path socket, String words, Duration patience) throws IOException {
        SocketChannel channel = connect(socket);
        CompletableFuture<Optional<String>> line = new CompletableFuture<>();
        Thread.ofVirtual().start(() -> exchange(channel, words, line));
        try (channel) {
            return answer(line.get(patience.toMillis(), TimeUnit.MILLISECONDS));
        } catch (TimeoutException late) {
            return new Answer(Answer.Kind.UNKNOWN, "the daemon has not answered within "
                    + patience.toSeconds() + " s; look at the cone before you repeat it");
        } catch (ExecutionException e) {
            return new Answer(Answer.Kind.UNKNOWN, "the connection broke before the answer came ("
                    + e.getCause().getMessage() + "); look at the cone before you repeat it");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while waiting for the answer; look at the cone", e);
        }
    }

    private static SocketChannel connect(Path socket) throws IOException {
        if (Files.notExists(socket)) {
            throw new IOException("no conetender listens at " + socket + ": start it (systemctl start"
                    + " conetender), or name the socket that its configuration names");
        }
        SocketChannel channel = SocketChannel.open(StandardProtocolFamily.UNIX);
        try {
            channel.connect(UnixDomainSocketAddress.of(socket));
            return channel;
        } catch (IOException e) {
            channel.close();
            throw new IOException("conetender cannot be reached at " + socket + " (" + e.getMessage() + "):"
                    + " see that it runs (systemctl status conetender) and that you are in the group"
                    + " conetender", e);
        }
    }

    private static void exchange(SocketChannel channel, String words,
                                 CompletableFuture<Optional<String>> line) {
        Optional<IOException> unsent = write(channel, words);
        try {
            Optional<String> read = Wire.readLine(channel, Wire.MOST_ANSWER_BYTES);
            if (read.isEmpty() && unsent.isPresent()) {
                throw unsent.get();
            }
            line.complete(read);
        } catch (IOException e) {
            line.completeExceptionally(e);
        }
    }

    /** A daemon that is too busy answers and closes before it is asked: the answer still counts. */
    private static Optional<IOException> write(SocketChannel channel, String words) {
        try {
            Wire.writeLine(channel, words);
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of(e);
        }
    }

    private static Answer answer(Optional<String> line) {
        return line.flatMap(Answer::of).orElse(new Answer(Answer.Kind.UNKNOWN,
                "the daemon closed without an answer; look at the cone before you repeat it"));
    }
}

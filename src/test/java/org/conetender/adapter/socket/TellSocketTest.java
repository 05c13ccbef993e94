package org.conetender.adapter.socket;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import org.conetender.adapter.socket.Answer.Kind;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class TellSocketTest {

    private static final Duration LONG = Duration.ofSeconds(30);

    @TempDir
    Path folder;

    private Path path;
    private TellSocket socket;

    @BeforeEach
    void listen() throws IOException {
        path = folder.resolve("conetender.sock");
        socket = new TellSocket(path, TellSocketTest::read, 20_000);
    }

    @AfterEach
    void stop() {
        socket.close();
    }

    /** Knows one step and nothing else. */
    private static LineReader.Line read(String words) {
        String[] w = words.split(" ");
        Optional<Step> step = w.length == 2 ? Step.of(w[1]) : Optional.empty();
        return step.isPresent() ? new LineReader.Asks(w[0], new Ask.Did(step.get()))
                : new LineReader.Refuses("cannot read \"" + words + "\"");
    }

    private CompletableFuture<Answer> tell(String words) {
        return CompletableFuture.supplyAsync(() -> {
            try {
                return TellClient.tell(path, words, LONG);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }, Thread::startVirtualThread);
    }

    private static <T> T await(Supplier<Optional<T>> something) {
        for (int i = 0; i < 2_000; i++) {
            Optional<T> found = something.get();
            if (found.isPresent()) {
                return found.get();
            }
            LockSupport.parkNanos(5_000_000);
        }
        throw new AssertionError("not within 10 s");
    }

    private Request polled() {
        return await(() -> socket.poll(1).stream().findFirst());
    }

    private SocketChannel connected() throws IOException {
        SocketChannel channel = SocketChannel.open(StandardProtocolFamily.UNIX);
        channel.connect(UnixDomainSocketAddress.of(path));
        return channel;
    }

    private static void send(SocketChannel channel, byte[] bytes) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
            channel.write(buffer);
        }
    }

    private static Optional<String> answer(SocketChannel client) throws IOException {
        return Wire.readLine(client, Wire.MOST_ANSWER_BYTES);
    }

    @Test
    void whatAPersonTypedBecomesARequestAndTheAnswerComesBack() throws Exception {
        CompletableFuture<Answer> answer = tell("a drained");
        Request request = polled();
        assertThat(request.cone()).isEqualTo("a");
        assertThat(request.ask()).isEqualTo(new Ask.Did(Step.DRAINED));
        assertThat(request.from().face()).isEqualTo("socket");
        socket.answer(request, true, "Cone a is drained.");
        assertThat(answer.get()).isEqualTo(new Answer(Kind.OK, "Cone a is drained."));
    }

    @Test
    void aRefusalOfTheDaemonComesBackAsOne() throws Exception {
        CompletableFuture<Answer> answer = tell("a settle");
        socket.answer(polled(), false, "Shut the air valve first,\nthen say valve-shut.");
        assertThat(answer.get()).isEqualTo(
                new Answer(Kind.REFUSED, "Shut the air valve first,\nthen say valve-shut."));
    }

    @Test
    void aLineThatCannotBeReadIsRefusedWithoutTroublingTheDaemon() throws Exception {
        assertThat(tell("a dances").get()).isEqualTo(new Answer(Kind.REFUSED, "cannot read \"a dances\""));
        assertThat(socket.poll(16)).isEmpty();
    }

    @Test
    void answersFindTheClientThatAskedWhateverTheirOrder() throws Exception {
        CompletableFuture<Answer> first = tell("a filled");
        Request a = polled();
        CompletableFuture<Answer> second = tell("b filled");
        Request b = polled();
        socket.answer(b, true, "for b");
        socket.answer(a, true, "for a");
        assertThat(first.get().sentence()).isEqualTo("for a");
        assertThat(second.get().sentence()).isEqualTo("for b");
    }

    @Test
    void everyRequestHasAnIdOfItsOwnUnlessTheLineCarriesOne() throws Exception {
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < 5; i++) {
            CompletableFuture<Answer> answer = tell("a rinsed");
            Request request = polled();
            ids.add(request.id());
            socket.answer(request, true, "yes");
            answer.get();
        }
        assertThat(ids).hasSize(5);
        CompletableFuture<Answer> answer = tell("a rinsed id=my-own.1");
        Request request = polled();
        assertThat(request.id()).isEqualTo("my-own.1");
        assertThat(request.ask()).isEqualTo(new Ask.Did(Step.RINSED));
        socket.answer(request, true, "yes");
        answer.get();
        assertThat(tell("a rinsed id=").get().kind()).isEqualTo(Kind.REFUSED);
        assertThat(tell("a rinsed id=" + "x".repeat(65)).get().kind()).isEqualTo(Kind.REFUSED);
    }

    @Test
    void pollNeverHandsOutMoreThanWasAskedForAndKeepsTheOrder() {
        List<CompletableFuture<Answer>> answers = new ArrayList<>();
        List<String> cones = new ArrayList<>();
        for (String cone : List.of("a", "b", "c")) {
            answers.add(tell(cone + " rinsed"));
        }
        assertThat(socket.poll(0)).isEmpty();
        for (int i = 0; i < 3; i++) {
            Request request = polled();
            cones.add(request.cone());
            socket.answer(request, true, "yes");
        }
        assertThat(cones).containsExactlyInAnyOrder("a", "b", "c");
        assertThat(answers).allSatisfy(a -> assertThat(a.get()).isEqualTo(new Answer(Kind.OK, "yes")));
    }

    @Test
    void theSeventeenthClientIsSentAwayAndServedLater() throws Exception {
        List<SocketChannel> idle = new ArrayList<>();
        for (int i = 0; i < TellSocket.MOST_CLIENTS; i++) {
            idle.add(connected());
        }
        assertThat(await(() -> Optional.of(tell("a rinsed").join()))).isEqualTo(
                new Answer(Kind.REFUSED, "too many ask at once; try again in a few seconds"));
        for (SocketChannel c : idle) {
            c.close();
        }
        Answer later = await(() -> {
            CompletableFuture<Answer> answer = tell("a rinsed");
            Optional<Request> request = Optional.empty();
            while (!answer.isDone() && request.isEmpty()) {
                request = socket.poll(1).stream().findFirst();
                LockSupport.parkNanos(1_000_000);
            }
            request.ifPresent(r -> socket.answer(r, true, "yes"));
            return Optional.of(answer.join()).filter(a -> a.kind() == Kind.OK);
        });
        assertThat(later.sentence()).isEqualTo("yes");
    }

    @Test
    void aLineWithoutEndIsRefusedAtOneKilobyte() throws Exception {
        try (SocketChannel client = connected()) {
            send(client, "a".repeat(Wire.MOST_BYTES + 1).getBytes(StandardCharsets.US_ASCII));
            assertThat(answer(client)).get().asString().startsWith("refused").contains("1024 bytes");
        }
        CompletableFuture<Answer> longest = tell("x".repeat(Wire.MOST_BYTES));
        assertThat(longest.get().sentence()).startsWith("cannot read");
    }

    @Test
    void bytesThatAreNoTextAndLinesCutOffAreRefused() throws Exception {
        try (SocketChannel client = connected()) {
            send(client, new byte[] {'a', ' ', (byte) 0xc3, (byte) 0x28, '\n'});
            assertThat(answer(client)).get().asString().isEqualTo("refused the line is not UTF-8");
        }
        try (SocketChannel client = connected()) {
            send(client, "a drained".getBytes(StandardCharsets.UTF_8));
            client.shutdownOutput();
            assertThat(answer(client)).get().asString().startsWith("refused").contains("cut off");
        }
        assertThat(socket.poll(16)).isEmpty();
    }

    @Test
    void aLineInPiecesIsOneLine() throws Exception {
        try (SocketChannel client = connected()) {
            for (byte b : "a drained\n".getBytes(StandardCharsets.UTF_8)) {
                send(client, new byte[] {b});
            }
            Request request = polled();
            socket.answer(request, true, "yes");
            assertThat(answer(client)).contains("ok yes");
        }
    }

    @Test
    void aClientThatLeavesDoesNotDisturbTheDaemon() throws Exception {
        try (SocketChannel client = connected()) {
            send(client, "a drained\n".getBytes(StandardCharsets.UTF_8));
        }
        Request request = polled();
        socket.answer(request, true, "nobody hears this");
        socket.answer(request, true, "nor this");
        CompletableFuture<Answer> next = tell("b drained");
        socket.answer(polled(), true, "yes");
        assertThat(next.get().kind()).isEqualTo(Kind.OK);
    }

    @Test
    void onlyOwnerAndGroupMayAsk() throws IOException {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path))).isEqualTo("rw-rw----");
    }

    @Test
    void theFileOfADeadDaemonIsReplaced() throws Exception {
        Path dead = folder.resolve("dead.sock");
        try (var server = ServerSocketChannel.open(StandardProtocolFamily.UNIX)) {
            server.bind(UnixDomainSocketAddress.of(dead));
        }
        assertThat(dead).exists();
        try (TellSocket again = new TellSocket(dead, TellSocketTest::read)) {
            assertThat(TellClient.tell(dead, "nonsense", LONG).kind()).isEqualTo(Kind.REFUSED);
        }
        assertThat(dead).doesNotExist();
    }

    @Test
    void aSocketOnWhichADaemonListensIsNotTakenOver() throws Exception {
        assertThatThrownBy(() -> new TellSocket(path, TellSocketTest::read)).isInstanceOf(IOException.class)
                .hasMessageContaining("another conetender listens");
        assertThat(tell("nonsense").get().kind()).isEqualTo(Kind.REFUSED);
    }

    @Test
    void aFileThatIsNoSocketIsLeftAlone() throws Exception {
        Path letter = Files.writeString(folder.resolve("letter.txt"), "dear aunt");
        assertThatThrownBy(() -> new TellSocket(letter, TellSocketTest::read)).isInstanceOf(IOException.class)
                .hasMessageContaining("not a socket");
        assertThat(letter).hasContent("dear aunt");
    }

    @Test
    void aMissingFolderIsToldWithWhatToDo() {
        assertThatThrownBy(() -> new TellSocket(folder.resolve("nowhere").resolve("s"), TellSocketTest::read))
                .isInstanceOf(IOException.class).hasMessageContaining("folder must exist");
    }

    @Test
    void aStoppedDaemonRemovesItsFileButNotItsSuccessors() throws Exception {
        Files.move(path, folder.resolve("elsewhere"));
        try (TellSocket successor = new TellSocket(path, TellSocketTest::read)) {
            socket.close();
            assertThat(path).exists();
        }
        assertThat(path).doesNotExist();
    }

    @Test
    void aStoppingDaemonTellsWhoeverWaitsWhetherTheRequestWasTaken() throws Exception {
        CompletableFuture<Answer> taken = tell("a rinsed");
        polled();
        socket.close();
        assertThat(taken.get().kind()).isEqualTo(Kind.UNKNOWN);
        assertThat(taken.get().sentence()).contains("stopping");

        Desk desk = new Desk(TellSocketTest::read, 2, 20_000);
        CompletableFuture<Answer> untaken = CompletableFuture.supplyAsync(() -> desk.ask("b rinsed"));
        await(() -> desk.waiting() == 1 ? Optional.of(true) : Optional.empty());
        desk.close();
        assertThat(untaken.get()).isEqualTo(
                new Answer(Kind.REFUSED, "the daemon is stopping; nothing was done"));
    }

    @Test
    void withoutADaemonTheClientSaysHowToStartIt() {
        Path nobody = folder.resolve("nobody.sock");
        assertThatThrownBy(() -> TellClient.tell(nobody, "a rinsed", LONG)).isInstanceOf(IOException.class)
                .hasMessageContaining("systemctl start conetender");
    }

    @Test
    void aClientDoesNotWaitForEver() throws Exception {
        Answer answer = TellClient.tell(path, "a rinsed", Duration.ofMillis(100));
        assertThat(answer.kind()).isEqualTo(Kind.UNKNOWN);
        assertThat(answer.sentence()).contains("look at the cone");
    }

    @Test
    void aRequestThatWaitedTooLongIsTakenBackAndNeverCarriedOut() throws Exception {
        Path other = folder.resolve("hasty.sock");
        try (TellSocket hasty = new TellSocket(other, TellSocketTest::read, 100)) {
            Answer answer = TellClient.tell(other, "a rinsed", LONG);
            assertThat(answer.kind()).isEqualTo(Kind.REFUSED);
            assertThat(answer.sentence()).contains("nothing was done");
            assertThat(hasty.poll(16)).isEmpty();
        }
    }

    @Test
    void aRequestThatWasTakenButNotAnsweredIsUnknownAndNotRefused() throws Exception {
        Path other = folder.resolve("hasty.sock");
        try (TellSocket hasty = new TellSocket(other, TellSocketTest::read, 500)) {
            CompletableFuture<Answer> answer = CompletableFuture.supplyAsync(() -> {
                try {
                    return TellClient.tell(other, "a rinsed", LONG);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }, Thread::startVirtualThread);
            await(() -> hasty.poll(1).stream().findFirst());
            assertThat(answer.get().kind()).isEqualTo(Kind.UNKNOWN);
        }
    }

    @Test
    void aClientThatSaysNothingIsClosed() throws Exception {
        Path other = folder.resolve("hasty.sock");
        try (TellSocket hasty = new TellSocket(other, TellSocketTest::read, 100);
                SocketChannel mute = SocketChannel.open(StandardProtocolFamily.UNIX)) {
            mute.connect(UnixDomainSocketAddress.of(other));
            assertThat(Wire.readLine(mute, Wire.MOST_BYTES)).isEmpty();
        }
    }
}

package org.conetender.adapter.socket;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** One line each way, UTF-8, ended by a line end. Waits for the other side: not for the control thread. */
final class Wire {

    /** The longest line, bytes: the longest sensible request is below 200. */
    static final int MOST_BYTES = 1024;

    /** The longest answer, bytes: guess; the list of all alarms in a storm, 300 bytes each. */
    static final int MOST_ANSWER_BYTES = 32 * MOST_BYTES;

    private Wire() {}

    /** What came instead of a line; the message is a sentence for the other side. */
    static final class NoLine extends IOException {
        private static final long serialVersionUID = 1;

        NoLine(String message) {
            super(message);
        }
    }

    /**
     * The next line without its end; empty if the other side closed before saying anything.
     *
     * @throws NoLine if it is too long, cut off, or not UTF-8
     */
    static Optional<String> readLine(SocketChannel channel, int mostBytes) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(mostBytes + 1);
        int end = -1;
        while (end < 0 && buffer.hasRemaining()) {
            int from = buffer.position();
            if (channel.read(buffer) < 0) {
                if (from == 0) {
                    return Optional.empty();
                }
                throw new NoLine("the line was cut off: end it with a line end");
            }
            end = lineEnd(buffer, from);
        }
        if (end < 0) {
            throw new NoLine("the line is longer than " + mostBytes + " bytes");
        }
        return Optional.of(text(buffer.flip().limit(end)));
    }

    private static int lineEnd(ByteBuffer buffer, int from) {
        for (int i = from; i < buffer.position(); i++) {
            if (buffer.get(i) == '\n') {
                return i;
            }
        }
        return -1;
    }

    private static String text(ByteBuffer bytes) throws NoLine {
        try {
            return StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
                    .decode(bytes).toString().stripTrailing();
        } catch (CharacterCodingException e) {
            throw new NoLine("the line is not UTF-8");
        }
    }

    static void writeLine(SocketChannel channel, String line) throws IOException {
        ByteBuffer bytes = StandardCharsets.UTF_8.encode(line.replaceAll("[\\r\\n]+", " ") + "\n");
        while (bytes.hasRemaining()) {
            channel.write(bytes);
        }
    }
}

package org.conetender.adapter.gpio;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import org.conetender.adapter.gpio.Lines.Bias;
import org.conetender.adapter.gpio.Lines.Line;

/**
 * Which outputs a daemon really drives, kept in a small file for whoever must make them safe after it:
 * the configuration may have been edited since, and may not even be readable. Text, so that a person
 * can act by it too; the level named safe is the one on the wire.
 *
 * <p>Any crash leaves the old file or the new one. One thread.
 */
public final class DrivenLines {

    /** The file's name in its folder. */
    static final String FILE = "driven-lines";

    private static final String HEAD = "conetender driven lines 1";
    private static final Pattern CHIP = Pattern.compile("chip (.+)");
    private static final Pattern LINE = Pattern.compile(
        "(\\S+) line=(\\d{1,9}) active-low=(true|false) safe=(high|low) bias=([a-z-]+)");
    private static final Pattern SUM = Pattern.compile("sum ([0-9a-f]{8})");
    /** Sixty-four lines take a tenth of this. */
    private static final int MOST_BYTES = 65_536;

    private DrivenLines() {}

    /**
     * Keeps the outputs of {@code lines} in {@code folder}, durably when this returns. To be called
     * once they were all had, and before any of them is energised. A file that says so already is left
     * alone, so that a full disk keeps no daemon from starting again.
     *
     * @throws IOException with a sentence, if they cannot be kept; a file of before still stands then
     */
    public static void keep(Path folder, Lines lines) throws IOException {
        Path file = folder.resolve(FILE);
        Lines outputs = new Lines(lines.chip(), lines.outputs(), List.of());
        String text = text(outputs);
        if (!read(text).equals(Optional.of(outputs))) {
            throw new IOException("the list of driven lines would not read back: is there an odd character"
                + " in the chip's path?");
        }
        try {
            if (!stands(file, text)) {
                replace(file, text);
            }
        } catch (IOException e) {
            throw new IOException("the list of driven lines, " + file + ", cannot be written (" + e
                + "): is the disk full or read-only, and is the folder the daemon's?", e);
        }
    }

    /**
     * The outputs that were kept in {@code folder}; empty where nothing was.
     *
     * @throws IOException with a sentence, if there is a file that cannot be read or is damaged
     */
    public static Optional<Lines> load(Path folder) throws IOException {
        Path file = folder.resolve(FILE);
        Optional<Lines> lines;
        try {
            lines = read(content(file));
        } catch (NoSuchFileException e) {
            return Optional.empty();
        } catch (IOException e) {
            throw new IOException("The list of driven lines, " + file + ", cannot be read (" + e + ").", e);
        }
        if (lines.isEmpty()) {
            throw new IOException("The list of driven lines, " + file + ", is damaged.");
        }
        return lines;
    }

    private static String content(Path file) throws IOException {
        try (var in = Files.newInputStream(file)) {
            return new String(in.readNBytes(MOST_BYTES), StandardCharsets.UTF_8);
        }
    }

    private static boolean stands(Path file, String text) throws IOException {
        return Files.isRegularFile(file) && content(file).equals(text);
    }

    /** Contents first, then the name, then the folder: each on the disk before the next. */
    private static void replace(Path file, String text) throws IOException {
        Path fresh = file.resolveSibling(FILE + ".new");
        try (FileChannel out = FileChannel.open(fresh, StandardOpenOption.CREATE, StandardOpenOption.WRITE,
                StandardOpenOption.TRUNCATE_EXISTING)) {
            ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
            while (bytes.hasRemaining()) {
                out.write(bytes);
            }
            out.force(true);
        }
        Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
        try (FileChannel folder = FileChannel.open(file.toAbsolutePath().getParent(),
                StandardOpenOption.READ)) {
            folder.force(true);
        }
    }

    private static String text(Lines lines) {
        StringBuilder text = new StringBuilder(HEAD + "\nchip " + lines.chip() + "\n");
        lines.outputs().forEach(l -> text.append(l.id()).append(" line=").append(l.offset())
            .append(" active-low=").append(l.activeLow()).append(" safe=").append(safe(l))
            .append(" bias=").append(word(l.bias())).append('\n'));
        return text + "sum " + sum(text.toString()) + "\n";
    }

    /** The level on the wire that de-energises the output. */
    private static String safe(Line line) {
        return line.activeLow() ? "high" : "low";
    }

    private static String word(Bias bias) {
        return bias.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String sum(String text) {
        CRC32 crc = new CRC32();
        crc.update(text.getBytes(StandardCharsets.UTF_8));
        return Long.toHexString(1L << 32 | crc.getValue()).substring(1);
    }

    /** Empty unless every byte is as {@link #text} would have written it. */
    private static Optional<Lines> read(String text) {
        String[] rows = text.split("\n", -1);
        int last = rows.length - 2;
        if (last < 2 || !rows[0].equals(HEAD) || !rows[last + 1].isEmpty()) {
            return Optional.empty();
        }
        Matcher sum = SUM.matcher(rows[last]);
        Matcher chip = CHIP.matcher(rows[1]);
        String before = text.substring(0, text.length() - rows[last].length() - 1);
        if (!sum.matches() || !sum.group(1).equals(sum(before)) || !chip.matches()) {
            return Optional.empty();
        }
        List<Line> outputs = new ArrayList<>();
        for (String row : Arrays.copyOfRange(rows, 2, last)) {
            Optional<Line> line = line(row);
            if (line.isEmpty()) {
                return Optional.empty();
            }
            outputs.add(line.get());
        }
        return lines(chip.group(1), outputs);
    }

    private static Optional<Line> line(String row) {
        Matcher m = LINE.matcher(row);
        if (!m.matches()) {
            return Optional.empty();
        }
        Optional<Bias> bias = Arrays.stream(Bias.values()).filter(b -> word(b).equals(m.group(5)))
            .findFirst();
        return bias.map(b -> new Line(m.group(1), Integer.parseInt(m.group(2)),
            Boolean.parseBoolean(m.group(3)), b)).filter(l -> safe(l).equals(m.group(4)));
    }

    private static Optional<Lines> lines(String chip, List<Line> outputs) {
        try {
            return Optional.of(new Lines(chip, outputs, List.of()));
        } catch (IllegalArgumentException twice) {
            return Optional.empty();
        }
    }
}

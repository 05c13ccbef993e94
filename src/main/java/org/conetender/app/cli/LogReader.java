package org.conetender.app.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.conetender.core.hatch.ThermometerLog;
import org.conetender.core.unit.Text;

/**
 * Reads a thermometer log in CSV: a time and a temperature per line, with a header or without, fields
 * parted by {@code ,} or {@code ;}. Blank lines and lines that begin with {@code #} are skipped.
 *
 * <p>All or nothing: one line that is no reading refuses the file, and every such line is told at
 * once. What can be put right without guessing (order, repeats) is put right and told. One use, one thread.
 */
public final class LogReader {

    /** Problems and remarks told one by one; the rest is counted. */
    private static final int TOLD = 20;

    /** A log of one hatch does not run longer; a wrong year would (*guess*). */
    private static final long LONGEST_MS = 62L * 24 * 3_600_000;

    /**
     * @param zone of times without an offset  @param fahrenheit whether temperatures are in °F
     */
    public record Format(Optional<ZoneId> zone, boolean fahrenheit) {}

    /**
     * @param log the readings, in order
     * @param remarks sentences about what was put right, and about gaps
     * @param zone in which to show times: the stated one, else the last line's offset
     */
    public record Result(ThermometerLog log, List<String> remarks, ZoneId zone) {}

    private final Path file;
    private final Format format;
    private final LogTimes times;
    private final Sentences problems = new Sentences();
    private final Sentences remarks = new Sentences();
    private LogColumns columns;
    private int lineNumber;

    // Readings as they stand in the file: time, temperature, line.
    private int n;
    private long[] ms = new long[1024];
    private double[] waterC = new double[1024];
    private int[] lines = new int[1024];
    private boolean inOrder = true;
    private ZoneOffset lastOffset = ZoneOffset.UTC;

    private LogReader(Path file, Format format) {
        this.file = file;
        this.format = format;
        this.times = new LogTimes(format.zone());
    }

    /** @throws BadLog with every problem, each with its line number; then nothing was read */
    public static Result read(Path file, Format format) throws BadLog {
        return new LogReader(file, format).read();
    }

    private Result read() throws BadLog {
        readLines();
        if (!problems.isEmpty()) {
            throw new BadLog(problems.list("lines are wrong"));
        }
        if (n == 0) {
            throw new BadLog(file + " holds no reading; a line is a time and a temperature, such as "
                    + "2026-03-01T07:30+01:00,26.5");
        }
        if (!inOrder) {
            sort();
        }
        dropRepeats();
        if (ms[n - 1] - ms[0] > LONGEST_MS) {
            throw new BadLog(Text.of("%s: lines %d and %d lie more than 62 days apart; "
                    + "give the log of one hatch, and check the year",
                    file, lines[0], lines[n - 1]));
        }
        ThermometerLog log = new ThermometerLog(Arrays.copyOf(ms, n), Arrays.copyOf(waterC, n));
        tellGaps(log);
        return new Result(log, remarks.list("remarks of this kind"), format.zone().orElse(lastOffset));
    }

    private void readLines() throws BadLog {
        // A decoder of its own, so that bytes that are no text are refused rather than replaced.
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Files.newInputStream(file), StandardCharsets.UTF_8.newDecoder()))) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                lineNumber++;
                String text = lineNumber == 1 && line.startsWith("\ufeff") ? line.substring(1) : line;
                if (!text.isBlank() && !text.startsWith("#")) {
                    tryLine(text);
                }
            }
        } catch (NoSuchFileException e) {
            throw new BadLog(file + " is not there; check the path");
        } catch (CharacterCodingException e) {
            throw new BadLog("line " + foreignLine() + " of " + file.getFileName()
                    + " is not UTF-8 text; save the file as plain text in UTF-8.");
        } catch (IOException e) {
            throw new BadLog(file + " cannot be read (" + e.getMessage() + "); it must be a readable file");
        }
    }

    /** Which line has the bytes that are no text: the reader decodes far ahead of the line it hands out. */
    private int foreignLine() throws BadLog {
        try (BufferedReader in = Files.newBufferedReader(file, StandardCharsets.ISO_8859_1)) {
            int number = 1;
            for (String line = in.readLine(); line != null && isText(line); line = in.readLine()) {
                number++;
            }
            return number;
        } catch (IOException e) {
            throw new BadLog(file + " cannot be read (" + e.getMessage() + "); it must be a readable file");
        }
    }

    private static boolean isText(String bytes) {
        try {
            StandardCharsets.UTF_8.newDecoder().decode(
                    ByteBuffer.wrap(bytes.getBytes(StandardCharsets.ISO_8859_1)));
            return true;
        } catch (CharacterCodingException e) {
            return false;
        }
    }

    private void tryLine(String text) {
        try {
            if (columns == null) {
                columns = LogColumns.of(text, format.fahrenheit());
                if (columns.header()) {
                    return;
                }
            }
            take(LogColumns.split(text, columns.separator()));
        } catch (BadLog e) {
            String sentence = "line " + lineNumber + " of " + file.getFileName() + ": " + e.getMessage()
                    + ".";
            if (e.throughout()) {
                problems.addOnce(sentence);
            } else {
                problems.add(sentence);
            }
            if (columns == null) {
                // Without columns nothing below can be judged; two columns are the best reading of it.
                columns = new LogColumns(text.indexOf(';') >= 0 ? ';' : ',', 0, 1, true, format.fahrenheit());
            }
        }
    }

    private void take(List<String> fields) throws BadLog {
        long before = n > 0 ? ms[n - 1] : Long.MIN_VALUE;
        LogTimes.Stamp stamp = times.read(columns.field(fields, columns.time()), before);
        double c = columns.celsius(columns.field(fields, columns.water()));
        if (n == ms.length) {
            ms = Arrays.copyOf(ms, 2 * n);
            waterC = Arrays.copyOf(waterC, 2 * n);
            lines = Arrays.copyOf(lines, 2 * n);
        }
        if (stamp.ms() < before) {
            inOrder = false;
            remarks.add(Text.of("line %d is earlier than line %d: put in its place.",
                    lineNumber, lines[n - 1]));
        }
        ms[n] = stamp.ms();
        waterC[n] = c;
        lines[n++] = lineNumber;
        lastOffset = stamp.offset();
    }

    /** By time, and by line where times are equal. */
    private void sort() {
        Integer[] order = new Integer[n];
        Arrays.setAll(order, i -> i);
        long[] oldMs = ms;
        double[] oldC = waterC;
        int[] oldLines = lines;
        Arrays.sort(order, (a, b) -> Long.compare(oldMs[a], oldMs[b]));
        ms = new long[n];
        waterC = new double[n];
        lines = new int[n];
        for (int i = 0; i < n; i++) {
            ms[i] = oldMs[order[i]];
            waterC[i] = oldC[order[i]];
            lines[i] = oldLines[order[i]];
        }
    }

    private void dropRepeats() {
        int kept = 0;
        for (int i = 1; i < n; i++) {
            if (ms[i] == ms[kept]) {
                remarks.add(Text.of("line %d repeats the time of line %d (%.2f and %.2f °C): "
                        + "the first was kept.",
                        lines[i], lines[kept], waterC[i], waterC[kept]));
            } else {
                kept++;
                ms[kept] = ms[i];
                waterC[kept] = waterC[i];
                lines[kept] = lines[i];
            }
        }
        n = kept + 1;
    }

    private void tellGaps(ThermometerLog log) {
        for (int i = 1; i < log.size(); i++) {
            if (log.gapBefore(i)) {
                long minutes = (log.timeMs(i) - log.timeMs(i - 1)) / 60_000;
                remarks.add(Text.of("no reading for %d h %02d min between lines %d and %d: "
                        + "the degree-hours there are an interval.",
                        minutes / 60, minutes % 60, lines[i - 1], lines[i]));
            }
        }
    }

    /** Sentences to tell: the first ones in full, the rest as a number, so that a bad file stays small. */
    private static final class Sentences {

        private final List<String> told = new ArrayList<>();
        private int untold;
        private String once = "";
        private int alike;

        /** What is wrong with most lines in the same way. */
        void addOnce(String sentence) {
            if (once.isEmpty()) {
                once = sentence;
            } else {
                alike++;
            }
        }

        boolean isEmpty() {
            return told.isEmpty() && once.isEmpty();
        }

        void add(String sentence) {
            if (told.size() < TOLD) {
                told.add(sentence);
            } else {
                untold++;
            }
        }

        List<String> list(String rest) {
            List<String> all = new ArrayList<>();
            if (!once.isEmpty()) {
                all.add(once + (alike == 0 ? "" : Text.of(" It is the same with %d more %s.", alike,
                        alike == 1 ? "line" : "lines")));
            }
            all.addAll(told);
            if (untold > 0) {
                all.add("and " + untold + " more " + rest + ".");
            }
            return List.copyOf(all);
        }
    }
}

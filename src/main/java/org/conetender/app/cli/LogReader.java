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
import java.util.List;
import java.util.Optional;
import java.util.function.IntConsumer;
import org.conetender.core.hatch.ThermometerLog;

/**
 * Reads a thermometer log in CSV: a time and a temperature per line, with a header or without, fields
 * parted by {@code ,} or {@code ;} or tabs. Blank lines and lines that begin with {@code #} are skipped.
 *
 * <p>All or nothing: one line that is no reading refuses the file, and every such line is told at
 * once. What can be put right without guessing (order, repeats) is put right and told. One use, one thread.
 */
public final class LogReader {

    /** A month of a reading a second is 2.7 million; with more than this memory runs short (*guess*). */
    private static final int MOST_READINGS = 4_000_000;

    /** Progress is told after so many lines. */
    private static final int LINES_A_STEP = 1 << 14;

    /**
     * @param zone of times without an offset
     * @param dayFirst whether 1/3/2026 is a day of March
     * @param fahrenheit whether temperatures are in °F
     * @param progress is told how much of the file was read, in percent
     */
    public record Format(Optional<ZoneId> zone, boolean dayFirst, boolean fahrenheit, IntConsumer progress) {

        /** Read in silence. */
        public Format(Optional<ZoneId> zone, boolean dayFirst, boolean fahrenheit) {
            this(zone, dayFirst, fahrenheit, _ -> { });
        }
    }

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
    private int lastLine;

    private final LogRows rows = new LogRows(MOST_READINGS);
    private ZoneOffset lastOffset = ZoneOffset.UTC;

    private LogReader(Path file, Format format) {
        this.file = file;
        this.format = format;
        this.times = new LogTimes(format.zone(), format.dayFirst());
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
        if (rows.isEmpty()) {
            throw new BadLog(file + " holds no reading; a line is a time and a temperature, such as "
                    + "2026-03-01T07:30+01:00,26.5");
        }
        try {
            rows.sort();
        } catch (BadLog e) {
            throw new BadLog(file + ": " + e.getMessage());
        }
        rows.dropRepeats(remarks);
        ThermometerLog log = rows.log();
        tellGaps(log);
        return new Result(log, remarks.list("remarks of this kind"), format.zone().orElse(lastOffset));
    }

    private void readLines() throws BadLog {
        // A decoder of its own, so that bytes that are no text are refused rather than replaced.
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Files.newInputStream(file), StandardCharsets.UTF_8.newDecoder()))) {
            long size = Math.max(1, Files.size(file));
            long seen = 0;
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                lineNumber++;
                seen += line.length() + 1;
                if (lineNumber % LINES_A_STEP == 0) {
                    format.progress().accept((int) Math.min(99, 100 * seen / size));
                }
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
                columns = new LogColumns(LogColumns.separator(text), -1, 0, 1, true,
                        format.fahrenheit());
            }
        }
    }

    private void take(List<String> fields) throws BadLog {
        long before = rows.lastMs();
        LogTimes.Stamp stamp = times.read(columns.when(fields), before);
        double c = columns.celsius(columns.field(fields, columns.water()));
        if (stamp.ms() < before) {
            remarks.add("line %d is earlier than line %d: put in its place.", lineNumber, lastLine);
        }
        try {
            rows.add(stamp.ms(), c, lineNumber);
        } catch (BadLog e) {
            throw BadLog.throughout(e.getMessage());
        }
        lastLine = lineNumber;
        lastOffset = stamp.offset();
    }

    private void tellGaps(ThermometerLog log) {
        for (int i = 1; i < log.size(); i++) {
            if (log.gapBefore(i)) {
                long minutes = (log.timeMs(i) - log.timeMs(i - 1)) / 60_000;
                remarks.add("no reading for %d h %02d min between lines %d and %d: "
                        + "the degree-hours there are an interval.",
                        minutes / 60, minutes % 60, rows.line(i - 1), rows.line(i));
            }
        }
    }
}

package org.conetender.app;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.logging.ConsoleHandler;
import java.util.logging.Formatter;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogManager;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.stream.Collectors;

/** Where log lines go: standard error, for the journal with their urgency in front of every line. */
final class Logging {

    /** Set by systemd on services whose standard error is the journal. */
    private static final String JOURNAL = "JOURNAL_STREAM";

    /** The library of the GPIO lines tells of every start and guesses at the board; held, to stay set so. */
    private static final Logger GPIO_LIBRARY = Logger.getLogger("com.pi4j");
    private static final Logger BOARD_GUESSES = Logger.getLogger("com.pi4j.boardinfo");

    private Logging() {}

    /**
     * Keeps its handlers while the process goes down, where Java's own one drops them at once: the last
     * words of a daemon are the ones a person looks for.
     */
    public static final class Steady extends LogManager {
        @Override
        public void reset() {
            // Nothing: see above.
        }
    }

    /** Must come before anything else logs. @param least what is not worth a line is left out */
    static void begin(Level least) {
        System.setProperty("java.util.logging.manager", Steady.class.getName());
        Logger root = Logger.getLogger("");
        for (Handler h : root.getHandlers()) {
            root.removeHandler(h);
        }
        Handler handler = new ConsoleHandler();
        handler.setLevel(Level.ALL);
        handler.setFormatter(System.getenv(JOURNAL) == null ? new Plain() : new Journal());
        root.addHandler(handler);
        root.setLevel(least);
        // Why one of its parts did not start is an error of its own; what board this is matters to nobody.
        GPIO_LIBRARY.setLevel(Level.WARNING);
        BOARD_GUESSES.setLevel(Level.OFF);
    }

    /** Urgency as sd-daemon(3) counts it: 3 error, 4 warning, 6 information, 7 for who looks for a bug. */
    static int urgency(Level level) {
        return level.intValue() >= Level.SEVERE.intValue() ? 3
                : level.intValue() >= Level.WARNING.intValue() ? 4
                : level.intValue() >= Level.INFO.intValue() ? 6 : 7;
    }

    /** The journal splits at line ends, so that each line of a stack trace needs the prefix. */
    static final class Journal extends Formatter {
        @Override
        public String format(LogRecord r) {
            String prefix = "<" + urgency(r.getLevel()) + ">";
            return text(this, r).lines().map(l -> prefix + l + "\n").collect(Collectors.joining());
        }
    }

    /** For a terminal or a file: time, urgency if there is any, sentence. */
    static final class Plain extends Formatter {

        private static final DateTimeFormatter TIME =
                DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT).withZone(ZoneId.systemDefault());

        @Override
        public String format(LogRecord r) {
            String word = switch (urgency(r.getLevel())) {
                case 3 -> "error: ";
                case 4 -> "warning: ";
                default -> "";
            };
            return TIME.format(r.getInstant()) + " " + word + text(this, r) + "\n";
        }
    }

    private static String text(Formatter f, LogRecord r) {
        if (r.getThrown() == null) {
            return f.formatMessage(r);
        }
        StringWriter trace = new StringWriter();
        r.getThrown().printStackTrace(new PrintWriter(trace, true));
        return f.formatMessage(r) + "\n" + trace.toString().stripTrailing();
    }
}

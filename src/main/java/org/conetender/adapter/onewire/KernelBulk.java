package org.conetender.adapter.onewire;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * The bus master's {@code therm_bulk_read}. The kernel takes the word only with its line end, answers
 * the write even when it could not convert, and keeps the writer until the conversion is over; so the
 * file is read back to learn what happened. It belongs to root: without the right to write it, probes
 * are converted one by one.
 */
final class KernelBulk implements BulkTrigger {

    private static final byte[] TRIGGER = "trigger\n".getBytes(StandardCharsets.US_ASCII);

    private final Path file;
    private volatile Optional<String> trouble = Optional.empty();

    KernelBulk(Path master) {
        file = master.resolve("therm_bulk_read");
    }

    @Override
    public Optional<String> trouble() {
        return trouble;
    }

    @Override
    public Outcome convert() {
        if (!Files.exists(file)) {
            return Outcome.NONE;
        }
        boolean written = trigger();
        try {
            return outcome(written, W1Files.read(file));
        } catch (IOException e) {
            trouble = Optional.of(file + " cannot be read (" + e + "): probes are converted one by one");
            return Outcome.NONE;
        }
    }

    private boolean trigger() {
        try {
            Files.write(file, TRIGGER, StandardOpenOption.WRITE);
            trouble = Optional.empty();
            return true;
        } catch (IOException e) {
            trouble = Optional.of(file + " cannot be written (" + e + "): probes are converted one by one,"
                    + " 0.8 s each; let the user conetender write it if there are more than two");
            return false;
        }
    }

    /** Only {@code 1} means that conversions wait to be read; whose they are depends on who wrote last. */
    static Outcome outcome(boolean written, String text) {
        if (!text.equals("1\n")) {
            return Outcome.NONE;
        }
        return written ? Outcome.DONE : Outcome.LEFT_OVER;
    }
}

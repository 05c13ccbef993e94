package org.conetender.adapter.onewire;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.conetender.core.image.Reading;

/** The files of one probe's folder. Every read may take seconds: reader thread only. */
final class W1Files {

    /** The kernel never shows more than a page. */
    private static final int PAGE = 4096;

    private W1Files() {}

    /** What the probe says now, on the newest interface this kernel offers. Never throws. */
    static Reading reading(Path folder) {
        if (!Files.isDirectory(folder)) {
            return new Reading.Absent();
        }
        try {
            return ask(folder);
        } catch (NoSuchFileException vanished) {
            return new Reading.Absent();
        } catch (IOException e) {
            return new Reading.Faulty(W1Parser.SILENT + " (the kernel could not read it: " + e.getMessage()
                    .replaceAll("[()]", "") + ")");
        }
    }

    private static Reading ask(Path folder) throws IOException {
        Path temperature = folder.resolve("temperature");
        Path slave = folder.resolve("w1_slave");
        if (Files.exists(temperature)) {
            String text = read(temperature);
            return W1Parser.needsBytes(text) ? withBytes(slave) : W1Parser.temperature(text);
        }
        if (Files.exists(slave)) {
            return W1Parser.slave(read(slave));
        }
        return new Reading.Faulty("the computer shows no temperature for this probe: have its driver set up "
                + "again (is the module w1_therm loaded?)");
    }

    private static Reading withBytes(Path slave) throws IOException {
        return Files.exists(slave) ? W1Parser.slave(read(slave))
                : new Reading.Faulty(W1Parser.SILENT + " (zero or all ones, and no bytes to tell it from a "
                + "broken wire)");
    }

    static String read(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(PAGE), StandardCharsets.ISO_8859_1);
        }
    }
}

package org.conetender.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.logging.Level;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.adapter.gpio.RecordingProvider;
import org.conetender.app.cli.RunCommand;
import org.conetender.port.Clock;

/**
 * {@code conetender run} on a machine without GPIO: the same wiring, adapters and Pi4J, with a provider
 * below it that appends every change of an output to a file as {@code output on|off monotonic-ms}.
 * Arguments: the configuration, the file.
 */
public final class RunOnRecordingWires {

    private RunOnRecordingWires() {}

    public static void main(String[] args) {
        Logging.begin(Level.INFO);
        Clock clock = new LinuxClock();
        Path file = Path.of(args[1]);
        RecordingProvider wires = new RecordingProvider(() -> clock.now().monoMs(),
                change -> write(file, change));
        RunCommand run = new RunCommand(lines -> wires.layer());
        System.exit(Main.commandLine(run).execute("run", "--config", args[0]));
    }

    private static void write(Path file, RecordingProvider.Change c) {
        try {
            Files.writeString(file, c.output() + (c.energised() ? " on " : " off ") + c.stamp() + "\n",
                    StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

package org.conetender.adapter.gpio;

import java.util.List;
import org.conetender.adapter.gpio.Lines.Line;

/**
 * Puts every output in its safe level and ends: for the service manager to run after the daemon has
 * died in any way, SIGKILL included. Needs no Pi4J and no daemon; one line that cannot be had keeps
 * no other from being made safe.
 */
public final class SafeOutputs {

    /**
     * @param output as configured
     * @param safe whether it was de-energised
     * @param sentence for people: what was done, or what failed and what to do
     */
    public record Outcome(String output, boolean safe, String sentence) {}

    private SafeOutputs() {}

    /** De-energises every output of {@code lines}, in their order. Never throws for a line that fails. */
    public static List<Outcome> drive(Lines lines) {
        return drive(new Libc(), lines);
    }

    static List<Outcome> drive(Kernel kernel, Lines lines) {
        Chip chip = new Chip(kernel, lines.chip());
        return lines.outputs().stream().map(line -> drive(chip, line)).toList();
    }

    /**
     * The request itself carries the level. Afterwards the line is given back: where the kernel keeps
     * outputs it stays de-energised, elsewhere it becomes an input and the pull decides (board.md).
     */
    private static Outcome drive(Chip chip, Line line) {
        try {
            chip.output(line, false).release();
            return new Outcome(line.id(), true, line.id() + ": de-energised ("
                + (line.activeLow() ? "high" : "low") + " on line " + line.offset() + ").");
        } catch (GpioException e) {
            return new Outcome(line.id(), false, line.id() + ": NOT made safe: " + e.getMessage());
        }
    }
}

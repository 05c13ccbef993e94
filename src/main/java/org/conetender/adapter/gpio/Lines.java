package org.conetender.adapter.gpio;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Which line of which chip does what. Checked once: no id and no line may stand twice, also not once
 * as an output and once as an input.
 *
 * @param chip the character device, such as {@code /dev/gpiochip0}
 * @param outputs relays and solid-state switches; de-energised is always their safe level
 * @param inputs contacts; the active level is the closed contact
 */
public record Lines(String chip, List<Line> outputs, List<Line> inputs) {

    /** What the board itself pulls a line towards; {@code AS_IS} leaves it as it was found. */
    public enum Bias { AS_IS, DISABLED, PULL_UP, PULL_DOWN }

    /**
     * @param id as configured, such as {@code a.heat} or {@code a.air-proof}
     * @param offset the line's number on the chip, from 0; on a Raspberry Pi the BCM number
     * @param activeLow whether the energised relay or the closed contact is the low level
     * @param bias the board's own pull
     */
    public record Line(String id, int offset, boolean activeLow, Bias bias) {
        public Line {
            if (id.isBlank()) {
                throw new IllegalArgumentException(
                    "line " + offset + " has no id: give it one, such as a.heat");
            }
            if (offset < 0) {
                throw new IllegalArgumentException(
                    id + ": line " + offset + " cannot exist: lines are counted from 0");
            }
        }
    }

    public Lines {
        outputs = List.copyOf(outputs);
        inputs = List.copyOf(inputs);
        refuseTwice(outputs, inputs);
    }

    private static void refuseTwice(List<Line> outputs, List<Line> inputs) {
        Map<String, Line> byId = new HashMap<>();
        Map<Integer, Line> byOffset = new HashMap<>();
        Stream.concat(outputs.stream(), inputs.stream()).forEach(line -> {
            if (byId.put(line.id(), line) != null) {
                throw new IllegalArgumentException(
                    line.id() + " is wired twice: every output and input has one line of its own");
            }
            Line other = byOffset.put(line.offset(), line);
            if (other != null) {
                throw new IllegalArgumentException("line " + line.offset() + " serves both " + other.id()
                    + " and " + line.id() + ": give each a line of its own");
            }
        });
    }
}

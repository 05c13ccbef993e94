package org.conetender.adapter.onewire;

import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.conetender.core.image.Reading;

/**
 * The kernel's texts as readings. Whatever is not certainly a temperature is a fault with a reason;
 * nothing is repaired, and the driver's retained line is never used (control.md §3.2).
 */
final class W1Parser {

    /** What a probe holds after power-on and before its first conversion (data sheet). */
    private static final int POWER_ON_MILLI = 85_000;

    /** 0x07FF: what a conversion leaves that ran short of power (control.md §3.2). */
    private static final int STARVED_MILLI = 127_937;

    /** The part's measuring range (data sheet). */
    private static final int LEAST_MILLI = -55_000;
    private static final int MOST_MILLI = 125_000;

    /** All ones in the temperature register, as the kernel prints it. */
    private static final int ALL_ONES_MILLI = -62;

    /** The kernel rounds towards zero, and parts of 13 or 14 bits add up to 47: more is another number. */
    private static final int AGREES_MILLI = 63;

    /** The kernel always ends the line: without its end it was read while being written. */
    private static final Pattern NUMBER = Pattern.compile("(-?\\d{1,6})\n");

    private static final Pattern SLAVE = Pattern.compile("((?:[0-9a-f]{2} ){9}): crc=[0-9a-f]{2} (YES|NO)\n"
            + "(?:[0-9a-f]{2} ){9}t=(-?\\d{1,6})\n");

    /** Why nothing comes, as far as the wire tells. */
    static final String SILENT = "the probe does not answer: its plug may be out, or its cable broken";

    private W1Parser() {}

    /** The text of {@code temperature}: milli-degrees and nothing else. */
    static Reading temperature(String text) {
        if (text.isEmpty()) {
            return noAnswer();
        }
        OptionalInt milli = number(text);
        return milli.isPresent() ? believable(milli.getAsInt()) : garbage(text);
    }

    /**
     * Whether this text of {@code temperature} could as well come from a scratchpad of zeros or of
     * ones; only the bytes in {@code w1_slave} can tell.
     */
    static boolean needsBytes(String text) {
        OptionalInt milli = number(text);
        return milli.isPresent() && (milli.getAsInt() == 0 || milli.getAsInt() == ALL_ONES_MILLI);
    }

    /** The two lines of {@code w1_slave}. */
    static Reading slave(String text) {
        if (text.isEmpty()) {
            return noAnswer();
        }
        Matcher m = SLAVE.matcher(text);
        if (!m.matches()) {
            return garbage(text);
        }
        Scratchpad pad = new Scratchpad(m.group(1));
        if (pad.isAll(0)) {
            return new Reading.Faulty("the probe answers nothing but zeros: its cable may be pinched, or "
                    + "its power gone (every byte is zero: a shorted data wire, or no supply)");
        }
        if (pad.isAll(0xff)) {
            return new Reading.Faulty(SILENT + " (every byte is one: nothing answers on the data wire)");
        }
        if (m.group(2).equals("NO") || !pad.checksumHolds()) {
            return new Reading.Faulty("the probe's answer arrives garbled: its plug may be wet, its cable "
                    + "damaged or too long (the checksum is wrong; see to the pull-up too)");
        }
        int milli = Integer.parseInt(m.group(3));
        if (Math.abs(milli - pad.sixteenths() * 62.5) > AGREES_MILLI) {
            return new Reading.Faulty("the probe is not of the kind that is expected: exchange it (its "
                    + "bytes and its number disagree: no DS18B20)");
        }
        return believable(milli);
    }

    /** A number of the kernel's on a line of its own; empty for any other text. */
    static OptionalInt number(String text) {
        Matcher m = NUMBER.matcher(text);
        return m.matches() ? OptionalInt.of(Integer.parseInt(m.group(1))) : OptionalInt.empty();
    }

    private static Reading believable(int milli) {
        if (milli == POWER_ON_MILLI) {
            return new Reading.Faulty("the probe lost its power for a moment, as with a loose plug (85.000 "
                    + "°C is what it says before any conversion)");
        }
        if (milli == STARVED_MILLI) {
            return new Reading.Faulty("the probe's power is too weak: see to its cable's third wire and its "
                    + "supply (127.937 °C is what it says then)");
        }
        if (milli < LEAST_MILLI || milli > MOST_MILLI) {
            return new Reading.Faulty("the probe says " + milli / 1000.0 + " °C, which it cannot measure: "
                    + "exchange it (its range is -55 to 125 °C)");
        }
        return new Reading.Value(milli / 1000.0);
    }

    private static Reading noAnswer() {
        return new Reading.Faulty(SILENT + " (the kernel's file is empty)");
    }

    private static Reading garbage(String text) {
        String shown = text.length() > 40 ? text.substring(0, 40) + "…" : text;
        String plain = shown.replaceAll("\\p{Cntrl}", " ").strip();
        return new Reading.Faulty("the probe's answer is no temperature: its plug may be wet (\""
                + plain.replaceAll("[()]", "") + "\")");
    }
}

package org.conetender.app.config;

import java.util.List;
import java.util.stream.Collectors;

/**
 * All that is to be said about one setting: the loader takes bounds and defaults from here, and
 * {@code check --explain} prints it, so that the two cannot drift apart.
 *
 * @param key dotted, as {@code cone.limits.setpoint-c}; {@code <line>.} begins the parts of a line
 * @param kind what a value may be
 * @param fallback what counts when nothing is given
 * @param purpose in the world's terms, whole sentences
 * @param example a value as it may stand in the file
 */
public record SettingDoc(String key, Kind kind, Fallback fallback, String purpose, String example) {

    /** What a value may be. */
    public sealed interface Kind {

        /** Any number within both bounds, both allowed. */
        sealed interface Bounded extends Kind {
            /** As written for people, may be empty. */
            String unit();

            double least();

            double most();
        }

        /** A plain number. */
        record Number(String unit, double least, double most) implements Bounded {}

        /** A whole number. */
        record Whole(String unit, double least, double most) implements Bounded {}

        /** One of these words. */
        record Word(List<String> words) implements Kind {}

        /** {@code true} or {@code false}. */
        record Flag() implements Kind {}

        /** Text in quotes. @param form what it must look like, in words */
        record Text(String form) implements Kind {}

        /** A list of texts. @param form what each must look like, in words */
        record Texts(String form) implements Kind {}

        /** A GPIO line: its number, or a table with {@code line}, {@code active-low}, {@code bias}. */
        record Line() implements Kind {}
    }

    /** What counts when nothing is given. */
    public sealed interface Fallback {

        /** This value. @param toml as it would stand in the file */
        record Value(String toml) implements Fallback {}

        /** Worked out from other settings. @param words how */
        record Derived(String words) implements Fallback {}

        /** Nothing: the thing is not fitted or not used. */
        record Absent() implements Fallback {}

        /** No value would be safe: the setting must be given. */
        record Needed() implements Fallback {}
    }

    /** The last part of the key. */
    public String name() {
        return key.substring(key.lastIndexOf('.') + 1);
    }

    /** The part of the key before the last dot. */
    public String section() {
        return key.substring(0, key.lastIndexOf('.'));
    }

    /** The unit as written for people; empty where there is none. */
    public String unit() {
        return kind instanceof Kind.Bounded b ? b.unit() : "";
    }

    /** What is allowed, in words, with the unit. */
    public String range() {
        return switch (kind) {
            case Kind.Bounded b -> (figure(b.least()) + " to " + figure(b.most()) + " " + b.unit()).strip();
            case Kind.Word w -> w.words().stream().map(s -> '"' + s + '"').collect(Collectors.joining(", "));
            case Kind.Flag f -> "true, false";
            case Kind.Text t -> t.form();
            case Kind.Texts t -> "a list; each: " + t.form();
            case Kind.Line l -> "a line number, or { line = …, active-low = …, bias = … }";
        };
    }

    /** The default in words. */
    public String fallbackText() {
        return switch (fallback) {
            case Fallback.Value v -> v.toml();
            case Fallback.Derived d -> d.words();
            case Fallback.Absent a -> "none";
            case Fallback.Needed n -> "must be given";
        };
    }

    /** A number without a needless decimal point. */
    static String figure(double d) {
        return d == Math.rint(d) && Math.abs(d) < 1e9
                ? Long.toString((long) d) : Double.toString(d);
    }
}

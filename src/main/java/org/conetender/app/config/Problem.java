package org.conetender.app.config;

import java.util.Comparator;

/**
 * One thing wrong (or worth a warning) at one place of the file.
 *
 * @param line of the file, from 1; 0 for the file as a whole
 * @param column of the file, from 1; 0 likewise
 * @param key as the person wrote it, cones by their id: {@code cone[a].limits.guard-c}; before it stands
 *         {@code the second} where two have one id; may be empty
 * @param value as it stands in the file; may be empty
 * @param what is wrong, the bound, what to do: whole clauses
 */
public record Problem(int line, int column, String key, String value, String what)
        implements Comparable<Problem> {

    private static final Comparator<Problem> ORDER = Comparator.comparingInt(Problem::line)
            .thenComparingInt(Problem::column).thenComparing(Problem::key).thenComparing(Problem::what);

    /** {@code file:line: key = value: what}, shorter where parts are empty. */
    public String text(String file) {
        String where = file + (line == 0 ? ": " : ":" + line + ": ");
        if (key.isEmpty()) {
            return where + what;
        }
        return where + key + (value.isEmpty() ? "" : " = " + value) + ": " + what;
    }

    @Override
    public int compareTo(Problem other) {
        return ORDER.compare(this, other);
    }
}

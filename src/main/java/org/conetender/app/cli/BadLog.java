package org.conetender.app.cli;

import java.util.List;

/** A thermometer log that cannot be used: every problem found, each a sentence; nothing was kept of it. */
public final class BadLog extends Exception {

    private static final long serialVersionUID = 1;

    private final transient List<String> problems;
    private final boolean throughout;

    public BadLog(List<String> problems) {
        this(problems, false);
    }

    private BadLog(List<String> problems, boolean throughout) {
        super(String.join("\n", problems));
        this.problems = List.copyOf(problems);
        this.throughout = throughout;
    }

    public BadLog(String problem) {
        this(List.of(problem));
    }

    /** What is wrong with one line and, the same way, with most others: told once, and counted. */
    static BadLog throughout(String problem) {
        return new BadLog(List.of(problem), true);
    }

    boolean throughout() {
        return throughout;
    }

    /** Each a sentence that says where and what to do. */
    public List<String> problems() {
        return problems;
    }
}

package org.conetender.app.cli;

import java.util.List;

/** A thermometer log that cannot be used: every problem found, each a sentence; nothing was kept of it. */
public final class BadLog extends Exception {

    private static final long serialVersionUID = 1;

    private final transient List<String> problems;

    public BadLog(List<String> problems) {
        super(String.join("\n", problems));
        this.problems = List.copyOf(problems);
    }

    public BadLog(String problem) {
        this(List.of(problem));
    }

    /** Each a sentence that says where and what to do. */
    public List<String> problems() {
        return problems;
    }
}

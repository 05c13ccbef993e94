package org.conetender.app.config;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A good configuration of one heated cone that a test spoils in one place or several. */
final class Draft {

    private static final String GOOD = """
            [site]
            id = "larkmoor"
            zone = "Europe/London"
            feeds = ["07:30"]
            power-limit-w = 60
            room-probe = "28-00000a0000ff"
            [record]
            folder = "/"
            [mqtt]
            uri = "mqtt://localhost"
            [[cone]]
            id = "a"
            [cone.water]
            probes = ["28-00000a000001"]
            level-line = 5
            [cone.heat]
            kind = "immersed"
            watts = 25
            line = 9
            cut-out-line = 10
            [cone.air]
            line = 11
            proof-line = 6
            [cone.geometry]
            pump-outlet-cm = 60
            waterline-cm = 45
            [cone.limits]
            setpoint-c = 27
            [cone.timing]
            settle-min = 6
            [cone.usual]
            litres = 2
            """;

    private final List<String> lines;

    private Draft(List<String> lines) {
        this.lines = lines;
    }

    /** Good, and free of warnings. */
    static Draft good() {
        return new Draft(new ArrayList<>(GOOD.lines().toList()));
    }

    /** Exchanges the one line that begins so; the replacement has several lines (written \n) or none. */
    Draft with(String start, String instead) {
        int at = line(start) - 1;
        lines.remove(at);
        lines.addAll(at, instead.replace("\\n", "\n").lines().toList());
        return this;
    }

    /** Puts lines below the one that begins so. */
    Draft after(String start, String more) {
        lines.addAll(line(start), more.lines().toList());
        return this;
    }

    Draft end(String more) {
        lines.addAll(more.lines().toList());
        return this;
    }

    /** Number of the one line that begins so. */
    int line(String start) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).startsWith(start)) {
                found.add(i + 1);
            }
        }
        if (found.size() != 1) {
            throw new IllegalStateException("not one line begins with " + start + ": " + found);
        }
        return found.getFirst();
    }

    String text() {
        return lines.stream().collect(Collectors.joining("\n", "", "\n"));
    }

    Outcome load() {
        return ConfigLoader.parse(text());
    }

    Outcome.Accepted accepted() {
        return switch (load()) {
            case Outcome.Accepted a -> a;
            case Outcome.Refused r -> throw new AssertionError("refused: " + texts(r.errors()));
        };
    }

    List<String> errors() {
        return switch (load()) {
            case Outcome.Accepted a -> List.of();
            case Outcome.Refused r -> texts(r.errors());
        };
    }

    List<String> warnings() {
        return texts(load().warnings());
    }

    static List<String> texts(List<Problem> problems) {
        return problems.stream().map(p -> p.text("f")).toList();
    }
}

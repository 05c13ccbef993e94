package org.conetender.style;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Today's exceptions to the house numbers, each with its present number, which may only shrink: what
 * is larger than listed fails, and so does a listed number that is no longer reached.
 */
final class Ratchet {

    static final Path FILE = Path.of("src/test/resources/org/conetender/style/ratchet.txt");

    private final Map<String, Integer> allowed = new TreeMap<>();
    private final String rule;
    private final int limit;

    /** @param rule the first word of its lines  @param limit the house number */
    Ratchet(String rule, int limit) {
        this.rule = rule;
        this.limit = limit;
        for (String line : read()) {
            String[] words = line.strip().split("\\s+", 4);
            if (words[0].equals(rule)) {
                allowed.put(words[1], Integer.parseInt(words[2]));
            }
        }
    }

    /** The number listed for that place. */
    static int listed(String rule, String where) {
        return new Ratchet(rule, 0).allowed.get(where);
    }

    private static List<String> read() {
        try {
            return Files.readAllLines(FILE).stream().filter(l -> !l.isBlank() && !l.startsWith("#")).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What to say of these measures. @param measured by place */
    List<String> complaints(Map<String, Integer> measured) {
        List<String> out = new ArrayList<>();
        measured.forEach((where, n) -> {
            Integer most = allowed.get(where);
            if (n > (most == null ? limit : most)) {
                out.add("%s %s: %d, the limit is %d%s".formatted(rule, where, n, most == null ? limit : most,
                        most == null ? "" : " (an exception that may only shrink)"));
            }
        });
        allowed.forEach((where, most) -> {
            Integer n = measured.get(where);
            if (n == null || n <= limit) {
                out.add("%s %s: within the limit now; delete its line in %s".formatted(rule, where, FILE));
            } else if (n < most) {
                out.add("%s %s: is down to %d; write that number in %s".formatted(rule, where, n, FILE));
            }
        });
        return out;
    }
}

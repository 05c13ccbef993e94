package org.conetender.app.report;

import java.util.ArrayList;
import java.util.List;

/** Text that fits eighty columns. */
public final class Lines {

    static final int WIDTH = 80;

    private Lines() {}

    /** Broken at spaces, every line indented; a word that is wider than that is left whole. */
    public static List<String> wrapped(int indent, String text) {
        List<String> out = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            if (!line.isEmpty() && indent + line.length() + 1 + word.length() > WIDTH) {
                out.add(" ".repeat(indent) + line);
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        if (!line.isEmpty()) {
            out.add(" ".repeat(indent) + line);
        }
        return out;
    }

    /** At most so wide. */
    static String cut(String text, int width) {
        int letters = text.codePointCount(0, text.length());
        return letters <= width ? text : text.substring(0, text.offsetByCodePoints(0, width - 1)) + "…";
    }
}

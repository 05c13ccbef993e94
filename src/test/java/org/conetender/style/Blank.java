package org.conetender.style;

/** Blanks comments, strings and characters of Java text, keeping every line and column. */
final class Blank {

    private final String text;
    private final StringBuilder out;
    private int at;

    private Blank(String text) {
        this.text = text;
        this.out = new StringBuilder(text);
    }

    static String out(String text) {
        Blank b = new Blank(text);
        while (b.at < text.length()) {
            b.step();
        }
        return b.out.toString();
    }

    private void step() {
        if (text.startsWith("//", at)) {
            until("\n", at + 2, false);
        } else if (text.startsWith("/*", at)) {
            until("*/", at + 2, false);
        } else if (text.startsWith("\"\"\"", at)) {
            until("\"\"\"", at + 3, true);
        } else if (text.charAt(at) == '"') {
            until("\"", at + 1, true);
        } else if (text.charAt(at) == '\'') {
            until("'", at + 1, true);
        } else {
            at++;
        }
    }

    /** Blanks up to and with that end. @param escapes whether a backslash hides the next character */
    private void until(String end, int from, boolean escapes) {
        int i = from;
        while (i < text.length() && !text.startsWith(end, i)) {
            i += escapes && text.charAt(i) == '\\' ? 2 : 1;
        }
        int stop = Math.min(text.length(), i + end.length());
        for (int k = at; k < stop; k++) {
            if (out.charAt(k) != '\n') {
                out.setCharAt(k, ' ');
            }
        }
        at = stop;
    }
}

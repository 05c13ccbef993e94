package org.conetender.app.config;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** Finds the word that a person probably meant. */
final class Nearest {

    private Nearest() {}

    /** {@code  (did you mean "…"?)} with a leading blank, or nothing when no word is near. */
    static String hint(String typed, Collection<String> words) {
        return of(typed, words).map(w -> " (did you mean \"" + w + "\"?)").orElse("");
    }

    /** The nearest word, if at most a third of it (at least one letter) must be changed. */
    static Optional<String> of(String typed, Collection<String> words) {
        return words.stream()
                .filter(w -> distance(typed, w) <= Math.max(1, Math.max(w.length(), typed.length()) / 3))
                .min(Comparator.comparingInt((String w) -> distance(typed, w)).thenComparing(w -> w));
    }

    /**
     * Edits between two words: a letter put in, left out, exchanged, or two neighbours swapped
     * (optimal string alignment).
     */
    static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                d[i][j] = i == 0 || j == 0 ? i + j : cheapest(d, i, j, a.charAt(i - 1) == b.charAt(j - 1));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2)
                        && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }

    private static int cheapest(int[][] d, int i, int j, boolean same) {
        return Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + (same ? 0 : 1));
    }
}

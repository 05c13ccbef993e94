package org.conetender.app.config;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tomlj.TomlParseError;

/** Says in a keeper's words what is wrong with a line that no parser can read: one sentence for each line. */
final class Syntax {

    private static final String VALUE = "^\\s*([\\w.-]+)\\s*=\\s*";
    private static final String END = "\\s*(?:#.*)?$";

    /** A slip that people make, as it looks, and what to write instead. */
    private record Slip(Pattern looks, Function<Matcher, String> remedy) {}

    private static final List<Slip> SLIPS = List.of(
            slip("[“”„‟«»‘’‚]", m -> "these are curly quotes; write straight ones: \""),
            slip(VALUE + "([+-]?\\d+),(\\d{3})" + END, m -> "a figure has a point and no comma; write "
                    + m.group(2) + "." + m.group(3) + " or " + m.group(2) + m.group(3)
                    + ", whichever is meant"),
            slip(VALUE + "([+-]?\\d+),(\\d+)" + END, m -> "a figure has a point and no comma; write "
                    + m.group(1) + " = " + m.group(2) + "." + m.group(3)),
            slip(VALUE + "([+-]?\\d+(?:[.,]\\d+)?)\\s*([°º]?[a-zA-Zµ%‰][\\w/²³%]*)" + END,
                    m -> WrittenUnit.remedy(m.group(1), m.group(2), m.group(3))),
            slip(VALUE + "([A-Za-z_/][^\"'\\[{#]*?)" + END, m -> "text stands in quotes; write " + m.group(1)
                    + " = \"" + m.group(2) + "\""),
            slip(VALUE + END, m -> "a value is missing behind the ="),
            slip("^\\s*([\\w-]+)\\s*:\\s*(.+?)" + END, m -> "a setting is written with =: " + m.group(1)
                    + " = " + m.group(2)),
            slip("^\\s*\\[[^\\]]*" + END, m -> "the bracket ] is missing at the end"),
            slip("^[^\"#]*\"[^\"]*$", m -> "a quote \" is missing"),
            slip("^\\s*([a-z][\\w-]*)\\s+([\\d\"].*?)" + END, m -> "the = is missing; write " + m.group(1)
                    + " = " + m.group(2)));

    private static final Pattern ONE_BRACKET = Pattern.compile("^\\s*\\[\\s*cone\\s*]" + END);
    private static final Pattern TWICE = Pattern.compile(
            "(.*) previously defined at line (\\d+), column \\d+");

    private final List<String> lines;
    /** The first of each line only: what follows in it mostly follows from it. */
    private final Map<Integer, Problem> found = new TreeMap<>();

    private Syntax(List<String> lines) {
        this.lines = lines;
    }

    private static Slip slip(String looks, Function<Matcher, String> remedy) {
        return new Slip(Pattern.compile(looks), remedy);
    }

    /** In the order of the lines; at least one. @param errors what the parser found, at least one */
    static List<Problem> of(String text, List<TomlParseError> errors) {
        Syntax s = new Syntax(text.lines().toList());
        s.brackets();
        boolean cones = !s.found.isEmpty();
        for (TomlParseError e : errors) {
            Matcher twice = TWICE.matcher(e.getMessage());
            // Where cones were written with one bracket, every setting of the second one "stands twice".
            if (!twice.matches() || !cones) {
                s.add(e.position().line(), e.position().column(), twice.matches()
                        ? "this stands in the file already, in line " + twice.group(2) + "; leave one of them"
                        : s.words(e));
            }
        }
        return s.found.values().stream().sorted().toList();
    }

    private void brackets() {
        for (int i = 0; i < lines.size(); i++) {
            if (ONE_BRACKET.matcher(lines.get(i)).matches()) {
                add(i + 1, 1, ConesReader.HOW);
            }
        }
    }

    private void add(int line, int column, String what) {
        found.putIfAbsent(line, new Problem(line, column, "", "", what));
    }

    private String words(TomlParseError e) {
        int line = e.position().line();
        String text = line <= lines.size() ? lines.get(line - 1) : "";
        for (Slip slip : SLIPS) {
            Matcher m = slip.looks().matcher(text);
            if (m.find()) {
                return slip.remedy().apply(m);
            }
        }
        return "this line is not understood from its column " + e.position().column()
                + " on; a setting reads name = value, a section [name]; nothing else is checked until it "
                + "does";
    }
}

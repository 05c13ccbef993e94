package org.conetender.style;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One Java file as text, and as code: the same text with comments, strings and characters blanked, so
 * that a word in a sentence is never taken for a call.
 *
 * @param path below the project's root
 * @param text as written
 * @param code as long as the text, line for line
 */
record SourceFile(Path path, String text, String code) {

    private static final Pattern PACKAGE = Pattern.compile("\\bpackage\\s+([\\w.]+)\\s*;");
    private static final Pattern IMPORT =
            Pattern.compile("(?m)^import (?:static )?[\\w.]+\\.(\\w+);\\R");
    private static final Pattern NAMED = Pattern.compile("\\b((?:[a-z]\\w*\\.)+)[A-Z]\\w*");

    /** Every Java file below that folder. */
    static List<SourceFile> under(String folder) {
        try (var files = Files.walk(Path.of(folder))) {
            List<SourceFile> out = new ArrayList<>();
            for (Path p : files.filter(f -> f.toString().endsWith(".java")).sorted().toList()) {
                out.add(of(p, Files.readString(p)));
            }
            return out;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static SourceFile of(Path path, String text) {
        return new SourceFile(path, text, Blank.out(text));
    }

    List<String> lines() {
        return text.lines().toList();
    }

    boolean isMain() {
        return path.startsWith("src/main");
    }

    /** Its package; empty when it has none. */
    String packageName() {
        Matcher m = PACKAGE.matcher(code);
        return m.find() ? m.group(1) : "";
    }

    /** What it imports and never names again, not even in a comment. */
    List<String> idleImports() {
        List<String> out = new ArrayList<>();
        String rest = IMPORT.matcher(text).replaceAll("");
        Matcher m = IMPORT.matcher(text);
        while (m.find()) {
            if (!Pattern.compile("\\b" + m.group(1) + "\\b").matcher(rest).find()) {
                out.add(path + ": imports " + m.group(1) + " for nothing");
            }
        }
        return out;
    }

    /** The packages it names, in imports or in full. */
    List<String> packagesNamed() {
        List<String> out = new ArrayList<>();
        Matcher m = NAMED.matcher(code);
        while (m.find()) {
            String name = m.group(1);
            if (name.indexOf('.') < name.length() - 1) {
                out.add(name.substring(0, name.length() - 1));
            }
        }
        return out.stream().distinct().toList();
    }

    /** Where each match of the pattern begins, as {@code path:line}. */
    List<String> places(Pattern banned) {
        List<String> out = new ArrayList<>();
        Matcher m = banned.matcher(code);
        while (m.find()) {
            out.add(path + ":" + (1 + code.substring(0, m.start()).chars().filter(c -> c == '\n').count()));
        }
        return out;
    }
}

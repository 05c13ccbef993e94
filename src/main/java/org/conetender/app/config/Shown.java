package org.conetender.app.config;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** How a value is shown in a message: as it would stand in the file, on one short line. */
final class Shown {

    /** Longer values are cut; a message stays readable. */
    private static final int MOST = 70;

    private Shown() {}

    static String value(Object value) {
        String all = whole(value);
        return all.length() <= MOST ? all : all.substring(0, MOST - 1) + "…";
    }

    private static String whole(Object value) {
        return switch (value) {
            case null -> "(not given)";
            case String s -> quoted(s);
            case Double d -> SettingDoc.figure(d);
            case TomlArray a -> a.toList().stream().map(Shown::whole)
                    .collect(Collectors.joining(", ", "[", "]"));
            case TomlTable t -> t.keySet().stream().map(k -> k + " = " + whole(t.get(List.of(k))))
                    .collect(Collectors.joining(", ", "{ ", " }"));
            default -> value.toString();
        };
    }

    /** A text in quotes, control characters escaped; a password inside an address is never shown. */
    static String quoted(String s) {
        StringBuilder out = new StringBuilder("\"");
        s.replaceFirst("(?<=://)[^@/]*@", "…@").codePoints().forEach(c -> {
            if (c == '"' || c == '\\') {
                out.append('\\').appendCodePoint(c);
            } else if (Character.isISOControl(c)) {
                out.append(String.format(Locale.ROOT, "\\u%04x", c));
            } else {
                out.appendCodePoint(c);
            }
        });
        return out.append('"').toString();
    }
}

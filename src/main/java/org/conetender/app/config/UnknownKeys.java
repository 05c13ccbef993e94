package org.conetender.app.config;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.conetender.app.config.SettingDoc.Kind;
import org.tomlj.TomlTable;

/** Refuses every key that no document describes, and says which one was probably meant. */
final class UnknownKeys {

    /** A unit that people write at the end of a key, and how it becomes ours. */
    private record Other(String ours, DoubleUnaryOperator convert) {}

    /** Ends of keys in other units; ours are °C, cm, L, g, W, min, h and s. */
    private static final Map<String, List<Other>> OTHER_UNITS = Map.ofEntries(
            Map.entry("f", List.of(new Other("c", f -> (f - 32) / 1.8))),
            Map.entry("k", List.of(new Other("c", k -> k - 273.15))),
            Map.entry("mm", List.of(times("cm", 0.1))),
            Map.entry("m", List.of(times("cm", 100))),
            Map.entry("in", List.of(times("cm", 2.54))),
            Map.entry("ml", List.of(times("litres", 0.001), times("l", 0.001))),
            Map.entry("gal", List.of(times("litres", 3.785), times("l", 3.785))),
            Map.entry("l", List.of(times("litres", 1))),
            Map.entry("litres", List.of(times("l", 1))),
            Map.entry("mg", List.of(times("g", 0.001))),
            Map.entry("oz", List.of(times("g", 28.35))),
            Map.entry("kw", List.of(times("w", 1_000))),
            Map.entry("watts", List.of(times("w", 1))),
            Map.entry("ms", List.of(times("s", 0.001))),
            Map.entry("s", List.of(times("min", 1 / 60.0), times("minutes", 1 / 60.0),
                    times("h", 1 / 3600.0))),
            Map.entry("min", List.of(times("h", 1 / 60.0), times("s", 60), times("minutes", 1))),
            Map.entry("minutes", List.of(times("min", 1), times("h", 1 / 60.0), times("s", 60))),
            Map.entry("h", List.of(times("min", 60), times("minutes", 60))));

    private UnknownKeys() {}

    /** Walks a section and all within; cones are walked one by one by their reader. */
    static void walk(Section section) {
        Set<String> known = SettingDocs.namesIn(section.place().key());
        for (String name : section.names()) {
            String key = section.place().within(name, false).key();
            if (!known.contains(name)) {
                section.wrong(name, unknown(section, name, known));
            } else if (SettingDocs.find(key).isEmpty() && !key.equals("cone")) {
                walkInto(section, name);
            } else if (isLine(key) && section.raw(name) instanceof TomlTable) {
                walk(LineBook.parts(section, name));
            }
        }
    }

    private static void walkInto(Section section, String name) {
        // A section that is no table is told by its reader; here only what lies in tables counts.
        if (section.raw(name) instanceof TomlTable) {
            walk(section.sub(name));
        }
    }

    private static boolean isLine(String key) {
        return SettingDocs.find(key).filter(d -> d.kind() instanceof Kind.Line).isPresent();
    }

    private static String unknown(Section section, String name, Collection<String> known) {
        String where = section.place().key().isEmpty() ? "the file" : "[" + section.place().key() + "]";
        return unitHint(section.raw(name), name, known).or(() -> bareStem(section, name, known))
                .or(() -> Nearest.of(name, known).map(w -> "unknown key; did you mean " + w + "?"))
                .or(() -> elsewhere(name))
                .orElse("unknown key; " + where + " may hold " + String.join(", ", known));
    }

    /** {@code setpoint-f = 80}: the stem fits, only the unit does not. */
    private static Optional<String> unitHint(Object value, String name, Collection<String> known) {
        int dash = name.lastIndexOf('-');
        String stem = dash < 0 ? "" : name.substring(0, dash + 1);
        for (Other other : OTHER_UNITS.getOrDefault(name.substring(dash + 1), List.of())) {
            if (known.contains(stem + other.ours())) {
                String converted = value instanceof Number n ? ": " + stem + other.ours() + " = "
                        + SettingDoc.figure(Math.round(other.convert().applyAsDouble(n.doubleValue()) * 100)
                                / 100.0) : "";
                return Optional.of("wrong unit; this setting is " + stem + other.ours() + converted);
            }
        }
        return Optional.empty();
    }

    /** {@code setpoint = 27}: right but for the unit in its name. */
    private static Optional<String> bareStem(Section section, String name, Collection<String> known) {
        return known.stream().filter(k -> k.startsWith(name + "-") && k.lastIndexOf('-') == name.length())
                .filter(k -> SettingDocs.find(section.place().within(k, false).key())
                        .filter(d -> !d.unit().isEmpty()).isPresent())
                .findFirst().map(k -> "unknown key; a figure carries its unit in its name: " + k);
    }

    private static Optional<String> elsewhere(String name) {
        return SettingDocs.all().stream().filter(d -> d.name().equals(name)).findFirst()
                .map(d -> "unknown key here; " + name + " belongs below [" + d.section() + "]");
    }

    private static Other times(String ours, double factor) {
        return new Other(ours, x -> x * factor);
    }
}

package org.conetender.app.config;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * The table of every setting, in the order in which a person would write them: the site and the
 * machine first, then what each cone has. A key that is not here does not exist.
 */
public final class SettingDocs {

    private static final Map<String, SettingDoc> BY_KEY = index();

    private SettingDocs() {}

    /** Every setting, in order. */
    public static List<SettingDoc> all() {
        return List.copyOf(BY_KEY.values());
    }

    /** The setting of that key, if there is one. */
    public static Optional<SettingDoc> find(String key) {
        return Optional.ofNullable(BY_KEY.get(key));
    }

    /** The settings whose key ends so, such as {@code setpoint-c}, or lies in that section. */
    public static List<SettingDoc> matching(String part) {
        return all().stream().filter(d -> d.key().equals(part) || d.name().equals(part)
                || d.key().startsWith(part + ".") || d.key().endsWith("." + part)).toList();
    }

    /** The key or name of a setting nearest to this, if one is near. */
    public static Optional<String> near(String part) {
        return Nearest.of(part,
                all().stream().flatMap(d -> Stream.of(d.key(), d.name())).distinct().toList());
    }

    /** The names that may stand directly in a section: settings and sections within; "" is the file. */
    static Set<String> namesIn(String section) {
        String start = section.isEmpty() ? "" : section + ".";
        Set<String> names = new TreeSet<>();
        for (String key : BY_KEY.keySet()) {
            if (key.startsWith(start) && key.startsWith("<") == section.startsWith("<")) {
                String rest = key.substring(start.length());
                names.add(rest.contains(".") ? rest.substring(0, rest.indexOf('.')) : rest);
            }
        }
        return names;
    }

    private static Map<String, SettingDoc> index() {
        List<SettingDoc> rows = new ArrayList<>(SiteDocs.ROWS);
        rows.addAll(ConeDocs.ROWS);
        Map<String, SettingDoc> map = new LinkedHashMap<>();
        for (SettingDoc row : rows) {
            if (map.put(row.key(), row) != null) {
                throw new IllegalStateException("two rows describe the setting " + row.key());
            }
        }
        return map;
    }
}

package org.conetender.style;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Who may see whom (style.md, the map). */
final class Arrows {

    private static final String HOME = "org.conetender.";

    private static final Map<String, Set<String>> SEES = Map.of(
            "core", Set.of("core"),
            "port", Set.of("core", "port"),
            "agent", Set.of("core", "port", "agent"),
            "adapter", Set.of("core", "port", "adapter"),
            "sim", Set.of("core", "port", "agent", "sim"),
            "app", Set.of("core", "port", "agent", "adapter", "sim", "app"));

    /** Packages of java.base that the core has no use for: they reach the world, or wait for it. */
    private static final List<String> NOT_PURE = List.of("java.io", "java.net", "java.nio.file",
            "java.nio.channels", "java.util.concurrent", "java.lang.foreign", "java.lang.reflect");

    /** Libraries that stay behind one door. */
    private static final Map<String, List<String>> DOORS = Map.of(
            "org.eclipse.paho", List.of("adapter.mqtt"),
            "com.pi4j", List.of("adapter.gpio"),
            "java.sql", List.of("adapter.sqlite"),
            "org.tomlj", List.of("app.config"),
            "picocli", List.of("app"),
            "org.apache.activemq", List.of("app"),
            "com.fasterxml.jackson", List.of("app"));

    private Arrows() {}

    static List<String> complaints(SourceFile f) {
        List<String> out = new ArrayList<>();
        String home = f.packageName();
        if (!home.startsWith(HOME)) {
            return List.of(f.path() + ": outside " + HOME + "*");
        }
        String own = home.substring(HOME.length());
        for (String seen : f.packagesNamed()) {
            String no = seen.startsWith(HOME) ? inside(own, seen.substring(HOME.length()))
                    : outside(own, seen);
            if (!no.isEmpty()) {
                out.add(f.path() + " names " + seen + ": " + no);
            }
        }
        return out;
    }

    private static String inside(String own, String seen) {
        String from = top(own);
        String to = top(seen);
        if (!SEES.getOrDefault(from, Set.of()).contains(to)) {
            return from + " does not see " + to;
        }
        if (from.equals("adapter") && to.equals("adapter") && !two(own).equals(two(seen))) {
            return "no adapter sees another";
        }
        if (from.equals("sim") && seen.startsWith("core.hatch")) {
            return "the truth shares nothing with what forecasts it";
        }
        return "";
    }

    private static String outside(String own, String seen) {
        if (top(own).equals("core") && !seen.startsWith("org.hipparchus")) {
            if (!baseHas(seen)) {
                return "core uses java.base and Hipparchus only";
            }
            if (NOT_PURE.stream().anyMatch(p -> seen.equals(p) || seen.startsWith(p + "."))) {
                return "core is pure: no I/O, no threads";
            }
        }
        for (var door : DOORS.entrySet()) {
            boolean there = seen.equals(door.getKey()) || seen.startsWith(door.getKey() + ".");
            if (there && door.getValue().stream().noneMatch(d -> own.equals(d) || own.startsWith(d + "."))) {
                return "it stays behind " + String.join(", ", door.getValue());
            }
        }
        return "";
    }

    private static boolean baseHas(String p) {
        Set<String> base = ModuleLayer.boot().findModule("java.base").orElseThrow().getPackages();
        return base.contains(p) || !p.startsWith("java") && !p.contains(".");
    }

    private static String top(String name) {
        return name.contains(".") ? name.substring(0, name.indexOf('.')) : name;
    }

    private static String two(String name) {
        int second = name.indexOf('.', name.indexOf('.') + 1);
        return second < 0 ? name : name.substring(0, second);
    }
}

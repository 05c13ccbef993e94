package org.conetender.homie;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Holds everything that was said at a broker, in its order, against the Homie convention 5: each payload
 * against the description that stood at that moment, each state against the one before, and what may not be
 * retained. An empty list means that nothing was wrong at any time.
 */
public final class Homie5Stream {

    /** Whether a message was sent to be kept; not every broker tells. */
    public enum Kept { YES, NO, UNTOLD }

    public record Said(String topic, String payload, Kept kept) {}

    /** What may follow a state; none stands for a device that was never there or was taken back. */
    private static final Map<String, Set<String>> NEXT = Map.of(
            "none", Set.of("init", "none"),
            "init", Set.of("ready", "disconnected", "lost", "none"),
            "ready", Set.of("init", "sleeping", "disconnected", "lost", "none"),
            "sleeping", Set.of("init", "ready", "disconnected", "lost", "none"),
            "disconnected", Set.of("init", "lost", "none"),
            "lost", Set.of("init", "none"));
    private static final Set<String> LEVELS = Set.of("debug", "info", "warn", "error", "fatal");

    private final Map<String, String> last;
    private final Map<String, Described> described = new TreeMap<>();
    private final List<String> found = new ArrayList<>();

    private Homie5Stream(Map<String, String> before) {
        this.last = new TreeMap<>(before);
        before.forEach((topic, payload) -> {
            if (topic.endsWith("/$description")) {
                describe(device(topic), payload);
            }
        });
    }

    /** Every violation. @param before what was retained when the listening began  @param said since */
    public static List<String> check(Map<String, String> before, List<Said> said) {
        Homie5Stream stream = new Homie5Stream(before);
        for (Said s : said) {
            if (s.topic().matches("[a-z0-9-]+/5/.*")) {
                stream.hear(s);
            }
        }
        List<Homie5Checker.Message> order = new ArrayList<>();
        before.forEach((t, p) -> order.add(new Homie5Checker.Message(t, p)));
        said.forEach(s -> order.add(new Homie5Checker.Message(s.topic(), s.payload())));
        stream.found.addAll(Homie5Checker.checkSequence(order));
        return List.copyOf(stream.found);
    }

    private static String device(String topic) {
        return topic.split("/", 4).length < 4 ? topic
                : topic.substring(0, topic.length() - topic.split("/", 4)[3].length() - 1);
    }

    private void wrong(Said s, String what) {
        found.add(s.topic() + " = '" + s.payload() + "': " + what);
    }

    private void hear(Said s) {
        String device = device(s.topic());
        int cut = Math.min(s.topic().length(), device.length() + 1);
        String[] below = s.topic().substring(cut).split("/", -1);
        switch (below[0]) {
            case "$state" -> state(s, device);
            case "$description" -> {
                kept(s, true);
                describe(device, s.payload());
            }
            case "$alert" -> kept(s, true);
            case "$log" -> {
                kept(s, false);
                if (below.length != 2 || !LEVELS.contains(below[1])) {
                    wrong(s, "is no level of a log");
                }
            }
            default -> property(s, device, below);
        }
        last.put(s.topic(), s.payload());
    }

    /** What is cleared is always cleared as retained. */
    private void kept(Said s, boolean should) {
        if (s.kept() == (should ? Kept.NO : Kept.YES)) {
            wrong(s, should ? "must be retained" : "must not be retained");
        }
    }

    private void describe(String device, String payload) {
        if (payload.isEmpty()) {
            described.remove(device);
        } else {
            described.put(device, Described.read(device, payload, found::add));
        }
    }

    private String stateOf(String device) {
        String state = last.getOrDefault(device + "/$state", "");
        return state.isEmpty() ? "none" : state;
    }

    private void state(Said s, String device) {
        kept(s, true);
        String was = stateOf(device);
        String now = s.payload().isEmpty() ? "none" : s.payload();
        if (!now.equals(was) && !NEXT.getOrDefault(was, Set.of()).contains(now)) {
            wrong(s, "does not follow '" + was + "'");
        }
        if (now.equals("ready") && !described.containsKey(device)) {
            wrong(s, "is said without a description");
        }
        if (now.equals("none") && parents(device).stream().anyMatch(p -> !p.equals(device))) {
            wrong(s, "is taken back while " + parents(device) + " still names it");
        }
        if (now.equals("ready")) {
            described.getOrDefault(device, Described.read(device, "{}", any -> { })).children.stream()
                    .map(c -> device.substring(0, device.lastIndexOf('/') + 1) + c)
                    .filter(c -> !stateOf(c).equals("ready"))
                    .forEach(c -> wrong(s, "is said before its child " + c + " is ready"));
        }
    }

    /** Devices that name it as a child. */
    private Set<String> parents(String device) {
        String id = device.substring(device.lastIndexOf('/') + 1);
        return described.entrySet().stream().filter(e -> e.getValue().children.contains(id))
                .map(Map.Entry::getKey).collect(Collectors.toSet());
    }

    private void property(Said s, String device, String[] below) {
        boolean set = below.length == 3 && below[2].equals("set");
        boolean value = below.length == 2 || below.length == 3 && below[2].equals("$target");
        if (!set && s.payload().isEmpty()) {
            kept(s, true);
            return;
        }
        Optional<Described.Property> p = below.length < 2 || !described.containsKey(device) ? Optional.empty()
                : Optional.ofNullable(described.get(device).properties.get(below[0] + "/" + below[1]));
        if (p.isEmpty() || !set && !value) {
            wrong(s, "is not described");
        } else if (set) {
            kept(s, false);
            // What is sent there may be nonsense: that is the device's to refuse.
        } else {
            value(s, device, p.get());
            if (below.length == 3 && !p.get().settable()) {
                wrong(s, "has a target but cannot be set");
            }
        }
    }

    private void value(Said s, String device, Described.Property p) {
        kept(s, p.retained());
        p.type().flatMap(t -> t.wrongPayload(s.payload(), p.format())).ifPresent(what -> wrong(s, what));
        String state = stateOf(device);
        if (!state.equals("init") && !state.equals("ready")) {
            wrong(s, "is said while the device is '" + state + "'");
        }
    }
}

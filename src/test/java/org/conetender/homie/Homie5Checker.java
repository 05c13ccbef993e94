package org.conetender.homie;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Holds retained topics against the Homie convention 5 and names every violation, as
 * {@code topic: what is wrong}. An empty list means a valid tree.
 */
public final class Homie5Checker {

    private static final Set<String> STATES = Set.of("init", "ready", "disconnected", "sleeping", "lost");

    /** The states in which a description may change. */
    private static final Set<String> UNSETTLED = Set.of("init", "disconnected", "lost");

    /** One message in the order in which a reader heard it. */
    public record Message(String topic, String payload) {}

    private final List<String> found = new ArrayList<>();
    /** By device: topic below it -> payload. */
    private final Map<String, Map<String, String>> devices = new TreeMap<>();
    private final Map<String, Described> described = new TreeMap<>();

    private Homie5Checker() {}

    /** Every violation in one snapshot of a broker's retained topics (topic to payload). */
    public static List<String> check(Map<String, String> retained) {
        Homie5Checker checker = new Homie5Checker();
        new TreeMap<>(retained).forEach(checker::sort);
        checker.devices.forEach(checker::device);
        checker.described.forEach(checker::family);
        return List.copyOf(checker.found);
    }

    /** Violations between two snapshots: a description changed without a higher version. */
    public static List<String> checkChange(Map<String, String> before, Map<String, String> after) {
        List<String> found = new ArrayList<>();
        before.forEach((topic, old) -> {
            String now = after.get(topic);
            if (topic.endsWith("/$description") && now != null) {
                versionRaised(topic, old, now).ifPresent(found::add);
            }
        });
        return found;
    }

    /** Violations in a stream of messages: a description that changed while its device stood ready. */
    public static List<String> checkSequence(List<Message> messages) {
        List<String> found = new ArrayList<>();
        Map<String, String> seen = new HashMap<>();
        for (Message message : messages) {
            String old = seen.put(message.topic(), message.payload());
            boolean changed = old != null && !old.isEmpty() && !message.payload().isEmpty()
                    && !old.equals(message.payload());
            if (changed && message.topic().endsWith("/$description")) {
                String device = message.topic().substring(0, message.topic().lastIndexOf('/'));
                if (!unsettled(device, old, seen)) {
                    found.add(message.topic() + ": changed while the device was "
                            + seen.get(device + "/$state"));
                }
                versionRaised(message.topic(), old, message.payload()).ifPresent(found::add);
            }
        }
        return found;
    }

    /** Whether a text can be an id. */
    static boolean isId(String text) {
        return text.matches("[a-z0-9-]+");
    }

    private static boolean unsettled(String device, String description, Map<String, String> seen) {
        String root = Described.read(device, description, ignored -> { }).root
                .map(id -> device.substring(0, device.lastIndexOf('/') + 1) + id).orElse(device);
        return UNSETTLED.contains(seen.getOrDefault(device + "/$state", "init"))
                || "lost".equals(seen.get(root + "/$state"));
    }

    private static Optional<String> versionRaised(String topic, String old, String now) {
        try {
            JsonNode a = Datatype.MAPPER.readTree(old);
            JsonNode b = Datatype.MAPPER.readTree(now);
            boolean raised = b.path("version").asLong() > a.path("version").asLong();
            return raised || a.equals(b) ? Optional.empty() : Optional.of(topic + ": "
                    + (withoutVersion(a).equals(withoutVersion(b)) ? "the version went back"
                            : "the description changed but its version was not raised"));
        } catch (JsonProcessingException e) {
            return Optional.of(topic + ": does not parse: " + e.getOriginalMessage());
        }
    }

    private static JsonNode withoutVersion(JsonNode description) {
        return description instanceof ObjectNode object ? object.deepCopy().without("version") : description;
    }

    private void wrong(String topic, String what) {
        found.add(topic + ": " + what);
    }

    /** Files a topic under its device, or says why it has none. */
    private void sort(String topic, String payload) {
        String[] levels = topic.split("/", 4);
        if (levels.length < 4 || !isId(levels[0]) || !levels[1].equals("5")) {
            wrong(topic, "is not below <domain>/5/<device>");
        } else if (!isId(levels[2])) {
            wrong(topic, "'" + levels[2] + "' is no device id");
        } else {
            devices.computeIfAbsent(levels[0] + "/5/" + levels[2], any -> new TreeMap<>())
                    .put(levels[3], payload);
        }
        if (payload.isEmpty()) {
            wrong(topic, "an empty payload is no value; an empty string is the byte 0");
        }
        if (payload.startsWith("\uFEFF")) {
            wrong(topic, "starts with a byte order mark");
        }
    }

    private void device(String device, Map<String, String> topics) {
        String state = topics.get("$state");
        if (state == null) {
            wrong(device + "/$state", "is missing");
        } else if (!STATES.contains(state)) {
            wrong(device + "/$state", "'" + state + "' is no state");
        }
        if (!topics.containsKey("$description")) {
            wrong(device + "/$description", "is missing");
            return;
        }
        Described description = Described.read(device, topics.get("$description"), found::add);
        described.put(device, description);
        topics.forEach((below, payload) -> topic(device, description, below, payload));
        description.properties.forEach((path, property) -> {
            if (property.retained() && !topics.containsKey(path)) {
                wrong(device + "/" + path, "is described but has no value");
            }
        });
    }

    private void topic(String device, Described description, String below, String payload) {
        String topic = device + "/" + below;
        String[] levels = below.split("/", -1);
        if (below.equals("$state") || below.equals("$description")) {
            return;
        }
        if (levels[0].equals("$alert")) {
            if (levels.length != 2 || !isId(levels[1])) {
                wrong(topic, "is no $alert/<id>");
            }
        } else if (levels[0].equals("$log")) {
            wrong(topic, "a log message must not be retained");
        } else if (levels.length == 3 && levels[2].equals("set")) {
            wrong(topic, "a command must not be retained");
        } else if (levels.length == 2 || (levels.length == 3 && levels[2].equals("$target"))) {
            String path = levels[0] + "/" + levels[1];
            value(topic, Optional.ofNullable(description.properties.get(path)), payload);
        } else {
            wrong(topic, "is not described");
        }
    }

    private void value(String topic, Optional<Described.Property> property, String payload) {
        if (property.isEmpty()) {
            wrong(topic, "is not described");
            return;
        }
        if (!property.get().retained()) {
            wrong(topic, "is described as not retained, and is");
        }
        property.get().type().flatMap(type -> type.wrongPayload(payload, property.get().format()))
                .ifPresent(what -> wrong(topic, what));
    }

    /** Children, root and parent must tell one story. */
    private void family(String device, Described description) {
        String where = device + "/$description";
        String domain = device.substring(0, device.lastIndexOf('/') + 1);
        String id = device.substring(domain.length());
        Set<String> seen = new HashSet<>();
        String root = description.root.orElse(id);
        for (String child : description.children) {
            Described other = described.get(domain + child);
            if (!isId(child) || !seen.add(child)) {
                wrong(where, "child '" + child + "' is no id, or named twice");
            } else if (other == null) {
                wrong(where, "child '" + child + "' has no description");
            } else if (!other.root.equals(Optional.of(root))) {
                wrong(domain + child + "/$description", "its root is not '" + root + "'");
            } else if (!other.parent.orElse(root).equals(id)) {
                wrong(domain + child + "/$description", "its parent is not '" + id + "'");
            }
        }
        if (description.root.isEmpty() && description.parent.isPresent()) {
            wrong(where, "has a parent but no root");
        }
        description.root.ifPresent(any -> adopted(where, domain, id, description));
    }

    private void adopted(String where, String domain, String id, Described description) {
        String parent = description.parent.or(() -> description.root).orElseThrow();
        Described above = described.get(domain + parent);
        if (above == null || !above.children.contains(id)) {
            wrong(where, "its parent '" + parent + "' does not name it as a child");
        }
        Described top = described.get(domain + description.root.orElseThrow());
        if (top == null || top.root.isPresent()) {
            wrong(where, "its root '" + description.root.orElseThrow() + "' is no root device");
        }
    }
}

package org.conetender.homie;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * One device as its {@code $description} has it, read leniently: what is wrong is reported and the
 * rest is still used.
 */
final class Described {

    /**
     * @param type empty when the datatype is missing or unknown
     * @param format as described; empty when there is none or it is wrong
     */
    record Property(Optional<Datatype> type, Optional<String> format, boolean settable, boolean retained) {}

    private static final Set<String> DEVICE_KEYS = Set.of(
            "homie", "version", "nodes", "name", "type", "children", "root", "parent", "extensions");
    private static final Set<String> NODE_KEYS = Set.of("name", "type", "properties");
    private static final Set<String> PROPERTY_KEYS =
            Set.of("name", "datatype", "format", "settable", "retained", "unit");

    private final String where;
    private final Consumer<String> report;
    /** By "node/property". */
    final Map<String, Property> properties = new TreeMap<>();
    final List<String> children = new ArrayList<>();
    Optional<String> root = Optional.empty();
    Optional<String> parent = Optional.empty();

    private Described(String where, Consumer<String> report) {
        this.where = where;
        this.report = report;
    }

    /** Reads a description; every violation goes to {@code report}. */
    static Described read(String device, String text, Consumer<String> report) {
        Described described = new Described(device + "/$description", report);
        try {
            JsonNode json = Datatype.MAPPER.readTree(text);
            if (json.isObject()) {
                described.device(json);
            } else {
                described.wrong("is not a JSON object");
            }
        } catch (JsonProcessingException e) {
            described.wrong("does not parse: " + e.getOriginalMessage());
        }
        return described;
    }

    private void wrong(String what) {
        report.accept(where + ": " + what);
    }

    private void device(JsonNode json) {
        known(json, DEVICE_KEYS, "the device");
        String homie = json.path("homie").asText();
        if (!json.path("homie").isTextual() || !homie.matches("5\\.\\d+")) {
            wrong("'homie' is required and reads \"5.x\"");
        }
        if (!json.path("version").isIntegralNumber()) {
            wrong("'version' is required and an integer");
        }
        text(json, "name", "the device");
        text(json, "type", "the device");
        children.addAll(strings(json, "children"));
        strings(json, "extensions").stream()
                .filter(id -> !id.matches("[a-z0-9-]+(\\.[a-z0-9-]+)+(:.*)?"))
                .forEach(id -> wrong("the extension '" + id + "' is no reversed domain with a suffix"));
        root = text(json, "root", "the device");
        parent = text(json, "parent", "the device");
        members(json, "nodes", "the device").forEach(this::node);
    }

    private void node(String id, JsonNode json) {
        String name = "node '" + id + "'";
        if (isObject(json, name)) {
            known(json, NODE_KEYS, name);
            text(json, "name", name);
            text(json, "type", name);
            members(json, "properties", name)
                    .forEach((property, inner) -> property(id + "/" + property, inner));
        }
    }

    private void property(String path, JsonNode json) {
        String name = "property '" + path + "'";
        if (!isObject(json, name)) {
            return;
        }
        known(json, PROPERTY_KEYS, name);
        text(json, "name", name);
        text(json, "unit", name).filter(String::isBlank)
                .ifPresent(unit -> wrong(name + " has an empty unit"));
        Optional<Datatype> type = text(json, "datatype", name).flatMap(Datatype::named);
        if (type.isEmpty()) {
            wrong(name + " has no datatype of the convention");
        }
        Optional<String> format = text(json, "format", name);
        Optional<String> mistake = type.flatMap(known -> known.wrongFormat(format));
        mistake.ifPresent(what -> wrong(name + ": " + what));
        // With a wrong format no payload can be judged.
        properties.put(path, new Property(mistake.isPresent() ? Optional.empty() : type, format,
                flag(json, "settable", false, name), flag(json, "retained", true, name)));
    }

    private Map<String, JsonNode> members(JsonNode json, String key, String name) {
        Map<String, JsonNode> members = new TreeMap<>();
        JsonNode map = json.path(key);
        if (!map.isMissingNode() && isObject(map, "'" + key + "' of " + name)) {
            map.properties().forEach(entry -> members.put(entry.getKey(), entry.getValue()));
        }
        members.keySet().stream().filter(id -> !Homie5Checker.isId(id))
                .forEach(id -> wrong("'" + id + "' in '" + key + "' of " + name + " is no id"));
        return members;
    }

    private boolean isObject(JsonNode json, String name) {
        if (!json.isObject()) {
            wrong(name + " is not an object");
        }
        return json.isObject();
    }

    private void known(JsonNode json, Set<String> keys, String name) {
        json.fieldNames().forEachRemaining(key -> {
            if (!keys.contains(key)) {
                wrong(name + " has an unknown key '" + key + "'");
            }
        });
    }

    private Optional<String> text(JsonNode json, String key, String name) {
        JsonNode value = json.path(key);
        if (value.isMissingNode()) {
            return Optional.empty();
        }
        if (!value.isTextual()) {
            wrong("'" + key + "' of " + name + " is not a string");
            return Optional.empty();
        }
        return Optional.of(value.asText());
    }

    private boolean flag(JsonNode json, String key, boolean otherwise, String name) {
        JsonNode value = json.path(key);
        if (!value.isMissingNode() && !value.isBoolean()) {
            wrong("'" + key + "' of " + name + " is neither true nor false");
        }
        return value.asBoolean(otherwise);
    }

    private List<String> strings(JsonNode json, String key) {
        JsonNode array = json.path(key);
        List<String> out = new ArrayList<>();
        if (!array.isMissingNode() && !array.isArray()) {
            wrong("'" + key + "' of the device is not an array");
        }
        array.forEach(item -> {
            if (item.isTextual()) {
                out.add(item.asText());
            } else {
                wrong("'" + key + "' of the device holds something that is no string");
            }
        });
        return out;
    }
}

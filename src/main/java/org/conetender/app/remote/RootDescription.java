package org.conetender.app.remote;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads the little that is needed of a root device's description, whoever wrote it. */
final class RootDescription {

    private static final JsonFactory JSON = new JsonFactory();

    private RootDescription() {}

    /** Ids of the child devices; none where this is no description. */
    static List<String> children(String description) {
        List<String> out = new ArrayList<>();
        try (JsonParser p = JSON.createParser(description)) {
            if (seek(p, "children") && p.nextToken() == JsonToken.START_ARRAY) {
                while (p.nextToken() == JsonToken.VALUE_STRING) {
                    out.add(p.getText());
                }
            }
            return out;
        } catch (IOException notJson) {
            return List.of(); // no description of ours: a site without cones
        }
    }

    /** The device's name for people. */
    static Optional<String> name(String description) {
        try (JsonParser p = JSON.createParser(description)) {
            return seek(p, "name") ? Optional.ofNullable(p.nextTextValue()) : Optional.empty();
        } catch (IOException notJson) {
            return Optional.empty(); // no description of ours: a site without a name
        }
    }

    /** To the value of a key of the outermost object. */
    private static boolean seek(JsonParser p, String key) throws IOException {
        p.nextToken();
        while (p.nextToken() == JsonToken.FIELD_NAME) {
            if (p.currentName().equals(key)) {
                return true;
            }
            p.nextToken();
            p.skipChildren();
        }
        return false;
    }
}

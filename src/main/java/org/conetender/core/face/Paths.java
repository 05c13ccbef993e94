package org.conetender.core.face;

import java.util.HashMap;
import java.util.Map;

/**
 * Topics of a site's and its cones' properties, each put together once: a page has hundreds of them and is
 * written anew every second. For one thread.
 */
public final class Paths {

    private final Names names;
    private final Map<String, Map<String, String>> byCone = new HashMap<>();

    public Paths(Names names) {
        this.names = names;
    }

    Names names() {
        return names;
    }

    /** @param cone empty for the site  @param property after its node, such as {@code water/setpoint} */
    String of(String cone, String property) {
        Map<String, String> known = byCone.get(cone);
        if (known == null) {
            known = new HashMap<>();
            byCone.put(cone, known);
        }
        String topic = known.get(property);
        if (topic == null) {
            topic = names.cone(cone) + "/" + property;
            known.put(property, topic);
        }
        return topic;
    }
}

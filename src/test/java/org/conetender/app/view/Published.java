package org.conetender.app.view;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.conetender.core.face.Names;

/** What a daemon may have published of Larkmoor Fry Room, to be looked at. One thread. */
final class Published {

    private static final Names NAMES = new Names("homie", "larkmoor");

    private final Map<String, String> topics = new TreeMap<>(Map.of("homie/5/larkmoor/$state", "ready"));

    /** @param below the site's id, such as {@code -a/hatch/stage}  @param payload null takes it back */
    Published says(String below, String payload) {
        String topic = "homie/5/larkmoor" + below;
        if (payload == null) {
            topics.remove(topic);
        } else {
            topics.put(topic, payload);
        }
        return this;
    }

    /** A batch some way on: nothing is wrong with it. */
    Published incubating(String cone) {
        String[][] values = {{"hatch/stage", "incubating"}, {"hatch/degree-hours", "218.0"},
            {"hatch/degree-hours-least", "212.2"}, {"hatch/degree-hours-most", "223.8"},
            {"hatch/degree-hours-needed", "380.0"}, {"hatch/hatched", "3"},
            {"hatch/ready-at", "2026-03-03T10:40:00+00:00"},
            {"hatch/ready-from", "2026-03-03T05:10:00+00:00"},
            {"hatch/ready-until", "2026-03-03T14:20:00+00:00"}, {"water/temperature", "26.9"},
            {"water/setpoint", "27"}, {"water/held", "27"}, {"water/trust", "trusted"},
            {"heat/on", "true"}, {"heat/duty", "31"},
            {"air/on", "true"}, {"air/proven", "unverified"}, {"lamp/on", "false"}, {"siphon/state", "safe"},
            {"hand/next-step", "nothing; it is growing."}};
        for (String[] v : values) {
            says("-" + cone + "/" + v[0], v[1]);
        }
        return this;
    }

    SiteView view(String... cones) {
        return SiteView.of(topics, NAMES, List.of(cones), Optional.of("Larkmoor Fry Room"));
    }
}

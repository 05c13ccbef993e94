package org.conetender.app.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.conetender.core.face.Names;

/**
 * One look at a site.
 *
 * @param name for people
 * @param state of the root device, such as {@code ready} or {@code lost}
 * @param notes of the whole site
 * @param cones in the order of the site's description
 * @param alerts of the whole site, sentences by their id
 */
public record SiteView(String name, String state, Notes notes, List<ConeView> cones,
                       SortedMap<String, String> alerts) {

    /**
     * @param digest what there is for the next feed  @param room °C  @param clock whether trusted
     * @param alarms the list of all of them
     */
    public record Notes(Optional<String> digest, Optional<String> room, Optional<String> clock,
                        Optional<String> alarms) {}

    /** @param topics topic to payload  @param cones ids  @param name for people, if it is known */
    public static SiteView of(Map<String, String> topics, Names names, List<String> cones,
            Optional<String> name) {
        String root = names.root();
        List<ConeView> views = new ArrayList<>();
        for (String c : cones) {
            views.add(ConeView.of(topics, names.cone(c), c));
        }
        return new SiteView(name.orElse(names.site()), topics.getOrDefault(root + "/$state", "not there"),
                new Notes(Optional.ofNullable(topics.get(root + "/feed/digest")),
                        Optional.ofNullable(topics.get(root + "/room/temperature")),
                        Optional.ofNullable(topics.get(root + "/site/clock")),
                        Optional.ofNullable(topics.get(root + "/site/alarms"))),
                views, alerts(topics, root));
    }

    /** Whether a daemon keeps what is shown true. */
    public boolean alive() {
        return state.equals("ready");
    }

    static SortedMap<String, String> alerts(Map<String, String> topics, String device) {
        String prefix = device + "/$alert/";
        SortedMap<String, String> out = new TreeMap<>();
        topics.forEach((t, p) -> {
            if (t.startsWith(prefix)) {
                out.put(t.substring(prefix.length()), p);
            }
        });
        return out;
    }
}

package org.conetender.sim;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.conetender.core.State;

/** Which alarms stand, so that many rules can ask without looking at each alarm again. */
final class Told {

    /** Nobody lives who could tell anything. */
    static final Told NOTHING = new Told(Map.of());

    private final Map<String, Set<String>> kinds;

    private Told(Map<String, Set<String>> kinds) {
        this.kinds = kinds;
    }

    static Told of(State s) {
        Map<String, Set<String>> all = new HashMap<>();
        s.live().alarms().raised().forEach(a -> all.computeIfAbsent(a.cone(), k -> new HashSet<>())
                .add(a.kind().id()));
        return new Told(all);
    }

    /** Whether one of these stands at that cone; empty for the site's own. */
    boolean any(String cone, String... ids) {
        Set<String> there = kinds.getOrDefault(cone, Set.of());
        for (String id : ids) {
            if (there.contains(id)) {
                return true;
            }
        }
        return false;
    }

    /** Whether nothing stands there, nor for the site. */
    boolean none(String cone) {
        return !kinds.containsKey(cone) && !kinds.containsKey("");
    }

    /** Whether it stands at any cone, or at the site. */
    boolean anywhere(String id) {
        for (Set<String> there : kinds.values()) {
            if (there.contains(id)) {
                return true;
            }
        }
        return false;
    }
}

package org.conetender.sim;

import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.State;
import org.conetender.core.settings.Cone;

/** The last power cut, and what it fell upon; for the rules about what must be told after it. */
final class Cuts {

    private final Set<String> animalsBefore = new TreeSet<>();
    private long cutMs;

    /** The house's power is off for this second. */
    void dark() {
        cutMs += 1_000;
    }

    /** The power goes off. @param last what the daemon held */
    void begins(State last, Iterable<Cone> cones) {
        cutMs = 0;
        animalsBefore.clear();
        for (Cone c : cones) {
            if (SiteRules.animals(last, c)) {
                animalsBefore.add(c.id());
            }
        }
    }

    /** How long the last one lasted, ms; 0 when there was none in the life before. */
    long forMs() {
        return cutMs;
    }

    /** Whether that cone held animals when the power went. */
    boolean hadAnimals(String cone) {
        return animalsBefore.contains(cone);
    }
}

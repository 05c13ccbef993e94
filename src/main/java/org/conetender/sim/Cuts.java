package org.conetender.sim;

import java.util.Map;
import java.util.TreeMap;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.settings.Cone;

/** The last power cut, and what it fell upon; for the rules about what must be told after it. */
final class Cuts {

    private final Map<String, Batch> batchBefore = new TreeMap<>();
    private long cutMs;
    private long offsetMs;
    private long steppedMs;

    /** The house's power is off for this second. Who trusts a clock that is stepped is misled about it. */
    void dark(SimClock clock) {
        cutMs += 1_000;
        steppedMs = offsetMs(clock) - offsetMs;
    }

    /** The power goes off. @param last what the daemon held */
    void begins(State last, Iterable<Cone> cones, SimClock clock) {
        cutMs = 0;
        offsetMs = offsetMs(clock);
        steppedMs = 0;
        batchBefore.clear();
        for (Cone c : cones) {
            batchBefore.put(c.id(), last.book().cone(c.id()).batch());
        }
    }

    /** What the record lost of it nobody can know: that reports may be missing is told instead. */
    void damaged() {
        batchBefore.clear();
    }

    /** Who takes back that there were animals yet takes them for cysts in that cut too. */
    void look(String cone, Batch now) {
        if (now.stage().develops() && !now.stage().hasAnimals()) {
            batchBefore.remove(cone);
        }
    }

    private static long offsetMs(SimClock clock) {
        return clock.now().wallMs() - clock.trueWallMs();
    }

    /** How long the last one lasted by any clock, ms; 0 when there was none in the life before. */
    long forMs() {
        return Math.min(cutMs, cutMs + steppedMs);
    }

    /** Whether animals of that batch were in that cone when the power went. */
    boolean hadAnimals(String cone, Batch now) {
        Batch was = batchBefore.get(cone);
        return was != null && was.number() == now.number() && was.stage().hasAnimals();
    }
}

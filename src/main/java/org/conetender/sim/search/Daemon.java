package org.conetender.sim.search;

import java.util.List;
import java.util.Optional;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.Tick;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.guard.Guard;
import org.conetender.core.image.Image;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;

/**
 * What is searched: the two verbs by which a daemon lives. A wrong one is put here to see whether it is
 * found.
 */
public interface Daemon {

    /** One tick. */
    Result step(State before, Image image);

    /** The state with which a life of the process begins. @param facts all that the record holds, in order */
    State begin(List<Fact> facts, Optional<Checkpoint> checkpoint, Moment now);

    /** The daemon itself, with these guards. */
    static Daemon real(Settings settings, List<Guard> guards) {
        Tick tick = new Tick(settings, guards);
        return new Daemon() {
            @Override
            public Result step(State before, Image image) {
                return tick.step(before, image);
            }

            @Override
            public State begin(List<Fact> facts, Optional<Checkpoint> checkpoint, Moment now) {
                return State.begin(settings, facts, checkpoint, now);
            }
        };
    }
}

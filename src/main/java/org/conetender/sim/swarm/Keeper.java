package org.conetender.sim.swarm;

import java.util.Optional;
import org.conetender.sim.Habit;

/** Who looks after the cones in a story. */
public enum Keeper {
    /** Tells everything, soon, and without mistakes. */
    CAREFUL,
    /** Touches it twice a day. */
    TWO_TOUCHES,
    /** As the seed draws: reports that are early, late, wrong, for the wrong cone, or never come. */
    ANYBODY,
    /** Nobody, but what the story says. */
    NOBODY;

    /** The habit; empty for nobody. */
    Optional<Habit> habit(long seed) {
        return switch (this) {
            case CAREFUL -> Optional.of(Habit.careful());
            case TWO_TOUCHES -> Optional.of(Habit.twoTouches());
            case ANYBODY -> Optional.of(Habit.draw(seed));
            case NOBODY -> Optional.empty();
        };
    }
}

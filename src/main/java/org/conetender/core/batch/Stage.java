package org.conetender.core.batch;

import java.util.Locale;
import org.conetender.core.unit.Moment;

/** Where a batch stands (design.md, the life of a batch). Each stage carries only its own data. */
public sealed interface Stage {

    /** When this stage began. */
    Moment since();

    /** Empty and ready to be filled. */
    record Clean(Moment since) implements Stage {}

    /** Water is in, no cysts yet. */
    record Filled(Moment since) implements Stage {}

    /** Cysts take up water; the hatch clock runs. */
    record Hydrating(Moment since) implements Stage {}

    /** Development up to the first tenth hatched. */
    record Incubating(Moment since) implements Stage {}

    /** From the first tenth to the harvest point. */
    record Hatching(Moment since) implements Stage {}

    /** At the harvest point; food value falls by the hour. */
    record Ready(Moment since) implements Stage {}

    /** Air off, lamp on, waiting. The air went off when the stage began. */
    record Settling(Moment since) implements Stage {}

    /** The wait is over. @param airOffAt when the air went off */
    record Settled(Moment since, Moment airOffAt) implements Stage {}

    /** A person draws at the drain. @param airOffAt when the air went off */
    record Drawing(Moment since, Moment airOffAt) implements Stage {}

    /** Emptied; wants rinsing and cleaning. */
    record Drained(Moment since) implements Stage {}

    /** Given up; the water may still be in. */
    record Abandoned(Moment since) implements Stage {}

    /** The stage's word, as people and topics have it. */
    default String word() {
        return getClass().getSimpleName().toLowerCase(Locale.ROOT);
    }

    /** Whether water stands in the cone as far as people have told. */
    default boolean hasWater() {
        return switch (this) {
            case Clean _, Drained _ -> false;
            case Filled _, Hydrating _, Incubating _, Hatching _, Ready _, Settling _, Settled _, Drawing _,
                 Abandoned _ -> true;
        };
    }

    /** Whether nauplii swim in it, which makes a lack of air a matter of minutes (science.md §7.3). */
    default boolean hasAnimals() {
        return switch (this) {
            case Hatching _, Ready _, Settling _, Settled _, Drawing _ -> true;
            case Clean _, Filled _, Hydrating _, Incubating _, Drained _, Abandoned _ -> false;
        };
    }

    /** Whether development is followed: from wetting until the water is drawn off. */
    default boolean develops() {
        return switch (this) {
            case Hydrating _, Incubating _, Hatching _, Ready _, Settling _, Settled _, Drawing _ -> true;
            case Clean _, Filled _, Drained _, Abandoned _ -> false;
        };
    }

    /** Whether its harvest point lies ahead: it develops, and was neither called ready nor separated. */
    default boolean growing() {
        return switch (this) {
            case Hydrating _, Incubating _, Hatching _ -> true;
            case Clean _, Filled _, Ready _, Settling _, Settled _, Drawing _, Drained _,
                 Abandoned _ -> false;
        };
    }

    /** Whether the air is meant to be off, and since when; null while it is meant to be on. */
    default Moment airOff() {
        return switch (this) {
            case Settling s -> s.since();
            case Settled s -> s.airOffAt();
            case Drawing d -> d.airOffAt();
            case Clean _, Filled _, Hydrating _, Incubating _, Hatching _, Ready _, Drained _, Abandoned _ ->
                    null;
        };
    }
}

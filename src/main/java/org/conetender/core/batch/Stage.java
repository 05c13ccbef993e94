package org.conetender.core.batch;

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
    record Settling(Moment since) implements Stage {
        @Override
        public Moment airOff() {
            return since;
        }
    }

    /** The wait is over. @param airOffAt when the air went off */
    record Settled(Moment since, Moment airOffAt) implements Stage {
        @Override
        public Moment airOff() {
            return airOffAt;
        }
    }

    /** A person draws at the drain. @param airOffAt when the air went off */
    record Drawing(Moment since, Moment airOffAt) implements Stage {
        @Override
        public Moment airOff() {
            return airOffAt;
        }
    }

    /** Emptied; wants rinsing and cleaning. */
    record Drained(Moment since) implements Stage {}

    /** Given up; the water may still be in. */
    record Abandoned(Moment since) implements Stage {}

    /** The stage's word, as people and topics have it. */
    default String word() {
        return switch (this) {
            case Clean _ -> "clean";
            case Filled _ -> "filled";
            case Hydrating _ -> "hydrating";
            case Incubating _ -> "incubating";
            case Hatching _ -> "hatching";
            case Ready _ -> "ready";
            case Settling _ -> "settling";
            case Settled _ -> "settled";
            case Drawing _ -> "drawing";
            case Drained _ -> "drained";
            case Abandoned _ -> "abandoned";
        };
    }

    /** What is in a cone as far as people have told; each stage has its row. */
    enum Holds { NOTHING, WATER, CYSTS, CYSTS_AND_NAUPLII, NAUPLII }

    default Holds holds() {
        return switch (this) {
            case Clean _ -> Holds.NOTHING;
            case Filled _ -> Holds.WATER;
            case Hydrating _ -> Holds.CYSTS;
            case Incubating _ -> Holds.CYSTS;
            case Hatching _ -> Holds.CYSTS_AND_NAUPLII;
            case Ready _ -> Holds.NAUPLII;
            case Settling _ -> Holds.NAUPLII;
            case Settled _ -> Holds.NAUPLII;
            case Drawing _ -> Holds.NAUPLII;
            case Drained _ -> Holds.NOTHING;
            case Abandoned _ -> Holds.WATER;
        };
    }

    /** Whether water stands in the cone as far as people have told. */
    default boolean hasWater() {
        return holds() != Holds.NOTHING;
    }

    /** Whether nauplii swim in it, which makes a lack of air a matter of minutes (science.md §7.3). */
    default boolean hasAnimals() {
        return holds() == Holds.CYSTS_AND_NAUPLII || holds() == Holds.NAUPLII;
    }

    /** Whether development is followed: from wetting until the water is drawn off. */
    default boolean develops() {
        return growing() || hasAnimals();
    }

    /** Whether its harvest point lies ahead: it develops, and was neither called ready nor separated. */
    default boolean growing() {
        return holds() == Holds.CYSTS || holds() == Holds.CYSTS_AND_NAUPLII;
    }

    /** Whether the air is meant to be off, and since when; null while it is meant to be on. */
    default Moment airOff() {
        return null;
    }
}

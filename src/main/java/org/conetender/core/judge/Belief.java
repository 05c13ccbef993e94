package org.conetender.core.judge;

/**
 * What we believe of a water temperature. Everything that may veto heat asks {@link #hottestC};
 * everything that may call a person for cold asks {@link #coldestC}.
 */
public sealed interface Belief {

    /** A fresh reading that passed the whole ladder. @param degreesC °C */
    record Trusted(double degreesC) implements Belief {}

    /**
     * The probe has been silent for a little while; the water is projected both ways.
     *
     * @param lastC the last trusted reading, °C
     * @param spreadC how far the water can have moved since, K
     * @param ageMs age of that reading
     */
    record Projected(double lastC, double spreadC, long ageMs) implements Belief {}

    /** Nothing can be said. @param why in words, for a person */
    record Untrusted(String why) implements Belief {}

    /** The hottest the water can credibly be, °C; positive infinity when nothing can be said. */
    default double hottestC() {
        return switch (this) {
            case Trusted t -> t.degreesC();
            case Projected p -> p.lastC() + p.spreadC();
            case Untrusted _ -> Double.POSITIVE_INFINITY;
        };
    }

    /** The coldest the water can credibly be, °C; negative infinity when nothing can be said. */
    default double coldestC() {
        return switch (this) {
            case Trusted t -> t.degreesC();
            case Projected p -> p.lastC() - p.spreadC();
            case Untrusted _ -> Double.NEGATIVE_INFINITY;
        };
    }

    /** The single best number, °C; NaN when nothing can be said. */
    default double middleC() {
        return switch (this) {
            case Trusted t -> t.degreesC();
            case Projected p -> p.lastC();
            case Untrusted _ -> Double.NaN;
        };
    }

    /** Whether heat may be based on it. */
    default boolean known() {
        return !(this instanceof Untrusted);
    }
}

package org.conetender.core.image;

import java.util.Optional;

/** What can be asked of the daemon. */
public sealed interface Ask {

    /** A hand step without figures, or with the cone's usual ones. */
    record Did(Step step) implements Ask {}

    /** The cone was filled. @param litres water, L  @param ppt salt, g per kg; 0 when salt comes later */
    record DidFill(double litres, double ppt) implements Ask {}

    /** Cysts went in. @param lot label of the tin  @param cystsG dry product, g */
    record DidStock(String lot, double cystsG) implements Ask {}

    /**
     * Cysts went in, with the usual ones of the cone for what was not said. It is written down whole.
     *
     * @param lot label of the tin  @param cystsG dry product, g
     */
    record DidStockAsUsual(Optional<String> lot, Optional<Double> cystsG) implements Ask {}

    /**
     * A sub-sample was counted.
     *
     * @param nauplii free-swimming animals seen
     * @param umbrella embryos hanging below their shells
     * @param unhatched full cysts that have not opened
     * @param sampleMl the sub-sample's volume, mL
     */
    record DidCount(int nauplii, int umbrella, int unhatched, double sampleMl) implements Ask {}

    /** The harvest was weighed. @param wetG nauplii, rinsed and drained in the sieve, g */
    record DidWeigh(double wetG) implements Ask {}

    /** Somebody looked how much is left of a lot. @param lot label of the tin  @param cystsG in it now, g */
    record TinHolds(String lot, double cystsG) implements Ask {}

    /** Change one of the cone's usual values; each empty one stays. */
    record SetUsual(Optional<String> lot, Optional<Double> litres, Optional<Double> cystsG,
                    Optional<Double> ppt) implements Ask {}

    /** Hold this batch at another temperature. @param degreesC °C */
    record SetSetpoint(double degreesC) implements Ask {}

    /** Have this batch ready by that hour; choose the temperature for it. @param hour empty: give it up */
    record ReadyBy(Optional<Hour> hour) implements Ask {}

    /** The last report of this cone was a mistake. @param what its step word, or {@code last} */
    record Withdraw(String what) implements Ask {}

    /** A person has seen an alarm. @param alarm its id, as in {@code $alert/<id>} */
    record Acknowledge(String alarm) implements Ask {}

    /**
     * Nobody wants to hear of an alarm for a time.
     *
     * @param alarm its id
     * @param hours for so long, h; 0 ends it
     */
    record Shelve(String alarm, double hours) implements Ask {

        /** The longest time: half a day, so that it is never longer than until the next round (guess). */
        public static final double MOST_HOURS = 12;
    }

    /** Which alarms stand, and how. It changes nothing and is never recorded. */
    record Alarms() implements Ask {}

    /** Nobody is near until told otherwise. @param helper who may be called; empty ends the absence */
    record Away(String helper) implements Ask {}

    /** The word under which it is told and remembered: {@code setpoint}, or that of its step. */
    default String word() {
        return switch (this) {
            case Did d -> d.step().word();
            case DidFill _ -> "filled";
            case DidStock _ -> "stocked";
            case DidStockAsUsual _ -> "stocked";
            case DidCount _ -> "count";
            case DidWeigh _ -> "weighed";
            case TinHolds _ -> "tin";
            case SetUsual _ -> "usual";
            case SetSetpoint _ -> "setpoint";
            case ReadyBy _ -> "ready-by";
            case Withdraw _ -> "withdraw";
            case Acknowledge _ -> "acknowledge";
            case Shelve _ -> "shelve";
            case Alarms _ -> "alarms";
            case Away _ -> "away";
        };
    }
}

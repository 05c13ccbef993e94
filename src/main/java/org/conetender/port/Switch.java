package org.conetender.port;

/**
 * One output. Every command is a lease: when it is not renewed in time the output goes to its safe
 * level by itself, also while the caller hangs. De-energised is always the safe level; an output
 * whose safe effect is "on" (the air pump) is wired so that its relay pauses it when energised.
 */
public interface Switch {

    /** The output's id, such as {@code a.heat} or {@code a.air-pause}. */
    String id();

    /**
     * Hold a level until renewed or expired. Called from the control thread; returns at once.
     *
     * @param energised whether the coil or gate is driven
     * @param validForMs the lease in milliseconds, above 0
     * @return whether the level could be set; false is a fault for the next image
     */
    boolean hold(boolean energised, long validForMs);
}

/**
 * Trials of the heating law on many random cones: plants drawn from a seed, laws that compete on the same
 * plants, and what came of it. Nothing here is used by the daemon or by the demonstration. Start with
 * {@link org.conetender.sim.trial.ControlTrial}.
 */
package org.conetender.sim.trial;

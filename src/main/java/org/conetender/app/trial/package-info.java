/**
 * Trials that need the daemon's forecast and the simulator's truth side by side, which see each other nowhere
 * else. No command and no figure of a target lives here. Start with
 * {@link org.conetender.app.trial.HourPilot}.
 */
package org.conetender.app.trial;

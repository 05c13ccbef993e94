/**
 * The world that the daemon is tried in: plant, cysts, oxygen, people, faults and simulated devices, all
 * from one seed and on one thread. Nothing here may import {@code core.hatch} or share a formula with it,
 * read a real clock, or decide anything for the daemon. Start at {@link org.conetender.sim.World}.
 */
package org.conetender.sim;

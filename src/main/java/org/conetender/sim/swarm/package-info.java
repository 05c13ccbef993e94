/**
 * The simulator as an adversary: each seed draws a story of some kinds of trouble out of all there are, lets
 * the whole daemon live through it, and holds every invariant after every second. A story that breaks one
 * is shrunk to its few events that matter and can be told again as text. No clock, no file, no thread but
 * those of {@link org.conetender.sim.swarm.Swarm}. Start with {@link org.conetender.sim.swarm.Tale}.
 */
package org.conetender.sim.swarm;

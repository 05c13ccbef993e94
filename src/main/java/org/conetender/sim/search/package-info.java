/**
 * A search through all that can happen to one cone: the real tick, started from an empty record, is led
 * through every order of steps, faults, restarts and time that a canonical likeness of its state tells
 * apart. Nothing here models the daemon, draws lots or reads a clock; what it believes of the world is kept
 * beside the state and judged by {@link org.conetender.sim.search.Rules}. Start with {@link
 * org.conetender.sim.search.Search}.
 */
package org.conetender.sim.search;

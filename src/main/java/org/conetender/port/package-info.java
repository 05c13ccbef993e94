/**
 * The contracts between the agents and the world: who may call, what never waits, what failing looks
 * like. Interfaces only; nothing here is implemented. Start with {@link org.conetender.port.Switch},
 * whose leases the safety of every output rests on, then {@link org.conetender.port.Store}.
 */
package org.conetender.port;

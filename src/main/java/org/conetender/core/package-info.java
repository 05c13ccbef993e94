/**
 * The pure heart: what one tick decides, from settings, state and image alone. No I/O, no clock, no
 * thread and no logger may live here or below, only {@code java.base} and Hipparchus by name. Start
 * with {@link org.conetender.core.Tick}, then {@link org.conetender.core.Desk} for requests and
 * {@link org.conetender.core.Ledger} for the order of commits.
 */
package org.conetender.core;

/**
 * The machine's clocks: the one place where time is read.
 *
 * <p>No timers, waiting or dates live here; everything else takes a moment as an argument.
 *
 * <p>Start with {@link org.conetender.adapter.clock.LinuxClock}.
 */
package org.conetender.adapter.clock;

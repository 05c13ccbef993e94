/**
 * What the cysts do: degree-hours, hatched share, forecast, gaps, and how long animals can go without air.
 * No state, clock, probe or batch lives here; every method answers from its arguments alone, on any thread.
 * Start at {@link org.conetender.core.hatch.Development}, then {@link org.conetender.core.hatch.Forecast}.
 */
package org.conetender.core.hatch;

/**
 * Moments, spans and units: what every other package measures by. Nothing here knows of cones, cysts
 * or settings. Start with {@link org.conetender.core.unit.Moment}, which keeps the two clocks apart.
 */
package org.conetender.core.unit;

package org.conetender.app.config;

/**
 * One setting as it counts.
 *
 * @param key cones by their id: {@code cone[a].limits.guard-c}
 * @param value as it would stand in the file; {@code none} where a thing is not fitted
 * @param unit for people; empty where there is none
 * @param isDefault whether nothing was given and the default counts
 */
public record Effective(String key, String value, String unit, boolean isDefault) {}

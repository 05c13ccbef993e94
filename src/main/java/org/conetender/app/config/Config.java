package org.conetender.app.config;

import org.conetender.core.settings.Settings;

/**
 * A whole configuration that has passed every check; immutable for the life of the process.
 *
 * @param settings what the core needs to know
 * @param hardware what only the wiring needs to know: lines, paths, the broker
 */
public record Config(Settings settings, Hardware hardware) {}

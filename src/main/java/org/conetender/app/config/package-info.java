/**
 * The one configuration file, turned once into a checked value or refused with every error at once.
 * No device, socket or database is opened here, and nothing is applied by halves: what is refused
 * yields no {@link org.conetender.app.config.Config} at all.
 * Start with {@code SettingDocs}, the table of all settings, then {@code ConfigLoader}.
 */
package org.conetender.app.config;

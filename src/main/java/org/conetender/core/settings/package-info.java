/**
 * What was decided before the start, checked once and immutable for the life of the process. No file
 * is read and no default is chosen here; that is the configuration's work. Start with
 * {@link org.conetender.core.settings.Settings}, then {@link org.conetender.core.settings.Cone}.
 */
package org.conetender.core.settings;

/**
 * The commands a person types: their options, their words, their exit codes.
 * No decision about cones and no arithmetic of the trade lives here; both are asked of the core.
 * Start at the command of that name, such as {@link org.conetender.app.cli.ForecastCommand}.
 */
package org.conetender.app.cli;

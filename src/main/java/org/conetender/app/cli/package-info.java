/**
 * The commands, one class each, and what they print.
 * No command decides anything about a cone: it reads what a person typed, calls the part that does
 * the work and turns the answer into text, JSON and an exit code.
 * Start with the command whose help you have just read; {@code Main} lists them all.
 */
package org.conetender.app.cli;

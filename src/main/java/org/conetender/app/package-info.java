/**
 * The program: the commands, and the one place where the parts are chosen and joined.
 * Nothing here decides anything about a cone; no other package may know this one.
 * Start with {@link org.conetender.app.Main}, then {@link org.conetender.app.Wiring}.
 */
package org.conetender.app;

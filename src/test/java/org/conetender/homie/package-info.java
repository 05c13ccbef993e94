/**
 * Holds what a broker delivers against the Homie 5 convention, knowing nothing of conetender.
 * Nothing of the daemon may be imported here: whoever checks must not share a mistake with whom it checks.
 * Start at {@link org.conetender.homie.Homie5Checker}.
 */
package org.conetender.homie;

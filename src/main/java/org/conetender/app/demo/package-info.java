/**
 * The demonstration: the real daemon on a simulated ground, a real broker, a person who acts through it.
 * Nothing here may help the daemon or know its state: what is shown was published, what is done was said.
 * Start with {@link org.conetender.app.demo.Demo}.
 */
package org.conetender.app.demo;

/**
 * What a person sees of a site in a terminal, made from its topics alone.
 * Nothing is known here of where the topics come from, and nothing is decided; times are arguments.
 * Start with {@link org.conetender.app.view.SiteView}, then {@link org.conetender.app.view.Screen}.
 */
package org.conetender.app.view;

/**
 * All that one tick is told: samples with their ages, contacts, requests, commits, the health of our
 * own pipes. Nothing is interpreted here, and each kind of "not known" keeps a case of its own. Start
 * with {@link org.conetender.core.image.Image}, then {@link org.conetender.core.image.Ask}.
 */
package org.conetender.core.image;

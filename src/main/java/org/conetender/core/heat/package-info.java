/**
 * The heating law: how much heat is wanted, and whose turn it is under the site's limit of watts. It
 * only wants; whether it may is for the guards. Start with {@link org.conetender.core.heat.Hold}, then
 * {@link org.conetender.core.heat.Share}.
 */
package org.conetender.core.heat;

/**
 * What we allow: one file for each danger, every one of them asked every tick. A guard remembers
 * nothing and switches nothing; it finds, vetoes, and says what to do. Start with
 * {@link org.conetender.core.guard.Guard}, then {@link org.conetender.core.guard.CookedBatch} as the
 * pattern of all others.
 */
package org.conetender.core.guard;

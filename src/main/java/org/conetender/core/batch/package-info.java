/**
 * The life of one batch as a sealed state machine, and the book that is folded from facts. No outputs
 * and no vetoes live here; dangers belong to the guards. Start with
 * {@link org.conetender.core.batch.Stage}, then {@link org.conetender.core.batch.Fits} for what is
 * refused and {@link org.conetender.core.batch.Book} for what is kept.
 */
package org.conetender.core.batch;

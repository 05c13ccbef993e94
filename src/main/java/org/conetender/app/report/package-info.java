/**
 * What the record tells afterwards: batches, lots, cleaning, as text, CSV and JSON.
 * Facts are folded as the daemon folds them; nothing is written, and no clock is read.
 * Start with {@link org.conetender.app.report.Past}, then {@link org.conetender.app.report.Story}.
 */
package org.conetender.app.report;

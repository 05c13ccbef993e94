/**
 * The durable record in two SQLite files: the book of facts and checkpoint, and the history of minutes.
 *
 * <p>No meaning lives here: facts come and go as text, and nothing is judged. Of a damaged book what can be
 * read is gone on with, and said to be all that is left.
 *
 * <p>Start with {@link org.conetender.adapter.sqlite.SqliteStore}; the tables are in {@code Schema}.
 */
package org.conetender.adapter.sqlite;

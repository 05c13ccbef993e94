/**
 * The durable record in one SQLite file: facts, one-minute temperatures and the checkpoint.
 *
 * <p>No meaning lives here: facts come and go as text, and nothing is judged, repaired or left out.
 *
 * <p>Start with {@link org.conetender.adapter.sqlite.SqliteStore}; the tables are in {@code Schema}.
 */
package org.conetender.adapter.sqlite;

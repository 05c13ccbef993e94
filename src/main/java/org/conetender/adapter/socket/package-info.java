/**
 * Requests over a local Unix socket, and the client that sends them: for a machine without a broker.
 *
 * <p>What a line means is not known here: a {@link org.conetender.adapter.socket.LineReader} says it.
 *
 * <p>Start with {@link org.conetender.adapter.socket.TellSocket}.
 */
package org.conetender.adapter.socket;

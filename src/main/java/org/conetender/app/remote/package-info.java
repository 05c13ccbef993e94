/**
 * A running daemon as any client sees it: through its broker, by its descriptions, or by its socket.
 * Nothing of the daemon's own state may be looked at here, so that these commands work from anywhere.
 * Start with {@link org.conetender.app.remote.RemoteSite}.
 */
package org.conetender.app.remote;

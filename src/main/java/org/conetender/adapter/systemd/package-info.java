/**
 * What the service manager is told: ready, alive, a status line, stopping.
 *
 * <p>When to say so is not decided here, and nothing here waits, retries or starts a thread.
 *
 * <p>Start with {@link org.conetender.adapter.systemd.SdNotify}.
 */
package org.conetender.adapter.systemd;

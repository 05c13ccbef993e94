package org.conetender.adapter.systemd;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.conetender.port.Supervisor;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * systemd's notification socket (sd_notify(3)). Without one, as when a person starts the daemon in a
 * terminal, it says so once in the log and does nothing. A message that cannot be delivered is logged
 * once for each cause and not repeated: the next one is a second away, and a watchdog that is not fed
 * restarts the daemon, which is what it is for.
 *
 * <p>Control thread; nothing here waits.
 */
public final class SdNotify implements Supervisor {

    private static final Logger LOG = LoggerFactory.getLogger(SdNotify.class);

    /** A status line is for a terminal: guess. */
    private static final int MOST_STATUS = 200;

    private final Optional<String> socket;
    private final Set<Integer> told = new HashSet<>();
    private final AtomicReference<String> lastStatus = new AtomicReference<>("");

    /** @param socket the value of NOTIFY_SOCKET: a path, {@code @name}, or empty */
    public SdNotify(Optional<String> socket) {
        this.socket = socket.filter(Datagrams::fits);
        if (socket.isEmpty()) {
            LOG.info("no service manager is listening (NOTIFY_SOCKET is not set): no watchdog guards this"
                    + " run");
        } else if (this.socket.isEmpty()) {
            LOG.warn("NOTIFY_SOCKET={} is neither a path nor an abstract name: the service manager hears"
                    + " nothing, and will end this run", socket.get());
        }
    }

    /** The one that this process's environment names. */
    public static SdNotify ofEnvironment() {
        return new SdNotify(Optional.ofNullable(System.getenv("NOTIFY_SOCKET")).filter(s -> !s.isEmpty()));
    }

    @Override
    public void ready() {
        send("READY=1");
    }

    @Override
    public void alive() {
        send("WATCHDOG=1");
    }

    /** Sent when it differs from the last one. Line ends would start another assignment: blanks instead. */
    @Override
    public void status(String line) {
        String plain = line.replaceAll("\\p{Cntrl}+", " ").strip();
        String shown = plain.length() > MOST_STATUS ? plain.substring(0, MOST_STATUS) + "…" : plain;
        if (!shown.equals(lastStatus.getAndSet(shown))) {
            send("STATUS=" + shown);
        }
    }

    @Override
    public void stopping() {
        send("STOPPING=1");
    }

    private void send(String message) {
        if (socket.isEmpty()) {
            return;
        }
        int error = Datagrams.send(socket.get(), message);
        if (error != 0 && told.add(error)) {
            LOG.warn("the service manager at {} could not be told {} (error number {}): if this goes on its"
                    + " watchdog restarts conetender", socket.get(), message, error);
        }
    }
}

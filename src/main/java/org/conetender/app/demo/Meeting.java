package org.conetender.app.demo;

import java.io.IOException;
import java.net.URI;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.adapter.mqtt.Onlooker;
import org.conetender.app.Unavailable;
import org.conetender.app.Wiring;
import org.conetender.app.remote.RemoteSite;
import org.conetender.core.face.Names;

/**
 * How the demonstration's daemon and its person find each other at the broker. Simulated time does not
 * move meanwhile. The broker may lose a message that is published just while a client subscribes, so the
 * daemon speaks first, and whoever sees only a part of the tree looks again from the beginning.
 */
final class Meeting {

    /** How long broker and clients may take to find each other, ms: guess. */
    private static final long PATIENCE_MS = 60_000;
    /** Rounds before somebody looks, and the pause after each in which messages travel, ms: guess. */
    private static final int ROUNDS = 10;
    private static final long ROUND_MS = 30;
    private static final long MS_NS = 1_000_000;

    private final Wiring wiring;
    private final URI broker;
    private final Names names;
    private final LinuxClock real = new LinuxClock();

    Meeting(Wiring wiring, URI broker, Names names) {
        this.wiring = wiring;
        this.broker = broker;
        this.names = names;
    }

    /**
     * The site as a client sees it once everything has arrived. Waits up to a minute.
     *
     * @throws Unavailable with the reason, if it never does
     */
    RemoteSite wholeTree() throws Unavailable, IOException {
        long untilMs = real.now().monoMs() + PATIENCE_MS;
        do {
            speak();
            Optional<RemoteSite> site = wiring.link().up() ? look() : Optional.empty();
            if (site.isPresent()) {
                return site.get();
            }
        } while (real.now().monoMs() < untilMs);
        throw new Unavailable("The demonstration's daemon and its broker do not find each other within "
                + PATIENCE_MS / 1_000 + " s: "
                + wiring.link().trouble().orElse("what the daemon publishes does not come back whole")
                + ". Try again when the machine is less busy.", null);
    }

    private void speak() {
        for (int i = 0; i < ROUNDS; i++) {
            wiring.agents().round();
            LockSupport.parkNanos(ROUND_MS * MS_NS);
        }
    }

    private Optional<RemoteSite> look() throws IOException {
        RemoteSite site = RemoteSite.connect(new Onlooker.Address(broker, Optional.empty()), names, real);
        if (complete(site)) {
            return Optional.of(site);
        }
        site.close();
        return Optional.empty();
    }

    private static boolean complete(RemoteSite site) {
        return site.state().filter("ready"::equals).isPresent() && site.conesAreThere();
    }
}

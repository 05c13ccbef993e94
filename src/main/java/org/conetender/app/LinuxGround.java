package org.conetender.app;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.conetender.adapter.gpio.GpioBoard;
import org.conetender.adapter.onewire.OneWire;
import org.conetender.adapter.socket.TellSocket;
import org.conetender.agent.Ports;
import org.conetender.app.config.Config;
import org.conetender.core.settings.Cone;
import org.conetender.port.Clock;
import org.conetender.port.Requests;
import org.conetender.port.Supervisor;

/**
 * The ground of production.
 *
 * @param clock Linux's
 * @param board relays and contacts
 * @param oneWire probes, being read
 * @param socket for {@code tell} on this machine
 * @param supervisor systemd, if it listens
 */
record LinuxGround(Clock clock, GpioBoard board, OneWire oneWire, TellSocket socket, Supervisor supervisor)
        implements Ground {

    /** Every probe of the configuration; its id is its address on the bus. */
    static List<OneWire.Place> places(Config config) {
        Stream<String> water = config.settings().cones().stream().map(Cone::fittings)
                .flatMap(f -> f.probes().water().stream());
        List<String> ids = new ArrayList<>(water.toList());
        config.settings().site().roomProbe().ifPresent(ids::add);
        return ids.stream().distinct().map(id -> new OneWire.Place(id, id)).toList();
    }

    /** The socket, or a sentence. */
    static TellSocket socket(Config config) throws Unavailable {
        try {
            return new TellSocket(config.hardware().paths().socket(), new Words());
        } catch (IOException e) {
            throw new Unavailable("The local socket: " + e.getMessage() + ".", e);
        }
    }

    @Override
    public Ports.Devices devices() {
        return new Ports.Devices(oneWire.probes(), board.contacts(), board.switches());
    }

    @Override
    public Requests requests() {
        return socket;
    }

    @Override
    public void outputsSafe() {
        board.close();
    }

    @Override
    public void close() {
        board.close();
        socket.close();
        oneWire.close();
    }
}

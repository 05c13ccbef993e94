package org.conetender.app.demo;

import java.util.List;
import org.conetender.agent.Ports;
import org.conetender.app.Ground;
import org.conetender.core.image.Request;
import org.conetender.port.Clock;
import org.conetender.port.Requests;
import org.conetender.port.Supervisor;
import org.conetender.sim.SimSupervisor;
import org.conetender.sim.World;

/** A simulated world as the ground of the real daemon. One thread. */
record SimGround(World world, Supervisor supervisor) implements Ground {

    /** Only a lease can be shortened to nothing here; the world runs it out at its next step. */
    private static final long AT_ONCE_MS = 1;

    SimGround(World world) {
        this(world, new SimSupervisor());
    }

    @Override
    public Clock clock() {
        return world.clock();
    }

    @Override
    public Ports.Devices devices() {
        World.Devices d = world.devices();
        return new Ports.Devices(List.copyOf(d.probes().values()), List.copyOf(d.contacts().values()),
                List.copyOf(d.switches().values()));
    }

    @Override
    public Requests requests() {
        return Silence.NOBODY;
    }

    @Override
    public void outputsSafe() {
        world.devices().switches().values().forEach(s -> s.hold(false, AT_ONCE_MS));
    }

    @Override
    public void close() {
        outputsSafe();
    }

    /** There is no socket: everything is said through the broker. */
    private enum Silence implements Requests {
        NOBODY;

        @Override
        public List<Request> poll(int most) {
            return List.of();
        }

        @Override
        public void answer(Request request, boolean accepted, String sentence) {
            throw new IllegalStateException("an answer to " + request.id()
                    + ", which nobody can have asked here");
        }
    }
}

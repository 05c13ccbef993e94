package org.conetender.sim;

import java.util.List;
import java.util.Optional;
import org.conetender.agent.Agents;
import org.conetender.agent.ControlAgent;
import org.conetender.agent.Ports;
import org.conetender.core.Tick;
import org.conetender.core.batch.Fact;
import org.conetender.core.face.Names;
import org.conetender.core.settings.Settings;
import org.conetender.port.Store;

/**
 * The daemon's process as its machine has it: one life after the other over the same disk, begun by a
 * service manager, ended by kills and cuts at any border between its agents. One thread, no clock.
 */
public final class Process {

    /** A computer needs this long from power to a running daemon, ms (guess: a small board's boot). */
    private static final long BOOT_MS = 40_000;
    /** The service manager starts a dead process again after this, ms (systemd/conetender.service). */
    private static final long RESTART_MS = 3_000;
    /** The face is looked at so often only, as people do: nothing that acts depends on it, ms. */
    private static final long FACE_MS = 5_000;

    /** Where it may die: at once, or at the next border between its agents or of a commit. */
    public enum Point { NOW, CONTROL, RECORD, BEFORE_COMMIT, AFTER_COMMIT }

    /** One life. @param store its own handle on the disk */
    private record Life(Agents agents, SimStore store, long bornAtMs) {}

    private final World world;
    private final Settings settings;
    private final Parts parts;
    private final SimSocket socket;
    private final SimStore.Disk disk = new SimStore.Disk();
    private Optional<Life> life = Optional.empty();
    private Optional<Point> dies = Optional.empty();
    private long startAtMs;
    private long stalledUntilMs;

    Process(World world, Settings settings, Parts parts, SimSocket socket) {
        this.world = world;
        this.settings = settings;
        this.parts = parts;
        this.socket = socket;
    }

    /** A second of it: it is started when it is due, and its agents have their turn. @return if it died */
    boolean second() {
        long now = world.clock().elapsedMs();
        if (hangs()) {
            return false;
        }
        if (life.isEmpty() && world.powered() && now >= startAtMs) {
            try {
                start();
            } catch (SimStore.PowerCut e) {
                return true;
            }
        }
        return life.isPresent() && dies(life.get().agents(), now);
    }

    private boolean dies(Agents agents, long now) {
        agents.control().doWork();
        if (at(Point.CONTROL)) {
            return true;
        }
        // A thread that waits for its disk does nothing else until the disk answers.
        if (!Fault.Trouble.DISK_HANGS.in(world.wrong())) {
            try {
                agents.record().doWork();
            } catch (SimStore.PowerCut e) {
                return true;
            }
        }
        if (at(Point.RECORD)) {
            return true;
        }
        if (now % FACE_MS == 0) {
            agents.publish().doWork();
        }
        return false;
    }

    private boolean at(Point point) {
        boolean now = dies.filter(point::equals).isPresent();
        dies = now ? Optional.empty() : dies;
        return now;
    }

    private void start() {
        try {
            SimStore store = SimStore.open(disk);
            World.Devices d = world.devices();
            Ports ports = new Ports(world.clock(), new Ports.Devices(List.copyOf(d.probes().values()),
                    List.copyOf(d.contacts().values()),
                    d.switches().values().stream().map(s -> parts.wire().apply(s)).toList()),
                    parts.store().apply(store),
                    new Ports.Outside(world.broker().connect("homie/5/" + settings.site().id() + "/$state"),
                            socket, new SimSupervisor()));
            Agents agents = Agents.begin(settings, parts.tick().apply(
                    new Tick(settings, parts.guards())::step), ports, Names.of("homie", settings));
            life = Optional.of(new Life(agents, store, world.clock().elapsedMs()));
        } catch (Store.StoreException e) {
            throw new IllegalStateException("the simulated record cannot be opened", e);
        }
    }

    /** It is gone, wherever it was; the service manager starts another soon. */
    void end() {
        life.ifPresent(l -> l.store().crash());
        life = Optional.empty();
        world.broker().daemonDied();
        world.devices().forget();
        startAtMs = world.clock().elapsedMs() + RESTART_MS;
    }

    /** The machine has power again, and boots. */
    void boots() {
        startAtMs = world.clock().elapsedMs() + BOOT_MS;
    }

    /** It will die there, in the next round. */
    void dieAt(Point point) {
        switch (point) {
            case NOW, CONTROL, RECORD -> dies = Optional.of(point);
            case BEFORE_COMMIT -> disk.cutPowerAt(SimStore.Cut.BEFORE_COMMIT);
            case AFTER_COMMIT -> disk.cutPowerAt(SimStore.Cut.AFTER_COMMIT);
        }
    }

    /** It hangs for so long: its leases run out, its next tick is late. */
    void stall(long ms) {
        stalledUntilMs = world.clock().elapsedMs() + ms;
    }

    boolean hangs() {
        return world.clock().elapsedMs() < stalledUntilMs;
    }

    boolean alive() {
        return life.isPresent();
    }

    /** World milliseconds since the present life began; 0 while there is none. */
    long livedMs() {
        return life.map(l -> world.clock().elapsedMs() - l.bornAtMs()).orElse(0L);
    }

    /** Its control agent; it must be alive. */
    ControlAgent control() {
        return life.orElseThrow().agents().control();
    }

    /** What its record lies on. */
    SimStore.Disk disk() {
        return disk;
    }

    /** Whether its disk takes what is written. */
    boolean diskTakes() {
        return !disk.failing() && !Fault.Trouble.DISK_HANGS.in(world.wrong());
    }

    /** What a restart would read, while the disk takes nothing; empty while it does, or nobody lives. */
    Optional<List<Fact>> keptWhileFailing() {
        return alive() && !diskTakes() ? Optional.of(disk.all()) : Optional.empty();
    }
}

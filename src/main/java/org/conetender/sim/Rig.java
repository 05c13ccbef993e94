package org.conetender.sim;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.agent.Agents;
import org.conetender.agent.Ports;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.batch.Fact;
import org.conetender.core.face.Names;
import org.conetender.core.guard.Guard;
import org.conetender.core.settings.Settings;
import org.conetender.port.Store;
import org.conetender.port.Transport;

/**
 * The whole daemon in a simulated world, run by hand on one thread: a second of the world, a round of
 * the agents, the people, the invariants. Nothing in it is random but the seed.
 */
public final class Rig {

    /** A computer needs this long from power to a running daemon, ms (guess: a small board's boot). */
    private static final long BOOT_MS = 40_000;
    /** The service manager starts a dead process again after this, ms (systemd/conetender.service). */
    private static final long RESTART_MS = 3_000;

    private final Settings settings;
    private final List<Guard> guards;
    private final World world;
    private final SimStore.Disk disk = new SimStore.Disk();
    private final Coverage coverage = new Coverage();
    private final SimSocket socket = new SimSocket(coverage);
    private final Invariants invariants;
    private Optional<Person> person = Optional.empty();
    private Optional<Life> life = Optional.empty();
    private boolean wasPowered = true;
    private Optional<Point> dies = Optional.empty();
    private final Trace trace = new Trace();
    private long startAtMs;
    private long stalledUntilMs;
    private boolean storeFailing;

    /** One life of the daemon's process. @param store its own handle on the disk */
    record Life(Agents agents, SimStore store, SimSupervisor supervisor, long bornAtMs) {}

    /** Where the process may die: at once, or at the next border between its agents or of a commit. */
    public enum Point { NOW, CONTROL, RECORD, BEFORE_COMMIT, AFTER_COMMIT }

    public Rig(Settings settings, long seed, Bench bench, List<Guard> guards) {
        this.settings = settings;
        this.guards = guards;
        this.world = new World(settings, seed, bench);
        this.invariants = new Invariants(this);
        world.broker().listen(m -> {
            trace.message(m);
            if (m.topic().contains("/$log/")) {
                coverage.heard(m.payload());
            }
        });
    }

    /** Somebody looks after the cones from now on. */
    public Rig withPerson(Habit habit) {
        person = Optional.of(new Person(world, settings, habit, new Person.Senses(world.broker(),
                Hands.through(world.broker(), settings.site().id()))));
        return this;
    }

    /** Lets so many seconds pass, or fewer if an invariant breaks. */
    public Rig run(long seconds) {
        for (long i = 0; i < seconds && invariants.broken().isEmpty(); i++) {
            second();
        }
        return this;
    }

    /** One second of everything. */
    public void second() {
        world.step(1_000);
        power();
        long now = world.clock().elapsedMs();
        if (life.isEmpty() && world.powered() && now >= startAtMs) {
            start();
        }
        if (life.isPresent() && now >= stalledUntilMs) {
            turn(life.get().agents(), now);
        }
        if (now % 5_000 == 0) {
            person.ifPresent(Person::step);
        }
        if (life.isPresent()) {
            coverage.look(state(), settings, life.get().agents().control().findings());
        }
        invariants.look();
        trace.second(world, disk);
    }

    /** The face is looked at every five seconds only, as people do: nothing that acts depends on it. */
    private void turn(Agents agents, long now) {
        agents.control().doWork();
        if (diesAt(Point.CONTROL)) {
            return;
        }
        // A thread that waits for its disk does nothing else until the disk answers.
        if (!Fault.Trouble.DISK_HANGS.in(world.wrong())) {
            try {
                agents.record().doWork();
            } catch (SimStore.PowerCut e) {
                kill();
                return;
            }
        }
        if (!diesAt(Point.RECORD) && now % 5_000 == 0) {
            agents.publish().doWork();
        }
    }

    private boolean diesAt(Point point) {
        boolean now = dies.filter(point::equals).isPresent();
        if (now) {
            dies = Optional.empty();
            kill();
        }
        return now;
    }

    private void power() {
        if (!world.powered()) {
            invariants.dark();
        }
        if (wasPowered && !world.powered()) {
            life.ifPresent(l -> invariants.darkBegins(state()));
            kill();
            wasPowered = false;
        } else if (!wasPowered && world.powered()) {
            world.clock().reboot();
            wasPowered = true;
            startAtMs = world.clock().elapsedMs() + BOOT_MS;
        }
    }

    private void start() {
        try {
            SimStore store = SimStore.open(disk);
            SimSupervisor supervisor = new SimSupervisor();
            World.Devices d = world.devices();
            Ports ports = new Ports(world.clock(), new Ports.Devices(List.copyOf(d.probes().values()),
                    List.copyOf(d.contacts().values()), List.copyOf(d.switches().values())), store,
                    new Ports.Outside(world.broker().connect("homie/5/" + settings.site().id() + "/$state"),
                            socket, supervisor));
            Agents agents = Agents.begin(settings, guards, ports, Names.of("homie", settings));
            life = Optional.of(new Life(agents, store, supervisor, world.clock().elapsedMs()));
        } catch (Store.StoreException e) {
            throw new IllegalStateException("the simulated record cannot be opened", e);
        }
    }

    /** The process will die there, in the next round. */
    public void killAt(Point point) {
        switch (point) {
            case NOW -> kill();
            case CONTROL, RECORD -> dies = Optional.of(point);
            case BEFORE_COMMIT -> disk.cutPowerAt(SimStore.Cut.BEFORE_COMMIT);
            case AFTER_COMMIT -> disk.cutPowerAt(SimStore.Cut.AFTER_COMMIT);
        }
    }

    /** The process dies at once, wherever it was; the service manager starts another soon. */
    public void kill() {
        boolean alive = life.isPresent();
        life.ifPresent(l -> invariants.dying(state()));
        life.ifPresent(l -> l.store().crash());
        life = Optional.empty();
        world.broker().daemonDied();
        world.devices().forget();
        startAtMs = world.clock().elapsedMs() + RESTART_MS;
        invariants.died(alive);
    }

    /** The process hangs for so long: its leases run out, its next tick is late. */
    public void stall(long ms) {
        stalledUntilMs = world.clock().elapsedMs() + ms;
    }

    /** Whether the process hangs now. */
    boolean hangs() {
        return world.clock().elapsedMs() < stalledUntilMs;
    }

    /** A client says a word to a cone. */
    public void say(String cone, String step) {
        set(cone, "hand/step", step);
    }

    /** A client sets a property of a cone. */
    public void set(String cone, String property, String payload) {
        world.broker().set("homie/5/" + settings.site().id() + "-" + cone + "/" + property + "/set", payload);
    }

    /** A step that lay at the broker, or that came too late to be obeyed. */
    public void stale(String cone, String step, boolean retained) {
        String topic = "homie/5/" + settings.site().id() + "-" + cone + "/hand/step/set";
        String id = SiteRules.STALE + world.clock().elapsedMs();
        world.broker().inject(new Transport.Incoming(topic, step, retained, retained ? Map.of("request-id", id)
                : Map.of("request-id", id, "expires-in-s", "0")));
    }

    /** The disk refuses writes from now on, or takes them again. */
    public void store(SimStore.Mood mood) {
        disk.mood(mood);
        storeFailing = mood != SimStore.Mood.HEALTHY;
    }

    /** What a restart would read, while the disk takes nothing; empty while it does, or nobody lives. */
    Optional<List<Fact>> keptWhileFailing() {
        try {
            return !alive() || !storeFailing && !Fault.Trouble.DISK_HANGS.in(world.wrong()) ? Optional.empty()
                    : Optional.of(life.orElseThrow().store().load().facts());
        } catch (Store.StoreException e) {
            throw new IllegalStateException("the simulated record cannot be read", e);
        }
    }

    public World world() {
        return world;
    }

    public Settings settings() {
        return settings;
    }

    public Coverage coverage() {
        return coverage;
    }

    public Invariants invariants() {
        return invariants;
    }

    public boolean alive() {
        return life.isPresent();
    }

    /** What the daemon holds after its last tick; it must be alive. */
    public State state() {
        return life.orElseThrow().agents().control().state();
    }

    /** World milliseconds since the present life began; 0 while there is none. */
    public long livedMs() {
        return life.map(l -> world.clock().elapsedMs() - l.bornAtMs()).orElse(0L);
    }

    /** Where somebody types at the board itself. */
    SimSocket socket() {
        return socket;
    }

    List<Fact> recordSince(long seq) {
        return disk.since(seq);
    }

    boolean recordKnows(String request) {
        return disk.knows(request);
    }

    /** What the daemon answered in its last tick; it must be alive. */
    List<Result.Reply> replies() {
        return life.orElseThrow().agents().control().replies();
    }

    /** Of everything that must be the same when the same seed is run again: world, outputs, words, record. */
    public long fingerprint() {
        return trace.hash() ^ world.fingerprint();
    }
}

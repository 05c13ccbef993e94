package org.conetender.sim;

import java.util.List;
import java.util.Optional;
import org.conetender.core.State;
import org.conetender.core.guard.Guard;
import org.conetender.core.settings.Settings;

/**
 * The whole daemon in a simulated world, run by hand on one thread: a second of the world, a round of
 * the agents, the people, the invariants. Nothing in it is random but the seed.
 */
public final class Rig {

    private static final long LOOK_MS = 5_000;

    private final Settings settings;
    private final World world;
    private final Coverage coverage = new Coverage();
    private final SimSocket socket = new SimSocket(coverage);
    private final Process process;
    private final Invariants invariants;
    private final Trace trace = new Trace();
    private Optional<Person> person = Optional.empty();
    private boolean wasPowered = true;
    private long stoppedWallMs;

    public Rig(Settings settings, long seed, Bench bench, List<Guard> guards) {
        this(settings, seed, bench, Parts.with(guards));
    }

    /** @param parts what the daemon is built from */
    public Rig(Settings settings, long seed, Bench bench, Parts parts) {
        this.settings = settings;
        this.world = new World(settings, seed, bench);
        this.process = new Process(world, settings, parts, socket);
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
        if (process.second()) {
            kill();
        }
        if (world.clock().elapsedMs() % LOOK_MS == 0
                && !Fault.Trouble.NOBODY_COMES.in(world.wrong())) {
            person.ifPresent(Person::step);
        }
        if (alive()) {
            coverage.look(state(), settings, process.control().findings());
        }
        invariants.look();
        trace.second(world, process.disk());
    }

    private void power() {
        if (!world.powered()) {
            invariants.cuts().dark(world.clock());
        }
        if (wasPowered && !world.powered()) {
            if (alive()) {
                invariants.cuts().begins(state(), settings.cones(), world.clock());
            }
            kill();
            stoppedWallMs = world.clock().now().wallMs();
            wasPowered = false;
        } else if (!wasPowered && world.powered()) {
            if (Fault.Trouble.NO_BATTERY.in(world.wrong())) {
                world.clock().rebootFrom(stoppedWallMs);
            } else {
                world.clock().reboot();
            }
            wasPowered = true;
            process.boots();
        }
    }

    /** The process dies at once, wherever it was. */
    public void kill() {
        boolean alive = alive();
        if (alive) {
            invariants.dying(state());
        }
        process.end();
        invariants.died(alive);
    }

    /** The process dies there. */
    public void killAt(Process.Point point) {
        if (point == Process.Point.NOW) {
            kill();
        } else {
            process.dieAt(point);
        }
    }

    /** The process hangs for so long. */
    public void stall(long ms) {
        process.stall(ms);
    }

    /** What the record lies on. */
    public SimStore.Disk disk() {
        return process.disk();
    }

    /** A client says a word to a cone. */
    public void say(String cone, String step) {
        set(cone, "hand/step", step);
    }

    /** A client sets a property of a cone. */
    public void set(String cone, String property, String payload) {
        world.broker().set(Topics.device(settings.site().id(), cone) + "/" + property
                + "/set", payload);
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
        return process.alive();
    }

    /** What the daemon holds after its last tick; it must be alive. */
    public State state() {
        return process.control().state();
    }

    /** The daemon's process. */
    Process process() {
        return process;
    }

    /** Where somebody types at the board itself. */
    SimSocket socket() {
        return socket;
    }

    /** Of everything that must be the same when the same seed is run again: world, outputs, words, record. */
    public long fingerprint() {
        return trace.hash();
    }
}

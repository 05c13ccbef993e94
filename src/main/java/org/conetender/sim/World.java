package org.conetender.sim;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/**
 * Everything outside the daemon, decided by one seed: the room, the cones, their devices, the broker, and
 * what goes wrong. Single-threaded; {@link #step} is the only thing that moves time. The same seed,
 * settings, bench and calls give the same world, bit for bit.
 */
public final class World {

    /** One slice of a step, ms: well below the shortest time constant (5 s, science.md §9). */
    private static final long SLICE_MS = 1_000;

    private final long seed;
    private final Bench bench;
    private final SimClock clock;
    private final SimBroker broker = new SimBroker();
    private final Room room;
    private final Map<String, SimCone> cones = new LinkedHashMap<>();
    private final SimCone[] inOrder;
    private final List<SimCone> listed;
    private final Devices devices = new Devices();
    private final SimSwitch[] outputs;
    private final Faults faults = new Faults(this);
    private final List<SimProbe> roomProbes = new ArrayList<>();
    private boolean powered = true;

    /**
     * Every device of the world by its full id, such as {@code a.heat}. The maps are for reading.
     *
     * @param switches outputs  @param probes in water and room  @param contacts level, proof, button
     */
    public record Devices(Map<String, SimSwitch> switches, Map<String, SimProbe> probes,
                          Map<String, SimContact> contacts) {
        Devices() {
            this(new LinkedHashMap<>(), new LinkedHashMap<>(), new LinkedHashMap<>());
        }

        /** The daemon's process has begun anew: no probe has been heard yet. Leases just run out. */
        public void forget() {
            probes.values().forEach(SimProbe::forget);
        }
    }

    public World(Settings settings, long seed, Bench bench) {
        this.seed = seed;
        this.bench = bench;
        this.clock = new SimClock(seed, bench.startWallMs());
        this.room = new Room(bench.climate().orElseGet(() -> Room.Climate.draw(Seeds.of(seed, "climate"))),
                Seeds.of(seed, "room"));
        room.step(clock.trueWallMs(), 0);
        for (Cone c : settings.cones()) {
            SimCone cone = new SimCone(c, this, seed, bench);
            cones.put(c.id(), cone);
            cone.fixtures.switches.values().forEach(s -> devices.switches.put(s.id(), s));
            cone.fixtures.contacts.values().forEach(s -> devices.contacts.put(s.id(), s));
            cone.fixtures.probes.forEach(p -> devices.probes.put(p.id(), p));
        }
        settings.site().roomProbe().ifPresent(id -> {
            roomProbes.add(Fixtures.probe(id, clock, seed, bench.exact()));
            devices.probes.put(id, roomProbes.get(0));
        });
        if (settings.site().supply().heartbeat()) {
            devices.switches.put("site.heartbeat", new SimSwitch("site.heartbeat", clock));
        }
        inOrder = cones.values().toArray(SimCone[]::new);
        listed = List.of(inOrder);
        outputs = devices.switches.values().toArray(SimSwitch[]::new);
    }

    /** Lets that many milliseconds pass for everything, in slices of at most one second. */
    public void step(long ms) {
        for (long left = ms; left > 0; left -= SLICE_MS) {
            slice(Math.min(left, SLICE_MS));
        }
    }

    private void slice(long ms) {
        double seconds = ms / 1_000.0;
        clock.advance(ms);
        faults.step(clock.elapsedMs(), seconds);
        broker.step(clock.elapsedMs());
        for (SimSwitch s : outputs) {
            s.expire();
        }
        room.step(clock.trueWallMs(), seconds);
        boolean pumps = powered || bench.airOwnSupply();
        Touching.heat(inOrder, bench.touchingWPerK());
        for (SimCone c : inOrder) {
            c.step(powered, pumps, seconds);
        }
        for (int i = 0; i < roomProbes.size(); i++) {
            roomProbes.get(i).step(room.airC(), room.airC(), false, seconds);
        }
    }

    /** The house's power. Cut: every coil falls off, heaters, lamps and (as a rule) pumps stand still. */
    public void power(boolean on) {
        powered = on;
        for (SimSwitch s : outputs) {
            s.power(on);
        }
    }

    public boolean powered() {
        return powered;
    }

    /** Lets a fault happen at its time, or now if that has passed. */
    public void apply(Fault fault) {
        faults.add(fault);
    }

    /** Whatever was wrong with that cone's own parts is made good. */
    void mended(String cone) {
        faults.mend(cone);
    }

    /** What is wrong at the moment. */
    public List<Fault> wrong() {
        return faults.active();
    }

    /** The cone of that id. @throws IllegalArgumentException if there is none */
    public SimCone cone(String id) {
        SimCone c = cones.get(id);
        if (c == null) {
            throw new IllegalArgumentException("there is no cone " + id + "; there are " + cones.keySet());
        }
        return c;
    }

    public List<SimCone> cones() {
        return listed;
    }

    public SimClock clock() {
        return clock;
    }

    public SimBroker broker() {
        return broker;
    }

    /** The probe in the room, where there is one. */
    Optional<SimProbe> roomProbe() {
        return roomProbes.stream().findFirst();
    }

    public Room room() {
        return room;
    }

    public Devices devices() {
        return devices;
    }

    public long seed() {
        return seed;
    }
}

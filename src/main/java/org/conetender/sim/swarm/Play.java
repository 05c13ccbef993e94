package org.conetender.sim.swarm;

import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.TreeMap;
import org.conetender.core.settings.Cone;
import org.conetender.port.Transport;
import org.conetender.sim.Air;
import org.conetender.sim.Coverage;
import org.conetender.sim.Fault;
import org.conetender.sim.Invariants.Violation;
import org.conetender.sim.Invariants;
import org.conetender.sim.Parts;
import org.conetender.sim.Process;
import org.conetender.sim.Rig;
import org.conetender.sim.SimCone;
import org.conetender.sim.SimContact;
import org.conetender.sim.SimProbe;
import org.conetender.sim.SimStore;
import org.conetender.sim.SimSwitch;

/** One telling of a story, second by second, on the thread that tells it. */
final class Play {

    /** What a story came to. */
    record Played(List<Violation> broken, Coverage coverage, Hours hours, long trace) {}

    /**
     * Cone-seconds.
     *
     * @param all of them  @param lived with water and animals in it, cysts among them
     */
    record Hours(long all, long lived) {
        static final Hours NONE = new Hours(0, 0);

        Hours plus(Hours o) {
            return new Hours(all + o.all, lived + o.lived);
        }
    }

    private static final int HOUR_S = 3_600;
    private static final int LOOK_S = 60;
    /** Hand-warm water from the tap, °C (guess). */
    private static final double WARM_C = 22;

    private final Tale tale;
    private final Rig rig;
    private final PriorityQueue<Event> ahead;
    private long diskWellAtS = Long.MAX_VALUE;
    private Hours hours = Hours.NONE;

    private Play(Tale tale, Parts parts) {
        this.tale = tale;
        Tale.Place place = tale.place();
        this.rig = new Rig(place.room().settings(), place.seed(), place.room().bench(), parts);
        this.ahead = new PriorityQueue<>(tale.events());
        place.keeper().habit(place.seed()).ifPresent(rig::withPerson);
    }

    /** Tells it to its end, or to the first broken invariant. What the daemon throws breaks one too. */
    static Played of(Tale tale, Parts parts) {
        return new Play(tale, parts).told();
    }

    private Played told() {
        List<Violation> broken = rig.invariants().broken();
        for (long s = 0; s < tale.place().hours() * (long) HOUR_S && broken.isEmpty(); s++) {
            try {
                due(s);
                rig.second();
            } catch (RuntimeException e) {
                broken = List.of(new Violation("thrown", "", s * 1_000, String.valueOf(e)));
            }
            if (s % LOOK_S == 0) {
                count();
            }
        }
        return new Played(List.copyOf(broken), rig.coverage(), hours, rig.fingerprint());
    }

    private void count() {
        for (SimCone c : rig.world().cones()) {
            boolean lives = c.water().waterPresent() && c.cysts().isPresent();
            hours = hours.plus(new Hours(LOOK_S, lives ? LOOK_S : 0));
        }
    }

    private void due(long s) {
        if (s >= diskWellAtS) {
            rig.disk().mood(SimStore.Mood.HEALTHY);
            diskWellAtS = Long.MAX_VALUE;
        }
        while (!ahead.isEmpty() && ahead.peek().atS() <= s) {
            happens(ahead.poll(), s);
        }
    }

    /** A step that lay at the broker, or that came too late to be obeyed. */
    private void stale(String cone, String step, boolean retained) {
        String topic = "homie/5/" + rig.settings().site().id() + "-" + cone + "/hand/step/set";
        Map<String, String> told = new TreeMap<>(Map.of("request-id", Invariants.STALE + ahead.size()));
        if (!retained) {
            told.put("expires-in-s", "0");
        }
        rig.world().broker().inject(new Transport.Incoming(topic, step, retained, told));
    }

    private void begin(SimCone c) {
        Cone.Usual usual = c.settings().usual();
        c.fill(usual.litres(), WARM_C, usual.ppt());
        c.air().valve(true);
        c.stock(usual.lot(), usual.cystsG());
        rig.say(c.settings().id(), "started");
    }

    private void happens(Event e, long s) {
        List<String> w = e.words();
        Fault.When when = new Fault.When(rig.world().clock().elapsedMs(), 1_000 * e.forS());
        switch (e.deed()) {
            case PROBE -> rig.world().apply(new Fault.OfProbe(w.get(0), Integer.parseInt(w.get(1)),
                    Deed.constant(SimProbe.Fault.class, w.get(2)), when));
            case SWAP_PROBES -> rig.world().apply(new Fault.Swapped(w.get(0), w.get(1), when));
            case CROSS -> rig.world().apply(new Fault.Crossed(w.get(0), w.get(1),
                    Deed.constant(Fault.Wiring.class, w.get(2)), when));
            case SWITCH -> rig.world().apply(new Fault.OfSwitch(w.get(0), w.get(1),
                    Deed.constant(SimSwitch.Fault.class, w.get(2)), when));
            case CONTACT -> rig.world().apply(new Fault.OfContact(w.get(0), w.get(1),
                    Deed.constant(SimContact.Fault.class, w.get(2)), when));
            case AIR -> rig.world().apply(new Fault.OfAir(w.get(0),
                    Deed.constant(Air.Fault.class, w.get(1)), when));
            case WATER -> rig.world().apply(new Fault.OfWater(w.get(0),
                    Deed.constant(Fault.Water.class, w.get(1)), when));
            case ROOM_PROBE -> rig.world().apply(new Fault.OfRoomProbe(
                    Deed.constant(SimProbe.Fault.class, w.get(0)), when));
            case BUS -> rig.world().apply(new Fault.OfBus(Deed.constant(SimProbe.Fault.class, w.get(0)),
                    when));
            case SITE -> rig.world().apply(new Fault.OfSite(Deed.constant(Fault.Trouble.class, w.get(0)),
                    when));
            case VALVE -> rig.world().cone(w.get(0)).air().valve(w.get(1).equals("open"));
            case KILL -> rig.killAt(Deed.constant(Process.Point.class, w.get(0)));
            case DAMAGE -> {
                rig.kill();
                rig.disk().damage(Integer.parseInt(w.get(0)));
            }
            case HANG -> rig.stall(1_000 * e.forS());
            case DISK -> {
                rig.disk().mood(Deed.constant(SimStore.Mood.class, w.get(0)));
                diskWellAtS = s + e.forS();
            }
            case CLOCK -> rig.world().clock().stepWall(
                    1_000 * Long.parseLong(w.get(0).substring(0, w.get(0).length() - 1)));
            case BEGIN -> begin(rig.world().cone(w.get(0)));
            case SAY -> rig.say(w.get(0), w.get(1));
            case SET -> rig.set(w.get(0), w.get(1), w.get(2));
            case STALE -> stale(w.get(0), w.get(1), w.get(2).equals("retained"));
        }
    }
}

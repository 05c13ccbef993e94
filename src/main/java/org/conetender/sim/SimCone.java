package org.conetender.sim;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.conetender.core.settings.Cone;

/**
 * One cone as it really is: water, air, oxygen, cysts, and the devices fitted to it. The world steps it;
 * a person's hands change it through the verbs below; tests ask its parts for the truth.
 */
public final class SimCone {

    /** LED power that ends as heat in the water, W (guess). */
    private static final double HARVEST_W = 0.8;
    private static final double TRIGGER_W = 0.5;
    /** A dry, hot element warms a probe beside it by this share of its excess (guess). */
    private static final double RADIANT = 0.03;
    /** Probes hang low and high: shares of the depth (guess). */
    static final double[] HEIGHT = {0.25, 0.75};
    /** Below this share of the usual fill the probes hang in air (guess). */
    static final double PROBE_AT = 0.25;
    /** Animals left without water live about this long, s (guess). */
    private static final double STRANDED_S = 300;
    /** The gathered layer is within this share of the water, so a small draw takes most (science.md §7). */
    private static final double ORANGE = 0.2;

    private final Cone settings;
    private final World world;
    final Fixtures fixtures;
    private final Plant water;
    private final Air air;
    private final Oxygen oxygen;
    private final Cysts.Around around = new Cysts.Around();
    private final Batches batches;
    private boolean heaterOn;
    /** Heat that comes through its wall from cones that it touches, W; below 0 where it leaves. */
    double touchedW;

    SimCone(Cone settings, World world, long seed, Bench bench) {
        this.settings = settings;
        this.world = world;
        this.batches = new Batches(world, settings.id());
        this.fixtures = new Fixtures(settings, world.clock(), seed, bench.exact());
        SplittableRandom r = Seeds.of(seed, "cone/" + settings.id());
        Cone.Heat heat = settings.fittings().heat();
        Plant.Quirks quirks = bench.exact() ? Plant.Quirks.BOOK : Plant.Quirks.draw(heat.kind(), r);
        double litres = settings.usual().litres();
        this.water = new Plant(new Plant.Build(heat.kind(), heat.watts(), litres, quirks), world.room());
        this.air = new Air(settings.fittings().air(), Air.Build.draw(litres, r), bench.sharedPump());
        this.oxygen = new Oxygen(Oxygen.Build.draw(r));
    }

    /** One step of at most one second or so. @param pumpPower whether the air pump has its supply */
    void step(boolean power, boolean pumpPower, double seconds) {
        air.commanded(fixtures.commanded(Fixtures.AIR_PAUSE), seconds);
        double back = air.step(pumpPower, fixtures.conducts(Fixtures.AIR_PAUSE, false),
                water.waterPresent(), seconds);
        if (back > 0) {
            water.drain(back / 1_000);
        }
        boolean lit = power && fixtures.conducts(Fixtures.TRIGGER, false);
        double lampW = (lit ? TRIGGER_W : 0)
                + (power && fixtures.conducts(Fixtures.HARVEST, false) ? HARVEST_W : 0);
        heaterOn = power && fixtures.feed.conducts();
        water.step(heaterOn ? settings.fittings().heat().watts() : 0, lampW + touchedW, air.flowLpm(),
                seconds);
        live(lit, seconds);
        sense(seconds);
    }

    private void live(boolean lit, double seconds) {
        Cysts cysts = batches.cysts;
        if (cysts == null) {
            return;
        }
        if (!water.waterPresent()) {
            cysts.die(1 - Math.exp(-seconds / STRANDED_S));
            return;
        }
        double dying = oxygen.step(water, air.flowLpm(), cysts, seconds);
        if (dying > 0) {
            cysts.die(dying);
        }
        around.waterC = water.waterC();
        around.oxygen = oxygen.here();
        around.lit = lit || !settings.fittings().lights().trigger();
        cysts.step(around, world.clock().elapsedMs(), seconds);
    }

    private void sense(double seconds) {
        boolean wet = water.litres() >= PROBE_AT * settings.usual().litres();
        double roomC = world.room().airC();
        double dryC = roomC + RADIANT * Math.max(0, water.elementC() - roomC);
        for (int i = 0; i < fixtures.probes.size(); i++) {
            double surroundC = wet ? water.waterC(HEIGHT[i % HEIGHT.length]) : dryC;
            fixtures.probes.get(i).step(surroundC, roomC, wet, seconds);
        }
        SimContact level = fixtures.contacts.get(Fixtures.LEVEL);
        if (level != null) {
            level.set(water.heaterCovered());
        }
        SimContact proof = fixtures.contacts.get(Fixtures.PROOF);
        if (proof != null) {
            proof.set(air.proofClosed());
        }
    }

    /** Fills or tops up. @param litres water  @param degreesC its warmth  @param ppt its salt */
    public void fill(double litres, double degreesC, double ppt) {
        water.pour(litres, degreesC, ppt);
        oxygen.refill(water.waterC(), water.ppt());
    }

    /** Cysts go in. @param lot label of the tin  @param grams dry product */
    public void stock(String lot, double grams) {
        batches.begin(lot, grams);
    }

    /** Draws water off at the bottom into the sieve. @return live nauplii caught */
    public double draw(double litres) {
        double share = water.waterPresent() ? Math.min(1, litres / water.litres()) : 0;
        water.drain(litres);
        Cysts cysts = batches.cysts;
        if (cysts == null) {
            return 0;
        }
        double low = oxygen.gathered();
        return cysts.draw(low * Math.min(1, share / ORANGE) + (1 - low) * share);
    }

    /** Empties the cone; what lives in it is gone and the batch is over. */
    public void drain() {
        water.drain(water.litres());
        batches.end();
    }

    /** A person makes good what hands can: pump, hose, probes in place, relays and contacts exchanged. */
    public void repair() {
        air.replacePump();
        world.mended(settings.id());
    }

    public Cone settings() {
        return settings;
    }

    public Plant water() {
        return water;
    }

    public Air air() {
        return air;
    }

    public Oxygen oxygen() {
        return oxygen;
    }

    /** The cysts in it, if any. */
    public Optional<Cysts> cysts() {
        return Optional.ofNullable(batches.cysts);
    }

    /** Whether power really reaches the heater. */
    public boolean heaterOn() {
        return heaterOn;
    }

    /** Every batch so far, the one that goes on included, oldest first. */
    public List<BatchTruth> batches() {
        return batches.all();
    }
}

package org.conetender.core.judge;

/**
 * What is known of one cone's water and heater, from its probe, its switch and the room: an extended
 * Kalman filter over the reading, a drift that nothing explains, and the cone's three {@link Traits}
 * (control.md §2.4). It learns from every rise and fall; only rise and lag are told apart well, losses
 * and drift as the room lets them.
 *
 * <p>Immutable; one instance for each tick. Temperatures in °C, times in seconds.
 */
public final class Estimate {

    private static final int READING = 0;
    private static final int DRIFT = 1;
    private static final int RISE = 2;
    private static final int LOSS = 3;
    private static final int LAG = 4;

    /**
     * Noise of the mean of a block, °C: steps of 0.0625 and 0.02 rms make 0.027 for one reading (control.md
     * §2.3); no less for several, because neighbouring errors resemble each other (guess).
     */
    private static final double READING_SD = 0.03;
    /** What the water wanders by itself in a second, °C (guess). */
    private static final double WANDER_SD = 0.0005;
    /** What nothing explains is forgotten within this time, s (guess). */
    private static final double DRIFT_S = 7_200;
    /** Doubt of the nominal traits, relative: rating and filling (guess); losses within 30 % (issue). */
    private static final double RISE_SD = 0.05;
    private static final double LOSS_SD = 0.2;
    /** 20 to 90 s (control.md, head note), as a standard deviation, s. */
    private static final double LAG_SD_S = 25;
    /** What rise, losses and lag, s, wander in an hour: water dries up or seeps, elements foul (by trial). */
    private static final double RISE_WALK = 0.02;
    private static final double LOSS_WALK = 0.02;
    private static final double LAG_WALK_S = 3;
    /** A probe's lag is not learned, for a slow heater looks the same; but it is doubted: 5 to 20 s. */
    private static final double PROBE_SD_S = 5;
    /** Water this far over the room has the drift's usual size, a fifth of the nominal losses (guess), K. */
    private static final double USUAL_OVER_K = 8;
    private static final double DRIFT_SHARE = 0.2;
    /** The filter weighs what was read once in this time, s: readings a second apart say little more. */
    private static final double BLOCK_S = 5;
    /** Blocks over which the fit is judged (guess). */
    private static final double FIT_BLOCKS = 60;
    /** Of a surprise, what the reading takes over while nothing may be learned (guess). */
    private static final double FOLLOW = 0.3;

    /**
     * One step.
     *
     * @param dtS seconds since the last
     * @param heat share of the step during which the heater was on, 0..1
     * @param roomC around the cone
     * @param probeC newly read; NaN when there is nothing new
     * @param learn false while something is suspect: the reading is followed, nothing is learned
     */
    public record Step(double dtS, double heat, double roomC, double probeC, boolean learn) {}

    /**
     * What has gathered since the filter last weighed it.
     *
     * @param seconds it spans
     * @param felt full-power seconds that reached the reading
     * @param overS sum of water over room, K·s
     * @param byLag what the heat felt would change with the lag
     * @param byProbe and with the probe's
     * @param surpriseK sum of reading less expectation
     * @param readings how many
     */
    private record Block(double seconds, double felt, double overS, double byLag, double byProbe,
                         double surpriseK, int readings) {
        static final Block EMPTY = new Block(0, 0, 0, 0, 0, 0, 0);
    }

    private final Traits nominal;
    private final double readingC;
    private final double driftKPerS;
    private final Underway underway;
    private final Block block;
    private final Known known;

    private Estimate(Traits nominal, Now now, Known known) {
        this.nominal = nominal;
        this.readingC = now.readingC();
        this.driftKPerS = now.driftKPerS();
        this.underway = now.underway();
        this.block = now.block();
        this.known = known;
    }

    /** What changes in every step. */
    private record Now(double readingC, double driftKPerS, Underway underway, Block block) {}

    /** What changes with every block. @param misfit see {@link #misfit()} */
    private record Known(Traits traits, Covariance doubts, double misfit) {}

    /** At the first reading of a cone of which nothing else is known. */
    public static Estimate first(Traits nominal, double probeC) {
        Covariance doubts = Covariance.independent(READING_SD, driftSd(nominal),
                RISE_SD * nominal.riseKPerS(), LOSS_SD * nominal.lossPerS(), LAG_SD_S, PROBE_SD_S);
        return new Estimate(nominal, new Now(probeC, 0, Underway.NONE, Block.EMPTY),
                new Known(nominal, doubts, 1));
    }

    /**
     * The same cone, seen again after a while: the heat that was on its way has arrived long ago.
     *
     * @param traits what it is taken to be like; the doubts stay
     */
    Estimate again(Traits traits, double probeC) {
        return new Estimate(nominal, new Now(probeC, 0, Underway.NONE, Block.EMPTY),
                new Known(traits, known.doubts(), 1));
    }

    /**
     * The same, known no better than at the first reading, and the water's amount less than that.
     *
     * @param share by which rise and losses may be off, relative, one standard deviation
     */
    Estimate doubted(double share) {
        Traits t = known.traits();
        Covariance doubts = Covariance.independent(READING_SD, driftSd(nominal),
                Math.max(RISE_SD, share) * t.riseKPerS(), Math.max(LOSS_SD, share) * t.lossPerS(), LAG_SD_S,
                PROBE_SD_S);
        return new Estimate(nominal, new Now(readingC, driftKPerS, underway, Block.EMPTY),
                new Known(t, doubts, 1));
    }

    /** What the configuration says of it. */
    public Traits nominal() {
        return nominal;
    }

    private static double driftSd(Traits nominal) {
        return DRIFT_SHARE * nominal.lossPerS() * USUAL_OVER_K;
    }

    /** The estimate a step later. */
    public Estimate after(Step s) {
        double dt = s.dtS();
        Traits traits = known.traits();
        Underway way = underway.after(s.heat(), dt, traits.lagS());
        double over = readingC - s.roomC();
        double c = readingC
                + dt * (traits.riseKPerS() * way.felt() - traits.lossPerS() * over + driftKPerS);
        double surprise = s.probeC() - c;
        boolean read = !Double.isNaN(surprise);
        if (!s.learn()) {
            return new Estimate(nominal,
                    new Now(read ? c + FOLLOW * surprise : c, driftKPerS, way, Block.EMPTY), known);
        }
        Block b = new Block(block.seconds + dt, block.felt + way.felt() * dt, block.overS + over * dt,
                block.byLag + way.feltByLag() * dt, block.byProbe + way.feltByProbe() * dt,
                block.surpriseK + (read ? surprise : 0),
                block.readings + (read ? 1 : 0));
        Estimate next = new Estimate(nominal, new Now(c, driftKPerS, way, b), known);
        return b.seconds() < BLOCK_S ? next : next.weighed();
    }

    /** The filter proper: the block is weighed against what was believed, and a new one begins. */
    private Estimate weighed() {
        double dt = block.seconds();
        Traits traits = known.traits();
        double keep = Math.exp(-dt / DRIFT_S);
        double[] g = {1 - traits.lossPerS() * dt, dt, block.felt(), -block.overS(),
            traits.riseKPerS() * block.byLag(), traits.riseKPerS() * block.byProbe()};
        double sd = driftSd(nominal);
        double hours = dt / 3_600;
        double rise = RISE_WALK * nominal.riseKPerS();
        double loss = LOSS_WALK * nominal.lossPerS();
        double[] added = {WANDER_SD * WANDER_SD * dt, (1 - keep * keep) * sd * sd, rise * rise * hours,
            loss * loss * hours, LAG_WALK_S * LAG_WALK_S * hours, 0};
        Covariance c = known.doubts().stepped(g, keep, added);
        double variance = c.variance(READING) + READING_SD * READING_SD;
        double surprise = block.readings() == 0 ? 0 : block.surpriseK() / block.readings();
        double w = block.readings() == 0 ? 0 : surprise / variance;
        Now now = new Now(readingC + c.withFirst(READING) * w, driftKPerS * keep + c.withFirst(DRIFT) * w,
                underway, Block.EMPTY);
        Traits t = new Traits(
                traits.riseKPerS() + c.withFirst(RISE) * w, traits.lossPerS() + c.withFirst(LOSS) * w,
                traits.lagS() + c.withFirst(LAG) * w).within(nominal);
        if (block.readings() == 0) {
            return new Estimate(nominal, now, new Known(traits, c, known.misfit()));
        }
        // What is on its way was reckoned with the lag of before.
        Now moved = new Now(now.readingC(), now.driftKPerS(), underway.lagging(t.lagS() - traits.lagS()),
                Block.EMPTY);
        return new Estimate(nominal, moved, new Known(t, c.read(variance),
                        known.misfit() + (surprise * w - known.misfit()) / FIT_BLOCKS));
    }

    /** What the probe would show without its noise, °C. */
    public double readingC() {
        return readingC;
    }

    /** Where the heat that is on its way will bring the reading, losses apart, °C. */
    public double plateauC() {
        return readingC + known.traits().riseKPerS() * underway.storedS(known.traits().lagS());
    }

    /** The duty that holds this temperature; outside 0..1 where the heater cannot. */
    public double holdingDuty(double waterC, double roomC) {
        return (known.traits().lossPerS() * (waterC - roomC) - driftKPerS) / known.traits().riseKPerS();
    }

    /** What the cone is like, as far as it is known. */
    public Traits traits() {
        return known.traits();
    }

    /** Warming that nothing explains, K/s. */
    public double driftKPerS() {
        return driftKPerS;
    }

    /** Standard deviation of the rise, relative to it. */
    public double riseDoubt() {
        return Math.sqrt(known.doubts().variance(RISE)) / known.traits().riseKPerS();
    }

    /** Standard deviation of the lag, s. */
    public double lagDoubtS() {
        return Math.sqrt(known.doubts().variance(LAG));
    }

    /** Mean square of the last surprises against what was expected of them: about 1 or less when it fits. */
    public double misfit() {
        return known.misfit();
    }
}

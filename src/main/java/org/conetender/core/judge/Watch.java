package org.conetender.core.judge;

/**
 * Whether the water does what the switch makes us expect, by the traits of the last passed proof, so that
 * nothing learned since can hide a fault (control.md §2.4). Each fault has an expectation of its own and a
 * sum of what speaks for it against the best that a healthy cone with lids, doors and hands can do
 * ({@link Cause}); the first beyond its limit names the fault. What decides are hands and lids, not the
 * probe's noise, so the sums are in kelvin and not in likelihoods. A probe answers every second or every
 * eighth: what happened since its last reading is carried, and a reading is held against all of it. The
 * figures were chosen on cones that no bench uses (guesses otherwise).
 *
 * @param expectedC what the probe should show, °C
 * @param underway heat on its way by the proven traits
 * @param driftKPerS warming without a cause that is allowed for, K/s
 * @param hot heat that was not switched
 * @param cold heat that did not arrive
 * @param away how fast the reading leaves
 * @param still how long the reading has not moved, and what happened since the last
 * @param suspect the fault that is named; {@link Suspect#NONE} while there is none
 */
public record Watch(double expectedC, Underway underway, double driftKPerS, Cause hot, Cause cold,
                    Away away, Still still, Suspect suspect) {

    /** What may be wrong. */
    public enum Suspect {
        NONE,
        /** It warms although nothing heats: the switch is welded, or something else heats. */
        WELDED,
        /** It does not warm although the heater is on. */
        DEAD,
        /** The reading leaves faster than any heater could move it. */
        IN_AIR,
        /** The reading stands where it should have moved. */
        FROZEN,
        /**
         * It rises above what its heater was to hold, with the heat off: a switch that welded before anything
         * was known of the cone, or a warm room. Not found here, but by {@link Judge}.
         */
        ABOVE;

        /** Whether a switch may be welded. */
        public boolean heated() {
            return this == WELDED || this == ABOVE;
        }
    }

    /**
     * @param speedKPerS of what is unexplained, over some seconds
     * @param looseK how far the reading is from where any water could be, K
     * @param quietS how long it will still say nothing about heat, s
     */
    public record Away(double speedKPerS, double looseK, double quietS) {
        static final Away NONE = new Away(0, 0, 0);
    }

    /**
     * @param readingC the reading that stands
     * @param forS how long it has
     * @param owedK how far it should have moved since
     * @param since what happened since the last reading
     */
    public record Still(double readingC, double forS, double owedK, Since since) {

        private Still and(Since.Tick tick) {
            return new Still(readingC, forS, owedK, since.and(tick));
        }

        /** With a reading. */
        private Still read(double probeC) {
            return probeC == readingC
                    ? new Still(probeC, forS + since.seconds(), owedK + since.movedK(), since.read())
                    : new Still(probeC, 0, 0, since.read());
        }
    }

    /**
     * What the watch goes by.
     *
     * @param traits at the last passed proof
     * @param passed false before the first: then losses and room may be far off
     * @param gone share of the water that may have gone since the traits were learned, 0..1; 0 once passed
     */
    public record Proof(Traits traits, boolean passed, double gone) {
        /** Until then losses may be off by this much water over room, K. */
        private static final double UNPROVEN_K = 8;

        /** What a lid put on may save, K/s. @param lostKPerS at present */
        private double lidOnKPerS(double lostKPerS) {
            return Math.min(LID_ON * lostKPerS, LID_ON_K * traits.lossPerS() + LID_ON_REST * lostKPerS);
        }

        /** How long a doubt must stand before it may be called a welded switch, s. */
        private double lookS(double lostKPerS) {
            return lostKPerS < WARM_ROOM_K * traits.lossPerS() ? LIFTED_S : 0;
        }

        /** Of the rise, what is no proof of anything, but water or heater lost (guess). */
        static final double RISE_CHANGE = 0.15;
        /** Rating and filling may be off by a third together (guess). */
        private static final double LEAST_LIKELY = 0.65;

        /** Of filled water as it was told, or as it was proven. */
        public Proof(Traits traits, boolean passed) {
            this(traits, passed, 0);
        }

        /** The same doubts about what was learned since. */
        Proof of(Traits now) {
            return new Proof(now, passed, gone);
        }

        /** Whether the rise is still about the same. */
        boolean like(Traits now) {
            return Math.abs(now.riseKPerS() / traits.riseKPerS() - 1) < RISE_CHANGE;
        }

        /**
         * A heater with so much less power than its rating is no proof: it may be dead. More rise than
         * that needs less water.
         */
        boolean likely(Estimate e) {
            double share = e.traits().riseKPerS() / e.nominal().riseKPerS();
            return share > LEAST_LIKELY && share < (1 + more()) / LEAST_LIKELY;
        }

        /** By how much faster it may warm and cool than by the traits, relative. */
        double more() {
            return gone / (1 - gone);
        }

        private double slackKPerS() {
            return passed ? 0 : traits.lossPerS() * UNPROVEN_K;
        }
    }

    /**
     * The expectation takes over readings a second apart within this time, s (found by trial, as are the
     * limits). Slower ones take longer and leave more noise: both as the cube root of their period, which
     * finds a rise of given speed soonest.
     */
    private static final double FOLLOW_S = 8;
    /** What is left after that time of a reading's noise, 0.027 K (control.md §2.3), one sd, K. */
    static final double NOISE_K = 0.027 / Math.sqrt(2 * FOLLOW_S);
    /** Heat that was not switched is named beyond so many times that noise: right for years (by trial). */
    private static final double HOT_LIMIT_NOISES = 5.5;
    /** Water that loses no more than that of so many K over the room may stand in a warmer room (guess). */
    private static final double WARM_ROOM_K = 3.5;
    /** There a probe lifted out warms as slowly as water; hands take so long at most, s (guess). */
    private static final double LIFTED_S = 60;
    /** Heat that does not arrive hurts nobody quickly, and cold water poured in looks like it (guess). */
    private static final double COLD_LIMIT_K = 0.17;
    /** Of full power, what errors of rise and lag may make after a proof (guess). */
    private static final double MODEL = 0.08;
    /**
     * What a lid put on saves at most: of all losses, which near the room's temperature are evaporation
     * alone; else that evaporation, about as much as so many K over the room cost a cone, and of the rest
     * what the lid keeps dry (reckoned from science.md §9 for 0.5 to 20 L, 35 to 65 % of humidity).
     */
    private static final double LID_ON = 0.8;
    private static final double LID_ON_K = 3.5;
    private static final double LID_ON_REST = 0.12;
    /** Of the losses, what a lid put on saves and one taken off adds at most where it is cool (the same). */
    private static final double LID_ON_COOL = 0.5;
    private static final double LID_OFF = 0.8;
    /** Of heat felt, this much may be missing: an aged element, more water than told (guess). */
    private static final double AGED = 0.4;
    /** Of what a heater may do, the speed that only a probe out of the water exceeds; plus a floor, K/s. */
    private static final double LOOSE_POWER = 1.3;
    /** Three times the noise of that speed (0.0007 K/s, found by trial). */
    private static final double LOOSE_FLOOR_K_PER_S = 0.0022;
    /** Over so many seconds that speed is taken. */
    private static final double SPEED_S = 8;
    private static final double LOOSE_LIMIT_K = 0.02;
    /** Heat that begins unseen may have gone on so far, of full power, before it is reckoned (guess). */
    private static final double UNSEEN = 0.2;
    /** After such a speed a probe needs three of its lags, up to 20 s (science.md §9), to tell of heat. */
    private static final double QUIET_S = 60;
    /** A reading that should have moved by three steps of 0.0625 and did not is frozen. */
    private static final double FROZEN_K = 0.19;
    /** One that stood so long says nothing of the heater: water that is heated moves it soon, s (guess). */
    private static final double STANDS_S = 10;
    /** And not before so many readings (guess). */
    private static final double STANDS_READINGS = 3;
    /** The drift that is allowed for follows what is learned, by so much of full power in an hour. */
    private static final double DRIFT_SHARE_PER_H = 0.3;
    private static final double HOUR_S = 3_600;

    /** At the first reading, or after what was found was cleared. */
    public static Watch from(double probeC) {
        return anew(probeC, Underway.NONE, new Rest(0, Since.NONE, Suspect.NONE));
    }

    /** After time or a person cleared what was found; heat on its way stays on its way. */
    public Watch cleared() {
        return anew(still.readingC(), underway, new Rest(driftKPerS, still.since(), Suspect.NONE));
    }

    /** It rises above what its heater was to hold; what was found before stays. */
    Watch above() {
        return suspect != Suspect.NONE ? this
                : new Watch(expectedC, underway, driftKPerS, hot, cold, away, still, Suspect.ABOVE);
    }

    /** For another batch: its switches are tried anew, and what was not sure of them is forgotten. */
    public Watch another() {
        return suspect.heated() ? cleared() : this;
    }

    /** Seen again after a time in which nothing was: what was found stays found. */
    Watch again(double probeC) {
        return anew(probeC, Underway.NONE, new Rest(0, still.since().forgotten(), suspect));
    }

    /** A step in which the reading proves nothing: heat goes on its way, nothing gathers. */
    Watch unjudged(Estimate.Step s, Proof proof) {
        Watch w = carried(s, proof, driftKPerS);
        boolean read = !Double.isNaN(s.probeC());
        return anew(read ? s.probeC() : w.expectedC, w.underway,
                new Rest(driftKPerS, read ? w.still.since().read() : w.still.since(), suspect));
    }

    /** What is kept of a watch that begins anew. */
    private record Rest(double driftKPerS, Since since, Suspect suspect) {}

    /** Nothing has gathered. */
    private static Watch anew(double readingC, Underway underway, Rest rest) {
        return new Watch(readingC, underway, rest.driftKPerS(), Cause.NONE, Cause.NONE, Away.NONE,
                new Still(readingC, 0, 0, rest.since()), rest.suspect());
    }

    /**
     * The watch a step later.
     *
     * @param learnedDriftKPerS what {@link Estimate} finds unexplained
     */
    public Watch after(Estimate.Step s, Proof proof, double learnedDriftKPerS) {
        double most = proof.passed()
                ? DRIFT_SHARE_PER_H * proof.traits().riseKPerS() * s.dtS() / HOUR_S : Double.MAX_VALUE;
        Watch w = carried(s, proof, driftKPerS + Math.clamp(learnedDriftKPerS - driftKPerS, -most, most));
        return Double.isNaN(s.probeC()) ? w : w.read(s.probeC(), proof);
    }

    /** As expected, without a reading. */
    private Watch carried(Estimate.Step s, Proof proof, double drift) {
        double dt = s.dtS();
        Traits t = proof.traits();
        Underway way = underway.after(s.heat(), dt, t.lagS());
        double losing = t.lossPerS() * (expectedC - s.roomC());
        double rate = t.riseKPerS() * way.felt() - losing + drift;
        Since.Tick tick = new Since.Tick(dt, s.heat(), way.felt(), Math.max(0, losing - drift), rate);
        return new Watch(expectedC + dt * rate, way, drift, hot, cold, away, still.and(tick), suspect);
    }

    /** A reading, held against all that happened since the last. */
    private Watch read(double probeC, Proof proof) {
        double span = still.since().seconds();
        Still next = still.read(probeC);
        double taken = (probeC - expectedC) * span / (FOLLOW_S * next.since().slower() + span);
        return new Watch(expectedC + taken, underway, driftKPerS, hot, cold, away, next, suspect)
                .gathered(still.since(), proof, taken);
    }

    /** Sums what was seen. @param over the time it spans  @param takenK by which the expectation gave way */
    private Watch gathered(Since over, Proof proof, double takenK) {
        double dt = over.seconds();
        double full = proof.traits().riseKPerS();
        double felt = over.feltS() / dt;
        double lostKPerS = over.lostK() / dt;
        double lessK = proof.more() * (full * felt + lostKPerS) * dt;
        double speed = away.speedKPerS() + (takenK / dt - away.speedKPerS()) * dt / (SPEED_S + dt);
        double fastest = LOOSE_FLOOR_K_PER_S + proof.slackKPerS() + lessK / dt + (speed > 0
                ? LOOSE_POWER * full * Math.clamp(1 - felt, 0, hot.felt() + UNSEEN) + LID_ON_COOL * lostKPerS
                : LOOSE_POWER * full * felt + LID_OFF * lostKPerS);
        double tooFast = Math.abs(speed) - fastest;
        Away leaves = new Away(speed, Math.max(0, away.looseK() + tooFast * dt),
                tooFast > 0 ? QUIET_S : Math.max(0, away.quietS() - dt));
        // At a speed that no heat explains, and soon after, the reading says nothing about heat.
        double heat = leaves.quietS() > 0 ? 0 : takenK;
        double model = (MODEL * full + proof.slackKPerS()) * dt + lessK;
        Cause.Over span = new Cause.Over(dt, full * dt, NOISE_K * still.since().slower(),
                proof.traits().lagS());
        double on = over.heatS() / dt;
        Cause h = hot.after(span, new Cause.Seen(heat, 1 - on),
                model + Math.min(full, proof.lidOnKPerS(lostKPerS)) * dt);
        Cause k = cold.after(span, new Cause.Seen(-heat, on),
                model + Math.max(AGED * full * felt, LID_OFF * lostKPerS) * dt);
        boolean looked = h.doubtedS() >= proof.lookS(lostKPerS);
        Watch w = new Watch(expectedC, underway, driftKPerS, h, k, leaves, still, suspect);
        Suspect named = suspect == Suspect.NONE || suspect == Suspect.ABOVE ? w.named(looked) : suspect;
        return named == Suspect.NONE ? w
                : new Watch(expectedC, underway, driftKPerS, h, k, leaves, still, named);
    }

    /** @param looked whether the question of a welded switch has stood for long enough */
    private Suspect named(boolean looked) {
        boolean moves = still.forS() < Math.max(STANDS_S, STANDS_READINGS * still.since().periodS());
        return away.looseK() > LOOSE_LIMIT_K ? Suspect.IN_AIR
                : Math.abs(still.owedK()) > FROZEN_K ? Suspect.FROZEN
                : looked && hot.sureK() > hotLimitK() && moves ? Suspect.WELDED
                : cold.sureK() > COLD_LIMIT_K && moves ? Suspect.DEAD
                : Suspect.NONE;
    }

    private double hotLimitK() {
        return HOT_LIMIT_NOISES * NOISE_K * still.since().slower();
    }

    /** Whether it warms more than is understood: switch off and look, it costs little. */
    public boolean doubtful() {
        return hot.doubted();
    }

    /** How near the nearest sum is to its limit, 0..1 and beyond: above a half nothing is learned. */
    public double suspicion() {
        return Math.max(Math.max(hot.sureK() / hotLimitK(), cold.sureK() / COLD_LIMIT_K),
                away.looseK() / LOOSE_LIMIT_K);
    }
}

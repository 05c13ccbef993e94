package org.conetender.core.judge;

/**
 * Whether the water does what the switch makes us expect, by the traits of the last passed proof, so that
 * nothing learned since can hide a fault (control.md §2.4). What cannot be explained is summed up, K, less
 * an allowance for lids, doors and hands; each sum is a one-sided CUSUM, and the first beyond its limit
 * names the fault. The figures were chosen on cones that no bench uses (guesses otherwise).
 *
 * @param expectedC what the probe should show, °C
 * @param underway heat on its way by the proven traits
 * @param driftKPerS warming without a cause that is allowed for, K/s
 * @param sums what has gathered
 * @param still how long the reading has not moved
 * @param suspect the fault that is named; {@link Suspect#NONE} while there is none
 */
public record Watch(double expectedC, Underway underway, double driftKPerS, Sums sums, Still still,
                    Suspect suspect) {

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
        FROZEN
    }

    /**
     * @param doubtK warming beyond a small allowance: reason enough to switch off and look
     * @param warmK warming beyond what a lid or a door can do
     * @param coldK heat that did not arrive
     * @param looseK how far the reading is from where any water could be
     * @param speedKPerS of what is unexplained, over some seconds
     * @param dippedK how far it fell at a speed of hands or cold water, and may come back
     */
    public record Sums(double doubtK, double warmK, double coldK, double looseK, double dippedK,
                       double speedKPerS) {
        static final Sums NONE = new Sums(0, 0, 0, 0, 0, 0);
    }

    /**
     * @param readingC the reading that stands
     * @param forS how long it has
     * @param owedK how far it should have moved since
     */
    public record Still(double readingC, double forS, double owedK) {}

    /**
     * What the watch goes by.
     *
     * @param traits at the last passed proof
     * @param passed false before the first: then losses and room may be far off
     */
    public record Proof(Traits traits, boolean passed) {
        /** Until then losses may be off by this much water over room, K. */
        private static final double UNPROVEN_K = 8;

        private double slackKPerS() {
            return passed ? 0 : traits.lossPerS() * UNPROVEN_K;
        }
    }

    /** The expectation takes over the reading within this time, s. */
    private static final double FOLLOW_S = 8;
    private static final double DOUBT_ALLOWED = 0.15;
    private static final double DOUBT_LIMIT_K = 0.04;
    /** A lid put on saves at most this share of the losses, and of full power comes unexplained besides. */
    private static final double LID_SHARE = 0.5;
    private static final double WARM_ALLOWED = 0.12;
    private static final double WARM_LIMIT_K = 0.06;
    /** What is seen while the heater gives all it can says little about its switch, but not nothing. */
    private static final double LEAST_WEIGHT = 0.2;
    /** Of heat felt, this much may be missing; and of full power so much besides. */
    private static final double COLD_ALLOWED = 0.6;
    private static final double COLD_ALLOWED_BESIDES = 0.1;
    private static final double COLD_LIMIT_K = 0.45;
    /** Of full power, the speed that no fault but a probe out of the water exceeds; plus a floor, K/s. */
    private static final double LOOSE_POWER = 1.3;
    private static final double LOOSE_FLOOR_K_PER_S = 0.0025;
    /** Over so many seconds that speed is taken. */
    private static final double SPEED_S = 8;
    private static final double LOOSE_LIMIT_K = 0.1;
    /** Less is noise, K. */
    private static final double DIP_K = 0.03;
    private static final double DIP_ALLOWED = 0.05;
    /** A dip is forgotten within this time, s. */
    private static final double DIP_FORGOTTEN_S = 900;
    /** A reading that should have moved by 3.5 steps of 0.0625 and did not is frozen. */
    private static final double FROZEN_K = 0.22;
    /** Water that is heated, or not heated, against our will moves the reading within this time, s. */
    private static final double STANDS_S = 90;
    /** The drift that is allowed for follows what is learned, by so much of full power in an hour. */
    private static final double DRIFT_SHARE_PER_H = 0.2;
    private static final double HOUR_S = 3_600;

    /** At the first reading, or after what was found was cleared. */
    public static Watch from(double probeC) {
        return new Watch(probeC, Underway.NONE, 0, Sums.NONE, new Still(probeC, 0, 0), Suspect.NONE);
    }

    /** After time or a person cleared what was found; heat on its way stays on its way. */
    public Watch cleared() {
        return new Watch(still.readingC(), underway, driftKPerS, Sums.NONE,
                new Still(still.readingC(), 0, 0), Suspect.NONE);
    }

    /** Seen again after a time in which nothing was: what was found stays found. */
    Watch again(double probeC) {
        return new Watch(probeC, Underway.NONE, 0, Sums.NONE, new Still(probeC, 0, 0), suspect);
    }

    /** A step in which the reading proves nothing: heat goes on its way, nothing gathers. */
    Watch unjudged(Estimate.Step s, Proof proof) {
        double c = Double.isNaN(s.probeC()) ? expectedC : s.probeC();
        return new Watch(c, underway.after(s.heat(), s.dtS(), proof.traits().lagS()), driftKPerS, Sums.NONE,
                new Still(c, 0, 0), suspect);
    }

    /**
     * The watch a step later.
     *
     * @param learnedDriftKPerS what {@link Estimate} finds unexplained
     */
    public Watch after(Estimate.Step s, Proof proof, double learnedDriftKPerS) {
        double dt = s.dtS();
        Traits t = proof.traits();
        Underway way = underway.after(s.heat(), dt, t.lagS());
        double most = proof.passed() ? DRIFT_SHARE_PER_H * t.riseKPerS() * dt / HOUR_S : Double.MAX_VALUE;
        double drift = driftKPerS + Math.clamp(learnedDriftKPerS - driftKPerS, -most, most);
        double losing = t.lossPerS() * (expectedC - s.roomC());
        double rate = t.riseKPerS() * way.felt() - losing + drift;
        double c = expectedC + dt * rate;
        if (Double.isNaN(s.probeC())) {
            return new Watch(c, way, drift, sums, still, suspect);
        }
        double away = s.probeC() - c;
        double taken = away * dt / (FOLLOW_S + dt);
        Sums now = summed(new Seen(taken, dt), proof, way.felt(), Math.max(0, losing - drift));
        Still stands = s.probeC() == still.readingC()
                ? new Still(still.readingC(), still.forS() + dt, still.owedK() + dt * rate)
                : new Still(s.probeC(), 0, 0);
        return new Watch(c + taken, way, drift, now, stands, named(now, stands));
    }

    /** @param takenK by which the expectation gave way  @param dtS length of the step */
    private record Seen(double takenK, double dtS) {}

    private Sums summed(Seen seen, Proof proof, double felt, double losingKPerS) {
        double dt = seen.dtS();
        double full = proof.traits().riseKPerS() * dt;
        double slack = proof.slackKPerS() * dt;
        double weight = Math.min(1, LEAST_WEIGHT + 1 - felt);
        double lid = LID_SHARE * Math.min(full, losingKPerS * dt);
        double fastest = LOOSE_POWER * full + (LOOSE_FLOOR_K_PER_S + proof.slackKPerS()) * dt;
        // What dipped, lifted out or topped up, may come back without anything heating it.
        double sunk = sums.dippedK() * Math.exp(-dt / DIP_FORGOTTEN_S);
        double dipped = Math.max(0, sunk - seen.takenK() - DIP_ALLOWED * full - slack);
        double back = sunk > DIP_K ? Math.clamp(seen.takenK(), 0, sunk) : 0;
        double speed = sums.speedKPerS() + (seen.takenK() / dt - sums.speedKPerS()) * dt / (SPEED_S + dt);
        double tooFast = Math.abs(speed) - fastest / dt;
        double loose = Math.max(0, sums.looseK() + tooFast * dt);
        // At a speed that no heat explains the reading says nothing about heat.
        double taken = tooFast > 0 ? 0 : seen.takenK();
        double warming = taken - Math.max(0, Math.min(taken, back));
        return new Sums(
                Math.max(0, sums.doubtK() + warming - DOUBT_ALLOWED * full - slack),
                Math.max(0, sums.warmK() + weight * (warming - WARM_ALLOWED * full - lid - slack)),
                Math.max(0, sums.coldK() - felt * (taken + COLD_ALLOWED * full * felt
                        + COLD_ALLOWED_BESIDES * full + slack)),
                loose, dipped, speed);
    }

    private Suspect named(Sums s, Still st) {
        if (suspect != Suspect.NONE) {
            return suspect;
        }
        if (Math.abs(st.owedK()) > FROZEN_K) {
            return Suspect.FROZEN;
        }
        boolean stands = st.forS() > STANDS_S;
        return s.looseK() > LOOSE_LIMIT_K ? Suspect.IN_AIR
                : s.warmK() > WARM_LIMIT_K ? stands ? Suspect.FROZEN : Suspect.WELDED
                : s.coldK() > COLD_LIMIT_K ? stands ? Suspect.FROZEN
                        : s.looseK() > LOOSE_LIMIT_K / 2 ? Suspect.IN_AIR : Suspect.DEAD
                : Suspect.NONE;
    }

    /** Whether it warms more than is understood: switch off and look, it costs little. */
    public boolean doubtful() {
        return sums.doubtK() > DOUBT_LIMIT_K;
    }

    /** How near the nearest sum is to its limit, 0..1 and beyond: above a half nothing is learned. */
    public double suspicion() {
        return Math.max(Math.max(sums.warmK() / WARM_LIMIT_K, sums.coldK() / COLD_LIMIT_K),
                sums.looseK() / LOOSE_LIMIT_K);
    }
}

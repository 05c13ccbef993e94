package org.conetender.core.judge;

/**
 * One way in which a heater can go wrong, held against the water: heat that comes though it was not
 * switched, or stays away though it was. It reckons what the fault would have brought since the water last
 * did as expected, and gathers what the water really did. Each sum is a one-sided CUSUM whose drift lies
 * half way between a healthy cone and the fault, so that what is slower than the fault drains away; what
 * is faster contradicts it and counts for nothing: hands, cold water, a wiped probe. Immutable.
 *
 * @param element share of full power by which the heater would differ, 0..1
 * @param felt what the reading would show of that, 0..1
 * @param dueK what the fault would have brought, K
 * @param doubtK what has gathered beyond small errors of the model, K
 * @param sureK what has gathered beyond all that a lid, a door or an old heater may do, K
 * @param doubtedS how long the question whether it is the heater has stood, s; 0 while none stands
 */
public record Cause(double element, double felt, double dueK, double doubtK, double sureK,
                    double doubtedS) {

    static final Cause NONE = new Cause(0, 0, 0, 0, 0, 0);

    /** Of full power: errors of rise and lag as they usually are after a proof (guess). */
    private static final double SMALL = 0.05;
    /** And the noise of the reading drains from a doubt within a minute, so that it does not add up. */
    private static final double DRAINED_S = 60;
    /** Reason enough to switch off and look, noises: seldom enough that no relay wears by it (by trial). */
    private static final double DOUBT_LIMIT = 4.5;
    /**
     * Where the heater is off anyway the question costs nothing and is put sooner: beyond so many noises
     * at the rise from which a fault is urgent, K/s; a slower heater has more time, and more noise against it
     * (both by trial).
     */
    private static final double IDLE_DOUBT = 3;
    private static final double URGENT_K_PER_S = 0.0025;
    /**
     * A heater has one power: what has gathered beyond half of it must be so large a share of what the fault
     * would have brought, give or take the reading's noise (guess). Less settles the question: lids, doors
     * and a warm afternoon go on for hours, and so would a CUSUM near its drift.
     */
    private static final double SIZE = 0.3;
    /** The fault may be this much stronger than reckoned (guess), and the reading so far off. */
    static final double STRONGER = 1.2;
    private static final double OFF = 2;
    /** Doubt costs little and may run ahead by so much more. */
    private static final double AHEAD = 9;

    /**
     * The time from one reading to the next.
     *
     * @param dtS its length, s
     * @param fullK rise at full power without losses in it, K
     * @param noiseK of what is followed, one sd, K
     * @param lagS the heater's time constant, s
     */
    record Over(double dtS, double fullK, double noiseK, double lagS) {

        /** Of a difference, what follows in that time; an implicit midpoint that does not overshoot. */
        private double share(double constantS) {
            return Math.min(1, dtS / (constantS + dtS / 2));
        }
    }

    /**
     * What it showed.
     *
     * @param takenK what the reading did beyond expectation, towards the fault, K
     * @param drive share of full power by which the fault differs in it, 0..1
     */
    record Seen(double takenK, double drive) {}

    /** A reading later. @param allowedK what a healthy cone may do at most in that time, K */
    Cause after(Over span, Seen s, double allowedK) {
        double e = element + span.share(span.lagS()) * (s.drive() - element);
        double f = felt + span.share(Underway.PROBE_S) * (e - felt);
        double full = span.fullK();
        double noise = span.noiseK();
        double due = dueK + full * f;
        double most = STRONGER * due + OFF * noise;
        double half = full * f / 2;
        double small = SMALL * full + noise * span.dtS() / DRAINED_S;
        double doubt = Math.min(most + AHEAD * noise, doubtK + s.takenK() - Math.max(small, half));
        double sure = sureK + s.takenK() - Math.max(allowedK, half);
        double idle = IDLE_DOUBT * noise * Math.max(1, URGENT_K_PER_S * span.dtS() / full);
        boolean asked = doubted() || doubt > DOUBT_LIMIT * noise || s.drive() == 1 && doubt > idle;
        return doubt <= 0 || doubt + OFF * noise <= SIZE * due ? NONE
                : new Cause(e, f, due, doubt, sure > most ? 0 : Math.max(0, sure),
                        asked ? doubtedS + span.dtS() : 0);
    }

    /** Whether the question stands whether it is the heater. */
    public boolean doubted() {
        return doubtedS > 0;
    }
}

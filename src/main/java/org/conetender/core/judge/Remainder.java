package org.conetender.core.judge;

/**
 * What of the warming of one cone's water stays while the heat of others, which are off, comes out of them: a
 * plane through all steps of that time. How much of it theirs was nobody knows beforehand, for a heater may
 * hang here or only be switched from there; that it comes out tells. Immutable.
 *
 * @param own sum of the square of what its own heater would give beyond what it is known to give, s
 * @param both sum of the product with what is felt of the others, s
 * @param others sum of the square of that, s
 * @param ownGainK sum of the warming that nothing explains, times the first, K
 * @param othersGainK times the second, K
 */
record Remainder(double own, double both, double others, double ownGainK, double othersGainK) {

    static final Remainder NONE = new Remainder(0, 0, 0, 0, 0);

    /**
     * A step more.
     *
     * @param dtS its length, s
     * @param more that its own heater could give, were its switch welded, beyond what it is known to, 0..1
     * @param felt of the others, as a share of their power
     * @param takenK the warming
     */
    Remainder and(double dtS, double more, double felt, double takenK) {
        return new Remainder(own + more * more * dtS, both + more * felt * dtS, others + felt * felt * dtS,
                ownGainK + more * takenK, othersGainK + felt * takenK);
    }

    private double apartS() {
        return others <= 0 ? own : Math.max(0, own - both * both / others);
    }

    /** What its own heater would have brought that the others could not, K. @param fullKPerS at full power */
    double toldK(double fullKPerS) {
        return fullKPerS * apartS();
    }

    /** What has stayed, as far as it is told from the others', K. */
    double stayedK() {
        return others <= 0 ? ownGainK : ownGainK - othersGainK * both / others;
    }
}

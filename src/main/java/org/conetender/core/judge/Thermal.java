package org.conetender.core.judge;

import java.util.function.UnaryOperator;

/**
 * What is known of the water and the heater of one cone, and whether they behave: one step is one tick.
 * Wants nothing. Pure; immutable.
 *
 * @param estimate what is known now
 * @param watch whether the water does as expected
 * @param proof what the watch goes by
 * @param proofAgeS seconds since it was passed, or since the water first came near what was aimed at
 * @param following false when the last tick told nothing of the water: it is seen anew
 * @param first the rise from which it is told how much water has gone
 * @param unlikeS how long the rise has been another than the proof's, s
 * @param holding the duty that would hold the water where it is; outside 0..1 where no duty can
 */
public record Thermal(Estimate estimate, Watch watch, Watch.Proof proof, double proofAgeS,
                      boolean following, double holding, First first, double unlikeS) {

    /** Known well enough to judge by: doubt of the rise, relative, and of the lag, s (guess). */
    public static final double RISE_KNOWN = 0.03;
    public static final double LAG_KNOWN_S = 15;
    /** Or so long after it first came near the set-point, s (guess). */
    private static final double SETTLED_S = 600;
    private static final double NEAR_K = 0.3;
    /** A proof is renewed hourly while nothing is suspect (control.md §2.3). */
    private static final double RENEW_S = 3_600;
    /** Mean square of the surprises over what is expected of them, from which the model is wrong (guess). */
    private static final double MISFIT = 9;
    private static final double UNSUSPICIOUS = 0.3;
    private static final double SUSPICIOUS = 0.5;
    /** A reading that stood so long is asked to move, and by so much: four steps of the probe (guess). */
    private static final double STANDING_S = 1_500;
    private static final double ASK_K = 0.25;
    /**
     * After every proof the water is let fall by two steps of the probe within so long, s, and brought back
     * at full power: water held to a hundredth says nothing of rise and losses, nor that its reading lives.
     * By trial: the rms error stays below 0.05 K, and 5 % of the water in an hour shows before half is gone.
     */
    private static final double PULSE_K = 0.13;
    private static final double PULSE_S = 300;

    /** A rise that was another for so long is the rise now: it must be proven anew, s (guess). */
    private static final double UNLIKE_S = 3_600;
    /** By so much more than at the first proof, relative, it warms where water went since (guess). */
    private static final double WENT = 0.1;
    /** It is doubted by so much then, relative (guess): twice the change that was taken for another. */
    private static final double UNLIKE_SHARE = 2 * Watch.Proof.RISE_CHANGE;

    /**
     * A rise of this filling, to compare with.
     *
     * @param riseKPerS at full power without losses, K/s; 0 for none
     * @param stands whether it is compared with: from the second passed proof on, when what was told of the
     *     filling no longer enters, or when water went before that
     */
    public record First(double riseKPerS, boolean stands) {
        static final First NONE = new First(0, false);

        /** With a proof that was passed. @param again whether one was passed before */
        private First proven(Estimate e, boolean again) {
            double rise = e.traits().riseKPerS();
            if (stands || !again) {
                return stands || e.riseDoubt() >= FIRST_KNOWN ? this : new First(rise, false);
            }
            return riseKPerS > 0 && rise > (1 + WENT) * riseKPerS ? standing() : new First(rise, true);
        }

        /** The water has changed since: what was known of it before is what there is. */
        private First standing() {
            return new First(riseKPerS, riseKPerS > 0);
        }
    }

    /** A rise known so well is one to compare with, relative (guess). */
    private static final double FIRST_KNOWN = 0.05;
    /** Of the water: evaporation takes less (science.md §9), a lid looks like a fifth of it (by trial). */
    private static final double GONE = 0.23;
    /** And standard deviations (guess). */
    private static final double GONE_SD = 4;
    /** From this duty on water falls faster without heat than it rises with all of it. */
    private static final double HARD = 0.5;
    /** The answer has this long; with the time before it an hour and a quarter, s. */
    private static final double ANSWER_S = 3_000;

    /** At the first reading. @param nominal traits out of the configuration */
    public static Thermal from(Traits nominal, double probeC) {
        return from(nominal, nominal, probeC);
    }

    /** The same, of a cone that was learned before: doubted as if it were not, and no proof stands. */
    public static Thermal from(Traits nominal, Traits prior, double probeC) {
        return new Thermal(Estimate.first(nominal, probeC).again(prior, probeC), Watch.from(probeC),
                new Watch.Proof(prior, false), 0, true, 0, First.NONE, 0);
    }

    /**
     * A step later.
     *
     * @param seen what was seen of it; where it says not to learn, the water was handled or unstirred, and
     *     nothing is judged either
     * @param aimC what the heater was to hold, °C; NaN for nothing
     */
    public Thermal after(Estimate.Step seen, double aimC) {
        Estimate.Step s = new Estimate.Step(seen.dtS(), seen.heat(), seen.roomC(), seen.probeC(),
                seen.learn() && watch.suspect() == Watch.Suspect.NONE && watch.suspicion() < SUSPICIOUS
                        && (!proof.passed() || proof.like(estimate.traits())));
        Estimate e = estimate.after(s);
        Watch.Proof by = proof.passed() ? proof : proof.of(e.traits());
        if (!seen.learn()) {
            return new Thermal(e, watch.unjudged(s, by), by, proofAgeS, true, holding, first, unlikeS);
        }
        Watch w = watch.after(s, by, e.driftKPerS());
        boolean near = Math.abs(e.readingC() - aimC) < NEAR_K;
        double age = proof.passed() || near ? proofAgeS + s.dtS() : proofAgeS;
        boolean known = e.riseDoubt() < RISE_KNOWN && e.lagDoubtS() < LAG_KNOWN_S || age > SETTLED_S;
        boolean renew = w.suspicion() < UNSUSPICIOUS && w.suspect() == Watch.Suspect.NONE
                && (proof.passed() ? age > RENEW_S && proof.like(e.traits()) : known && proof.likely(e));
        boolean unlikely = proof.passed() && !proof.like(e.traits());
        double unlike = unlikely && w.suspect() == Watch.Suspect.NONE ? unlikeS + s.dtS() : 0;
        Thermal next = new Thermal(e, w, renew ? new Watch.Proof(e.traits(), true) : by, renew ? 0 : age,
                true, e.holdingDuty(e.readingC(), s.roomC()),
                renew ? first.proven(e, proof.passed()) : first, unlike);
        return unlike > UNLIKE_S ? next.afresh(other(e)) : next;
    }

    /**
     * Whether there is another amount of water than was proven: less, or more again. Less rise than this
     * filling ever had is none of them, but a heater that fades; it must not be learned away.
     */
    private boolean other(Estimate e) {
        double rise = e.traits().riseKPerS();
        double full = first.riseKPerS() > 0 ? first.riseKPerS() : e.nominal().riseKPerS();
        return rise > proof.traits().riseKPerS() || rise >= (1 - Watch.Proof.RISE_CHANGE) * full;
    }

    /**
     * Nothing more is learned of what is so unlike the proof. The same water or less of it, which is another
     * than was proven: that goes. Else what was learned was wrong, and learning begins at the proof again.
     */
    private Thermal afresh(boolean other) {
        return !other ? new Thermal(estimate.again(proof.traits(), estimate.readingC()), watch, proof,
                proofAgeS, following, holding, first, 0)
                : new Thermal(estimate.doubted(UNLIKE_SHARE), watch.cleared(),
                        new Watch.Proof(estimate.traits(), false, UNLIKE_SHARE), 0, following, holding,
                        first.standing(), 0);
    }

    /** Nothing is seen of it at present: what the cone is like is kept. */
    public Thermal left() {
        return !following ? this
                : new Thermal(estimate, watch, proof, proofAgeS, false, holding, first, unlikeS);
    }

    /** Seen again after such a time. */
    public Thermal again(double probeC) {
        return new Thermal(estimate.again(estimate.traits(), probeC), watch.again(probeC), proof, proofAgeS,
                true, holding, first, unlikeS);
    }

    /**
     * Other water, or another amount of it: it is like before until it shows itself, and nothing of the
     * proof stands. What was found stays found.
     *
     * @param share by which its amount may be another, 0..1
     */
    public Thermal refilled(double share) {
        double c = estimate.readingC();
        return new Thermal(estimate.again(estimate.traits(), c).doubted(share), watch.again(c),
                new Watch.Proof(estimate.traits(), false, share), 0, following, 0, First.NONE, 0);
    }

    /**
     * How far off the set-point the water should be led, K, so that a reading that stands may move: the way
     * on which it moves faster, for a heater that works hard cools faster than it warms.
     */
    public double askK() {
        return watch.still().forS() <= STANDING_S ? 0 : holding < HARD ? ASK_K : -ASK_K;
    }

    /** The same by which it is led each hour, where it is held closer than that, K; 0 at other times. */
    public double pulseK() {
        return proof.passed() && proofAgeS < PULSE_S ? -PULSE_K : 0;
    }

    /**
     * Whether a reading that stands was asked to move and could not be expected to: the room keeps the
     * water where it is. Nobody knows then whether the probe still measures.
     */
    public boolean untestable() {
        return watch.still().forS() > STANDING_S + ANSWER_S && watch.suspect() == Watch.Suspect.NONE;
    }

    /**
     * Share of the water that seems to have gone since it was first known, 0..1: less of it warms faster and
     * loses its heat faster. A trend of hours and a reason to look, never to trip. Only heat that comes and
     * goes tells of it, at least once an hour.
     */
    public double gone() {
        return !first.stands() ? 0 : Math.max(0, 1 - first.riseKPerS() / estimate.traits().riseKPerS());
    }

    /** Whether so much is gone that it is no error of the estimate. */
    public boolean falling() {
        return gone() > Math.max(GONE, GONE_SD * estimate.riseDoubt());
    }

    /** Whether the water behaves as a model of this form can describe; else the plainer law rules. */
    public boolean fits() {
        return estimate.misfit() < MISFIT;
    }

    /** The same, its watch changed so: cleared, or with another finding. */
    public Thermal watched(UnaryOperator<Watch> by) {
        return new Thermal(estimate, by.apply(watch), proof, proofAgeS, following, holding, first, unlikeS);
    }
}

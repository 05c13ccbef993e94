package org.conetender.core.heat;

import org.conetender.core.judge.Estimate;
import org.conetender.core.judge.Thermal;

/**
 * The law that knows the coast: it steers the temperature that the heat on its way will bring, which
 * answers the switch at once, and so needs no tuning and does not overshoot (control.md §2.2).
 *
 * <p>A relay switches at the edges of a band as wide as its budget of cycles demands:
 * {@code cycles/day = 86400·rise·D(1−D)/band} (control.md §2.1). A solid-state switch is given a duty.
 *
 * @param on whether the heater is wanted on
 * @param duty wanted, 0..1
 * @param owedS seconds of heat still owed to the duty (solid-state only)
 * @param sinceS since it last switched, s
 * @param ledK by which the water is led off its set-point at present, K
 */
public record Predict(boolean on, double duty, double owedS, double sinceS, double ledK) {

    public static final Predict IDLE = new Predict(false, 0, 0, Double.MAX_VALUE, 0);

    private static final double DAY_S = 86_400;
    /** No band is narrower, K: one step of the probe; less would follow its noise. */
    private static final double LEAST_BAND_K = 0.0625;
    /** The budget is kept by a little, because the room turns duties about in the day (guess). */
    private static final double SPARING = 1.03;
    /** A solid-state switch takes back an error within this time, s (guess: a heater's lag). */
    private static final double TAKE_BACK_S = 60;
    /** Duties near 0 and 1 would want no band at all: nearer to them than this nothing narrows (guess). */
    private static final double LEAST_DUTY = 0.03;

    /**
     * @param cyclesPerDay what the switch may do; infinite for a solid-state switch
     * @param leastS no pulse and no pause is shorter, s
     */
    public record Switching(double cyclesPerDay, double leastS) {
        boolean spared() {
            return cyclesPerDay < DAY_S;
        }
    }

    /**
     * The law a step later.
     *
     * @param e the cone as it is known now
     * @param aimC temperature wanted, °C
     * @param around room temperature in °C, and the step in s
     * @param kind of the switch
     */
    public Predict after(Estimate e, double aimC, Around around, Switching kind) {
        double hold = Math.clamp(e.holdingDuty(aimC, around.roomC()), 0, 1);
        double lackK = aimC + e.traits().coastK(hold) - e.plateauC();
        return kind.spared() ? band(e, hold, lackK, new Edge(around.dtS(), kind))
                : proportioned(hold + lackK / (e.traits().riseKPerS() * TAKE_BACK_S), around.dtS());
    }

    /** The law a step later, with what its cone is suspected of: in doubt it is off. */
    public Predict steered(Thermal t, double aimC, Around around, Switching kind) {
        boolean closely = t.pulseK() < 0 && swingsK(t.estimate(), aimC, around, kind) < -t.pulseK();
        double pulse = closely ? t.pulseK() : 0;
        double led = t.askK() != 0 ? t.askK() : pulse;
        Predict next = after(t.estimate(), aimC + led, around, kind);
        return (looks(t) ? next.off() : next).led(led);
    }

    /** Whether it warms more than is understood: the law switches off and looks, it costs little. */
    public static boolean looks(Thermal t) {
        return t.proof().passed() && t.watch().doubtful();
    }

    /** How far the water moves anyway from one switching to the next, K. */
    private static double swingsK(Estimate e, double aimC, Around around, Switching kind) {
        return !kind.spared() ? 0 : bandK(e.traits().riseKPerS(),
                Math.clamp(e.holdingDuty(aimC, around.roomC()), 0, 1), kind.cyclesPerDay());
    }

    /** The same, but off. */
    public Predict off() {
        return new Predict(false, 0, 0, on ? 0 : sinceS, 0);
    }

    private Predict led(double byK) {
        return new Predict(on, duty, owedS, sinceS, byK);
    }

    /** @param roomC around the cone  @param dtS seconds since the last step */
    public record Around(double roomC, double dtS) {}

    private record Edge(double dtS, Switching kind) {}

    private Predict band(Estimate e, double hold, double lackK, Edge edge) {
        double wide = bandK(e.traits().riseKPerS(), hold, edge.kind().cyclesPerDay());
        boolean wish = lackK > (on ? -wide : wide) / 2;
        boolean next = sinceS < edge.kind().leastS() ? on : wish;
        double duty = lackK > wide ? 1 : lackK < -wide ? 0 : hold;
        return new Predict(next, duty, 0, next == on ? sinceS + edge.dtS() : 0, 0);
    }

    /**
     * How wide the band must be, K.
     *
     * @param riseKPerS at full power without losses
     * @param duty that holds, 0..1
     */
    static double bandK(double riseKPerS, double duty, double cyclesPerDay) {
        double d = Math.clamp(duty, LEAST_DUTY, 1 - LEAST_DUTY);
        return Math.max(LEAST_BAND_K, SPARING * DAY_S * riseKPerS * d * (1 - d) / cyclesPerDay);
    }

    private Predict proportioned(double wanted, double dtS) {
        double next = Math.clamp(wanted, 0, 1);
        double owed = Math.clamp(owedS + (next - (on ? 1 : 0)) * dtS, -dtS, 1.5 * dtS);
        boolean wish = next >= 1 || next > 0 && owed >= dtS / 2;
        return new Predict(wish, next, owed, wish == on ? sinceS + dtS : 0, 0);
    }
}

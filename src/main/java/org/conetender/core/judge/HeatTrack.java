package org.conetender.core.judge;

import org.conetender.core.unit.Units;

/**
 * Whether heat does what heat must (style.md habit 6: judge progress, not only level).
 *
 * <p>Two watches. <b>Window</b>: while heat is given, the water's gain is held against the energy
 * put in less the nominal losses; a window closes when the energy is worth {@link #WINDOW_K}, and
 * passes if a fair share of it arrived. <b>Off watch</b>: once the element has cooled, water that
 * keeps rising is being heated by something we did not switch on. The nominal losses may be wrong by
 * a third (control.md §2), so both thresholds are wide.
 *
 * @param offForMs how long heat has been off without a break; 0 while on
 * @param calmForMs how long nobody has had hands in the water, as far as is known
 * @param lowestOffC lowest water temperature since the element cooled, °C, raised by what an unmeasured
 *     room may have added since; NaN while not watching
 * @param peak the highest the water was since then
 * @param window the open window
 * @param responded whether a window has passed since the start of the process and the last filling
 * @param failed whether the last closed window did not pass
 */
public record HeatTrack(long offForMs, long calmForMs, double lowestOffC, Peak peak, Window window,
                        boolean responded, boolean failed) {

    /** Energy that closes a window, as the rise it would give without losses, K (guess: 4 probe steps). */
    static final double WINDOW_K = 0.8;
    /** The first window after a start is shorter: the low-power response test (guess). */
    public static final double FIRST_WINDOW_K = 0.4;
    /** A window passes when at least this share of its energy shows (guess; ±30 % losses, element lag). */
    static final double FAIR_SHARE = 0.3;
    /**
     * What a window shows counts against the heater only where it worked so hard, as a share of its time:
     * at the floor an idle one hardly balances what evaporates, which nobody measures (science.md §9). A
     * heater that is dead is soon asked for all it has; guess. At first it may give a quarter at most.
     */
    static final double HARD = 0.5;
    static final double HARD_AT_FIRST = 0.2;
    /** An immersed element and the probe have given off their heat after this (lags ≤ 90 s + 20 s, ×2). */
    static final long COOLED_MS = 4 * Units.MINUTE_MS;
    /** Water that rose no more for so long with the heat off is not heated (guess; 25 W would give 1.8 K). */
    public static final long STILL_MS = 10 * Units.MINUTE_MS;
    /** Energy reaches the probe this late (lags of control.md head). */
    static final long LAG_MS = 2 * Units.MINUTE_MS;
    /** A window may not close before: of heat given from cold on, the slowest heater's half has arrived. */
    static final long CLOSES_MS = 4 * Units.MINUTE_MS;

    /**
     * @param startC water temperature at its beginning, °C; NaN while none is open
     * @param givenK energy given since, as K of this water
     * @param lostK nominal losses since, K
     * @param ageMs how long it has been open
     */
    public record Window(double startC, double givenK, double lostK, long ageMs) {
        static final Window NONE = new Window(Double.NaN, 0, 0, 0);
    }

    /** @param degreesC the highest water, °C; NaN while not watching  @param ageMs how long ago it was so */
    public record Peak(double degreesC, long ageMs) {
        static final Peak NONE = new Peak(Double.NaN, 0);

        private Peak after(double c, long dtMs) {
            return Double.isNaN(degreesC) || c > degreesC ? new Peak(c, 0)
                    : new Peak(degreesC, ageMs + dtMs);
        }
    }

    /** What moved since the last tick. */
    public record Step(long dtMs, boolean heated, Belief water, Physics physics) {}

    /**
     * @param slopeKPerS rise at full power without losses, K/s
     * @param lossKPerS nominal cooling at present, K/s
     * @param coldRoom whether the room is too cool to warm the water by itself
     * @param driftKPerS how fast a room nobody measures may warm it, K/s; 0 where it is measured
     */
    public record Physics(double slopeKPerS, double lossKPerS, boolean coldRoom, double driftKPerS) {}

    public static HeatTrack fresh() {
        return new HeatTrack(0, 0, Double.NaN, Peak.NONE, Window.NONE, false, false);
    }

    /** The track of a cone that was filled anew: water must answer again before normal heat. */
    public HeatTrack untested() {
        return new HeatTrack(offForMs, 0, Double.NaN, Peak.NONE, Window.NONE, false, failed);
    }

    /** The track after a person said that the cause is mended: try again. */
    public HeatTrack forgiven() {
        return new HeatTrack(offForMs, calmForMs, Double.NaN, Peak.NONE, Window.NONE, false, false);
    }

    /** How far the water has risen since the element cooled, K; 0 while not watching. */
    public double riseWhileOffK(Belief water) {
        return Double.isNaN(lowestOffC) || !(water instanceof Belief.Trusted(double c)) ? 0 : c - lowestOffC;
    }

    /** How long water that was watched with the heat off has not risen any more, ms; 0 while not watching. */
    public long noRiseForMs() {
        return peak.ageMs();
    }

    /** The track after this step; {@code disturbed} when the water was handled and proves nothing. */
    public HeatTrack after(Step s, boolean disturbed) {
        long off = s.heated() ? 0 : offForMs + s.dtMs();
        if (disturbed || !(s.water() instanceof Belief.Trusted(double c))) {
            return new HeatTrack(off, disturbed ? 0 : calmForMs + s.dtMs(), Double.NaN, Peak.NONE,
                    Window.NONE, responded, failed);
        }
        long calm = calmForMs + s.dtMs();
        // Water poured in warm reaches the probe late, and is no heater's doing.
        double lowest = off < COOLED_MS || calm < LAG_MS || !s.physics().coldRoom() ? Double.NaN
                : Double.isNaN(lowestOffC) ? c
                : Math.min(lowestOffC + s.physics().driftKPerS() * s.dtMs() / 1000.0, c);
        // Water that does not rise is not heated, however warm the room.
        Peak high = off < COOLED_MS || calm < LAG_MS ? Peak.NONE : peak.after(c, s.dtMs());
        return closed(new HeatTrack(off, calm, lowest, high, open(s, c), responded, failed), c,
                s.physics().slopeKPerS());
    }

    private Window open(Step s, double c) {
        if (Double.isNaN(window.startC())) {
            return s.heated() ? new Window(c, 0, 0, 0) : Window.NONE;
        }
        double dt = s.dtMs() / 1000.0;
        return new Window(window.startC(), window.givenK() + (s.heated() ? s.physics().slopeKPerS() * dt : 0),
                window.lostK() + s.physics().lossKPerS() * dt, window.ageMs() + s.dtMs());
    }

    private HeatTrack closed(HeatTrack t, double c, double slopeKPerS) {
        Window w = t.window();
        double full = responded ? WINDOW_K : FIRST_WINDOW_K;
        if (Double.isNaN(w.startC()) || w.givenK() < full || w.ageMs() < CLOSES_MS) {
            return t;
        }
        boolean pass = c - w.startC() + w.lostK() >= FAIR_SHARE * w.givenK();
        double share = w.givenK() / (slopeKPerS * w.ageMs() / 1000.0);
        boolean hard = share >= (responded ? HARD : HARD_AT_FIRST);
        return new HeatTrack(t.offForMs(), t.calmForMs(), t.lowestOffC(), t.peak(), Window.NONE,
                responded || pass, hard ? !pass : failed && !pass);
    }
}

package org.conetender.core.judge;

import org.conetender.core.unit.Units;

/**
 * Whether heat does what heat must (style.md habit 6: judge progress, not only level).
 *
 * <p>Two watches. <b>Window</b>: while heat is given, what the water shows of it is told from what it loses
 * by the pauses ({@link Response}), for nobody knows the losses: bubbles and lids make them half of the
 * nominal or three times as much. The first window closes once that is sure, or once the water shows less
 * than any losses explain, or more than none. Later ones count against the heater only by less than any
 * losses explain; where the water falls at full power, it is tried by pulses again. Heat of a mat or a bath
 * is too slow for pulses, and its losses are taken as configured. <b>Off watch</b>: once the element has
 * cooled, water that keeps rising is being heated by something we did not switch on.
 *
 * @param offForMs how long heat has been off without a break; 0 while on
 * @param calmForMs how long nobody has had hands in the water, as far as is known
 * @param lowestOffC lowest water temperature since the element cooled, °C, raised by what a room
 *     may have added since; NaN while not watching
 * @param rise whether it rises since then, and how fast
 * @param window the open window
 * @param way heat on its way to the probe
 * @param responded whether a window has passed since the start of the process and the last filling
 * @param failed whether the last closed window did not pass
 */
public record HeatTrack(long offForMs, long calmForMs, double lowestOffC, Rise rise, Window window,
                        Underway way, boolean responded, boolean failed) {

    /** Energy that closes a window, as the rise it would give without losses, K (guess: 4 probe steps). */
    static final double WINDOW_K = 0.8;
    /** The first window after a start is shorter: the low-power response test (guess). */
    public static final double FIRST_WINDOW_K = 0.4;
    /** Less than this share of its power is no heater (guess: slow and aged ones show half). */
    static final double FAIR_SHARE = 0.3;
    /** What a sound heater shows at least (guess: lags of 90 s taken for 50 cost a third). */
    static final double SOUND_SHARE = 0.6;
    /** A share is sure when it is so many standard deviations from what it is not. */
    static final double SURE = 3;
    /** True losses over nominal ones at most: bubbles and an open lid (science.md §9; bench's cones). */
    public static final double MOST_LOSSES = 3.5;
    /** What evaporates, or a room that nobody measures, costs like a room so much cooler, K (guess). */
    private static final double EVAPORATING_K = 2;
    private static final double COOLER_K = 5;
    /**
     * What a window shows counts against the heater only where it worked so hard, as a share of its time:
     * at the floor an idle one hardly balances what evaporates, which nobody measures (science.md §9). A
     * heater that is dead is soon asked for all it has; guess. Where less was given, its pauses tell.
     */
    static final double HARD = 0.5;
    static final double HARD_AT_FIRST = 0.2;
    /** Where more was given there was hardly a pause (guess). */
    private static final double PAUSED = 0.8;
    /** Water that falls so far in a window at so much of its power is tried anew, K (a step of the probe). */
    private static final double FALLS_K = 0.0625;
    private static final double FULL = 0.9;
    /** Tried for so long, the likelier counts (guess: within the hour of its alarm). */
    static final long PATIENCE_MS = 45 * Units.MINUTE_MS;
    /**
     * In the first trial a pulse and its pause last as long as full power would need for so much, K (found by
     * trial), within these bounds. The longest pulse, two minutes, makes a dry heater 86 K warmer than the
     * room at most, a minute 62 K, full power 150 K (by the simulation's element, a guess).
     */
    private static final double TRIAL_K = 0.7;
    private static final long LEAST_TRIAL_MS = 4 * Units.MINUTE_MS;
    private static final long MOST_TRIAL_MS = 8 * Units.MINUTE_MS;
    /** An immersed element and the probe have given off their heat after this (lags ≤ 90 s + 20 s, ×2). */
    static final long COOLED_MS = 4 * Units.MINUTE_MS;
    /** Water that rose no more for so long with the heat off is not heated (guess; 25 W would give 1.8 K). */
    public static final long STILL_MS = 10 * Units.MINUTE_MS;
    /** A rise that is no noise of the probe, K: three of its steps; it ends with a fall by two (guesses). */
    private static final double STEP_K = 0.0625;
    private static final double RISEN_K = 3 * STEP_K;
    private static final double TURN_K = 2 * STEP_K;
    /** Water that fell by twice this is taken to rise again once it is so far up, K (guess). */
    private static final double FAR_K = 4 * STEP_K;
    /** Energy reaches the probe this late (lags of control.md head). */
    static final long LAG_MS = 2 * Units.MINUTE_MS;
    /** A window may not close before: of heat given from cold on, the slowest heater's half has arrived. */
    static final long CLOSES_MS = 4 * Units.MINUTE_MS;

    /**
     * @param startC water temperature at its beginning, °C; NaN while none is open
     * @param givenK energy given since, as K of this water
     * @param lostK nominal losses since, K
     * @param ageMs how long it has been open
     * @param response what the water showed
     */
    record Window(double startC, double givenK, double lostK, long ageMs, Response response) {
        static final Window NONE = new Window(Double.NaN, 0, 0, 0, Response.NONE);
    }

    /**
     * A rise of the water, as far as a probe shows it: it begins anew where the water fell by two steps of
     * the probe, and of a long one only the last part counts.
     *
     * @param topC the highest water in it, °C; NaN while not watching
     * @param peakC the highest since the heat is off, but where the water has fallen far below it; °C
     * @param stillMs how long the water has not risen above that
     * @param lowC where it began, °C
     * @param far whether it has come so far that it may begin there
     * @param slope how fast it goes, since it is watched
     */
    public record Rise(double topC, double peakC, long stillMs, double lowC, boolean far, Slope slope) {
        static final Rise NONE = new Rise(Double.NaN, Double.NaN, 0, Double.NaN, false, Slope.NONE);

        private Rise after(double c, long dtMs) {
            boolean begins = Double.isNaN(topC);
            double peak = begins ? c : c < peakC - 2 * FAR_K ? c + FAR_K : Math.max(peakC, c);
            long still = begins || c > peakC ? 0 : stillMs + dtMs;
            Slope goes = slope.after(c, dtMs / 1000.0);
            if (begins || c < lowC || c < topC - TURN_K) {
                return new Rise(c, peak, still, c, false, goes);
            }
            double top = Math.max(topC, c);
            // What came in one leap is no rise that went on.
            return far && c >= lowC + 2 * RISEN_K
                    ? c - topC > TURN_K ? new Rise(c, peak, still, c, false, Slope.NONE)
                    : new Rise(top, peak, still, lowC + RISEN_K, true, goes)
                    : new Rise(top, peak, still, lowC, far || c >= lowC + RISEN_K, goes);
        }

        /** How fast, K/s; NaN until it is plain. */
        private double kPerS() {
            return topC - lowC < RISEN_K ? Double.NaN : slope.kPerS();
        }
    }

    /** What moved since the last tick. @param anew whether a reading came, not an old one */
    public record Step(long dtMs, boolean heated, Belief water, Physics physics, boolean anew) {}

    /**
     * @param slopeKPerS rise at full power without losses, K/s
     * @param lossKPerS nominal cooling at present, K/s
     * @param roomKPerS how fast the room may warm it at most, K/s; 0 where that is too cool for it,
     *     infinite where nothing can be told by it
     * @param driftKPerS how fast a room nobody measures may warm it, K/s; 0 where it is measured
     * @param lossPerS nominal cooling for each K over the room, 1/s
     * @param quick whether heat shows soon enough to be told from losses by its pauses; else those are taken
     *     as configured
     */
    public record Physics(double slopeKPerS, double lossKPerS, double roomKPerS, double driftKPerS,
                          double lossPerS, boolean quick) {

        /** The most that it may lose: beyond what the room's figure shows, it evaporates. */
        private Bound most() {
            return !quick ? Bound.NOMINAL : new Bound(MOST_LOSSES,
                    MOST_LOSSES * lossPerS * (driftKPerS > 0 ? COOLER_K : EVAPORATING_K));
        }

        /** The least: none, or less where the room warms it. */
        private Bound least() {
            return !quick ? Bound.NOMINAL : new Bound(lossKPerS > 0 ? 0 : MOST_LOSSES, -driftKPerS);
        }
    }

    /** @param times nominal losses  @param moreKPerS and what no room shows, K/s */
    private record Bound(double times, double moreKPerS) {
        private static final Bound NOMINAL = new Bound(1, 0);

        private double lossK(Window w) {
            return times * w.lostK() + moreKPerS * w.ageMs() / 1000.0;
        }
    }

    /** Window of the duty at first, so that pulses show, ms. @param riseKPerS at full power */
    public static long trialMs(double riseKPerS) {
        return Math.clamp(Math.round(TRIAL_K / riseKPerS * Units.SECOND_MS), LEAST_TRIAL_MS, MOST_TRIAL_MS);
    }

    public static HeatTrack fresh() {
        return new HeatTrack(0, 0, Double.NaN, Rise.NONE, Window.NONE, Underway.NONE, false, false);
    }

    /** The track of a cone that was filled anew: water must answer again before normal heat. */
    public HeatTrack untested() {
        return new HeatTrack(offForMs, 0, Double.NaN, Rise.NONE, Window.NONE, way, false, failed);
    }

    /** The track after a person said that the cause is mended: try again. */
    public HeatTrack forgiven() {
        return new HeatTrack(offForMs, calmForMs, Double.NaN, Rise.NONE, Window.NONE, way, false,
                false);
    }

    /** How far the water has risen since the element cooled, K; 0 while not watching. */
    public double riseWhileOffK(Belief water) {
        return Double.isNaN(lowestOffC) || !(water instanceof Belief.Trusted(double c)) ? 0 : c - lowestOffC;
    }

    /**
     * How fast the water warmed lately with the element cool, whatever warms it, K/s; NaN while not watching,
     * and until it has risen by what a probe shows.
     */
    public double warmsKPerS() {
        return rise.kPerS();
    }

    /**
     * How long water that is watched with the heat off has had no new height, or none since it was suspected,
     * ms; 0 while not watching.
     */
    public long noRiseForMs() {
        return rise.stillMs();
    }

    /** Just suspected to be heated: from now on it must not rise. */
    HeatTrack suspected() {
        return new HeatTrack(offForMs, calmForMs, lowestOffC,
                new Rise(rise.topC(), rise.topC(), 0, rise.lowC(), rise.far(), rise.slope()),
                window, way,
                responded, failed);
    }

    /** Whether the first window has had its heat and does not tell yet: only pauses will. */
    public boolean undecided() {
        return !responded && window.givenK() >= FIRST_WINDOW_K && window.ageMs() >= CLOSES_MS;
    }

    /** The track after this step; {@code disturbed} when the water was handled and proves nothing. */
    public HeatTrack after(Step s, boolean disturbed) {
        long off = s.heated() ? 0 : offForMs + s.dtMs();
        Underway felt = s.dtMs() == 0 ? way
                : way.after(s.heated() ? 1 : 0, s.dtMs() / 1000.0, Traits.USUAL_LAG_S);
        if (disturbed || !s.water().known()) {
            return new HeatTrack(off, disturbed ? 0 : calmForMs + s.dtMs(), Double.NaN, Rise.NONE,
                    Window.NONE, felt, responded, failed);
        }
        double c = s.water().middleC();
        long calm = calmForMs + s.dtMs();
        // Water poured in warm reaches the probe late, and is no heater's doing.
        double lowest = off < COOLED_MS || calm < LAG_MS ? Double.NaN : Double.isNaN(lowestOffC) ? c
                : Math.min(lowestOffC + s.physics().roomKPerS() * s.dtMs() / 1000.0, c);
        // Water that does not rise is not heated, however warm the room.
        Rise rises = off < COOLED_MS || calm < LAG_MS ? Rise.NONE : rise.after(c, s.dtMs());
        HeatTrack next = new HeatTrack(off, calm, lowest, rises, open(s, c, felt.felt()), felt, responded,
                failed);
        // What was read a while ago does not show yet what was given since: a slow bus is waited for.
        return s.water() instanceof Belief.Trusted ? closed(next, c, s) : next;
    }

    private Window open(Step s, double c, double felt) {
        double dt = s.dtMs() / 1000.0;
        if (Double.isNaN(window.startC())) {
            // What an unknown past has left in the element has come out by then.
            return !s.heated() && offForMs < LAG_MS ? Window.NONE
                    : new Window(c, 0, 0, 0, Response.NONE.after(s.physics(), 0, 0, 0));
        }
        return new Window(window.startC(), window.givenK() + (s.heated() ? s.physics().slopeKPerS() * dt : 0),
                window.lostK() + s.physics().lossKPerS() * dt, window.ageMs() + s.dtMs(),
                window.response().after(s.physics(), felt, dt, s.anew() ? c - window.startC() : Double.NaN));
    }

    private HeatTrack closed(HeatTrack t, double c, Step s) {
        Window w = t.window();
        double full = responded ? WINDOW_K : FIRST_WINDOW_K;
        if (Double.isNaN(w.startC()) || w.givenK() < full || w.ageMs() < CLOSES_MS) {
            return t;
        }
        double gain = c - w.startC();
        double duty = w.givenK() / (s.physics().slopeKPerS() * w.ageMs() / 1000.0);
        boolean quick = s.physics().quick();
        // Less than any losses explain, or more than there would be with none.
        boolean nothing = gain + s.physics().most().lossK(w) < FAIR_SHARE * w.givenK();
        boolean plain = gain + s.physics().least().lossK(w) >= FAIR_SHARE * w.givenK();
        boolean pass = responded ? !nothing : plain;
        boolean fail = nothing;
        if (!responded && quick && duty < PAUSED) {
            Response.Share share = w.response().share();
            boolean late = w.ageMs() > PATIENCE_MS;
            boolean fair = share.mean() >= FAIR_SHARE;
            pass |= fair && (late || share.mean() > SURE * share.doubt());
            fail |= !fair && (late || share.mean() + SURE * share.doubt() < SOUND_SHARE);
        }
        if (!pass && !fail) {
            return t;
        }
        boolean hard = duty >= HARD || !responded && (quick || duty >= HARD_AT_FIRST);
        // At full power it may be the losses or the heater: only pauses tell.
        boolean again = quick && duty > FULL && gain < -FALLS_K;
        return new HeatTrack(t.offForMs(), t.calmForMs(), t.lowestOffC(), t.rise(), Window.NONE, t.way(),
                (responded || pass) && !again, hard ? !pass : failed && !pass);
    }
}

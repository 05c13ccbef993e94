package org.conetender.core.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * The acceptance ladder of one cone's water (control.md §3.3), as a memory that is renewed each
 * tick: false value → water range → slew → second probe → age. Checksums and the like were settled
 * at the bus.
 *
 * <p>Intuition: water cannot jump. A reading that jumps says the probe moved, so heat stops at once;
 * three good minutes re-arm it, because lids, sampling and wiping happen. Good means: consistent
 * with itself and not far from where the water can have gone.
 *
 * @param lastC last accepted reading, °C; NaN before the first
 * @param lastAtMs its time, monotonic ms
 * @param trail accepted readings of the last minute, oldest first, against which the next is held; after a
 *     jump those that follow it too
 * @param doubt what is wrong at present; empty while trusted
 * @param departures times (monotonic ms) of the last departures from the model, within the hour
 * @param belief what follows
 * @param voices whose word it is
 */
public record Water(double lastC, long lastAtMs, Trail trail, Optional<Doubt> doubt,
        List<Long> departures,
                    Belief belief, Voices voices) {

    /** Readings outside cannot be hatching water (control.md §3.3). */
    static final double COLDEST_C = 1;
    static final double HOTTEST_C = 45;
    /** No kettle makes a cone hotter than this (guess). */
    static final double SCALDING_C = 80;
    /** A reading this old is still trusted; up to {@link #USABLE_MS} it is projected (control.md §3.3). */
    static final long FRESH_MS = 15_000;
    static final long USABLE_MS = 60_000;
    /** Good minutes that re-arm a probe, and departures within an hour that latch it (design.md). */
    static final long REARM_MS = 3 * Units.MINUTE_MS;
    public static final int DEPARTURES_TO_LATCH = 3;
    /** Where water really went somewhere else, it is believed again after this long (guess). */
    static final long BELIEVE_ANYWAY_MS = 20 * Units.MINUTE_MS;
    /** Two probes of one cone may differ by this much (guess: two at ±0.5 °C minus a shared bias). */
    static final double PAIR_DIFFERS_C = 0.8;
    /** Fastest that water cools by itself, and least rise allowed, K/s: twice an open 2 L cone 10 K above
     * its room (science.md §9: UA 1.34 W/K gives 0.0016 K/s). */
    static final double LEAST_SLEW_K_S = 0.003;
    /** Two steps of a 12-bit probe plus four sigma of its noise, K (control.md head, §3.3). */
    static final double STEP_ALLOWANCE_K = 2 * 0.0625 + 4 * 0.02;

    /**
     * @param why in words
     * @param sinceMs when it began, monotonic
     * @param goodSinceMs since when readings have been consistent again; −1 while they are not
     * @param seenC the last reading while in doubt, °C
     * @param seenAtMs its time
     */
    record Doubt(String why, long sinceMs, long goodSinceMs, double seenC, long seenAtMs) {

        /**
         * Whether it ends only because the reading has stood elsewhere for so long: then what was known of
         * the water may not hold, and nobody knows that there is any.
         */
        boolean worn(long nowMs) {
            return nowMs - sinceMs >= BELIEVE_ANYWAY_MS;
        }
    }

    /** Nothing heard in this life of the process. */
    public static Water unheard() {
        return new Water(Double.NaN, 0, Trail.NONE, Optional.empty(), List.of(),
                new Belief.Untrusted("no reading yet since the daemon started"), Voices.NONE);
    }

    /** The same memory after a person has seen to the probe: the hour's departures no longer count. */
    public Water forgiven() {
        return new Water(lastC, lastAtMs, trail, doubt, List.of(), belief, voices);
    }

    /**
     * What a reading that jumped was least of late, °C: nobody knows that it is the water's, but hot water
     * that was poured in looks like that. Negative infinity where it has not been there for long.
     */
    public double jumpedToC(long nowMs) {
        return doubt.filter(d -> nowMs - d.seenAtMs() <= FRESH_MS).isPresent() ? trail.stoodAtC()
                : Double.NEGATIVE_INFINITY;
    }

    /** How fast this cone's water can move at most, K/s: thrice its heater's slope (control.md §3.3). */
    public static double slewKPerS(Cone cone, double litres) {
        return Math.max(LEAST_SLEW_K_S, 3 * cone.fittings().heat().riseKPerS(litres));
    }

    /**
     * The memory after this tick.
     *
     * @param hearing this cone's samples and circumstances
     * @param nowMs monotonic
     */
    public Water after(Hearing hearing, long nowMs) {
        Voices v = voices.after(hearing);
        Water next = ladder(hearing, nowMs);
        Belief b = v.mute(hearing).<Belief>map(p -> new Belief.Untrusted("probe " + p
                + " has not answered since the daemon "
                + "started")).orElse(next.belief());
        return new Water(next.lastC(), next.lastAtMs(), next.trail(), next.doubt(), next.departures(), b, v);
    }

    private Water ladder(Hearing hearing, long nowMs) {
        Optional<String> pair = hearing.disagreement();
        ProbeSample s = hearing.best();
        if (s.reading() instanceof Reading.Value(double c) && s.ageMs() <= USABLE_MS) {
            boolean water = c >= COLDEST_C && c < SCALDING_C;
            String wrong = c == 85.0 ? "a probe says 85.0 °C, as it does when it lost its power for a moment"
                    : c < COLDEST_C || c > HOTTEST_C ? "a probe says " + c
                    + " °C, which hatching water is not"
                    : pair.or(hearing::departure).orElse(null);
            long atMs = nowMs - s.ageMs();
            return wrong == null ? accept(voices.asMain(c, s, hearing), atMs, hearing, nowMs)
                    : depart(wrong, c, atMs, nowMs).on(water && !hearing.astray() && s.ageMs() <= FRESH_MS
                    ? trail.upward(hearing.leastC(), atMs) : Trail.NONE).aged(hearing, nowMs);
        }
        return silent(s.reading()).aged(hearing, nowMs);
    }

    private Water accept(double c, long atMs, Hearing h, long nowMs) {
        if (atMs <= lastAtMs && doubt.isEmpty() && !Double.isNaN(lastC)) {
            return aged(h, nowMs);
        }
        if (doubt.isPresent()) {
            return recover(c, atMs, h, nowMs).aged(h, nowMs);
        }
        if (Double.isNaN(lastC) || h.handled() || trail.leadsTo(c, atMs, h.slewKPerS())) {
            Trail next = h.handled() ? Trail.of(c, atMs) : trail.with(c, atMs);
            return new Water(c, atMs, next, Optional.empty(), recent(nowMs), belief,
                    voices)
                    .aged(h, nowMs);
        }
        double from = trail.seen().isEmpty() ? lastC : trail.seen().getFirst().degreesC();
        String why = Text.of("the reading jumped from %.1f to %.1f °C, as a probe does that left the water%s",
                from, c, c > from ? ", or where hot water is poured in" : "");
        return depart(why, c, atMs, nowMs).on(trail.upward(c, atMs)).aged(h, nowMs);
    }

    private Water depart(String why, double c, long atMs, long nowMs) {
        if (doubt.isPresent()) {
            Doubt d = doubt.get();
            return new Water(lastC, lastAtMs, trail, Optional.of(new Doubt(why, d.sinceMs(), -1, c, atMs)),
                    recent(nowMs), belief, voices);
        }
        List<Long> times = new ArrayList<>(recent(nowMs));
        times.add(nowMs);
        return new Water(lastC, lastAtMs, trail, Optional.of(new Doubt(why, nowMs, -1, c, atMs)),
                List.copyOf(times), belief, voices);
    }

    /** While in doubt: three minutes of readings that agree with each other and with the water. */
    private Water recover(double c, long atMs, Hearing h, long nowMs) {
        Doubt d = doubt.get();
        double allowed = STEP_ALLOWANCE_K + h.slewKPerS() * Math.max(0, atMs - d.seenAtMs()) / 1000.0;
        boolean steady = Math.abs(c - d.seenC()) <= allowed;
        boolean near = Double.isNaN(lastC) || h.handled() || d.worn(nowMs)
                || (c <= lastC + 1.0 && c >= lastC - 1.5);
        long good = !steady || !near ? -1 : d.goodSinceMs() < 0 ? nowMs : d.goodSinceMs();
        if (good >= 0 && nowMs - good >= REARM_MS) {
            return new Water(c, atMs, Trail.of(c, atMs), Optional.empty(), recent(nowMs), belief,
                    voices);
        }
        Trail next = nowMs - atMs <= FRESH_MS ? trail.upward(h.leastC(), atMs) : trail;
        return new Water(lastC, lastAtMs, next,
                Optional.of(new Doubt(d.why(), d.sinceMs(), good, c, atMs)), recent(nowMs), belief, voices);
    }

    private Water silent(Reading r) {
        if (doubt.isPresent()) {
            Doubt d = doubt.get();
            return new Water(lastC, lastAtMs, Trail.NONE,
                    Optional.of(new Doubt(d.why(), d.sinceMs(), -1, d.seenC(), d.seenAtMs())), departures,
                    new Belief.Untrusted(words(r)), voices);
        }
        return new Water(lastC, lastAtMs, trail, doubt, departures, new Belief.Untrusted(words(r)), voices);
    }

    private static String words(Reading r) {
        return switch (r) {
            case Reading.Value _ -> "the probe has gone silent";
            case Reading.NotYet _ -> "no reading yet since the daemon started";
            case Reading.Absent _ -> "the probe is not found: its plug may be out, or its cable broken";
            case Reading.Faulty f -> f.plain();
        };
    }

    /** The belief that follows from the memory and the clock. */
    private Water aged(Hearing h, long nowMs) {
        if (doubt.isPresent()) {
            return with(new Belief.Untrusted(doubt.get().why()));
        }
        if (Double.isNaN(lastC)) {
            return belief instanceof Belief.Untrusted ? this
                    : with(new Belief.Untrusted("no reading yet since the daemon started"));
        }
        long age = nowMs - lastAtMs;
        if (age <= FRESH_MS) {
            return with(new Belief.Trusted(lastC));
        }
        if (age <= USABLE_MS) {
            return with(new Belief.Projected(lastC, STEP_ALLOWANCE_K + h.slewKPerS() * age / 3000.0, age));
        }
        String why = belief instanceof Belief.Untrusted u ? u.why() : "the probe has gone silent";
        return with(new Belief.Untrusted(why));
    }

    private Water on(Trail readings) {
        return new Water(lastC, lastAtMs, readings, doubt, departures, belief, voices);
    }

    private Water with(Belief b) {
        return new Water(lastC, lastAtMs, trail, doubt, departures, b, voices);
    }

    private List<Long> recent(long nowMs) {
        return departures.isEmpty() ? departures
                : departures.stream().filter(t -> nowMs - t <= Units.HOUR_MS).toList();
    }
}

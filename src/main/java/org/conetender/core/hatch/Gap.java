package org.conetender.core.hatch;

import org.conetender.core.judge.Cooling;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/**
 * A time in which nothing was measured, such as a power cut, and what is known around it.
 *
 * <p>Intuition: without heat the water slides toward the room. It cannot have cooled faster than a cone
 * can, with its lid off in a draught unless it has shown itself, nor have been so warm that it could not
 * have come down to what was found afterwards. Between those two curves lies the truth; the rate's extremes
 * between them bound the degree-hours. Where the machine itself was off no relay was held, so the water
 * cannot have been warmer either than a cone that cools as slowly as this one can; unless a warmer end proves
 * heat.
 *
 * @param span how long it lasted, perhaps without an upper bound
 * @param beforeC last trusted water temperature before, °C
 * @param afterC first trusted one after, °C
 * @param roomC the room, measured or assumed, °C
 * @param cooling the cone's time constants, h, above 0 and in order
 * @param off whether the machine was off in it: it ends in another boot than it began in
 */
public record Gap(Span span, double beforeC, double afterC, double roomC, Cooling cooling, boolean off) {

    /** The room may have been this much colder or warmer than it is now, K (*guess*). */
    static final double ROOM_K = 2;

    /** Probe error at either end, K (a probe of ±0.5 °C calibrated in place; *guess*). */
    static final double PROBE_K = 0.2;

    /** The rule for a gap that nothing bounds: no batch is taken for unattended longer (*guess*). */
    static final double LONGEST_H = 48;

    /** Steps of the numerical integral (guess: under a minute each for ten hours). */
    private static final int STEPS = 600;

    /** @throws IllegalArgumentException if a temperature is not finite or a time constant not above 0 */
    public Gap {
        if (!Double.isFinite(beforeC + afterC + roomC) || !(cooling.quickestH() > 0)
                || !(cooling.slowestH() >= cooling.quickestH())) {
            throw new IllegalArgumentException("a gap needs temperatures and a time constant above 0 h, got "
                    + beforeC + ", " + afterC + ", " + roomC + " °C and " + cooling);
        }
    }

    /**
     * How long it can have lasted. A length that is known to the minute stays; any other is narrowed by the
     * cooling clock (control.md §5), and without an upper bound ends at {@value #LONGEST_H} h.
     */
    public Span length() {
        if (span.known()) {
            return span;
        }
        long least = Math.max(span.leastMs(), Units.msOfHours(shortestCoolingH()));
        double longestH = span.bounded() ? Units.hours(span.mostMs()) : LONGEST_H;
        long most = Units.msOfHours(Math.min(longestH, longestCoolingH()));
        // Temperatures that contradict the clocks (water was changed, a probe moved) do not narrow.
        return least <= most ? new Span(least, most)
                : new Span(span.leastMs(), Math.max(span.leastMs(), Units.msOfHours(longestH)));
    }

    /** What the cysts can have done in it: least over the shortest length, most over the longest. */
    Development development(Zones zones) {
        Span length = length();
        double leastH = Units.hours(length.leastMs());
        double mostH = Units.hours(length.mostMs());
        double least = 0;
        double most = 0;
        int cold = 0;
        int warm = 0;
        int loss = 0;
        Rate rate = zones.rate();
        boolean itself = cooledByItself(mostH);
        boolean unheated = itself && off && unheatedC(leastH) >= afterC - PROBE_K;
        for (int i = 0; i < STEPS; i++) {
            // Each step takes its worst end, so the sums bound the integrals from outside.
            double low = itself ? coldestC(leastH * (i + 1) / STEPS) : floorC();
            // What is found after it bounds backwards from its end, what was before it forwards.
            double high = Math.min(itself ? hottestC(mostH * (i + 1) / STEPS) : ceilC(),
                    unheated ? unheatedC(mostH * (STEPS - i - 1) / STEPS) : ceilC());
            least += rate.least(low, ceilC());
            most += rate.most(floorC(), high);
            cold += low <= rate.baseC() ? 1 : 0;
            warm += high >= rate.ceilingC() ? 1 : 0;
            loss += high >= zones.lossC() ? 1 : 0;
        }
        double leastStepH = leastH / STEPS;
        double mostStepH = mostH / STEPS;
        return new Development(least * leastStepH, Math.max(most * mostStepH, least * leastStepH),
                warm * mostStepH, cold * leastStepH, loss * mostStepH);
    }

    /** Whether losses alone explain what was found; not after a water change or a cold top-up. */
    private boolean cooledByItself(double longestH) {
        return coldestC(longestH) <= afterC + PROBE_K && hottestC(longestH) >= beforeC - PROBE_K;
    }

    /** Coldest the water can have been so long after the gap began: cooled as fast as a cone can. */
    private double coldestC(double hoursIn) {
        double room = roomC - ROOM_K;
        double before = beforeC - PROBE_K;
        return before <= room ? floorC()
                : room + (before - room) * Math.exp(-hoursIn / cooling.quickestH());
    }

    /** Hottest it can have been so long before the gap ended, and still be found as it was. */
    private double hottestC(double hoursLeft) {
        double room = roomC - ROOM_K;
        double after = afterC + PROBE_K;
        return after <= room ? ceilC()
                : Math.min(ceilC(), room + (after - room) * Math.exp(hoursLeft / cooling.quickestH()));
    }

    /** Hottest it can have been so long after it began, if nothing heated: cooled as slowly as it can. */
    private double unheatedC(double hoursIn) {
        double room = roomC + ROOM_K;
        return room + Math.max(0, beforeC + PROBE_K - room) * Math.exp(-hoursIn / cooling.slowestH());
    }

    private double floorC() {
        return Math.min(Math.min(beforeC, afterC) - PROBE_K, roomC - ROOM_K);
    }

    private double ceilC() {
        return Math.max(Math.max(beforeC, afterC) + PROBE_K, roomC + ROOM_K);
    }

    /** The cooling clock at its fastest: τ·ln((before − room)/(after − room)); 0 where it cannot tell. */
    private double shortestCoolingH() {
        double room = roomC - ROOM_K;
        double from = beforeC - PROBE_K - room;
        double to = afterC + PROBE_K - room;
        return to > 0 && from > to ? cooling.quickestH() * Math.log(from / to) : 0;
    }

    /** The cooling clock at its slowest; infinite once the water may have reached the room. */
    private double longestCoolingH() {
        double room = roomC + ROOM_K;
        double from = beforeC + PROBE_K - room;
        double to = afterC - PROBE_K - room;
        return to > 0 && from > to ? cooling.slowestH() * Math.log(from / to) : Double.POSITIVE_INFINITY;
    }
}

package org.conetender.sim;

import java.util.SplittableRandom;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.port.Probe;

/**
 * A digital 1-wire probe in a steel sleeve (science.md §9): a first-order lag that is short in water and
 * long in air, an offset of its own, noise, and steps of 1/16 °C. A conversion ends about once a second.
 */
public final class SimProbe implements Probe {

    /** The step of a 12-bit conversion, °C (control.md §2.3). */
    public static final double STEP_C = 0.0625;

    /** What can be wrong with it. */
    public enum Fault {
        NONE,
        /** Not on the bus at all. */
        ABSENT,
        /** Answers with the same value for ever, and on time. */
        FROZEN,
        /** Its error grows by {@link SimProbe#DRIFT_C_PER_HOUR}. */
        DRIFTING,
        /** Lies on the bench: reads the room. */
        IN_AIR,
        /** A poor wire: 0.5 °C rms (guess). */
        NOISY,
        /** Power-on value 85.000, which the bus adapter recognises. */
        POWER_ON,
        /** The checksum is wrong at every conversion. */
        CHECKSUM,
        /** A conversion ends only every 40 s (guess: longer than any first warning of an old reading). */
        SLOW
    }

    /** Guess: quick enough to matter within one hatch, too slow for any slew limit. */
    public static final double DRIFT_C_PER_HOUR = 0.8;

    /** Guesses: noise that a filter cannot hide; a bus that is ten times too slow. */
    private static final double NOISY_RMS_C = 0.5;
    /** A 12-bit conversion takes 750 ms at most (control.md §3.1), and reading it the rest. */
    private static final long CONVERSION_MS = 1_000;
    private static final long SLOW_MS = 40_000;

    /**
     * @param offsetC its constant error, °C; a good part is within ±0.5 (science.md §9)
     * @param tauWaterS time constant in stirred water, 5 to 20 s (science.md §9)
     * @param tauAirS time constant in still air, 60 to 180 s (science.md §9)
     * @param noiseC rms noise before the step, °C
     */
    public record Build(double offsetC, double tauWaterS, double tauAirS, double noiseC) {
        /** Without error, for examples. */
        static final Build EXACT = new Build(0, 10, 120, 0);

        static Build draw(SplittableRandom random) {
            return new Build(Math.clamp(0.15 * random.nextGaussian(), -0.4, 0.4),
                    random.nextDouble(5, 20), random.nextDouble(60, 180), random.nextDouble(0.01, 0.03));
        }
    }

    private final String id;
    private final SimClock clock;
    private final Build build;
    private final SplittableRandom random;
    private Fault fault = Fault.NONE;
    private double tipC = Double.NaN;
    private double shownC;
    private double driftC;
    private boolean answered;
    private long convertedAtMs;
    private long lifeBeganMs;
    private double factorSeconds = -1;
    private double factorWater;
    private double factorAir;

    public SimProbe(String id, SimClock clock, Build build, SplittableRandom random) {
        this.id = id;
        this.clock = clock;
        this.build = build;
        this.random = random;
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public ProbeSample latest(long nowMonoMs) {
        long now = clock.elapsedOf(nowMonoMs);
        long age = Math.max(0, now - (answered ? convertedAtMs : lifeBeganMs));
        Reading reading = switch (fault) {
            case ABSENT -> new Reading.Absent();
            case POWER_ON -> new Reading.Faulty(
                    "the probe lost its power for a moment (85.000, its power-on value)");
            case CHECKSUM -> new Reading.Faulty("the probe's answer arrives garbled (the checksum is wrong)");
            case NONE, FROZEN, DRIFTING, IN_AIR, NOISY, SLOW ->
                    answered ? new Reading.Value(shownC) : new Reading.NotYet();
        };
        return new ProbeSample(id, reading, age);
    }

    /** What was drawn of it. */
    public Build build() {
        return build;
    }

    /** The process that reads it has started again: not heard yet, until the next conversion ends. */
    public void forget() {
        answered = false;
        lifeBeganMs = clock.elapsedMs();
    }

    /** One step, after the clock has moved on. @param surroundC what its tip is in  @param roomC °C */
    void step(double surroundC, double roomC, boolean wet, double seconds) {
        boolean inWater = wet && fault != Fault.IN_AIR;
        double aroundC = fault == Fault.IN_AIR ? roomC : surroundC;
        tipC = Double.isNaN(tipC) ? aroundC : aroundC + (tipC - aroundC) * keep(inWater, seconds);
        if (fault == Fault.DRIFTING) {
            driftC += DRIFT_C_PER_HOUR * seconds / 3_600;
        }
        long every = fault == Fault.SLOW ? SLOW_MS : CONVERSION_MS;
        if (!answered || clock.elapsedMs() - convertedAtMs >= every) {
            convert();
        }
    }

    public void fail(Fault what) {
        fault = what;
        driftC = what == Fault.DRIFTING ? driftC : 0;
    }

    /** By how much it is off for its own sake, °C: its offset and its drift. */
    public double errorC() {
        return build.offsetC + driftC;
    }

    /** The last number it gave, °C; for tests and displays of the truth. */
    public double shownC() {
        return shownC;
    }

    private void convert() {
        if (fault == Fault.ABSENT) {
            return;
        }
        convertedAtMs = clock.elapsedMs();
        if (fault == Fault.FROZEN && answered) {
            return;
        }
        answered = true;
        double rms = fault == Fault.NOISY ? NOISY_RMS_C : build.noiseC;
        double noise = rms > 0 ? rms * random.nextGaussian() : 0;
        shownC = inSteps(tipC + build.offsetC + driftC + noise);
    }

    /** As a probe of 12 bits tells it, °C. */
    public static double inSteps(double degreesC) {
        return Math.rint(degreesC / STEP_C) * STEP_C;
    }

    /** What remains of a difference after the step; the exponentials are kept while the step is the same. */
    private double keep(boolean inWater, double seconds) {
        if (seconds != factorSeconds) {
            factorSeconds = seconds;
            factorWater = Math.exp(-seconds / build.tauWaterS);
            factorAir = Math.exp(-seconds / build.tauAirS);
        }
        return inWater ? factorWater : factorAir;
    }
}

package org.conetender.core.judge;

import java.util.List;
import java.util.Optional;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.unit.Text;

/**
 * What one cone's water probes say this tick, and the circumstances in which they say it.
 *
 * @param samples one or two, the main probe first
 * @param slewKPerS how fast this water can move, K/s
 * @param handled whether hands are in the water or it was just topped up, so that jumps are natural
 * @param astray whether {@link Watch} found that the reading goes where no water could
 */
public record Hearing(List<ProbeSample> samples, double slewKPerS, boolean handled, boolean astray) {

    /** The main probe's sample, or the second's where the main one gives none. */
    ProbeSample best() {
        for (ProbeSample s : samples) {
            if (s.reading() instanceof Reading.Value && s.ageMs() <= Water.FRESH_MS) {
                return s;
            }
        }
        return samples.getFirst();
    }

    /** Whether that probe has gone silent, or says what is no figure. */
    public static boolean mute(ProbeSample s) {
        return !(s.reading() instanceof Reading.Value) || s.ageMs() > Water.USABLE_MS;
    }

    /** The same, found to come from a probe that left the water. */
    Hearing gone() {
        return new Hearing(samples, slewKPerS, handled, true);
    }

    /** Why the reading is taken for that of a probe out of the water; empty while it is not. */
    Optional<String> departure() {
        return astray ? Optional.of("the reading moves as no water does, but a probe that left it")
                : Optional.empty();
    }

    /** The lower of what the probes say now, °C; positive infinity when none says a figure. */
    double leastC() {
        double least = Double.POSITIVE_INFINITY;
        for (ProbeSample s : samples) {
            if (s.reading() instanceof Reading.Value(double c) && s.ageMs() <= Water.FRESH_MS) {
                least = Math.min(least, c);
            }
        }
        return least;
    }

    /** Why two fresh probes cannot both be right; empty when they agree or there is only one. */
    Optional<String> disagreement() {
        if (handled || samples.size() < 2
                || !(samples.get(0).reading() instanceof Reading.Value(double a))
                || !(samples.get(1).reading() instanceof Reading.Value(double b))
                || samples.get(0).ageMs() > Water.FRESH_MS || samples.get(1).ageMs() > Water.FRESH_MS
                || Math.abs(a - b) <= Water.PAIR_DIFFERS_C) {
            return Optional.empty();
        }
        return Optional.of(Text.of("its two probes say %.1f and %.1f °C", a, b));
    }
}

package org.conetender.core.judge;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;

/**
 * Whose word is taken for a cone's water. Two good probes differ by some tenths; where the second speaks
 * for the first it is taken as the first would have put it, so that a change of voice is no jump of water.
 *
 * @param heard ids of the probes that have answered with a figure in this life of the process
 * @param apartK how much more the main probe says than the second, K, as last seen from both
 */
record Voices(Set<String> heard, double apartK) {

    static final Voices NONE = new Voices(Set.of(), 0);

    /** One reading moves the difference by this share: noise and steps even out in about ten (guess). */
    private static final double LEARN = 0.1;

    Voices after(Hearing h) {
        boolean first = false;
        Set<String> answered = heard;
        for (ProbeSample s : h.samples()) {
            boolean known = heard.contains(s.probe());
            first |= !known;
            if (!known && s.reading() instanceof Reading.Value) {
                answered = with(answered, s.probe());
            }
        }
        return new Voices(answered, apart(h.samples(), first ? 1 : LEARN));
    }

    private static Set<String> with(Set<String> some, String probe) {
        Set<String> more = new TreeSet<>(some);
        more.add(probe);
        return Set.copyOf(more);
    }

    /** The first of those probes that has not answered yet. */
    Optional<String> mute(Hearing h) {
        for (ProbeSample s : h.samples()) {
            if (!heard.contains(s.probe())) {
                return Optional.of(s.probe());
            }
        }
        return Optional.empty();
    }

    private double apart(List<ProbeSample> samples, double share) {
        if (samples.size() < 2 || !(fresh(samples.get(0)) instanceof Reading.Value(double main))
                || !(fresh(samples.get(1)) instanceof Reading.Value(double second))
                || Math.abs(main - second) > Water.PAIR_DIFFERS_C) {
            return apartK;
        }
        return apartK + share * (main - second - apartK);
    }

    private static Reading fresh(ProbeSample s) {
        return s.ageMs() <= Water.FRESH_MS ? s.reading() : new Reading.NotYet();
    }

    /** A reading as the main probe would have put it, °C. @param s whose it is */
    double asMain(double degreesC, ProbeSample s, Hearing h) {
        return s.equals(h.samples().getFirst()) ? degreesC : degreesC + apartK;
    }
}

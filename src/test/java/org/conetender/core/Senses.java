package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.conetender.core.image.ContactSample;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/**
 * What the devices of a story say. All is well until told otherwise: water at 27 °C, room at 20 °C,
 * contacts as a working cone has them. Water about which the story says nothing new keeps its temperature
 * in the mean, for it loses what it is given, and shows each pulse of its heater.
 */
public final class Senses {

    private static final double TREMBLE_C = 0.01;

    private final Map<String, Reading> readings = new TreeMap<>();
    private final Map<String, Long> silentSinceMs = new TreeMap<>();
    private final Map<String, Level> contacts = new TreeMap<>();
    private final Set<String> frozen = new TreeSet<>();
    private final Map<String, Swing> swings = new TreeMap<>();
    private final Set<String> dead = new TreeSet<>();

    /**
     * How water that keeps its temperature moves about it.
     *
     * @param element share of its power that leaves the heater, 0..1
     * @param addedK what heat has added and is not lost yet, K  @param meanK its mean lately, K
     */
    private record Swing(double element, double addedK, double meanK) {
        static final Swing STILL = new Swing(0, 0, 0);
        private static final double LAG_S = 45;
        /** The mean is taken over so long, s: longer than pulses follow each other, soon at rest. */
        private static final double MEAN_S = 900;

        Swing after(boolean on, double riseKPerS, double dtS) {
            double out = element + ((on ? 1 : 0) - element) * dtS / LAG_S;
            double added = addedK + dtS * (riseKPerS * out - addedK / MEAN_S);
            return new Swing(out, added, meanK + (added - meanK) * dtS / MEAN_S);
        }

        double kelvin() {
            return addedK - meanK;
        }
    }

    Senses(Settings settings) {
        for (Cone c : settings.cones()) {
            c.fittings().probes().water().forEach(p -> readings.put(p, new Reading.Value(27)));
            contacts.put(c.id() + ".level", Level.CLOSED);
            contacts.put(c.id() + ".air-proof", Level.CLOSED);
            contacts.put(c.id() + ".button", Level.OPEN);
        }
        settings.site().roomProbe().ifPresent(p -> readings.put(p, new Reading.Value(20)));
    }

    /** The main probe of that cone says so many °C. */
    public Senses water(String cone, double degreesC) {
        return probe(cone + "-water", new Reading.Value(degreesC));
    }

    /** The water of that cone keeps another temperature, by so much; what its heater does shows as before. */
    public Senses moves(String cone, double byK) {
        readings.put(cone + "-water", new Reading.Value(waterC(cone) + byK));
        return this;
    }

    public Senses room(double degreesC) {
        return probe("room", new Reading.Value(degreesC));
    }

    /** From now on that probe answers this, and answers again. */
    public Senses probe(String id, Reading reading) {
        readings.put(id, reading);
        silentSinceMs.remove(id);
        frozen.remove(id);
        swings.remove(id);
        return this;
    }

    /** From now on that probe answers with one and the same figure; a live one's last digit trembles. */
    public Senses frozen(String id) {
        frozen.add(id);
        return this;
    }

    /** From that moment (monotonic ms) on the probe's last answer only grows older. */
    public Senses silent(String id, long sinceMs) {
        silentSinceMs.put(id, sinceMs);
        return this;
    }

    /** A contact such as {@code a.level}. */
    public Senses contact(String id, Level level) {
        contacts.put(id, level);
        return this;
    }

    /** From now on the heater of that cone warms nothing. */
    public Senses dead(String cone) {
        dead.add(cone);
        return this;
    }

    /** It warms again. */
    public Senses works(String cone) {
        dead.remove(cone);
        return this;
    }

    /** Time passes over the water of that cone. @param heated whether power reaches its heater */
    void second(Cone c, boolean heated, double dtS) {
        double rise = c.fittings().heat().riseKPerS(c.usual().litres());
        for (String probe : c.fittings().probes().water()) {
            if (silentSinceMs.containsKey(probe)) {
                continue;
            }
            swings.merge(probe, Swing.STILL, (was, still) -> was.after(heated && !dead.contains(c.id()),
                    rise, dtS));
        }
    }

    double waterC(String cone) {
        return ((Reading.Value) readings.get(cone + "-water")).degreesC();
    }

    /** Where the water of that cone is at the moment, °C: about where it was said to be. */
    public double shownC(String cone) {
        return waterC(cone) + swings.getOrDefault(cone + "-water", Swing.STILL).kelvin();
    }

    List<ProbeSample> probes(long nowMs) {
        List<ProbeSample> out = new ArrayList<>();
        readings.forEach((id, r) -> out.add(new ProbeSample(id, frozen.contains(id) ? r
                : live(r, swings.getOrDefault(id, Swing.STILL).kelvin(), nowMs),
                silentSinceMs.containsKey(id) ? nowMs - silentSinceMs.get(id) : 0)));
        return out;
    }

    private static Reading live(Reading r, double swingK, long nowMs) {
        return r instanceof Reading.Value(double c) && c > 1 && c < 45
                ? new Reading.Value(c + swingK + TREMBLE_C * (nowMs / 1_000 % 2)) : r;
    }

    List<ContactSample> contacts() {
        List<ContactSample> out = new ArrayList<>();
        contacts.forEach((id, l) -> out.add(new ContactSample(id, l)));
        return out;
    }
}

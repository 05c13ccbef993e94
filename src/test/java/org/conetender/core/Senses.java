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
 * contacts as a working cone has them.
 */
public final class Senses {

    private static final double TREMBLE_C = 0.01;

    private final Map<String, Reading> readings = new TreeMap<>();
    private final Map<String, Long> silentSinceMs = new TreeMap<>();
    private final Map<String, Level> contacts = new TreeMap<>();
    private final Set<String> frozen = new TreeSet<>();

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

    public Senses room(double degreesC) {
        return probe("room", new Reading.Value(degreesC));
    }

    /** From now on that probe answers this, and answers again. */
    public Senses probe(String id, Reading reading) {
        readings.put(id, reading);
        silentSinceMs.remove(id);
        frozen.remove(id);
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

    double waterC(String cone) {
        return ((Reading.Value) readings.get(cone + "-water")).degreesC();
    }

    List<ProbeSample> probes(long nowMs) {
        List<ProbeSample> out = new ArrayList<>();
        readings.forEach((id, r) -> out.add(new ProbeSample(id, frozen.contains(id) ? r : live(r, nowMs),
                silentSinceMs.containsKey(id) ? nowMs - silentSinceMs.get(id) : 0)));
        return out;
    }

    private static Reading live(Reading r, long nowMs) {
        return r instanceof Reading.Value(double c) && c > 1 && c < 45
                ? new Reading.Value(c + TREMBLE_C * (nowMs / 1_000 % 2)) : r;
    }

    List<ContactSample> contacts() {
        List<ContactSample> out = new ArrayList<>();
        contacts.forEach((id, l) -> out.add(new ContactSample(id, l)));
        return out;
    }
}

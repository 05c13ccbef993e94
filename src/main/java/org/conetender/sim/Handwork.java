package org.conetender.sim;

import org.conetender.core.settings.Cone;

/**
 * What a person's hands do at one cone. Each deed is done once: repeating it changes nothing, so that a
 * report may be said again without filling a full cone or stocking twice.
 */
final class Handwork {

    /** Enough free animals to be seen in a glass (guess). */
    private static final double SEEN = 0.03;
    /** Mixed from both taps, °C, give or take what the person picks (guess). */
    private static final double WARM_TAP_C = 24;
    /** What is drawn into the sieve: a little more than the gathered layer (guess). */
    private static final double ORANGE_LAYER = 0.25;
    /** A second harvest is worth it only while so much is still to come (science.md §6). */
    private static final double MOSTLY_HATCHED = 0.85;
    /** A person judges a harvest by eye (guesses): many cysts left; pale animals. */
    private static final double TOO_EARLY = 0.8;
    private static final double PALE = 0.85;
    /** A valve shut within this time was shut on purpose, ms. */
    private static final long ON_PURPOSE_MS = 15 * 60_000L;

    private final Person person;
    private final SimCone cone;
    private long shutAtMs = -ON_PURPOSE_MS;

    Handwork(Person person, SimCone cone) {
        this.person = person;
        this.cone = cone;
    }

    /** Valve shut, pump on, fill, open the valve: the order that floods no pump (design.md). */
    void charge() {
        if (!cone.water().waterPresent()) {
            Cone.Usual usual = cone.settings().usual();
            cone.air().valve(false);
            cone.fill(usual.litres(), WARM_TAP_C - person.pick(5), usual.ppt());
        }
        cone.air().valve(true);
    }

    void stock() {
        Cone.Usual usual = cone.settings().usual();
        if (cone.cysts().isEmpty() && cone.water().waterPresent()) {
            cone.stock(usual.lot(), usual.cystsG());
        }
    }

    /** Looks through a glass; true as well when there is nothing to look for. */
    boolean seesNauplii() {
        return cone.cysts().map(c -> c.hatchedFraction() >= SEEN).orElse(true);
    }

    void valve(boolean open, long now) {
        cone.air().valve(open);
        if (!open) {
            shutAtMs = now;
        }
    }

    boolean valveOpen() {
        return cone.air().valveOpen();
    }

    boolean shutOnPurpose(long now) {
        return now - shutAtMs <= ON_PURPOSE_MS;
    }

    /** Draws the orange layer. @return whether a second harvest would be worth waiting for */
    boolean drawOrange() {
        cone.draw(ORANGE_LAYER * cone.water().litres());
        return cone.cysts().map(c -> c.hatchedFraction() < MOSTLY_HATCHED).orElse(false);
    }

    void empty() {
        cone.drain();
    }

    /** Empties what is left, scrubs, and leaves the air valve shut for the next filling. */
    void scrub() {
        cone.drain();
        cone.air().valve(false);
    }

    /** The word for the last harvest, as an honest eye sees it. */
    String judgement() {
        var batches = cone.batches();
        if (batches.isEmpty()) {
            return "right";
        }
        BatchTruth.Harvest last = batches.get(batches.size() - 1).harvest();
        return last.hatched() < TOO_EARLY ? "too-early" : last.energy() < PALE ? "late" : "right";
    }

    /** Puts right what hands can, and opens an air valve that nobody meant to leave shut. */
    void mend(long now) {
        cone.repair();
        if (cone.cysts().isPresent() && !shutOnPurpose(now)) {
            cone.air().valve(true);
        }
    }

    boolean waterCanRunBack() {
        return cone.settings().fittings().air().geometry().canSiphon();
    }
}

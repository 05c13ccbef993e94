package org.conetender.sim.trial;

import org.conetender.core.heat.Predict;

/** The switches that are tried. */
enum Switches {
    SOLID_STATE("solid-state", Double.POSITIVE_INFINITY, 1),
    RELAY_400("relay, 400 cycles a day", 400, 10),
    RELAY_150("relay, 150 cycles a day", 150, 10);

    private final String words;
    private final Predict.Switching kind;

    Switches(String words, double cyclesPerDay, double leastS) {
        this.words = words;
        this.kind = new Predict.Switching(cyclesPerDay, leastS);
    }

    String words() {
        return words;
    }

    Predict.Switching kind() {
        return kind;
    }
}

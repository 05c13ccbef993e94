package org.conetender.sim.trial;

import org.conetender.core.judge.Watch.Suspect;

/** What goes wrong in a trial, once, and what the watch should call it. */
enum Mishap {
    WELDED(Suspect.WELDED, "switch welded"),
    DEAD(Suspect.DEAD, "heater dead"),
    IN_AIR(Suspect.IN_AIR, "probe in air"),
    FROZEN(Suspect.FROZEN, "probe frozen");

    private final Suspect name;
    private final String words;

    Mishap(Suspect name, String words) {
        this.name = name;
        this.words = words;
    }

    Suspect rightName() {
        return name;
    }

    String words() {
        return words;
    }
}

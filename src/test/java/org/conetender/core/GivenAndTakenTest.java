package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Steps that take and give at once: the taking part acts when it is said, the giving part when recorded. */
class GivenAndTakenTest {

    @Test
    void whoSaysOnlyCleanedHasTheHeatOffAtOnceThoughNothingCanBeRecorded() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.paper.mood(Paper.Mood.REFUSING);
        Result.Reply r = s.did("a", Step.CLEANED);
        assertThat(r.sentence()).startsWith("Cone a: done, but not recorded: the disk is full");
        assertThat(s.on("a.cut-out") || s.on("a.air-pause")).isFalse();
        assertThat(s.stage()).isEqualTo("clean");
    }

    @Test
    void aLowerSetPointCountsAtOnceAndAHigherOneWhenItIsRecorded() {
        Story s = Story.at(Fitting.LEVEL);
        s.senses.water("a", 26);
        s.does(Step.STARTED);
        assertThat(s.comesOn("a.heat", 300)).isTrue();
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.SetSetpoint(24));
        s.tick();
        assertThat(s.comesOn("a.heat", 25)).isFalse();
        s.paper.mood(Paper.Mood.KEEPING);
        s.seconds(2);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.SetSetpoint(28));
        assertThat(s.comesOn("a.heat", 25)).isFalse();
        s.paper.mood(Paper.Mood.KEEPING);
        assertThat(s.comesOn("a.heat", 300)).isTrue();
    }

    private static boolean responded(Story s) {
        return s.state().live().cones().get("a").judged().heat().responded();
    }

    /** Water that answers its heater; the probe shows it. */
    private static Story warmed(Story s) {
        double[] c = {24};
        s.senses.water("a", 24);
        s.each(x -> {
            c[0] = Math.min(26.9, c[0] + (x.on("a.heat") ? 0.003 : 0));
            x.senses.water("a", c[0]);
        });
        s.does(Step.STARTED);
        s.minutes(40);
        assertThat(responded(s)).isTrue();
        return s;
    }

    @Test
    void afterAPartWasDrawnTheHeaterBeginsCautiously() {
        Story s = warmed(Story.at());
        s.does(Step.FIRST_SEEN, Step.SETTLE);
        s.minutes(7);
        s.does(Step.DRAWING, Step.PART_DRAWN);
        s.tick();
        assertThat(responded(s)).as("nobody knows whether the heater is still under water").isFalse();
    }

    @Test
    void afterAToppingUpTheHeaterBeginsCautiously() {
        Story s = warmed(Story.at());
        s.does(Step.TOPPED_UP);
        s.tick();
        assertThat(responded(s)).isFalse();
        s.minutes(14);
        assertThat(s.on("a.heat")).isFalse();
    }
}

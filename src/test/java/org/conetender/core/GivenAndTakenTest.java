package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Steps that take and give at once: the taking part acts when it is said, the giving part when recorded. */
class GivenAndTakenTest {

    private static Story drawing(Fitting... fittings) {
        Story s = Story.at(fittings);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE);
        s.minutes(7);
        s.does(Step.DRAWING);
        return s;
    }

    @Test
    void afterAPartWasDrawnTheAirComesBackAtOnceAndTheHeatWhenItIsRecorded() {
        Story s = drawing();
        s.does(Step.VALVE_OPEN);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.PART_DRAWN));
        s.tick();
        assertThat(s.on("a.air-pause") || s.on("a.lamp")).isFalse();
        s.seconds(20);
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.found("unwritten")).containsExactly("the report it rests on is not in the record yet");
        s.paper.mood(Paper.Mood.KEEPING);
        s.tick();
        assertThat(s.on("a.cut-out")).isTrue();
    }

    @Test
    void anOpenedValveLetsTheHeatBackOnlyWhenItIsRecorded() {
        Story s = Story.at(Fitting.SIPHONING);
        s.senses.water("a", 24);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        assertThat(heated(s, 300)).isTrue();
        s.does(Step.VALVE_SHUT);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.VALVE_OPEN));
        assertThat(heated(s, 300)).isFalse();
        assertThat(s.found("still-water")).isEmpty();
        s.paper.mood(Paper.Mood.KEEPING);
        assertThat(heated(s, 300)).isTrue();
    }

    /** Whether the heater of cone a is on in any of the next seconds. */
    private static boolean heated(Story s, int seconds) {
        boolean heated = false;
        for (int i = 0; i < seconds; i++) {
            heated |= s.tick().outputs().get("a.heat");
        }
        return heated;
    }

    @Test
    void aDrainedConeLosesItsHeatAtOnceAndItsPumpRestsWhenThatIsRecorded() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.DRAINED));
        s.seconds(10);
        assertThat(s.on("a.cut-out")).isFalse();
        s.senses.contact("a.level", Level.OPEN);
        s.seconds(10);
        assertThat(s.on("a.cut-out") || s.on("a.air-pause")).isFalse();
        s.paper.mood(Paper.Mood.KEEPING);
        s.tick();
        assertThat(s.on("a.air-pause")).isTrue();
    }

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
    void aWithdrawnSettleBringsTheAirBackAtOnce() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Withdraw("settle"));
        s.tick();
        assertThat(s.on("a.air-pause") || s.on("a.lamp") || s.on("a.cut-out")).isFalse();
        s.paper.mood(Paper.Mood.KEEPING);
        s.tick();
        assertThat(s.on("a.cut-out")).isTrue();
    }

    @Test
    void aLowerSetPointCountsAtOnceAndAHigherOneWhenItIsRecorded() {
        Story s = Story.at(Fitting.LEVEL);
        s.senses.water("a", 26);
        s.does(Step.STARTED);
        assertThat(heated(s, 300)).isTrue();
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.SetSetpoint(24));
        s.tick();
        assertThat(heated(s, 25)).isFalse();
        s.paper.mood(Paper.Mood.KEEPING);
        s.seconds(2);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.SetSetpoint(28));
        assertThat(heated(s, 25)).isFalse();
        s.paper.mood(Paper.Mood.KEEPING);
        assertThat(heated(s, 300)).isTrue();
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

    @Test
    void aSettleRightAfterAShutValveStopsThePumpOnlyWhenBothAreRecorded() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.VALVE_SHUT));
        s.send("a", new Ask.Did(Step.SETTLE));
        s.seconds(5);
        assertThat(s.on("a.air-pause")).isFalse();
        s.paper.next(true);
        s.seconds(2);
        assertThat(s.on("a.air-pause")).isFalse();
        s.paper.mood(Paper.Mood.KEEPING);
        s.tick();
        assertThat(s.on("a.air-pause")).isTrue();
    }

    @Test
    void aSettleThatOutlivesItsShutValveDoesNotStopThePump() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.VALVE_SHUT));
        s.send("a", new Ask.Did(Step.SETTLE));
        s.seconds(2);
        s.paper.next(false);
        s.paper.next(true);
        for (int i = 0; i < 20; i++) {
            s.tick();
            assertThat(s.on("a.air-pause")).isFalse();
        }
    }
}

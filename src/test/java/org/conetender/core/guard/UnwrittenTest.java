package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Paper;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/**
 * What a report gives waits for its record, and what it takes is taken at once. Every step at every place is
 * {@code PermitsTest}'s part.
 */
class UnwrittenTest {

    private static Story drawing(Fitting... fittings) {
        Story s = Story.at(fittings);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE);
        s.minutes(7);
        s.does(Step.DRAWING);
        return s;
    }

    private static Story shutAndSettledUnwritten() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.VALVE_SHUT));
        s.send("a", new Ask.Did(Step.SETTLE));
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
        assertThat(s.comesOn("a.heat", 300)).isTrue();
        s.does(Step.VALVE_SHUT);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.VALVE_OPEN));
        assertThat(s.comesOn("a.heat", 300)).isFalse();
        assertThat(s.found("still-water")).isEmpty();
        s.paper.mood(Paper.Mood.KEEPING);
        assertThat(s.comesOn("a.heat", 300)).isTrue();
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
        assertThat(s.on("a.air-pause")).as("it can still be withdrawn").isFalse();
        s.minutes(30);
        assertThat(s.on("a.air-pause")).isTrue();
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
    void aSettleRightAfterAShutValveStopsThePumpOnlyWhenBothAreRecorded() {
        Story s = shutAndSettledUnwritten();
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
        Story s = shutAndSettledUnwritten();
        s.seconds(2);
        s.paper.next(false);
        s.paper.next(true);
        for (int i = 0; i < 20; i++) {
            s.tick();
            assertThat(s.on("a.air-pause")).isFalse();
        }
    }
}

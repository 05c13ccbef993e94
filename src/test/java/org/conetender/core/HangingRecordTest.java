package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: a record that neither keeps nor refuses. Nothing that protects may wait for it. */
class HangingRecordTest {

    private static Story hatching() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN);
        return s;
    }

    @Test
    void aReportThatIsNotAnsweredForHalfAMinuteRaisesTheAlarm() {
        Story s = hatching();
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.SETTLE));
        s.seconds(85);
        assertThat(s.standing("")).isEmpty();
        s.seconds(15);
        assertThat(s.standing("")).containsExactly("record");
        assertThat(s.told().getLast().what()).contains("has not answered for half a minute");
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(2);
        assertThat(s.standing("")).isEmpty();
    }

    @Test
    void aCheckpointThatIsNotAnsweredRaisesItThoughNobodySaysAnything() {
        Story s = hatching();
        s.minutes(2);
        s.paper.mood(Paper.Mood.WAITING);
        s.seconds(155);
        assertThat(s.standing("")).containsExactly("record");
    }

    @Test
    void aRecordThatAnswersWithinItsTimeRaisesNothing() {
        Story s = hatching();
        for (int i = 0; i < 20; i++) {
            s.paper.mood(Paper.Mood.WAITING);
            s.send("a", new Ask.DidCount(9, 9, 9, 1));
            s.seconds(25);
            s.paper.mood(Paper.Mood.KEEPING);
            s.seconds(2);
        }
        assertThat(s.told("record")).isZero();
    }

    @Test
    void meanwhileNothingThatGrantsIsAcceptedOrKeptForLater() {
        Story s = hatching();
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.SETTLE));
        s.seconds(10);
        var behind = s.send("a", new Ask.DidCount(9, 9, 9, 1));
        s.tick();
        assertThat(s.notes(behind)).containsExactly(
                "Cone a: 'count' was heard; it waits until the report before it is written down.");
        s.seconds(25);
        assertThat(s.replies().getLast().request()).isEqualTo(behind);
        assertThat(s.replies().getLast().sentence()).isEqualTo("Cone a: not recorded, so not done: it has "
                + "not answered for half a minute; the disk may be failing, or another program holds the "
                + "record. Then say it again.");
        assertThat(s.did("b", Step.STARTED).accepted()).isFalse();
    }

    @Test
    void theAirComesBackTheLampGoesOutAndPeopleAreToldThoughTheRecordHangs() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE);
        s.minutes(7);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.DRAWING));
        s.minutes(1);
        assertThat(s.on("a.air-pause") && s.on("a.lamp")).isTrue();
        s.seconds(30);
        assertThat(s.standing("a")).as("two minutes before").contains("air-due");
        s.minutes(2);
        assertThat(s.on("a.air-pause") || s.on("a.lamp") || s.on("a.cut-out")).isFalse();
        s.minutes(1);
        assertThat(s.standing("a")).as("the valve is still shut").contains("air-shut-in");
    }

    @Test
    void aRipeBatchIsLetCoolThoughAReportHangs() {
        Story s = hatching();
        s.pass(java.time.Duration.ofHours(15));
        assertThat(s.stage()).isEqualTo("hatching");
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.DidCount(9, 9, 9, 1));
        s.pass(java.time.Duration.ofHours(20));
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.on("a.heat")).isFalse();
    }

    @Test
    void whatTakesAwayIsInForceAtOnceAndSaysSoThoughTheRecordHangs() {
        Story s = hatching();
        s.paper.mood(Paper.Mood.WAITING);
        var drained = s.send("a", new Ask.Did(Step.DRAINED));
        s.tick();
        assertThat(s.on("a.cut-out")).isFalse();
        s.send("b", new Ask.Did(Step.HANDS_IN));
        s.tick();
        assertThat(s.batch("b").marks().handsIn()).isPresent();
        s.minutes(3);
        assertThat(s.notes(drained)).containsExactly(
                "Cone a: 'drained' is in force and is being written down.",
                "Cone a: 'drained' is in force, but it could not be written down yet. Check the disk.");
    }

    @Test
    void whoWaitsForAGrantHearsWithinTwoSecondsThatItIsBeingWritten() {
        Story s = hatching();
        s.paper.mood(Paper.Mood.WAITING);
        var settle = s.send("a", new Ask.Did(Step.SETTLE));
        s.seconds(3);
        assertThat(s.notes(settle)).containsExactly(
                "Cone a: 'settle' was heard and is being written down; it is not done yet.");
        s.seconds(30);
        assertThat(s.notes(settle)).hasSize(2).last().isEqualTo(
                "Cone a: 'settle' is not done: it could not be written down yet. Check the disk; once it "
                        + "answers, this may still be carried out, so look at the cone.");
        s.minutes(5);
        assertThat(s.notes(settle)).as("said once each").hasSize(2);
        assertThat(s.replies().stream().filter(r -> r.request().equals(settle))).isEmpty();
    }

    @Test
    void whereTheRecordIsQuickNobodyHearsTwice() {
        Story s = hatching();
        var settle = s.send("a", new Ask.Did(Step.SETTLE));
        s.seconds(5);
        assertThat(s.notes(settle)).isEmpty();
    }
}

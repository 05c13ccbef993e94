package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Danger: air that returns while a person draws and stirs the layer up. */
@Tag("slow")
class AirWhileDrawingTest {

    private static Story drawing(Story s) {
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        s.minutes(7);
        s.does(Step.DRAWING);
        return s;
    }

    @Test
    void itIsHeldBackUntilTheDrawingCapAndAnnouncedTwoMinutesBefore() {
        Story s = drawing(Story.at());
        s.seconds(150);
        assertThat(s.standing("a")).isEmpty();
        s.seconds(25);
        assertThat(s.on("a.air-pause")).isTrue();
        assertThat(s.standing("a")).containsExactly("air-due");
        assertThat(s.told().getFirst().what()).contains("in 2 min while you draw");
        s.seconds(125);
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void whoIsDoneInTimeHearsNothing() {
        Story s = drawing(Story.at());
        s.minutes(2);
        s.does(Step.DRAINED);
        s.minutes(30);
        assertThat(s.told()).isEmpty();
    }

    @Test
    void partDrawnBringsTheAirBackInItsOwnTick() {
        Story s = drawing(Story.at());
        s.send("a", new Ask.Did(Step.PART_DRAWN));
        s.tick();
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.stage()).isEqualTo("hatching");
    }

    /** Its air has been on since; neither before nor after the old end of the pause is anybody drawing. */
    @Test
    void aPartDrawnThatIsTakenBackLeavesTheAirOnAndCallsNobody() {
        for (int seconds : new int[] {1, 60, 200, 900}) {
            Story s = drawing(Story.at()).minutes(2).does(Step.PART_DRAWN).seconds(seconds);
            assertThat(s.ask("a", new Ask.Withdraw("part-drawn")).accepted()).isTrue();
            s.each(t -> assertThat(t.on("a.air-pause") || t.on("a.lamp")).isFalse());
            s.minutes(5);
            assertThat(s.stage()).as("after " + seconds + " s").isEqualTo("ready");
            assertThat(s.told()).as("after " + seconds + " s").isEmpty();
            assertThat(s.ask("a", new Ask.Withdraw("drawing")).accepted()).isTrue();
            s.minutes(2);
            assertThat(s.stage()).as("and once more").isEqualTo("ready");
            assertThat(s.told()).isEmpty();
        }
    }

    @Test
    void withoutThisGuardItWouldComeUnannounced() {
        Story s = drawing(Story.without(AirWhileDrawing.class)).minutes(4);
        assertThat(s.told("air-due")).isZero();
    }
}

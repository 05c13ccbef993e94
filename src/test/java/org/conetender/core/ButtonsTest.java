package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** The large hand button: the obvious next step, two seconds for what is dangerous, a minute to undo. */
class ButtonsTest {

    /** Holds the button for so many ticks and lets it go. */
    private static Story press(Story s, int seconds) {
        s.senses.contact("a.button", Level.CLOSED);
        s.seconds(seconds);
        s.senses.contact("a.button", Level.OPEN);
        return s.seconds(4);
    }

    @Test
    void aShortPressIsTheObviousNextStep() {
        Story s = press(Story.at(Fitting.BUTTON), 1);
        assertThat(s.stage()).isEqualTo("hydrating");
        assertThat(s.replies()).singleElement().satisfies(r -> assertThat(r.request().from().face())
                .isEqualTo("button"));
    }

    @Test
    void whereNothingIsObviousNothingHappens() {
        Story s = press(Story.at(Fitting.BUTTON), 1).minutes(2);
        press(s, 1);
        assertThat(s.replies()).hasSize(1);
        assertThat(s.stage()).isEqualTo("hydrating");
    }

    private static Story ready() {
        Story s = Story.at(Fitting.BUTTON);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        return s.minutes(20);
    }

    @Test
    void stoppingTheAirNeedsTwoSecondsAndAShortPressDoesNothing() {
        Story s = press(ready(), 1);
        assertThat(s.stage()).isEqualTo("ready");
        press(s, 3);
        assertThat(s.stage()).isEqualTo("settling");
    }

    @Test
    void aPressThatWasSeenInTwoTicksMayHaveLastedOneSecond() {
        Story s = press(ready(), 2);
        assertThat(s.stage()).isEqualTo("ready");
    }

    @Test
    void fiveSecondsWithinAMinuteTakeItBack() {
        Story s = press(ready(), 3);
        assertThat(s.stage()).isEqualTo("settling");
        press(s, 6);
        assertThat(s.stage()).isNotEqualTo("settling");
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void aLongPressWithNothingToTakeBackIsTheNextStep() {
        Story s = press(ready(), 7);
        assertThat(s.stage()).isEqualTo("settling");
    }

    /** A wet contact is no hand. */
    @Test
    void aButtonThatWasStuckSaysNothingWhenItIsFree() {
        Story s = press(ready(), 3_600);
        assertThat(s.stage()).isEqualTo("ready");
        press(s, 22);
        assertThat(s.stage()).isEqualTo("ready");
        press(s, 20);
        assertThat(s.stage()).isEqualTo("settling");
        press(s, 40);
        assertThat(s.stage()).as("nor does it take back").isEqualTo("settling");
    }

    @Test
    void aContactThatIsLostWhileItIsHeldIsNotARelease() {
        Story s = ready();
        s.senses.contact("a.button", Level.CLOSED);
        s.seconds(4);
        s.senses.contact("a.button", Level.UNKNOWN);
        s.seconds(4);
        assertThat(s.stage()).isEqualTo("ready");
        s.senses.contact("a.button", Level.OPEN);
        s.seconds(4);
        assertThat(s.stage()).isEqualTo("ready");
    }

    @Test
    void whereThePumpCouldBeFloodedTheValveComesFirst() {
        Story s = Story.at(Fitting.BUTTON, Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE, Step.HANDS_IN, Step.VALVE_OPEN);
        s.minutes(20);
        press(s, 3);
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.batch("a").marks().valveShut()).isTrue();
        s.seconds(5);
        press(s, 3);
        assertThat(s.stage()).isEqualTo("settling");
    }

    @Test
    void aWholeHarvestByButtonAlone() {
        Story s = press(ready(), 3);
        s.minutes(6);
        press(s, 3);
        assertThat(s.stage()).isEqualTo("drawing");
        press(s, 1);
        assertThat(s.stage()).isEqualTo("drained");
        press(s, 1);
        assertThat(s.stage()).isEqualTo("clean");
    }

    @Test
    void itsLampBurnsWhileAPressWouldBeTaken() {
        Story s = Story.at(Fitting.BUTTON);
        assertThat(lit(s)).as("clean").isTrue();
        press(s, 1);
        assertThat(lit(s)).as("hydrating").isFalse();
        s.does(Step.FIRST_SEEN);
        assertThat(lit(s)).as("hatching").isFalse();
        s.does(Step.SETTLE);
        assertThat(lit(s)).as("settling").isFalse();
        s.minutes(6);
        assertThat(lit(s)).as("settled").isTrue();
        s.does(Step.DRAWING, Step.DRAINED);
        assertThat(lit(s)).as("drained").isTrue();
        s.does(Step.CLEANED, Step.FILLED);
        assertThat(lit(s)).as("filled").isTrue();
        s.does(Step.ABANDONED);
        assertThat(lit(s)).as("abandoned").isFalse();
    }

    /** Right after hands were in the water it may not settle: a press would be refused. */
    @Test
    void itsLampIsDarkWhileThePressWouldBeRefused() {
        Story s = Story.at(Fitting.BUTTON);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(lit(s)).isFalse();
        assertThat(lit(s.minutes(20))).isTrue();
    }

    @Test
    void whileTheRecordFailsOnlyWhatTakesAwayIsTaken() {
        Story s = Story.at(Fitting.BUTTON);
        failing(s);
        assertThat(lit(s)).as("'started' would not be recorded").isFalse();
        s = Story.at(Fitting.BUTTON);
        s.does(Step.STARTED, Step.DRAINED);
        failing(s);
        assertThat(lit(s)).as("'cleaned' acts at once").isTrue();
    }

    private static void failing(Story s) {
        s.paper.mood(Paper.Mood.REFUSING);
        assertThat(s.did("b", Step.STARTED).accepted()).isFalse();
    }

    private static boolean lit(Story s) {
        s.seconds(3);
        return s.on("a.button-lamp");
    }

    @Test
    void aConeWithoutAButtonHearsNone() {
        Story s = press(Story.at(), 3);
        assertThat(s.stage()).isEqualTo("clean");
        assertThat(s.last().outputs()).doesNotContainKey("a.button-lamp");
    }
}

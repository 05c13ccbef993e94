package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What an adversary found: each was red when it was written. */
class Adversary19Test {

    private static final long MINUTE = 60_000;

    private static Story hatched(Fitting... f) {
        return Story.at(f).does(Step.STARTED, Step.FIRST_SEEN).minutes(5);
    }

    private static List<String> doubts(Story s) {
        return s.batch("a").marks().words().doubts();
    }

    private static double degreeHours(Story s) {
        return s.state().live().cones().get("a").growth().done().degreeHours();
    }

    @ParameterizedTest
    @EnumSource(value = Step.class, names = {"DRAINED", "ABANDONED"})
    void aBatchThatWasSaidToBeOverByMistakeKeepsItsHoursThroughARestart(Step slip) {
        Story s = Story.at().does(Step.STARTED);
        s.pass(Duration.ofHours(11));
        double own = degreeHours(s);
        System.out.println("READY " + s.state().live().cones().get("a").outlook().forecast().map(f -> f.ready()));
        s.does(slip).minutes(2);
        s.restart("boot-1", 3_000).seconds(10);
        assertThat(s.ask("a", new Ask.Withdraw(slip.word())).accepted()).isTrue();
        s.minutes(2);
        System.out.println("HOURS " + slip + " " + own + " -> " + s.state().live().cones().get("a").growth()
                .done() + " " + s.state().live().cones().get("a").outlook().forecast().map(f -> f.ready()));
        assertThat(degreeHours(s)).isCloseTo(own, within(3.0));
    }

    /** Somebody was there until now, and nobody has been waited for yet. */
    @Test
    void whoLeavesLateFindsNoBatchSpoiledByIt() {
        Story s = Story.at().does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        s.pass(Duration.ofHours(13));
        assertThat(doubts(s)).isEmpty();
        assertThat(s.ask("", new Ask.Away("neighbour")).accepted()).isTrue();
        s.minutes(1);
        s.ask("", new Ask.Away(""));
        assertThat(doubts(s)).isEmpty();
    }

    /** It obeyed again for three minutes after the machine was switched off and on: this is another time. */
    @Test
    void aHeaterThatDoesNotObeyIsToldAlsoShortlyAfterARestart() {
        Story s = Story.at().does(Step.STARTED);
        s.unset.add("a.heat");
        s.minutes(1);
        assertThat(s.told("heater-stuck")).isEqualTo(1);
        assertThat(s.ask("a", new Ask.Acknowledge("heater-stuck")).accepted()).isTrue();
        s.unset.clear();
        s.restart("boot-2", 30_000).minutes(4);
        assertThat(s.standing("a")).doesNotContain("heater-stuck");
        s.unset.add("a.heat");
        s.minutes(3);
        assertThat(s.standing("a")).contains("heater-stuck");
        assertThat(s.told("heater-stuck")).isEqualTo(2);
    }

    /** Of the second cut nobody has said a word. */
    @Test
    void anotherCutIsToldUntilItIsSeenThoughTheDaemonRestarts() {
        Story s = hatched().restart("boot-2", 30 * MINUTE).minutes(1);
        s.ask("a", new Ask.Acknowledge("doubtful"));
        s.minutes(1).restart("boot-3", 40 * MINUTE).minutes(1);
        assertThat(s.told("doubtful")).isEqualTo(2);
        s.restart("boot-3", 3_000).minutes(20);
        assertThat(s.told("doubtful")).isGreaterThan(2);
    }

    /** A wet contact is no hand. */
    @Test
    void aButtonThatWasStuckForAnHourSaysNothingWhenItIsFree() {
        Story s = hatched(Fitting.BUTTON).does(Step.SETTLE, Step.HANDS_IN).minutes(40);
        assertThat(s.stage()).isEqualTo("ready");
        s.senses.contact("a.button", Level.CLOSED);
        s.minutes(60);
        s.senses.contact("a.button", Level.OPEN);
        s.seconds(4);
        assertThat(s.stage()).isEqualTo("ready");
    }

    /** What was acknowledged was a lamp; what fails now is the air. */
    @ParameterizedTest
    @ValueSource(strings = {"a.lamp", "site.heartbeat"})
    void anOutputThatIsKnownToBeStuckHidesNoOtherOne(String first) {
        Story s = hatched(Fitting.HEARTBEAT);
        s.unset.add(first);
        s.minutes(1);
        assertThat(s.told("output-stuck")).isEqualTo(1);
        assertThat(s.ask("a", new Ask.Acknowledge("output-stuck")).accepted()).isTrue();
        s.minutes(30);
        s.unset.add("a.air-pause");
        s.minutes(30);
        System.out.println("STUCK " + s.told());
        assertThat(s.told("output-stuck")).isEqualTo(2);
        assertThat(s.told().getLast().what()).contains("a.air-pause");
    }

    /** Nobody answered, so it is told every four hours, and still of the lamp. */
    @Test
    void norIsItToldHoursLate() {
        Story s = hatched();
        s.unset.add("a.lamp");
        s.pass(Duration.ofHours(2));
        long told = s.told("output-stuck");
        s.unset.add("a.air-pause");
        s.minutes(30);
        assertThat(s.told("output-stuck")).isEqualTo(told + 1);
        assertThat(s.told().getLast().what()).contains("a.air-pause");
    }

    /** First it was the cut-out, with the heater off; now nothing opens. */
    @Test
    void aHeaterThatMayBeOnIsToldThoughItsCutOutWasKnown() {
        Story s = Story.at().does(Step.STARTED);
        s.unset.add("a.cut-out");
        s.minutes(1);
        assertThat(s.ask("a", new Ask.Acknowledge("heater-stuck")).accepted()).isTrue();
        s.minutes(30);
        s.unset.add("a.heat");
        s.minutes(30);
        assertThat(s.told("heater-stuck")).isEqualTo(2);
        assertThat(s.told().getLast().what()).contains("neither");
    }

    /** The pause is still in force as far as anybody knows. */
    @Test
    void airThatCannotBeSwitchedOnIsNotSaidToBeOn() {
        Story s = hatched().does(Step.SETTLE);
        s.unset.add("a.air-pause");
        s.minutes(12);
        System.out.println("BACK " + s.told());
        assertThat(s.told("air-back")).isZero();
    }
}

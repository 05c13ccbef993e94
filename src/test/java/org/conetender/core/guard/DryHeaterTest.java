package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: a heater that runs dry. */
class DryHeaterTest {

    @Test
    void anEmptyConeIsNeverHeated() {
        Story s = Story.at();
        s.senses.water("a", 20);
        s.minutes(10);
        assertThat(s.on("a.heat") || s.on("a.cut-out")).isFalse();
        assertThat(s.found("dry")).containsExactly("no water was reported in");
    }

    @Test
    void drainedLocksTheHeaterInItsOwnTickAndOnlyFilledUnlocksIt() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(10);
        assertThat(s.on("a.cut-out")).isTrue();
        s.send("a", new Ask.Did(Step.DRAINED));
        s.tick();
        assertThat(s.on("a.cut-out")).isFalse();
        s.does(Step.CLEANED);
        s.minutes(5);
        assertThat(s.on("a.cut-out")).isFalse();
        s.does(Step.FILLED);
        s.minutes(5);
        assertThat(s.on("a.cut-out")).isTrue();
    }

    @Test
    void anOpenLevelContactStopsTheHeatAndCallsAfterAMinute() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED);
        s.minutes(10);
        s.senses.contact("a.level", Level.OPEN);
        s.tick();
        assertThat(s.on("a.cut-out")).isFalse();
        s.seconds(50);
        assertThat(s.standing("a")).isEmpty();
        s.seconds(15);
        assertThat(s.standing("a")).containsExactly("dry");
        s.senses.contact("a.level", Level.CLOSED);
        s.minutes(2);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.on("a.cut-out")).isTrue();
    }

    /** As at the water's edge: it must not heat by turns, nor hold off for ever that people are called. */
    @Test
    void aContactThatOpensAndClosesByTurnsCountsAsLow() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED);
        s.minutes(10);
        for (int i = 0; i < 100; i++) {
            s.senses.contact("a.level", i % 5 < 2 ? Level.OPEN : i % 5 == 3 ? Level.UNKNOWN : Level.CLOSED);
            s.tick();
            assertThat(s.on("a.cut-out")).as("second " + i).isFalse();
        }
        assertThat(s.standing("a")).containsExactly("dry");
        s.senses.contact("a.level", Level.CLOSED);
        s.seconds(8);
        assertThat(s.on("a.cut-out")).isFalse();
        s.minutes(2);
        assertThat(s.on("a.cut-out")).isTrue();
        assertThat(s.standing("a")).isEmpty();
    }

    @Test
    void aContactThatCannotBeReadCountsAsLow() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED);
        s.minutes(10);
        s.senses.contact("a.level", Level.UNKNOWN);
        s.tick();
        assertThat(s.on("a.cut-out")).isFalse();
    }

    @Test
    void justToppedUpTheContactStillRulesTheHeaterButCallsNobody() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED);
        s.minutes(10);
        s.does(Step.TOPPED_UP);
        s.senses.contact("a.level", Level.OPEN);
        s.minutes(5);
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.told()).isEmpty();
    }

    @Test
    void wetAfterDrainedIsAContactFaultToldWithoutHurry() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED, Step.DRAINED);
        s.minutes(9);
        assertThat(s.standing("a")).isEmpty();
        s.minutes(2);
        assertThat(s.standing("a")).containsExactly("wet-contact");
        assertThat(s.told().getFirst().what()).contains("drained").contains("wet");
    }

    @Test
    void withoutAContactALowPowerTrialComesFirstAndWithOneItDoesNot() {
        assertThat(heatSecondsInColdWater(Story.at()))
                .isLessThan(heatSecondsInColdWater(Story.at(Fitting.LEVEL)) / 2);
    }

    private static int heatSecondsInColdWater(Story s) {
        s.senses.water("a", 24);
        s.does(Step.STARTED);
        return heatSeconds(s, 300);
    }

    private static int heatSeconds(Story s, int seconds) {
        int on = 0;
        for (int i = 0; i < seconds; i++) {
            s.tick();
            on += s.on("a.heat") ? 1 : 0;
        }
        return on;
    }

    /** Who takes 'drained' back beside a cone that is empty after all must not get a glowing heater. */
    @Test
    void waterThatIsThereAgainByAWithdrawalIsTriedWithLittlePower() {
        Story s = Story.at();
        s.senses.water("a", 26.5);
        s.does(Step.STARTED).minutes(240);
        s.does(Step.DRAINED).senses.water("a", 20);
        s.minutes(20);
        s.ask("a", new Ask.Withdraw("last"));
        assertThat(heatSeconds(s, 300)).isBetween(1, 100);
    }

    @Test
    void withoutThisGuardALowLevelWouldNotStopTheHeat() {
        Story s = Story.without(DryHeater.class, Fitting.LEVEL);
        s.does(Step.STARTED);
        s.minutes(10);
        s.senses.contact("a.level", Level.OPEN);
        s.minutes(5);
        assertThat(s.on("a.cut-out")).isTrue();
        assertThat(s.standing("a")).isEmpty();
    }
}

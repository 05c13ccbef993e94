package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: water siphons back into a pump that does not stand above it. */
class BackSiphonTest {

    @Test
    void settleIsRefusedUntilTheValveIsReportedShutWhileThePumpRuns() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        var no = s.did("a", Step.SETTLE);
        assertThat(no.accepted()).isFalse();
        assertThat(no.sentence()).startsWith("Cone a: ")
                .contains("shut the air valve while the pump still runs")
                .contains("'valve-shut'");
        assertThat(s.on("a.air-pause")).isFalse();
        s.does(Step.VALVE_SHUT, Step.SETTLE);
        assertThat(s.on("a.air-pause")).isTrue();
    }

    /** Else an obedient person stands before a growing batch without air, and is refused. */
    @Test
    void nobodyIsSentToTheValveForAHarvestThatIsNone() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED).minutes(1);
        assertThat(s.did("a", Step.SETTLE).sentence()).contains("nothing has hatched yet")
                .doesNotContain("valve");
    }

    @Test
    void aDipTubeIsLiftedInstead() {
        Story s = Story.at(Fitting.SIPHONING, Fitting.DIP_TUBE);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        assertThat(s.did("a", Step.SETTLE).sentence()).contains("lift the air tube");
    }

    @Test
    void aValveOpenedDuringTheSeparationBringsThePumpBackInTheSameTick() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE);
        s.minutes(1);
        s.send("a", new Ask.Did(Step.VALVE_OPEN));
        s.tick();
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.standing("a")).containsExactly("siphon");
        s.tick();
        assertThat(s.stage()).isEqualTo("ready");
    }

    @Test
    void anEmptyOrDrainedConeKeepsItsPumpRunning() {
        Story s = Story.at(Fitting.SIPHONING);
        s.minutes(1);
        assertThat(s.on("a.air-pause")).isFalse();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE, Step.DRAWING, Step.DRAINED);
        s.minutes(1);
        assertThat(s.on("a.air-pause")).as("somebody fills it next, with the valve open").isFalse();
        assertThat(s.found("siphon")).as("whatever else keeps it running").hasSize(1);
        s.does(Step.CLEANED);
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.found("siphon")).hasSize(1);
        assertThat(s.told("siphon")).as("nobody is called for it").isZero();
    }

    @Test
    void aPumpAboveTheWaterMayRest() {
        Story s = Story.at();
        s.minutes(1);
        assertThat(s.on("a.air-pause")).isTrue();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        assertThat(s.on("a.air-pause")).isTrue();
    }

    @Test
    void withoutThisGuardThePumpWouldStopAtOnce() {
        Story s = Story.without(BackSiphon.class, Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        assertThat(s.on("a.air-pause")).isTrue();
    }
}

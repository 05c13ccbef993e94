package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.hatch.Oxygen;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Text;
import org.junit.jupiter.api.Test;

/** The life of a batch, stage by stage, as design.md tells it. */
class LifeStoryTest {

    /** The least of the configured cap, the house's and what oxygen allows (science.md §7.3). */
    @Test
    void stockingIsAnsweredWithTheTimeThisChargeWillStandWithoutAir() {
        Story thin = Story.at();
        assertThat(thin.ask("a", new Ask.DidStock("L-0417", 1)).sentence())
                .contains("At its harvest, at 27 °C, the air may be off for 10 min at most, 12 min while "
                        + "you draw.");
        Story usual = Story.at();
        double minutes = Oxygen.airOffMinutes(new Oxygen.Charge(5, 2, 25, 250_000, 1), 27);
        assertThat(minutes).isBetween(6.0, 10.0);
        String floor = Text.of("%.0f", Math.floor(minutes));
        assertThat(usual.ask("a", new Ask.DidStock("L-0417", 5)).sentence())
                .contains("the air may be off for " + floor + " min at most, " + floor
                        + " min while you draw.");
    }

    @Test
    void aWholeBatchFromCleanToClean() {
        Story s = Story.at();
        assertThat(s.stage()).isEqualTo("clean");
        Result.Reply slip = s.ask("a", new Ask.DidFill(5, 28));
        assertThat(slip.accepted()).isFalse();
        assertThat(slip.sentence()).isEqualTo("Cone a: litres = 5 does not fit: the cone is usually filled "
                + "with 2 L. Give what is in it; if it does hold that much, say 'usual litres=5' first.");
        assertThat(s.ask("a", new Ask.DidFill(1.8, 28)).sentence()).contains("1.8 L").contains("28 ppt");
        assertThat(s.stage()).isEqualTo("filled");
        assertThat(s.ask("a", new Ask.DidStock("L-0420", 1.5)).sentence()).contains("1.5 g of lot L-0420");
        assertThat(s.stage()).isEqualTo("hydrating");
        s.pass(Duration.ofHours(2)).minutes(1);
        assertThat(s.stage()).isEqualTo("incubating");
        s.pass(Duration.ofHours(14));
        assertThat(s.stage()).isEqualTo("hatching");
        s.pass(Duration.ofHours(11));
        assertThat(s.stage()).isEqualTo("ready");
        s.does(Step.SETTLE);
        assertThat(s.stage()).isEqualTo("settling");
        s.minutes(6);
        assertThat(s.stage()).isEqualTo("settled");
        s.does(Step.DRAWING);
        assertThat(s.stage()).isEqualTo("drawing");
        s.minutes(2);
        s.does(Step.DRAINED);
        assertThat(s.stage()).isEqualTo("drained");
        s.does(Step.RINSED, Step.CLEANED);
        assertThat(s.stage()).isEqualTo("clean");
        assertThat(s.told()).isEmpty();
        assertThat(s.batch("a").marks().words().assumed()).isEmpty();
        assertThat(s.batch("a").fill().orElseThrow().litres()).isEqualTo(1.8);
    }

    @Test
    void whatEachStageDoesWithHeatAirAndLight() {
        Story s = Story.at();
        outputs(s, "clean", false, true, false, false);
        s.does(Step.FILLED);
        outputs(s, "filled", true, false, false, false);
        s.does(Step.STOCKED);
        outputs(s, "hydrating", true, false, false, false);
        s.pass(Duration.ofMinutes(121));
        outputs(s, "incubating", true, false, false, true);
        s.pass(Duration.ofHours(3));
        outputs(s, "incubating", true, false, false, false);
        s.does(Step.FIRST_SEEN);
        outputs(s, "hatching", true, false, false, false);
        s.does(Step.SETTLE);
        outputs(s, "settling", false, true, true, false);
        s.minutes(6);
        outputs(s, "settled", false, true, true, false);
        s.does(Step.DRAWING);
        outputs(s, "drawing", false, true, true, false);
        s.does(Step.DRAINED);
        outputs(s, "drained", false, false, false, false);
        s.minutes(31);
        outputs(s, "drained", false, true, false, false);
    }

    private static void outputs(Story s, String stage, boolean heat, boolean airOff, boolean lamp,
            boolean trigger) {
        s.tick();
        assertThat(s.stage()).isEqualTo(stage);
        assertThat(s.on("a.cut-out")).as("heat in " + stage).isEqualTo(heat);
        assertThat(s.on("a.air-pause")).as("air off in " + stage).isEqualTo(airOff);
        assertThat(s.on("a.lamp")).as("lamp in " + stage).isEqualTo(lamp);
        assertThat(s.on("a.trigger")).as("trigger light in " + stage).isEqualTo(trigger);
    }

    @Test
    void aCleanConeKeepsItsAirWhereThatIsConfigured() {
        Story s = Story.at(Fitting.IDLE_AIR);
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void aReadyBatchIsOnlyKeptFromFallingBelowTheFloor() {
        Story s = Story.at();
        s.senses.water("a", 27);
        s.does(Step.STARTED);
        s.minutes(28 * 60);
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.state().live().cones().get("a").hold().duty()).isZero();
        s.senses.water("a", 19);
        s.does(Step.HANDS_IN);
        s.minutes(16);
        assertThat(s.state().live().cones().get("a").hold().duty()).isPositive();
        assertThat(s.state().live().cones().get("a").hold().aimC()).isEqualTo(20);
    }

    /** Only the animals' own time ends the warming, not a separation that came to nothing. */
    @Test
    void aBatchThatWasSeparatedTooEarlyIsKeptWarmOn() {
        Story s = Story.at();
        s.senses.water("a", 26);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        s.minutes(18);
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.state().live().cones().get("a").hold().aimC()).isEqualTo(27);
        assertThat(s.state().live().cones().get("a").hold().duty()).isPositive();
    }

    @Test
    void aBatchThatWasPartDrawnIsOfferedAgainTwoHoursLater() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.pass(Duration.ofHours(27));
        assertThat(s.stage()).isEqualTo("ready");
        s.does(Step.SETTLE);
        s.minutes(6);
        s.does(Step.DRAWING, Step.PART_DRAWN);
        assertThat(s.stage()).isEqualTo("hatching");
        assertThat(s.on("a.air-pause")).isFalse();
        s.pass(Duration.ofMinutes(115));
        assertThat(s.stage()).isEqualTo("hatching");
        s.minutes(8);
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.batch("a").marks().harvests()).isEqualTo(1);
        assertThat(s.did("a", Step.RIGHT).accepted()).as("part of it was fed").isTrue();
    }

    @Test
    void aSeparationNobodyComesToEndsInAirAndCanBeRepeated() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        s.minutes(11);
        assertThat(s.stage()).isEqualTo("ready");
        s.minutes(13);
        s.does(Step.SETTLE);
        s.minutes(1);
        assertThat(s.stage()).isEqualTo("settling");
        assertThat(s.on("a.air-pause")).isTrue();
    }

    @Test
    void anAbandonedBatchIsNotHeatedButAired() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(10);
        s.send("a", new Ask.Did(Step.ABANDONED));
        s.tick();
        assertThat(s.stage()).isEqualTo("abandoned");
        assertThat(s.on("a.cut-out") || s.on("a.air-pause")).isFalse();
        s.does(Step.CLEANED);
        assertThat(s.stage()).isEqualTo("clean");
    }

    @Test
    void saltFirstOrLaterAndItsAbsenceIsRememberedAndAskedFor() {
        Story s = Story.at();
        s.ask("a", new Ask.DidFill(2, 0));
        assertThat(s.batch("a").marks().salted()).isFalse();
        assertThat(s.ask("a", new Ask.DidStock("L-0417", 2)).sentence()).contains("report 'salted'");
        s.pass(Duration.ofHours(3));
        assertThat(s.stage()).as("the batch goes on").isEqualTo("incubating");
        assertThat(s.did("a", Step.RIGHT).accepted()).isFalse();
        assertThat(s.did("a", Step.SALTED).sentence()).contains("it is growing");
        assertThat(s.batch("a").marks().salted()).isTrue();
        s.did("b", Step.FILLED);
        assertThat(s.batch("b").marks().salted()).isTrue();
    }

    @Test
    void aSetPointToldToABatchHoldsForThatBatchSurvivesARestartAndEndsWithIt() {
        Story s = Story.at();
        assertThat(s.ask("a", new Ask.SetSetpoint(26)).sentence()).contains("belongs to its batch");
        s.does(Step.STARTED);
        assertThat(s.ask("a", new Ask.SetSetpoint(26)).sentence()).contains("held at 26 °C");
        assertThat(s.ask("a", new Ask.SetSetpoint(30.5)).sentence()).contains("30.5").contains("15 to 30 °C");
        assertThat(s.ask("a", new Ask.SetSetpoint(14)).accepted()).isFalse();
        assertThat(s.ask("a", new Ask.SetSetpoint(Double.NaN)).accepted()).isFalse();
        s.restart("boot-1", 1_000).minutes(1);
        assertThat(s.state().live().cones().get("a").hold().aimC()).isEqualTo(26);
        s.does(Step.DRAINED, Step.CLEANED, Step.STARTED);
        s.minutes(5);
        assertThat(s.state().live().cones().get("a").hold().aimC()).isEqualTo(27);
    }

    @Test
    void usualValuesStandBehindTheShortWordsAndOutliveTheBatch() {
        Story s = Story.at();
        assertThat(s.ask("a", new Ask.SetUsual(java.util.Optional.of("L-0500"), java.util.Optional.of(1.5),
                java.util.Optional.empty(), java.util.Optional.of(30.0))).accepted()).isTrue();
        s.does(Step.STARTED);
        assertThat(s.batch("a").fill().orElseThrow()).extracting("litres", "ppt").containsExactly(1.5, 30.0);
        assertThat(s.batch("a").stock().orElseThrow()).extracting("lot", "cystsG")
                .containsExactly("L-0500", 2.0);
        s.restart("boot-1", 1_000).minutes(1);
        s.does(Step.DRAINED, Step.STARTED);
        assertThat(s.batch("a").stock().orElseThrow().lot()).isEqualTo("L-0500");
        s.did("b", Step.STARTED);
        assertThat(s.batch("b").stock().orElseThrow().lot()).isEqualTo("L-0417");
    }

    @Test
    void whileNobodyIsNearARipeBatchCoolsAfterTwelveHoursAndIsNotFed() {
        Story s = Story.at();
        assertThat(s.ask("", new Ask.Away("neighbour")).sentence())
                .isEqualTo("Away is noted; helper: neighbour.");
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        s.pass(Duration.ofHours(11));
        assertThat(s.on("a.cut-out")).isTrue();
        s.pass(Duration.ofMinutes(70));
        assertThat(s.on("a.cut-out") || s.on("a.air-pause")).isFalse();
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("do not feed");
        s.ask("", new Ask.Away("cousin"));
        assertThat(s.minutes(2).on("a.cut-out")).as("another helper makes it no food").isFalse();
        assertThat(s.ask("", new Ask.Away("")).sentence()).contains("near again");
    }
}

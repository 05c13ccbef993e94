package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.batch.Change;
import org.conetender.core.batch.Lots;
import org.conetender.core.face.HourWords;
import org.conetender.core.face.Sentences;
import org.conetender.core.hatch.Known;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Speed;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** What people report teaches the lot, for every cone that is stocked with it, and for good. */
class LessonStoryTest {

    private static Story started() {
        Story s = Story.at();
        s.senses.water("a", 27);
        s.senses.water("b", 27);
        return s.does(Step.STARTED);
    }

    private static Lots lots(Story s) {
        return s.state().book().lots();
    }

    private static Speed speed(Story s, String cone) {
        return s.state().live().cones().get(cone).known().speed();
    }

    /** One batch: seen too early, seen, counted, harvested, judged, cleaned. */
    private static void batch(Story s) {
        s.minutes(60 * 9).does(Step.NONE_SEEN).minutes(60 * 2).does(Step.FIRST_SEEN).minutes(60 * 6);
        s.ask("a", new Ask.DidCount(60, 10, 60, 1));
        s.minutes(60 * 7).does(Step.VALVE_SHUT, Step.SETTLE).minutes(3).does(Step.DRAWING, Step.DRAINED,
                Step.RIGHT, Step.CLEANED);
        s.tick();
    }

    /** The hour that follows from it is told at once, and stands: nothing else happens. */
    @Test
    void aLookInVainTellsTheHourThatStandsMinutesLaterToo() {
        Story s = started();
        RealWater.in(s, 27);
        for (int h = 0; h < 19; h++) {
            s.minutes(60);
        }
        s.does(Step.NONE_SEEN);
        double at = ready(s);
        s.minutes(3);
        assertThat(ready(s)).isCloseTo(at - 3 / 60.0, within(0.1));
    }

    private static double ready(Story s) {
        return s.state().live().cones().get("a").outlook().forecast().orElseThrow().ready().announced();
    }

    @Test
    void everyLookIsKeptWithHowFarTheCystsWere() {
        Story s = started();
        batch(s);
        assertThat(lots(s).all()).hasSize(4).allSatisfy(k -> {
            assertThat(k.what().lot()).isEqualTo(s.batch("a").stock().orElseThrow().lot());
            assertThat(k.what().batch()).isEqualTo(1);
            assertThat(k.cone()).isEqualTo("a");
        });
        Lesson.At first = lots(s).all().get(1).what().lesson().at();
        assertThat(first.hours()).isCloseTo(11, within(0.05));
        assertThat(first.leastDegreeHours()).isCloseTo(11 * 15, within(3.0));
        // The verdict counts for the hour at which the air went off for good, not for the evening.
        assertThat(lots(s).all().get(3).what().lesson().at().hours()).isCloseTo(24, within(0.1));
    }

    @Test
    void theForecastOfTheNextBatchKnowsItAndThatOfAnotherLotDoesNot() {
        Story s = started();
        batch(s);
        s.does(Step.STARTED).minutes(2);
        Speed known = speed(s, "a");
        assertThat(known.timesSeen()).isEqualTo(1);
        assertThat(known.k50DegreeHours()).isLessThan(Speed.UNKNOWN_LOT.k50DegreeHours() - 10);
        assertThat(s.state().live().cones().get("a").outlook().forecast().orElseThrow().neededDegreeHours())
                .isCloseTo(known.at(27, 12).calledReadyAt(), within(5.0));
        s.ask("b", new Ask.DidFill(2, 25));
        s.ask("b", new Ask.DidStock("77-0001", 2));
        s.minutes(2);
        assertThat(speed(s, "b")).isEqualTo(Speed.UNKNOWN_LOT);
    }

    @Test
    void aReportThatIsTakenBackWasNeverMade() {
        Story s = started();
        s.minutes(60 * 10);
        Speed before = speed(s, "a");
        s.does(Step.FIRST_SEEN).minutes(2);
        Speed with = speed(s, "a");
        assertThat(with.k50DegreeHours()).isNotCloseTo(before.k50DegreeHours(), within(3.0));
        assertThat(s.ask("a", new Ask.Withdraw("first-seen")).accepted()).isTrue();
        s.minutes(2);
        assertThat(lots(s).all()).isEmpty();
        assertThat(speed(s, "a")).isEqualTo(before).isEqualTo(Speed.UNKNOWN_LOT);
        s.does(Step.FIRST_SEEN).minutes(1);
        assertThat(speed(s, "a").k50DegreeHours()).isCloseTo(with.k50DegreeHours(), within(3.0));
    }

    @Test
    void aRestartForgetsNothingThatWasTaught() {
        Story s = started();
        batch(s);
        s.does(Step.STARTED).minutes(2);
        Speed before = speed(s, "a");
        s.restart("boot-2", 60_000).minutes(1);
        assertThat(lots(s).all()).hasSize(4);
        assertThat(speed(s, "a")).isEqualTo(before);
    }

    @Test
    void whoeverTeachesIsToldWhatIsKnown() {
        Story s = started();
        s.minutes(60 * 9);
        assertThat(s.did("a", Step.NONE_SEEN).sentence()).doesNotContain("ripe at");
        s.minutes(60 * 2);
        String said = s.did("a", Step.FIRST_SEEN).sentence();
        assertThat(said).contains(" Lot " + s.batch("a").stock().orElseThrow().lot()
                + ", from one batch: first tenth at about ", "ripe at ", "in four cases of five ");
    }

    /** Its kin have to be learnt as well, which is else spread over ticks. */
    @Test
    void theFirstLookAtALotIsAnsweredAtOnce() {
        Story s = Story.at();
        s.ask("a", new Ask.DidFill(2, 25));
        s.ask("a", new Ask.DidStock("L-0507", 2));
        s.ask("b", new Ask.DidFill(2, 25));
        s.ask("b", new Ask.DidStock("L-0508", 2));
        s.minutes(60 * 11);
        s.did("a", Step.FIRST_SEEN);
        s.minutes(2);
        assertThat(s.did("b", Step.FIRST_SEEN).sentence()).contains(" Lot L-0508, from one batch: ");
    }

    /** What the answer to a stocking had to learn is kept: nothing is learnt anew behind it. */
    @Test
    void theLotIsKnownOnceItsStockingIsAnswered() {
        Story s = Story.at();
        for (String kin : new String[] {"L-0501", "L-0502", "L-0503"}) {
            s.ask("a", new Ask.DidFill(2, 25));
            s.ask("a", new Ask.DidStock(kin, 2));
            s.minutes(60 * 11).does(Step.FIRST_SEEN, Step.VALVE_SHUT, Step.CLEANED);
        }
        s.ask("b", new Ask.DidFill(2, 25));
        assertThat(s.ask("b", new Ask.DidStock("L-0508", 2)).accepted()).isTrue();
        Known known = s.state().live().cones().get("b").known();
        assertThat(known.kin()).hasSize(3);
        assertThat(known.whole()).isTrue();
        s.tick();
        assertThat(s.state().live().cones().get("b").known()).isEqualTo(known);
    }

    private static Lesson.At judged(Story s) {
        Lesson last = lots(s).all().getLast().what().lesson();
        assertThat(last.sight()).isInstanceOf(Lesson.Sight.Judged.class);
        return last.at();
    }

    /** A kill between the draining and the answer; also where the cleaning is all that was told. */
    @Test
    void aVerdictAfterAKillCountsForTheHourOfTheHarvest() {
        for (Step[] emptied : new Step[][] {{Step.SETTLE, Step.DRAWING, Step.DRAINED}, {Step.DRAINED},
            {Step.CLEANED}}) {
            Story s = started();
            s.minutes(60 * 24).does(Step.FIRST_SEEN, Step.VALVE_SHUT).does(emptied).minutes(2);
            s.restart("boot-2", 60_000).minutes(90);
            assertThat(s.did("a", Step.RIGHT).accepted()).isTrue();
            s.minutes(1);
            assertThat(judged(s).hours()).as(emptied[0].word()).isCloseTo(24, within(0.1));
            assertThat(judged(s).leastDegreeHours()).isCloseTo(24 * 15, within(5.0));
            assertThat(judged(s).mostDegreeHours()).isCloseTo(24 * 15, within(5.0));
        }
    }

    /** The rest hatches on; what was drawn is judged. */
    @Test
    void aVerdictOnAPartCountsForTheHourAtWhichThatWasDrawn() {
        Story s = started();
        s.minutes(60 * 24).does(Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE).minutes(3)
                .does(Step.DRAWING, Step.PART_DRAWN, Step.VALVE_OPEN).minutes(60 * 5);
        s.does(Step.TOO_EARLY).minutes(1);
        assertThat(judged(s).hours()).isCloseTo(24, within(0.1));
        s.restart("boot-2", 60_000).minutes(60);
        s.does(Step.VALVE_SHUT, Step.SETTLE).minutes(3).does(Step.DRAWING, Step.DRAINED, Step.RIGHT).tick();
        assertThat(judged(s).hours()).as("of the second harvest").isCloseTo(30, within(0.3));
    }

    @Test
    void aDrainingThatIsTakenBackWasNoHarvest() {
        Story s = started();
        s.minutes(60 * 20).does(Step.FIRST_SEEN, Step.DRAINED).tick();
        assertThat(s.ask("a", new Ask.Withdraw("drained")).accepted()).isTrue();
        s.minutes(60 * 4).does(Step.DRAINED, Step.RIGHT).tick();
        assertThat(judged(s).hours()).isCloseTo(24, within(0.1));
    }

    @Test
    void aLookInVainAfterTheFirstNaupliiIsToldNotToCountAndWhatToDo() {
        Story s = started();
        s.minutes(60 * 10).does(Step.FIRST_SEEN).minutes(10);
        Speed before = speed(s, "a");
        String said = s.did("a", Step.NONE_SEEN).sentence();
        assertThat(said).contains("'none-seen' is recorded.", "does not count: 'first-seen' was reported at ",
                "say 'withdraw' twice, then again what was right");
        assertThat(speed(s, "a")).isEqualTo(before);
        s.ask("a", new Ask.Withdraw("last"));
        s.does(Step.SALTED);
        assertThat(s.did("a", Step.NONE_SEEN).sentence()).contains("say 'withdraw' 3 times");
        for (int i = 0; i < 3; i++) {
            assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        }
        assertThat(s.did("a", Step.NONE_SEEN).sentence()).doesNotContain("does not count");
        s.minutes(60).does(Step.FIRST_SEEN).minutes(40);
        assertThat(s.did("a", Step.FIRST_SEEN).sentence()).contains("does not count: 'first-seen' was ",
                "If this 'first-seen' was the slip, say 'withdraw'", "it stands by now, and a 'count'");
    }

    /** 95 of 100 after seven hours: no lot is that quick. */
    @Test
    void aCountThatCannotBeIsSaidToBeTakenForASlip() {
        Story s = started();
        s.minutes(60 * 7);
        Speed before = speed(s, "a");
        String said = s.ask("a", new Ask.DidCount(95, 2, 3, 1)).sentence();
        assertThat(said).containsPattern("That hardly can be: after 105 degree-hours, at most [1-5] %")
                .contains("taken for a slip", "'withdraw'").doesNotContain("from one batch");
        assertThat(speed(s, "a").k50DegreeHours()).isCloseTo(before.k50DegreeHours(), within(30.0));
        s.ask("a", new Ask.Withdraw("count"));
        s.minutes(60 * 9);
        assertThat(s.ask("a", new Ask.DidCount(40, 10, 60, 1)).sentence()).doesNotContain("slip");
        s.minutes(60 * 20);
        assertThat(s.ask("a", new Ask.DidCount(1, 0, 300, 1)).sentence())
                .contains("That hardly can be", "more than 99 % of", "few of these cysts can hatch at all");
    }

    @Test
    void whoMovesTheForecastIsToldTheNewHour() {
        Story s = started();
        s.minutes(60 * 9).does(Step.NONE_SEEN).minutes(60);
        double before = hours(s);
        String said = s.did("a", Step.FIRST_SEEN).sentence();
        s.minutes(1);
        assertThat(hours(s)).isLessThan(before - 1);
        long wallMs = s.now().wallMs() + Math.round(hours(s) * 3_600_000);
        assertThat(said).containsPattern(" That makes it ready about (Tue )?\\d\\d:\\d\\d, \\d.* sooner than")
                .contains(Sentences.clock(wallMs, s.settings().site().feeding().zone(), s.now().wallMs())
                        .replaceFirst(".$", ""));
        assertThat(s.did("a", Step.SALTED).sentence()).doesNotContain("ready about");
    }

    private static double hours(Story s) {
        return s.state().live().cones().get("a").outlook().forecast().orElseThrow().ready().announced();
    }

    /** Nobody named the tin: it is a batch, and no lot is spoken of that nobody has. */
    @Test
    void whereTheTinHasNoLabelNoLotIsSpokenOf() {
        Story s = Story.at();
        s.senses.water("a", 27);
        s.ask("a", new Ask.DidFill(2, 25));
        assertThat(s.ask("a", new Ask.DidStock("unknown", 2)).sentence()).contains("2 g of cysts, recorded")
                .doesNotContain("unknown");
        s.minutes(60 * 11);
        assertThat(s.did("a", Step.FIRST_SEEN).sentence()).contains(" This batch: first tenth at about ",
                "Its tin has no label").doesNotContain("unknown", "Lot ");
    }

    @Test
    void whatWasWeighedIsAnsweredByWhatAGramGave() {
        Story s = started();
        assertThat(s.ask("a", new Ask.DidWeigh(9.5)).sentence()).contains("there is no harvest to weigh");
        s.minutes(60 * 24).does(Step.FIRST_SEEN, Step.DRAINED);
        Speed before = speed(s, "a");
        assertThat(s.ask("a", new Ask.DidWeigh(6)).sentence())
                .contains("6 g wet, recorded. That is 3.0 g of each gram of cysts.");
        assertThat(s.ask("a", new Ask.DidWeigh(3.5)).sentence())
                .contains("3.5 g wet, recorded. 9.5 g in all of this batch: 4.8 g of each gram of cysts.");
        assertThat(s.ask("a", new Ask.DidWeigh(80)).sentence()).contains("No cysts give so much");
        assertThat(s.ask("a", new Ask.Withdraw("last")).sentence()).contains("'weighed' of ");
        s.restart("boot-2", 60_000).minutes(1);
        assertThat(s.ask("a", new Ask.DidWeigh(0.5)).sentence()).contains("10.0 g in all of this batch");
        assertThat(speed(s, "a")).as("a weight teaches no hour").isEqualTo(before);
    }

    @Test
    void aTinIsToldOfWithoutACone() {
        Story s = started();
        assertThat(s.ask("", new Ask.TinHolds("L-0417", 425)).sentence())
                .startsWith("Lot L-0417: 425 g are left, recorded;").doesNotContain("Next");
        assertThat(s.ask("a", new Ask.TinHolds("L-0417", 420)).accepted()).isTrue();
        assertThat(s.paper.facts().stream().filter(f -> f.change() instanceof Change.Told(Ask.TinHolds _)))
                .hasSize(2).allMatch(f -> f.cone().isEmpty());
        assertThat(s.ask("a", new Ask.Withdraw("last")).sentence()).as("of the cone").contains("'started'");
        assertThat(s.ask("", new Ask.TinHolds("L-0417", 425)).sentence()).doesNotContain("of that label");
        assertThat(s.ask("", new Ask.TinHolds("L-0471", 425)).sentence()).contains("425 g are left, recorded",
                "No cone holds cysts of that label", "'L-0471' with 0 g");
        assertThat(s.ask("", new Ask.TinHolds("unknown", 425)).sentence()).contains("write one on it");
        assertThat(s.ask("", new Ask.TinHolds("L-0417", -1)).accepted()).isFalse();
    }

    @Test
    void whereNothingHasDevelopedNothingIsTaught() {
        Story s = started();
        s.ask("a", new Ask.DidCount(0, 0, 90, 1));
        s.does(Step.DRAINED);
        assertThat(s.did("a", Step.TOO_EARLY).accepted()).as("nothing had hatched").isFalse();
        s.ask("a", new Ask.Withdraw("last"));
        s.does(Step.FIRST_SEEN, Step.DRAINED);
        assertThat(s.did("a", Step.TOO_EARLY).sentence()).contains("teaches nothing, since it is not known");
        s.minutes(1);
        assertThat(lots(s).all()).isEmpty();
    }

    @Test
    void threeWatchedBatchesMakeALotKnown() {
        Story s = started();
        for (int i = 0; i < 3; i++) {
            assertThat(speed(s, "a").known()).isFalse();
            batch(s);
            s.does(Step.STARTED).minutes(2);
        }
        assertThat(speed(s, "a").known()).isTrue();
        assertThat(HourWords.holding(26, speed(s, "a"))).doesNotContain("later");
        var ready = s.state().live().cones().get("a").outlook().forecast().orElseThrow().ready();
        assertThat(ready.announced()).isEqualTo(ready.median());
        assertThat(ready.latest() - ready.earliest()).isLessThan(7);
    }
}

package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: animals without air for longer than they stand it (science.md §7.3). */
class SuffocationTest {

    private static Story settling(Story s) {
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        return s;
    }

    @Test
    void airComesBackAtTheCapByItselfWithAnAlarm() {
        Story s = settling(Story.at());
        s.minutes(7);
        assertThat(s.stage()).isEqualTo("settled");
        s.seconds(165);
        assertThat(s.on("a.air-pause")).isTrue();
        s.seconds(12);
        assertThat(s.on("a.air-pause") || s.on("a.lamp")).isFalse();
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.told("air-back")).isEqualTo(1);
        assertThat(s.told().getLast().what()).contains("10 min").contains("back on");
    }

    @Test
    void airIsBackAtTheCapEvenIfNoFurtherTickComes() {
        Story s = settling(Story.at());
        long off = s.batch("a").stage().since().monoMs();
        long lastHold = off;
        while (s.on("a.air-pause")) {
            lastHold = s.now().monoMs() - 1_000;
            s.tick();
        }
        // What was set last holds for a lease of 4 s (style.md, leases).
        assertThat(lastHold + 4_000 - off).isBetween(10 * 60_000L - 2_000, 10 * 60_000L);
    }

    /** What is left after a part was drawn stands below the contact, and its animals breathe. */
    @Test
    void aContactThatIsDryForGoodReasonStopsNoAirAtASlip() {
        Story s = settling(Story.at(Larkmoor.Fitting.LEVEL)).minutes(7);
        s.does(Step.DRAWING, Step.PART_DRAWN);
        s.senses.contact("a.level", Level.OPEN);
        s.minutes(25);
        s.does(Step.DRAINED).seconds(5);
        assertThat(s.on("a.air-pause")).as("it can still be withdrawn").isFalse();
        s.minutes(31);
        assertThat(s.on("a.air-pause")).isTrue();
    }

    @Test
    void theCapCountsFromTheMomentTheAirWentOffAlsoWhileDrawing() {
        Story s = settling(Story.at());
        s.minutes(8);
        s.does(Step.DRAWING);
        s.minutes(3);
        assertThat(s.on("a.air-pause")).as("drawing has 12 min in all").isTrue();
        s.minutes(1);
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.stage()).isEqualTo("ready");
    }

    @Test
    void aDenserChargeHasLess() {
        Story s = Story.at();
        assertThat(s.ask("a", new Ask.DidStock("L-0417", 14)).sentence()).contains("without air");
        s.does(Step.FIRST_SEEN, Step.SETTLE);
        s.minutes(6);
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.told("air-back")).isEqualTo(1);
    }

    @Test
    void aChargeTooDenseForItsSetPointIsToldWhileItsWaterIsStillCold() {
        Story s = Story.at();
        s.senses.water("a", 20).water("b", 20);
        s.minutes(10);
        assertThat(s.ask("a", new Ask.DidStock("L-0417", 7)).sentence()).as("3.5 g/L in water of 20 °C")
                .contains("At 27 °C").contains("only 5 min without air");
        assertThat(s.ask("b", new Ask.DidStock("L-0417", 4)).sentence()).as("2 g/L")
                .doesNotContain("so dense");
    }

    @Test
    void aChargeThatNothingWarmsIsToldByTheWaterAsItIs() {
        Story s = Story.at(Larkmoor.Fitting.NO_HEAT);
        s.senses.water("a", 20).water("b", 20);
        s.minutes(10);
        assertThat(s.ask("a", new Ask.DidStock("L-0417", 7)).sentence()).doesNotContain("without air");
        s.does(Step.FIRST_SEEN, Step.SETTLE);
        s.minutes(9);
        assertThat(s.on("a.air-pause")).as("the cap itself goes by the true water: 9.9 min").isTrue();
        s.minutes(1);
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void aWatchWithATwentyMinuteCapIsStillHeldToTwelve() {
        Story s = settling(new Story(Larkmoor.room().airOff(6, 20).build()));
        s.minutes(13);
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void afterARestartTheAirIsOnAtOnce() {
        for (int wait : new int[] {1, 7}) {
            Story s = settling(Story.at()).minutes(wait);
            assertThat(s.on("a.air-pause")).isTrue();
            s.restart("boot-1", 2_000);
            s.tick();
            assertThat(s.on("a.air-pause")).isFalse();
            s.tick();
            assertThat(s.stage()).isEqualTo("ready");
            assertThat(s.standing("a")).contains("air-back");
        }
    }

    @Test
    void aReportThatBringsBackAnOldSeparationDoesNotStopTheAirAgain() {
        Story s = settling(Story.at()).minutes(7);
        s.does(Step.DRAWING, Step.DRAINED);
        s.minutes(10);
        assertThat(s.ask("a", new Ask.Withdraw("drained")).accepted()).isTrue();
        assertThat(s.on("a.air-pause")).isFalse();
        s.tick();
        assertThat(s.stage()).isEqualTo("ready");
    }

    /** Told of the wrong cone: nauplii swim in it on. */
    private static Story emptiedByMistake(Step word, Larkmoor.Fitting... fittings) {
        Story s = Story.at(fittings);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.minutes(5);
        return s.does(word).seconds(2);
    }

    @Test
    void airStaysOnInAConeReportedEmptyWhileItsLevelContactSaysWet() {
        for (Step word : new Step[] {Step.DRAINED, Step.CLEANED}) {
            Story s = emptiedByMistake(word, Larkmoor.Fitting.LEVEL);
            for (int i = 0; i < 90; i++) {
                assertThat(s.minutes(1).on("a.air-pause")).as(word + ", minute " + i).isFalse();
            }
            s.senses.contact("a.level", Level.UNKNOWN);
            assertThat(s.minutes(1).on("a.air-pause")).as("it cannot be read").isFalse();
            s.senses.contact("a.level", Level.OPEN);
            assertThat(s.seconds(2).on("a.air-pause")).as("as configured").isTrue();
        }
    }

    @Test
    void withoutAContactAirStaysOnWhileTheReportCanBeWithdrawn() {
        for (Step word : new Step[] {Step.DRAINED, Step.CLEANED}) {
            Story s = emptiedByMistake(word);
            for (int i = 0; i < 29; i++) {
                assertThat(s.minutes(1).on("a.air-pause")).as(word + ", minute " + i).isFalse();
            }
            assertThat(s.minutes(2).on("a.air-pause")).as("as configured").isTrue();
        }
    }

    @Test
    void aWithdrawnReportFindsTheAirNeverStopped() {
        Story s = emptiedByMistake(Step.DRAINED);
        s.each(now -> assertThat(now.on("a.air-pause")).isFalse());
        s.minutes(29);
        assertThat(s.ask("a", new Ask.Withdraw("drained")).accepted()).isTrue();
        assertThat(s.minutes(60).stage()).isEqualTo("hatching");
    }

    @Test
    void aConeThatHeldNoBatchRestsAsConfigured() {
        assertThat(Story.at().seconds(2).on("a.air-pause")).isTrue();
    }

    @Test
    void withoutThisGuardTheAirWouldStayOff() {
        Story s = settling(Story.without(Suffocation.class)).minutes(30);
        assertThat(s.on("a.air-pause")).isTrue();
    }
}

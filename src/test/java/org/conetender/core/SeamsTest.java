package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Where the work of two guards meets: what one lets go must not slip past the other. */
class SeamsTest {

    @Test
    void aConeEmptiedWhileItsFillingHangsIsNotHeatedWhenTheFillingArrives() {
        Story s = Story.at(Fitting.MAT);
        s.senses.water("a", 22);
        s.seconds(30);
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Did(Step.FILLED));
        s.seconds(40);
        s.send("a", new Ask.Did(Step.DRAINED));
        s.minutes(5);
        s.paper.mood(Paper.Mood.KEEPING);
        assertThat(s.comesOn("a.heat", 600)).isFalse();
        assertThat(s.stage()).isEqualTo("drained");
    }

    @Test
    void acknowledgingThatOneProbeIsDeadReleasesNoOtherLatchOfTheProbes() {
        Story s = Story.at(Fitting.TWO_PROBES, Fitting.MAT);
        s.does(Step.STARTED);
        s.minutes(5);
        for (int i = 0; i < 3; i++) {
            s.senses.water("a", 40).probe("a-second", new Reading.Value(40));
            s.seconds(5);
            s.senses.water("a", 27).probe("a-second", new Reading.Value(27));
            s.minutes(5);
        }
        assertThat(s.state().book().cone("a").latches()).isNotEmpty();
        s.senses.probe("a-second", new Reading.Absent());
        s.minutes(12);
        s.ask("a", new Ask.Acknowledge("one-probe"));
        assertThat(s.state().book().cone("a").latches()).isNotEmpty();
    }

    @Test
    void airThatCannotBeSwitchedBackOnIsNoAir() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.minutes(30);
        s.does(Step.SETTLE);
        s.minutes(4);
        double spent = s.state().live().cones().get("a").judged().air().breath().spent();
        s.unset.add("a.air-pause");
        s.minutes(25);
        assertThat(s.state().live().cones().get("a").judged().air().breath().spent())
                .isGreaterThanOrEqualTo(spent);
        s.unset.clear();
        s.seconds(5);
        assertThat(s.did("a", Step.SETTLE).accepted()).isFalse();
    }

    @Test
    void aSecondPowerCutIsToldThoughTheFirstWasAcknowledged() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.minutes(30);
        s.restart("boot-2", 30 * 60_000).minutes(3);
        s.ask("a", new Ask.Acknowledge("doubtful"));
        s.minutes(60);
        long told = s.told("doubtful");
        s.restart("boot-3", 3 * 3_600_000L).minutes(10);
        assertThat(s.told("doubtful")).isGreaterThan(told);
    }

    @Test
    void aClockThatWasAcknowledgedAsUnsetIsNotToldAgainAfterARestart() {
        Story s = Story.at();
        s.wall(0, false);
        s.minutes(65);
        s.ask("a", new Ask.Acknowledge("clock"));
        s.minutes(5);
        long told = s.told("clock");
        s.restart("boot-1", 3_000).minutes(70);
        assertThat(s.told("clock")).isEqualTo(told);
    }

    @Test
    void whatIsTakenBackWhileTheRecordHangsIsWrittenOnce() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.minutes(30);
        s.wall(0, false);
        s.restart("boot-2", 5 * 60_000).minutes(65);
        s.wall(0, true);
        s.paper.mood(Paper.Mood.WAITING);
        s.minutes(10);
        assertThat(s.state().ledger().pending()).hasSizeLessThan(10);
    }
}

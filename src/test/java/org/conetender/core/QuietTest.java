package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Alarms must not cry wolf (design.md). */
class QuietTest {

    @Test
    void readyAtNightIsNotAnAlarmAndNobodyIsChased() {
        Story s = Story.at(Fitting.AIR_PROOF, Fitting.LEVEL, Fitting.ROOM_PROBE);
        s.does(Step.STARTED);
        s.pass(Duration.ofHours(48));
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.told()).isEmpty();
    }

    @Test
    void whatConcernsTheSiteIsToldOnceForAllCones() {
        Story s = Story.at();
        s.wall(0, false).pass(Duration.ofMinutes(62));
        assertThat(s.told("clock")).isEqualTo(1);
        assertThat(s.told().getFirst().cone()).isEmpty();
    }

    @Test
    void aSiteAlarmIsAcknowledgedThroughAnyCone() {
        Story s = Story.at();
        s.wall(0, false).pass(Duration.ofMinutes(62));
        assertThat(s.ask("b", new Ask.Acknowledge("clock")).accepted()).isTrue();
        s.pass(Duration.ofHours(10));
        assertThat(s.told("clock")).isEqualTo(1);
    }

    @Test
    void whatDoesNotStandCannotBeAcknowledgedAndTheAnswerNamesWhatDoes() {
        Story s = Story.at();
        assertThat(s.ask("a", new Ask.Acknowledge("welded")).sentence())
                .contains("no alarm 'welded' stands.");
        s.did("a", Step.STARTED);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(5);
        assertThat(s.ask("a", new Ask.Acknowledge("welded")).sentence()).contains("standing: probe");
        assertThat(s.ask("b", new Ask.Acknowledge("probe")).accepted()).isFalse();
    }

    @Test
    void anAcknowledgedAlarmThatEndsIsStruckFromTheBook() {
        Story s = Story.at();
        s.did("a", Step.STARTED);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(5);
        s.ask("a", new Ask.Acknowledge("probe"));
        assertThat(s.state().book().cone("a").acknowledged()).containsExactly("probe");
        s.senses.water("a", 27);
        s.minutes(2);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.state().book().cone("a").acknowledged()).isEmpty();
    }

    @Test
    void withoutAContactAirIsShownAsUnverifiedAndNotAlarmed() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.minutes(30);
        assertThat(s.told()).isEmpty();
        assertThat(s.state().live().cones().get("a").judged().air().proof().name()).isEqualTo("UNVERIFIED");
    }

    @Test
    void pouringInWarmWaterAtTheStartCallsNobody() {
        Story s = Story.at();
        s.senses.water("a", 19);
        s.does(Step.STARTED);
        s.seconds(30);
        s.senses.water("a", 27);
        s.minutes(5);
        assertThat(s.told()).isEmpty();
    }
}

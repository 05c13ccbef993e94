package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Result;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Danger: any other output that cannot be set. */
class StuckOutputTest {

    private static Story settling(Story s) {
        s.does(Step.STARTED).minutes(3);
        s.does(Step.FIRST_SEEN, Step.SETTLE);
        return s.seconds(5);
    }

    @Test
    void theAirIsNotStoppedThroughAnOutputThatMightNotBringItBack() {
        Story s = settling(Story.at());
        assertThat(s.on("a.air-pause")).isTrue();
        s.unset.add("a.air-pause");
        s.tick();
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.standing("a")).containsExactly("air-stuck");
        assertThat(s.told().getLast().what()).isEqualTo("a.air-pause cannot be set and may be on or off");
    }

    @Test
    void aLampIsToldAndChangesNothingElse() {
        Story s = settling(Story.at());
        s.unset.add("a.lamp");
        s.unset.add("a.trigger");
        s.tick();
        assertThat(s.told().getLast().what()).startsWith("a.lamp and a.trigger cannot be set");
        assertThat(s.stage()).isEqualTo("settling");
        assertThat(s.on("a.air-pause")).isTrue();
        assertThat(s.standing("b")).as("it is not b's lamp").isEmpty();
    }

    @Test
    void theHeartbeatsOwnOutputIsToldOnce() {
        Story s = Story.at(Fitting.HEARTBEAT);
        s.unset.add("site.heartbeat");
        s.minutes(1);
        assertThat(s.told()).singleElement()
                .satisfies(a -> assertThat(a.what()).startsWith("site.heartbeat cannot be set"));
        assertThat(s.standing("a")).containsExactly("output-stuck");
        assertThat(s.standing("b")).as("told with the first cone").isEmpty();
    }

    @Test
    void heaterAndCutOutAreAnotherGuardsAffair() {
        Story s = Story.at();
        s.unset.add("a.heat");
        s.unset.add("a.cut-out");
        s.minutes(1);
        assertThat(s.found("output-stuck")).as("each may be the first").isEmpty();
        assertThat(s.standing("a")).containsExactly("cut-out-stuck", "heater-stuck");
    }

    private static Story swimming() {
        return Story.at(Fitting.HEARTBEAT).does(Step.STARTED, Step.FIRST_SEEN).minutes(5);
    }

    /** What was seen was a lamp; what fails now is the air. */
    @ParameterizedTest
    @CsvSource({"a.lamp, false", "a.lamp, true", "site.heartbeat, false", "site.heartbeat, true"})
    void whoKnowsOfAnotherOutputHearsOfTheAir(String first, boolean restarts) {
        Story s = swimming();
        s.unset.add(first);
        s.minutes(1);
        assertThat(s.told("output-stuck")).isEqualTo(1);
        assertThat(s.ask("a", new Ask.Acknowledge("output-stuck")).accepted()).isTrue();
        s.minutes(30);
        if (restarts) {
            s.restart("boot-1", 3_000);
        }
        s.unset.add("a.air-pause");
        s.seconds(2);
        assertThat(s.told("air-stuck")).isEqualTo(1);
        assertThat(s.told().getLast().what()).isEqualTo("a.air-pause cannot be set and may be on or off");
        s.minutes(30);
        assertThat(s.told("output-stuck")).as("known, and still there").isEqualTo(1);
    }

    /** The lamp is told every four hours meanwhile. */
    @Test
    void theAirIsToldAtOnceAlsoWhereNobodyAnsweredOfTheLamp() {
        Story s = swimming();
        s.unset.add("a.lamp");
        s.pass(Duration.ofHours(2));
        s.unset.add("a.air-pause");
        s.seconds(2);
        assertThat(s.told("air-stuck")).isEqualTo(1);
        assertThat(s.told().getLast().what()).startsWith("a.air-pause");
    }

    @Test
    void nobodyIsLetWaitForALayerWhereTheAirCannotBeStopped() {
        Story s = swimming();
        s.unset.add("a.air-pause");
        s.minutes(1);
        Result.Reply r = s.did("a", Step.SETTLE);
        assertThat(r.accepted()).isFalse();
        assertThat(r.sentence()).contains("the output that stops its air cannot be set, so nothing would "
                + "settle; look at the board, its wires and the daemon's log, then report 'settle' again.");
        s.unset.clear();
        s.minutes(1);
        assertThat(s.did("a", Step.SETTLE).accepted()).isTrue();
    }

    @Test
    void withoutThisGuardNobodyWouldKnow() {
        Story s = settling(Story.without(StuckOutput.class));
        s.unset.add("a.air-pause");
        s.minutes(1);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.on("a.air-pause")).isTrue();
    }
}

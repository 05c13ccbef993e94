package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What nobody has seen stands through a restart, since what it tells stays true. */
class UnseenTest {

    /** The air came back by itself, while nobody was there to draw. */
    private static Story airBack() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        s.minutes(12);
        assertThat(s.standing("a")).containsExactly("air-back");
        assertThat(s.told("air-back")).isEqualTo(1);
        return s;
    }

    @Test
    void itStandsAfterARestartAndIsNotToldAgain() {
        Story s = airBack();
        s.restart("boot-1", 3_000).minutes(10);
        s.restart("boot-2", 60_000).minutes(10);
        assertThat(s.standing("a")).contains("air-back");
        assertThat(s.told("air-back")).isEqualTo(1);
        assertThat(s.ask("a", new Ask.Alarms()).sentence()).contains("its air was off for 10 min",
                "since 09:10; its cause is over, not acknowledged, latched until acknowledged.");
    }

    @Test
    void acknowledgedItEndsAndNoRestartBringsItBack() {
        Story s = airBack();
        s.restart("boot-1", 3_000).minutes(1);
        assertThat(s.ask("a", new Ask.Acknowledge("air-back")).accepted()).isTrue();
        s.seconds(3);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.state().book().cone("a").alarms().knows("air-back")).isFalse();
        s.restart("boot-1", 3_000).minutes(10);
        assertThat(s.standing("a")).isEmpty();
    }

    @Test
    void whatWasSeenBeforeTheRestartDoesNotStandAfterIt() {
        Story s = airBack();
        s.ask("a", new Ask.Acknowledge("air-back"));
        s.restart("boot-1", 3_000).minutes(10);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.told("air-back")).isEqualTo(1);
    }

    @Test
    void aNewFillingEndsItForTheRestartToo() {
        Story s = airBack();
        s.does(Step.CLEANED, Step.STARTED);
        s.seconds(3);
        assertThat(s.standing("a")).isEmpty();
        s.restart("boot-1", 3_000).minutes(2);
        assertThat(s.standing("a")).isEmpty();
    }

    /** @param restarts whether the daemon does before it is withdrawn */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aFillingByMistakeEndsNothingOnceItIsWithdrawn(boolean restarts) {
        Story s = airBack();
        s.does(Step.STARTED).minutes(1);
        assertThat(s.standing("a")).isEmpty();
        if (restarts) {
            s.restart("boot-1", 3_000);
        }
        assertThat(s.ask("a", new Ask.Withdraw("started")).accepted()).isTrue();
        s.minutes(20);
        assertThat(s.standing("a")).containsExactly("air-back");
        assertThat(s.ask("a", new Ask.Alarms()).sentence()).contains("its air was off for 10 min",
                "since 09:10; its cause is over, not acknowledged, latched until acknowledged.");
        assertThat(s.told("air-back")).as("as before").isEqualTo(1);
        s.restart("boot-1", 3_000).minutes(2);
        assertThat(s.standing("a")).containsExactly("air-back");
        assertThat(s.ask("a", new Ask.Acknowledge("air-back")).accepted()).isTrue();
        s.seconds(3);
        assertThat(s.standing("a")).isEmpty();
    }

    @Test
    void aSecondIncidentAfterTheRestartIsToldAnew() {
        Story s = airBack();
        s.restart("boot-1", 3_000).minutes(20);
        s.does(Step.SETTLE);
        s.minutes(12);
        assertThat(s.told("air-back")).isEqualTo(2);
        assertThat(s.standing("a")).containsExactly("air-back");
    }
}

package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** What whoever acknowledges is answered: what that leaves locked, and by what it is opened. */
class SeenTest {

    private static Story started(String... cones) {
        Story s = Story.at(Fitting.ROOM_PROBE);
        s.senses.room(22);
        for (String cone : cones) {
            s.senses.water(cone, 22);
            s.did(cone, Step.STARTED);
        }
        return s;
    }

    private static String acknowledged(Story s, String cone, String alarm) {
        Result.Reply r = s.ask(cone, new Ask.Acknowledge(alarm));
        assertThat(r.accepted()).isTrue();
        return r.sentence();
    }

    /** The socket strip of all heaters is dead, and one message says so of both cones. */
    @Test
    void whoAcknowledgesOneOfTwoLocksIsAnsweredHowTheOtherIsOpenedAndIsCalledOfIt() {
        Story s = started("a", "b");
        s.senses.dead("a").dead("b");
        s.minutes(80);
        assertThat(s.told().getLast().told().with()).containsExactly("b/no-effect");
        s.senses.works("a").works("b");
        long told = s.told("no-effect");
        assertThat(acknowledged(s, "a", "no-effect")).contains("'no-effect' is acknowledged; heat is allowed "
                + "again", " 'no-effect' of cone b locks its heat off by itself, until that is acknowledged "
                + "with its cause gone: conetender tell b acknowledge no-effect. Next: ");
        s.minutes(10);
        assertThat(s.told("no-effect")).as("nobody is called of what was said just now").isEqualTo(told);
        s.minutes(7);
        assertThat(s.told().getLast()).extracting(Alarm::key).isEqualTo("b/no-effect");
        assertThat(acknowledged(s, "b", "no-effect")).contains("heat is allowed again")
                .doesNotContain("by itself");
        s.seconds(3);
        assertThat(s.state().book().cone("b").latches()).isEmpty();
    }
}

package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** What whoever acknowledges is answered: what that leaves locked, and by what it is opened. */
class SeenTest {

    private static Story started(String... cones) {
        Story s = Story.at(Fitting.ROOM_PROBE, Fitting.LEVEL);
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

    private static Story killed(Story s) {
        for (int i = 0; i < 3; i++) {
            s.restart("boot-1", 3_000).seconds(10);
        }
        assertThat(s.standing("")).contains("crash-loop");
        return s;
    }

    private static void trips(Story s, String cone, String guard, String why) {
        s.paper.keep(List.of(new Fact(s.state().ledger().nextSeq(), s.now(), cone, "conetender",
                new Change.Tripped(guard, why))));
        s.restart("boot-1", 3_000).seconds(10);
    }

    /** Its wires are crossed with another's: that lock is the other cone's, and keeps this heater off too. */
    @Test
    void whoAcknowledgesWhatACrossingFollowedIsNotToldThatHeatComesBack() {
        Story s = started("a", "b");
        s.senses.dead("b");
        s.minutes(50);
        assertThat(s.standing("b")).containsExactly("no-effect");
        trips(s, "a", "wrong-cone", "the heater of cone b warms cone a: the water followed that heater and "
                + "not its own switch; the heat of both is off");
        assertThat(acknowledged(s, "b", "no-effect")).startsWith("Cone b: alarm 'no-effect' is acknowledged; "
                + "heat stays locked off until 'wrong-cone' of cone a is acknowledged with its cause gone "
                + "(the heater of cone b warms cone a: ").doesNotContain("allowed");
        s.minutes(2);
        assertThat(s.state().book().cone("b").latches()).isEmpty();
        assertThat(s.on("b.heat")).isFalse();
    }

    @Test
    void ofTwoLocksOfAConeTheOneThatIsLeftIsNamed() {
        Story s = started("a");
        s.senses.dead("a");
        s.minutes(50);
        trips(s, "a", "frozen", "it stood still");
        assertThat(acknowledged(s, "a", "no-effect")).startsWith("Cone a: alarm 'no-effect' is acknowledged; "
                + "heat stays locked off until 'probe-frozen' is acknowledged with its cause gone (it stood "
                + "still). Next: ");
    }

    /** What is asked for has to be something that stands. */
    @Test
    void whileTheSiteIsLockedItIsSaidByWhichAlarmItIsOpenedAndNothingIsDropped() {
        Story s = started("a");
        s.minutes(15);
        s.senses.contact("a.level", ContactSample.Level.OPEN);
        s.does(Step.SALTED);
        killed(s).minutes(3);
        assertThat(s.standing("a")).contains("dry");
        assertThat(acknowledged(s, "a", "dry")).startsWith("Cone a: alarm 'dry' is acknowledged; it is not "
                + "told again while its cause lasts. All heat stays locked off until you report again how "
                + "cone a stands, for 'salted' of cone a was set aside, and then acknowledge 'crash-loop'. "
                + "Next: ")
                .doesNotContain("once more");
        assertThat(acknowledged(s, "a", "crash-loop")).contains("'crash-loop' is acknowledged; heat stays "
                + "locked off until you report again how cone a stands, for 'salted' of cone a was set "
                + "aside; then acknowledge it once more. Next: ");
    }

    @Test
    void aLockOfAConeThatIsOpenedWhileTheSiteIsLockedIsNotSaidToBringHeat() {
        Story s = started("a");
        s.senses.dead("a");
        s.minutes(50);
        killed(s);
        assertThat(acknowledged(s, "a", "no-effect")).startsWith("Cone a: alarm 'no-effect' is acknowledged. "
                + "All heat stays locked off until 'crash-loop' is acknowledged. Next: ");
        assertThat(acknowledged(s, "", "crash-loop")).endsWith("'crash-loop' is acknowledged; heat is "
                + "allowed again.");
    }

    @Test
    void whoOpensTheSitesLockIsToldWhichConesHaveTheirOwn() {
        Story s = started("a", "b");
        s.senses.dead("a");
        s.minutes(50);
        killed(s);
        assertThat(acknowledged(s, "", "crash-loop")).endsWith("'crash-loop' is acknowledged; heat is "
                + "allowed again, save in cone a, which its own alarms lock.");
    }

    @Test
    void ofTwoLocksOfTheSiteTheOneThatIsLeftIsNamed() {
        Story s = started("a");
        s.minutes(15);
        s.damages.add("a page is torn");
        killed(s);
        s.damages.clear();
        assertThat(s.standing("")).contains("record-damaged");
        assertThat(acknowledged(s, "", "crash-loop")).endsWith("'crash-loop' is acknowledged. All heat "
                + "stays locked off until 'record-damaged' is acknowledged.");
        assertThat(acknowledged(s, "", "record-damaged")).endsWith("heat is allowed again.");
    }
}

package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** While the record fails an acknowledgement silences, is forgotten by a restart, and releases nothing. */
class QuietedTest {

    /** The heater of cone a warmed nothing and is locked off. */
    private static Story locked() {
        Story s = new Story(Larkmoor.with(Larkmoor.Fitting.ROOM_PROBE));
        s.senses.water("a", 22).room(22).dead("a");
        s.does(Step.STARTED);
        s.minutes(30);
        assertThat(s.state().book().cone("a").latch("no-effect")).isPresent();
        return s;
    }

    /** The same, and then the disk is full. */
    private static Story tripped() {
        Story s = locked();
        s.paper.mood(Paper.Mood.REFUSING);
        s.send("b", new Ask.Did(Step.STARTED));
        s.seconds(5);
        return s;
    }

    @Test
    void itIsNotToldAgainAndWhatTrippedStaysLocked() {
        Story s = tripped();
        long told = s.told("no-effect");
        assertThat(told).isPositive();
        Result.Reply r = s.ask("a", new Ask.Acknowledge("no-effect"));
        assertThat(r.accepted()).isFalse();
        assertThat(r.sentence()).isEqualTo("Cone a: alarm 'no-effect' is quiet, at most until the next "
                + "restart; "
                + "this is not recorded: the disk is full; free some space. What is locked off stays so; "
                + "acknowledge again when that is mended.");
        s.minutes(5);
        long withItsEnd = s.told("no-effect");
        assertThat(withItsEnd).as("once more, when its cause was gone").isLessThanOrEqualTo(told + 1);
        s.ask("a", new Ask.Acknowledge("no-effect"));
        s.minutes(75);
        assertThat(s.told("no-effect")).isEqualTo(withItsEnd);
        assertThat(s.standing("a")).contains("no-effect");
        assertThat(s.state().book().cone("a").latches()).hasSize(1);
        assertThat(s.on("a.cut-out")).isFalse();
    }

    @Test
    void withoutItTheAlarmWouldBeToldAgain() {
        Story s = tripped();
        long told = s.told("no-effect");
        s.minutes(75);
        assertThat(s.told("no-effect")).isGreaterThan(told);
    }

    @Test
    void acknowledgedAgainOnceTheRecordIsKeptItReleases() {
        Story s = tripped();
        s.ask("a", new Ask.Acknowledge("no-effect"));
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(2);
        assertThat(s.ask("a", new Ask.Acknowledge("no-effect")).accepted()).isTrue();
        s.tick();
        assertThat(s.state().book().cone("a").latches()).isEmpty();
        assertThat(s.on("a.cut-out")).isTrue();
    }

    @Test
    void onceTheRecordIsKeptAgainAPersonIsAskedAgain() {
        Story s = tripped();
        s.minutes(5);
        s.ask("a", new Ask.Acknowledge("no-effect"));
        s.minutes(10);
        long told = s.told("no-effect");
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(1);
        assertThat(s.told("no-effect")).isEqualTo(told + 1);
        assertThat(s.told().getLast().told().onceMore()).isTrue();
    }

    @Test
    void aRestartForgetsItAndTellsAgain() {
        Story s = tripped();
        s.ask("a", new Ask.Acknowledge("no-effect"));
        long told = s.told("no-effect");
        s.restart("boot-1", 3_000);
        s.minutes(2);
        assertThat(s.told("no-effect")).isGreaterThan(told);
    }

    @Test
    void theAlarmAboutTheRecordItselfCanBeSilenced() {
        Story s = tripped();
        s.minutes(2);
        assertThat(s.standing("")).containsExactly("record");
        long told = s.told("record");
        assertThat(s.ask("a", new Ask.Acknowledge("record")).sentence()).contains("is quiet");
        s.minutes(75);
        assertThat(s.told("record")).isEqualTo(told);
    }

    @Test
    void whatDoesNotStandOrIsStaleSilencesNothing() {
        Story s = tripped();
        assertThat(s.ask("a", new Ask.Acknowledge("dry")).sentence()).contains("no alarm 'dry' stands");
        long told = s.told("no-effect");
        s.send(new Request("old", new Request.Origin("mqtt", "", java.util.Optional.of(
                "this command was lying at the broker and may be old")), "a",
                new Ask.Acknowledge("no-effect")));
        s.minutes(75);
        assertThat(s.told("no-effect")).isGreaterThan(told);
    }

    @Test
    void aRecordThatHangsSilencesToo() {
        Story s = locked();
        s.paper.mood(Paper.Mood.WAITING);
        s.send("a", new Ask.Acknowledge("no-effect"));
        s.seconds(40);
        assertThat(s.ask("a", new Ask.Acknowledge("no-effect")).sentence()).contains("is quiet");
    }

    @Test
    void aReleaseWaitsForItsRecordAndACrashBeforeThatLosesIt() {
        Story s = locked();
        s.paper.mood(Paper.Mood.WAITING);
        long answers = s.replies().size();
        s.send("a", new Ask.Acknowledge("no-effect"));
        s.seconds(10);
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.replies()).hasSize((int) answers);
        s.restart("boot-1", 3_000);
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(2);
        assertThat(s.state().book().cone("a").latch("no-effect")).isPresent();
        assertThat(s.on("a.cut-out")).isFalse();
    }
}

package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.conetender.core.Paper;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: something is done that no record will remember. */
class LostRecordTest {

    private static Story failing(Story s) {
        s.does(Step.STARTED);
        s.paper.mood(Paper.Mood.REFUSING);
        s.did("b", Step.STARTED);
        return s;
    }

    @Test
    void whileTheRecordFailsNothingNewIsStarted() {
        Story s = failing(Story.at());
        var no = s.did("c", Step.STARTED);
        assertThat(no.accepted()).isFalse();
        assertThat(no.sentence()).contains("not recorded, so not done").contains("disk is full");
        assertThat(s.batch("b").stage().word()).isEqualTo("clean");
        assertThat(s.batch("c").stage().word()).isEqualTo("clean");
    }

    @Test
    void whatTakesAwayIsDoneAndAnsweredHonestly() {
        Story s = failing(Story.at());
        var done = s.did("a", Step.DRAINED);
        assertThat(done.sentence()).startsWith("Cone a: done, but not recorded");
        assertThat(s.stage()).isEqualTo("drained");
        assertThat(s.on("a.cut-out")).isFalse();
    }

    @Test
    void itIsToldAfterAMinuteOnceForTheSite() {
        Story s = failing(Story.at());
        s.seconds(70);
        assertThat(s.standing("")).containsExactly("record");
        assertThat(s.told("record")).isEqualTo(1);
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(3);
        assertThat(s.standing("")).isEmpty();
    }

    /** Charts have a gap, and nothing else happens. */
    @Test
    void temperaturesThatAreNotKeptAreToldAndWithholdNothing() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.noHistory = Optional.of("the disk is nearly full");
        s.minutes(9);
        assertThat(s.standing("")).isEmpty();
        s.minutes(2);
        assertThat(s.standing("")).containsExactly("history");
        assertThat(s.did("a", Step.TOPPED_UP).accepted()).isTrue();
        assertThat(s.did("c", Step.STARTED).accepted()).isTrue();
        s.noHistory = Optional.empty();
        s.minutes(3);
        assertThat(s.standing("")).isEmpty();
    }

    @Test
    void withoutThisGuardARequestWouldBeTriedAndFailOneByOne() {
        Story s = failing(Story.without(LostRecord.class));
        assertThat(s.did("c", Step.STARTED).sentence()).startsWith("Cone c: not recorded, so not done");
        s.minutes(10);
        assertThat(s.standing("")).isEmpty();
    }

    private static Optional<String> refuses(View v, Ask ask) {
        return new LostRecord().refuses(new Request("r", Request.Origin.fresh("test", ""), "a", ask), v);
    }

    @Test
    void onlyWhatGivesWaitsForTheRecord() {
        Shown shown = new Shown();
        Story s = failing(shown.story());
        s.seconds(2);
        assertThat(refuses(shown.view(), new Ask.Did(Step.SETTLE))).hasValueSatisfying(why ->
                assertThat(why).startsWith("not recorded, so not done: ").endsWith(". Then say it again."));
        assertThat(refuses(shown.view(), new Ask.Did(Step.DRAINED))).as("it takes away").isEmpty();
        assertThat(refuses(shown.view(), new Ask.Acknowledge("dry"))).as("it silences").isEmpty();
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(2);
        assertThat(refuses(shown.view(), new Ask.Did(Step.SETTLE))).isEmpty();
    }
}

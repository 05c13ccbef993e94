package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Below an alarm that asks for something it is not said that nothing is needed. */
class AlarmFirstTest {

    private static final String FIRST = "see to its alarm first; it says what to do.";

    private static Story grown(boolean hatched, Fitting... fittings) {
        Story s = Story.at(fittings);
        s.does(Step.STARTED).minutes(125);
        return hatched ? s.does(Step.FIRST_SEEN) : s;
    }

    private static String next(Story s, String cone) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now())
                .get("homie/5/larkmoor-" + cone + "/hand/next-step");
    }

    @ParameterizedTest
    @CsvSource({"false, nothing; it is growing.", "true, nothing needed; a 'count' is welcome."})
    void whileWaterIsLowThatComesFirstInWhatIsShownAndInEveryAnswer(boolean hatched, String otherwise) {
        Story s = grown(hatched, Fitting.LEVEL);
        assertThat(next(s, "a")).isEqualTo(otherwise);
        s.senses.contact("a.level", Level.OPEN);
        assertThat(s.seconds(70).standing("a")).containsExactly("dry");
        assertThat(next(s, "a")).isEqualTo(FIRST);
        assertThat(s.ask("a", new Ask.Acknowledge("dry")).sentence()).endsWith("Next: " + FIRST);
        assertThat(s.did("a", Step.VALVE_OPEN).sentence()).endsWith("Next: " + FIRST);
        s.did("b", Step.STARTED);
        assertThat(next(s, "b")).as("of another cone").doesNotContain("alarm");
        s.senses.contact("a.level", Level.CLOSED);
        s.seconds(20);
        assertThat(next(s, "a")).as("its cause is over").isEqualTo(otherwise);
    }

    @Test
    void whatIsPutAsideOrCanWaitIsNotAskedForAgain() {
        Story s = grown(false, Fitting.LEVEL);
        s.senses.contact("a.level", Level.OPEN);
        s.seconds(70);
        s.ask("a", new Ask.Shelve("dry", 2));
        assertThat(s.seconds(5).standing("a")).containsExactly("dry");
        assertThat(next(s, "a")).isEqualTo("nothing; it is growing.");
    }

    /** Its batch is looked at when it is fed: until then nobody is sent there by a doubt. */
    @Test
    void aDoubtIsNoErrandForNow() {
        Story s = Story.at(Fitting.AIR_PROOF);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.senses.contact("a.air-proof", Level.OPEN);
        s.minutes(16);
        assertThat(next(s, "a")).isEqualTo(FIRST);
        s.senses.contact("a.air-proof", Level.CLOSED);
        assertThat(s.minutes(5).standing("a")).containsExactly("doubtful");
        assertThat(next(s, "a")).isEqualTo("nothing needed; a 'count' is welcome.");
    }

    @Test
    void aSilentProbeComesFirstToo() {
        Story s = grown(true);
        s.senses.silent("a-water", s.now().monoMs());
        assertThat(s.minutes(3).standing("a")).containsExactly("probe");
        assertThat(next(s, "a")).isEqualTo(FIRST);
    }
}

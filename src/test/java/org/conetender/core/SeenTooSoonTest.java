package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nauplii are reported where none can have hatched: that is doubted at once, and nothing is learnt of it. */
class SeenTooSoonTest {

    private static final String HARDLY = "That hardly can be: after ";

    private static Story after(int minutes) {
        Story s = Story.at();
        s.senses.water("a", 27);
        return s.does(Step.STARTED).minutes(minutes);
    }

    /** At 27 °C: none, 1, 23 and 60 degree-hours. */
    @ParameterizedTest
    @ValueSource(ints = {0, 5, 92, 240})
    void firstNaupliiThatHardlyCanBeAreDoubtedAndTeachNothing(int minutes) {
        Story s = after(minutes);
        var before = s.state().live().cones().get("a").known().speed();
        assertThat(s.did("a", Step.FIRST_SEEN).sentence()).contains("'first-seen' is recorded.", HARDLY,
                "less than 1 % of what hatches should have hatched", "'withdraw'")
                .doesNotContain("from one batch", "ready about");
        s.minutes(2);
        assertThat(s.state().book().lots().all()).isEmpty();
        assertThat(s.state().live().cones().get("a").known().speed()).isEqualTo(before);
    }

    @Test
    void theyKeepNoTrueSightingFromCounting() {
        Story s = after(92).does(Step.FIRST_SEEN).minutes(60 * 9);
        assertThat(s.did("a", Step.FIRST_SEEN).sentence()).contains("from one batch")
                .doesNotContain("hardly can be", "does not count");
    }

    @Test
    void firstNaupliiOfAQuickLotAreBelieved() {
        assertThat(after(60 * 7).did("a", Step.FIRST_SEEN).sentence()).contains("from one batch")
                .doesNotContain("hardly can be");
    }

    /** Of 53 animals 77 %, of 154 96 %; and so few that they prove nothing. */
    @Test
    void aCountRightAfterTheStartIsDoubted() {
        for (Ask.DidCount many : new Ask.DidCount[] {new Ask.DidCount(41, 3, 9, 1),
            new Ask.DidCount(148, 2, 4, 1)}) {
            Story s = after(1);
            assertThat(s.ask("a", many).sentence()).contains(HARDLY + "scarcely a degree-hour", "'withdraw'");
            assertThat(s.state().book().lots().all()).isEmpty();
        }
        assertThat(after(1).ask("a", new Ask.DidCount(0, 0, 90, 1)).sentence()).doesNotContain("hardly can");
        assertThat(after(1).ask("a", new Ask.DidCount(1, 0, 1, 1)).sentence()).doesNotContain("hardly can");
    }

    /** Nobody knows how warm it was meanwhile: then nothing is held against what was seen. */
    @Test
    void whereTheWaterWasNotMeasuredNothingIsDoubted() {
        Story s = after(1);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(60 * 14);
        assertThat(s.did("a", Step.FIRST_SEEN).sentence()).doesNotContain("hardly can be");
        assertThat(s.ask("a", new Ask.DidCount(41, 3, 9, 1)).sentence()).doesNotContain("hardly can be");
    }
}

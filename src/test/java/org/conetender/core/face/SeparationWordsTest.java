package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.batch.Book;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** What is said of a batch that waits to be drawn: its minutes, its hours, and whether it is food at all. */
class SeparationWordsTest {

    private static final String DIGEST = "homie/5/larkmoor/feed/digest";
    private static final String NEXT = "homie/5/larkmoor-a/hand/next-step";

    private static Map<String, String> tree(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
    }

    private static String next(Story s, Moment now) {
        Cone a = s.settings().cones().getFirst();
        Book book = s.state().book();
        return NextStep.of(s.settings(), a, book.cone("a"), NextStep.When.of(a,
                s.state().live().cones().get("a"), book, now));
    }

    private static Story ripe(Fitting... fittings) {
        Story s = Story.at(fittings).does(Step.STARTED).pass(Duration.ofHours(28));
        assertThat(s.stage()).isEqualTo("ready");
        return s;
    }

    @Test
    void aSeparationSaysHowLongItTakesAndUntilWhen() {
        Story s = ripe();
        assertThat(tree(s).get(NEXT)).contains("drain comes on. After 6 min you draw; the air comes back by "
                + "itself after 10 min, 12 while you draw.");
        assertThat(s.did("a", Step.SETTLE).sentence()).contains(" Next: wait until 13:06; the nauplii gather "
                + "at the drain. The air comes back by itself at 13:10.");
        s.seconds(370);
        assertThat(tree(s).get(NEXT)).isEqualTo("see that nothing else is open, then draw: report 'drawing'. "
                + "The air comes back by itself at 13:10.");
        s.does(Step.DRAWING);
        assertThat(tree(s).get(NEXT)).endsWith("to leave the rest. The air comes back by itself at 13:12.");
        s.restart("boot-1", 2_000).seconds(3);
        assertThat(tree(s).get(NEXT)).as("it is on").doesNotContain("comes back by itself at");
    }

    @Test
    void nobodyIsToldToWaitBeyondTheEndOfTheFood() {
        Story s = ripe();
        String until = tree(s).get("homie/5/larkmoor-a/hatch/food-until").substring(11, 16);
        assertThat(tree(s).get(NEXT)).endsWith(" Do not wait for the feed at 18:00: most of its food is "
                + "there until " + until + " only.");
        assertThat(tree(s)).containsEntry(DIGEST, "For the feed at 18:00: cone a is ready, but past its best "
                + "by then.");
        s.pass(Duration.ofHours(4)).minutes(40);
        assertThat(tree(s).get(NEXT)).as("17:40, and it is over").endsWith(" Most of its food was there "
                + "until " + until + "; what is left gets less by the hour.");
    }

    /** After a cut the hour may be hours off, but minutes go by a clock that no cut has stopped. */
    @Test
    void minutesAreNamedWhileNoClockIsTrusted() {
        Story s = ripe().does(Step.SETTLE);
        Moment now = s.now();
        Moment unset = new Moment(now.boot(), now.monoMs(), now.wallMs(), false);
        assertThat(next(s, now)).contains("wait until 13:06");
        assertThat(next(s, unset)).isEqualTo("wait 6 min; the nauplii gather at the drain. The air comes "
                + "back by itself in 9 min.");
    }

    @Test
    void whatIsInDoubtIsNotCalledReadyWithoutIt() {
        Story s = ripe(Fitting.AIR_PROOF);
        s.senses.contact("a.air-proof", Level.OPEN);
        s.minutes(16);
        assertThat(tree(s)).containsKey("homie/5/larkmoor-a/hatch/doubt")
                .containsEntry(DIGEST, "For the feed at 18:00: cone a is ready, but past its best by then; "
                        + "look before feeding.");
    }

    /** Somebody was there until now, and nobody has been waited for yet. */
    @Test
    void whoLeavesLateFindsNoBatchSpoiledByIt() {
        Story s = ripe();
        s.pass(Duration.ofHours(13));
        s.ask("", new Ask.Away("neighbour"));
        s.minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
    }

    /** Not "do not feed" and "ready for the feed" on one screen. */
    @Test
    void whatNobodyCameForIsNeitherReadyNorToBeHarvested() {
        Story s = ripe();
        s.ask("", new Ask.Away("neighbour"));
        s.pass(Duration.ofHours(13)).minutes(1);
        assertThat(tree(s)).containsEntry("homie/5/larkmoor-a/hatch/doubt", "Do not feed it: nobody came "
                + "within 12 h of the harvest point.")
                .containsEntry(DIGEST, "For the feed at 07:30: cone a is not to be fed.")
                .containsEntry(NEXT, "do not feed it, nobody came for it in time; report 'abandoned', then "
                        + "drain and clean the cone.");
        assertThat(s.did("a", Step.ABANDONED).accepted()).isTrue();
    }
}

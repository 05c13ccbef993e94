package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** A person who touches a cone twice a day is understood; a mistake is taken back. */
class FewTouchesTest {

    @Test
    void startedAndCleanedAreEnoughAndWhatWasNotReportedIsMarkedAssumed() {
        Story s = Story.at();
        for (int day = 1; day <= 3; day++) {
            assertThat(s.did("a", Step.STARTED).accepted()).isTrue();
            assertThat(s.batch("a").number()).isEqualTo(day);
            s.pass(Duration.ofHours(27));
            assertThat(s.stage()).isEqualTo("ready");
            assertThat(s.did("a", Step.CLEANED).accepted()).isTrue();
            assertThat(s.batch("a").marks().words().assumed())
                    .containsExactly("settle", "drawing", "drained");
        }
        assertThat(s.told()).as("nobody is chased").isEmpty();
    }

    @Test
    void startedAgainOverARipeBatchImpliesThatItWasCleaned() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.STARTED);
        assertThat(s.stage()).isEqualTo("hydrating");
        assertThat(s.batch("a").number()).isEqualTo(2);
    }

    @Test
    void startedTwiceByMistakeIsRefusedWithWhatToDo() {
        Story s = Story.at();
        s.does(Step.STARTED);
        var no = s.did("a", Step.STARTED);
        assertThat(no.accepted()).isFalse();
        assertThat(no.sentence()).contains("batch 1 is hydrating").contains("'drained'")
                .contains("'withdraw'");
        assertThat(s.batch("a").number()).isEqualTo(1);
    }

    @Test
    void stockedInACleanConeImpliesThatItWasFilledAsUsual() {
        Story s = Story.at();
        s.does(Step.STOCKED);
        assertThat(s.batch("a").fill().orElseThrow().litres()).isEqualTo(2);
        assertThat(s.stage()).isEqualTo("hydrating");
    }

    @Test
    void filledInADrainedConeImpliesThatItWasCleaned() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.DRAINED, Step.FILLED);
        assertThat(s.batch("a").marks().words().assumed()).containsExactly("cleaned");
    }

    @Test
    void drainedInTheMiddleIsTakenAsReported() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.DRAINED);
        assertThat(s.batch("a").marks().words().assumed()).containsExactly("settle", "drawing");
    }

    @Test
    void withdrawTakesBackTheLastReportAndWhatFollowedFromIt() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(1);
        s.does(Step.FIRST_SEEN, Step.SETTLE);
        s.minutes(7);
        assertThat(s.stage()).isEqualTo("settled");
        assertThat(s.ask("a", new Ask.Withdraw("settle")).sentence()).contains("the batch is hatching. ");
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        assertThat(s.stage()).isEqualTo("hydrating");
    }

    @Test
    void withdrawingStartedStandsWhereTheConeStoodBefore() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.STARTED);
        assertThat(s.ask("a", new Ask.Withdraw("started")).accepted()).isTrue();
        assertThat(s.stage()).isEqualTo("hatching");
        assertThat(s.batch("a").number()).isEqualTo(1);
        assertThat(s.on("a.air-pause")).as("the old batch lives").isFalse();
        s.restart("boot-1", 1_000).tick();
        assertThat(s.stage()).isEqualTo("hatching");
    }

    @Test
    void anotherWordThanTheLastOneIsRefusedAndSoIsAnOldOne() {
        Story s = Story.at();
        assertThat(s.ask("a", new Ask.Withdraw("last")).sentence()).contains("no report to withdraw");
        s.does(Step.FILLED, Step.STOCKED);
        assertThat(s.ask("a", new Ask.Withdraw("filled")).sentence()).contains("was 'stocked', not 'filled'");
        s.minutes(31);
        assertThat(s.ask("a", new Ask.Withdraw("stocked")).sentence()).contains("over half an hour old");
        assertThat(s.stage()).isEqualTo("hydrating");
    }

    @Test
    void whatWasDevelopedUnderAMistakeIsReckonedAnew() {
        Story s = Story.at();
        s.does(Step.FILLED, Step.STOCKED);
        s.minutes(20);
        assertThat(s.state().live().cones().get("a").growth().done().degreeHours()).isPositive();
        s.ask("a", new Ask.Withdraw("stocked"));
        s.minutes(20);
        s.does(Step.STOCKED);
        s.tick();
        assertThat(s.state().live().cones().get("a").growth().done().degreeHours()).isLessThan(0.1);
    }

    @Test
    void anUnknownConeAndASiteWideStepAreAnsweredWithTheNames() {
        Story s = Story.at();
        assertThat(s.did("z", Step.STARTED).sentence()).isEqualTo(
                "There is no cone 'z' here; the cones are a, b, c.");
        assertThat(s.did("", Step.STARTED).sentence()).isEqualTo("Name the cone this is about.");
        assertThat(s.paper.facts()).as("only that the life began, and how it is described").hasSize(5)
                .allMatch(f -> f.source().isEmpty());
    }

    @Test
    void moreThanThirtyTwoWaitingRequestsAreRefused() {
        Story s = Story.at();
        s.paper.mood(Paper.Mood.WAITING);
        for (int i = 0; i < 40; i++) {
            s.send(new Request("q" + i, new Request.Origin("mqtt", "", Optional.empty()), "a",
                    new Ask.SetUsual(Optional.of("L-" + i), Optional.empty(), Optional.empty(),
                            Optional.empty())));
        }
        s.tick();
        assertThat(s.replies()).hasSize(7).allSatisfy(r -> {
            assertThat(r.accepted()).isFalse();
            assertThat(r.sentence()).contains("Too many requests at once");
        });
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(2);
        assertThat(s.replies().stream().filter(Result.Reply::accepted)).hasSize(33);
        assertThat(s.state().book().cone("a").usual().lot()).as("in the order sent").isEqualTo("L-32");
    }
}

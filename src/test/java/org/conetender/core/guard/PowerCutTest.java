package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: a power cut that stopped the air for too long once nauplii swim. */
class PowerCutTest {

    private static Story hatching(Story s) {
        s.does(Step.STARTED, Step.FIRST_SEEN);
        return s.minutes(5);
    }

    private static Story dense() {
        Story s = Story.at();
        s.ask("a", new Ask.DidFill(2, 25));
        s.does(Step.SALTED);
        s.ask("a", new Ask.DidStock("L-0417", 7));
        s.does(Step.FIRST_SEEN);
        return s.minutes(5);
    }

    private static final long MINUTE = 60_000;
    private static final long HALF_HOUR = 30 * MINUTE;

    private static List<String> doubts(Story s) {
        return s.batch("a").marks().words().doubts();
    }

    @Test
    void nauplliWithoutAirForHalfAnHourAreDoubtful() {
        Story s = hatching(Story.at()).restart("boot-2", HALF_HOUR).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString()
                .contains("30 min with nauplii in the water");
        assertThat(s.found("power-cut")).as("once").hasSize(1);
        assertThat(s.standing("a")).containsExactly("doubtful");
        assertThat(s.standing("b")).isEmpty();
    }

    @Test
    void aCutShorterThanTheCapIsNot() {
        Story s = hatching(Story.at()).restart("boot-2", 8 * 60_000).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        assertThat(s.told()).isEmpty();
    }

    /** At 27 °C 3.5 g/L bear some 4 min; whoever draws takes the probe out, and unseen water may be warm. */
    @Test
    void aCutThatWasBorneIsNotHeldAgainstALaterAndShorterCap() {
        Story s = dense().restart("boot-2", 3 * 60_000).minutes(90);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        s.senses.water("a", 34);
        s.minutes(5);
        assertThat(s.batch("a").marks().words().doubts()).noneMatch(d -> d.contains("power"));
        assertThat(s.found("power-cut")).isEmpty();
    }

    /** Before the first reading it counts as the warmest there is, in which 3.5 g/L bear half as long. */
    @Test
    void nothingIsMarkedForWaterThatNobodyHasReadYet() {
        Story s = dense();
        s.senses.probe("a-water", new Reading.Absent());
        s.restart("boot-2", 3 * 60_000);
        // A daemon that dies early begins again later in the same boot.
        s.restart("boot-2", 100_000);
        for (int i = 0; i < 10; i++) {
            s.tick();
        }
        assertThat(s.found("power-cut")).as("it is told").isNotEmpty();
        s.senses.water("a", 27);
        s.minutes(5);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
    }

    @Test
    void cystsBeforeHatchingAreNot() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(5).restart("boot-2", HALF_HOUR).minutes(5);
        s.does(Step.FIRST_SEEN);
        s.minutes(5);
        assertThat(s.told("doubtful")).isZero();
    }

    private static final long TEN_YEARS = 10L * 365 * 24 * 3_600_000;

    /** The clock of the new boot stands where it likes, and is not trusted. */
    private static Story unset(long downMs) {
        return hatching(Story.at()).wall(0, false).restart("boot-2", downMs).wall(-TEN_YEARS, false);
    }

    @Test
    void withAnUnsetClockAPersonIsCalledAtOnceButNothingIsMarkedForAnHour() {
        Story s = unset(HALF_HOUR).minutes(50);
        assertThat(s.found("power-cut")).singleElement().asString()
                .contains("off for an unknown time");
        assertThat(s.standing("a")).contains("doubtful");
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        s.minutes(12);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("unknown time");
    }

    @Test
    void aShortCutIsForgottenWhenTheClockTurnsUp() {
        Story s = unset(3 * 60_000).minutes(20).wall(TEN_YEARS, true).minutes(3);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        assertThat(s.standing("a")).doesNotContain("doubtful");
    }

    @Test
    void aLongOneIsMarkedWithItsTrueLength() {
        Story s = unset(HALF_HOUR).minutes(20).wall(TEN_YEARS, true).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("30 min");
    }

    @Test
    void aMarkMadeWithoutAClockIsReplacedByTheTruth() {
        Story s = unset(3 * 60_000).minutes(70);
        assertThat(s.batch("a").marks().words().doubts()).isNotEmpty();
        s.wall(TEN_YEARS, true).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        Story t = unset(HALF_HOUR).minutes(70).wall(TEN_YEARS, true).minutes(1);
        assertThat(t.batch("a").marks().words().doubts()).singleElement().asString().contains("30 min");
    }

    /** The clock came while the daemon was down, and its probes have not answered yet. */
    @Test
    void aMarkMadeWithoutAClockStandsUntilTheTrueOneCanTakeItsPlace() {
        Story s = unset(HALF_HOUR).minutes(70);
        assertThat(doubts(s)).singleElement().asString().contains("unknown time");
        s.senses.probe("a-water", new Reading.Absent());
        s.wall(TEN_YEARS, true).restart("boot-2", 3_000).seconds(5);
        s.senses.water("a", 27);
        s.minutes(2);
        assertThat(doubts(s)).singleElement().asString().contains("30 min");
        assertThat(s.standing("a")).contains("doubtful");
    }

    /** Reported for the wrong cone: that batch was there all along. */
    private static Story takenForAnother(Story s) {
        s.does(Step.STARTED).minutes(2);
        assertThat(s.ask("a", new Ask.Withdraw("started")).accepted()).isTrue();
        return s.minutes(1);
    }

    @Test
    void aBatchOverWhichAnotherWasBegunByMistakeHasItsAnimalsStill() {
        Story s = takenForAnother(hatching(Story.at())).restart("boot-2", HALF_HOUR).minutes(2);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString()
                .contains("30 min with nauplii in the water");
    }

    @Test
    void aMarkWithoutALengthOutlivesABatchThatWasBegunByMistake() {
        Story s = takenForAnother(unset(HALF_HOUR).minutes(70));
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("unknown time");
    }

    @Test
    void naupliiThatWereSeenByMistakeTakeTheMarkOfACutWithThem() {
        Story s = hatching(Story.at()).restart("boot-2", 15 * MINUTE).minutes(1);
        assertThat(doubts(s)).hasSize(1);
        assertThat(s.ask("a", new Ask.Withdraw("first-seen")).accepted()).isTrue();
        s.minutes(2);
        assertThat(s.stage()).isEqualTo("hydrating");
        assertThat(doubts(s)).isEmpty();
    }

    /** Trusted, an hour wrong for two minutes, and right again. */
    @Test
    void aClockThatSteppedLeavesNoMarkOnceItIsRight() {
        Story s = hatching(Story.at()).restart("boot-2", 3 * MINUTE).minutes(5);
        assertThat(doubts(s)).isEmpty();
        s.wall(60 * MINUTE, true).minutes(2);
        assertThat(doubts(s)).singleElement().asString().contains("about 63 min");
        s.wall(-60 * MINUTE, true).minutes(5);
        assertThat(doubts(s)).isEmpty();
    }

    /** Another life of the daemon does not know any more that they hatched just after its beginning. */
    @Test
    void aMarkOfACutInWhichTheyMayHaveHatchedOutlivesTheDaemon() {
        Story s = Story.at().does(Step.STARTED).minutes(5).restart("boot-2", HALF_HOUR).seconds(10);
        s.does(Step.FIRST_SEEN).minutes(1);
        assertThat(doubts(s)).hasSize(1);
        s.restart("boot-2", 3_000).minutes(2);
        assertThat(doubts(s)).hasSize(1);
        assertThat(s.standing("a")).contains("doubtful");
    }

    /** Whoever fills a cone out of a separation leaves its air off in the book of the batch before. */
    @Test
    void aCutAfterABatchThatWasBegunOutOfASeparationIsJudged() {
        Story s = separated(9).does(Step.STARTED).minutes(2).does(Step.FIRST_SEEN).minutes(2);
        s.restart("boot-2", HALF_HOUR).minutes(2);
        assertThat(doubts(s)).singleElement().asString().contains("the power was off for about");
    }

    /** Each may have lasted half a minute, and none did. */
    @Test
    void manyRebootsInARowAreNoCut() {
        Story s = hatching(Story.at());
        for (int i = 2; i < 30; i++) {
            s.restart("boot-" + i, 5_000).seconds(70);
        }
        assertThat(doubts(s)).isEmpty();
    }

    /** Air was off for the separation, and then by the cut: 19 minutes in one go. */
    @Test
    void aCutThatFollowsUponASeparationIsCountedWithIt() {
        Story s = separated(11).restart("boot-2", 8 * MINUTE).minutes(2);
        assertThat(doubts(s)).singleElement().asString().matches("the power was off for about [89] min, soon "
                + "after another time without air, with nauplii in the water");
        assertThat(s.ask("a", new Ask.Withdraw("drawing")).accepted()).isTrue();
        assertThat(s.ask("a", new Ask.Withdraw("settle")).accepted()).isTrue();
        s.minutes(2);
        assertThat(doubts(s)).as("what is said of it does not undo it").hasSize(1);
        assertThat(s.standing("a")).contains("doubtful");
    }

    private static Story separated(int minutes) {
        Story s = hatching(Story.at()).does(Step.SETTLE).minutes(7);
        s.does(Step.DRAWING).minutes(minutes - 7);
        assertThat(s.on("a.air-pause")).isTrue();
        return s;
    }

    /** Together no longer than what they bear while the daemon runs. */
    @Test
    void aMomentWithoutPowerInASeparationIsBorne() {
        Story s = separated(11).restart("boot-2", 60_000).minutes(2);
        assertThat(doubts(s)).isEmpty();
        assertThat(s.told("doubtful")).isZero();
    }

    @Test
    void whatASeparationTookIsMadeGoodByAirBeforeTheCut() {
        Story s = separated(11);
        s.does(Step.HANDS_IN).minutes(40).restart("boot-2", 8 * MINUTE).minutes(2);
        assertThat(doubts(s)).isEmpty();
        Story soon = separated(11);
        soon.does(Step.HANDS_IN).minutes(1).restart("boot-2", 8 * MINUTE).minutes(2);
        assertThat(doubts(soon)).hasSize(1);
    }

    /** Sixteen minutes without air and one with it. */
    @Test
    void cutsWithAMinuteOfAirBetweenThemAreCountedTogether() {
        Story s = hatching(Story.at()).restart("boot-2", 8 * MINUTE).minutes(1);
        assertThat(doubts(s)).isEmpty();
        s.restart("boot-3", 8 * MINUTE).minutes(2);
        assertThat(doubts(s)).singleElement().asString().contains("soon after another time without air");
        Story apart = hatching(Story.at()).restart("boot-2", 8 * MINUTE).minutes(30);
        apart.restart("boot-3", 8 * MINUTE).minutes(2);
        assertThat(doubts(apart)).isEmpty();
    }

    /** Whoever cannot know how long the first was waits for a clock with the second too. */
    @Test
    void aCutUponOneOfUnknownLengthWaitsForTheClockWithIt() {
        Story s = unset(2 * MINUTE).minutes(1).restart("boot-3", 3 * MINUTE).minutes(5);
        assertThat(s.standing("a")).contains("doubtful");
        assertThat(doubts(s)).isEmpty();
        s.wall(TEN_YEARS, true).minutes(2);
        assertThat(doubts(s)).isEmpty();
        assertThat(s.standing("a")).doesNotContain("doubtful");
    }

    /** A restart of the daemon while it waits must not make it forget the cut. */
    @Test
    void waitingForTheClockOutlivesTheDaemon() {
        Story s = unset(HALF_HOUR).minutes(10).restart("boot-2", 5_000).minutes(1);
        assertThat(s.standing("a")).contains("doubtful");
        s.wall(TEN_YEARS, true).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("30 min");
    }

    @Test
    void twoCutsBeforeOneClockAreBothResolved() {
        Story s = unset(2 * 60_000).minutes(5).restart("boot-3", 2 * 60_000).minutes(5);
        assertThat(s.standing("a")).contains("doubtful");
        s.wall(TEN_YEARS, true).minutes(3);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        assertThat(s.standing("a")).doesNotContain("doubtful");
        Story t = unset(2 * 60_000).minutes(5).restart("boot-3", HALF_HOUR).minutes(5);
        t.wall(TEN_YEARS, true).minutes(1);
        assertThat(t.batch("a").marks().words().doubts()).isNotEmpty().allMatch(d -> d.contains("between"));
    }

    /** Of the second cut nobody has said a word. */
    @Test
    void anotherCutIsToldUntilItIsSeenThoughTheDaemonRestarts() {
        Story s = hatching(Story.at()).restart("boot-2", HALF_HOUR).minutes(1);
        assertThat(s.ask("a", new Ask.Acknowledge("doubtful")).accepted()).isTrue();
        s.minutes(1).restart("boot-2", 3_000).minutes(20);
        assertThat(s.told("doubtful")).as("it was seen").isEqualTo(1);
        s.restart("boot-3", HALF_HOUR).minutes(1);
        assertThat(s.told("doubtful")).isEqualTo(2);
        s.restart("boot-3", 3_000).minutes(20);
        assertThat(s.told("doubtful")).isGreaterThan(2);
    }

    @Test
    void aRestartOfTheDaemonAloneStopsNoPump() {
        Story s = hatching(Story.at()).restart("boot-1", HALF_HOUR).minutes(1);
        assertThat(s.told()).isEmpty();
    }

    @Test
    void theNextBatchHasNothingToDoWithIt() {
        Story s = hatching(Story.at()).restart("boot-2", HALF_HOUR).minutes(1);
        s.does(Step.DRAINED, Step.CLEANED);
        s.minutes(5);
        long before = s.told("doubtful");
        s.does(Step.STARTED);
        s.minutes(5);
        s.does(Step.FIRST_SEEN);
        s.minutes(5);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        assertThat(s.told("doubtful")).isEqualTo(before);
    }

    @Test
    void withoutThisGuardTheyWouldBeFedUnseen() {
        Story s = hatching(Story.without(PowerCut.class)).restart("boot-2", HALF_HOUR).minutes(1);
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
    }
}

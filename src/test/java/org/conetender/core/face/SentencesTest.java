package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import org.conetender.core.Larkmoor;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Settings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a person reads: the figures that were recorded, on any machine, and what comes next. */
class SentencesTest {

    private final Locale before = Locale.getDefault();

    @AfterEach
    void backToThisMachinesLanguage() {
        Locale.setDefault(before);
    }

    private static String said(Story s, Ask ask) {
        var r = s.ask("a", ask);
        assertThat(r.accepted()).as(r.sentence()).isTrue();
        return r.sentence();
    }

    @Test
    void anAnswerRepeatsWhatWasRecordedSoThatASlipIsSeenAtOnce() {
        Story s = Story.at();
        assertThat(said(s, new Ask.DidFill(1.75, 30))).startsWith(
                "Cone a: filled with 1.75 L at 30 ppt, recorded. Next: when the salt is dissolved add the ");
        assertThat(said(s, new Ask.DidStock("L-0500", 0.5)))
                .startsWith("Cone a: 0.5 g of lot L-0500, recorded.");
        assertThat(said(s, new Ask.DidCount(41, 3, 9, 1)))
                .contains("count of 41 nauplii, 3 umbrella, 9 unhatched, recorded; 77 % of this sub-sample "
                        + "have hatched, if empty shells were left out.");
        assertThat(said(s, new Ask.SetSetpoint(26.5))).contains("this batch is held at 26.5 °C.");
        assertThat(said(s, new Ask.SetUsual(Optional.of("L-0501"), Optional.empty(), Optional.empty(),
                Optional.empty()))).contains("its usual values are now 2 L at 25 ppt with 2 g of lot L-05");
        assertThat(said(s, new Ask.Did(Step.FIRST_SEEN)))
                .startsWith("Cone a: 'first-seen' is recorded. Next: nothing needed; a 'count' is welcome.");
        assertThat(said(s, new Ask.Withdraw("last")))
                .contains("'first-seen' of 09:00 is withdrawn; the batch is hydrating.");
    }

    /** Whoever says a word without figures is told which tin it was taken for, and how much of it. */
    @Test
    void aBareWordIsAnsweredWithTheUsualValuesThatItStoodFor() {
        assertThat(said(Story.at(), new Ask.Did(Step.STARTED))).startsWith("Cone a: 'started' is recorded. "
                + "Taken as usual: 2 g of lot L-0417 in 2 L at 25 ppt. Next: ");
        assertThat(said(Story.at(), new Ask.Did(Step.STOCKED))).as("the cone was dry").startsWith("Cone a: "
                + "'stocked' is recorded. Taken as usual: 2 g of lot L-0417 in 2 L at 25 ppt. Next: ");
        Story s = Story.at();
        assertThat(said(s, new Ask.Did(Step.FILLED)))
                .startsWith("Cone a: 'filled' is recorded. Taken as usual: 2 L at 25 ppt. Next: ");
        said(s, new Ask.DidFill(1.75, 30));
        s.seconds(2);
        assertThat(said(s, new Ask.Did(Step.STOCKED)))
                .startsWith("Cone a: 'stocked' is recorded. Taken as usual: 2 g of lot L-0417. Next: ");
    }

    /** Whoever says how much, or of which tin, is told what was taken for the rest. */
    @Test
    void aFigureThatIsLeftOutIsTakenAsUsualAndTold() {
        Ask grams = new Ask.DidStockAsUsual(Optional.empty(), Optional.of(3.0));
        Ask tin = new Ask.DidStockAsUsual(Optional.of("L-0500"), Optional.empty());
        Story s = Story.at();
        assertThat(said(s, grams)).as("the cone was dry").startsWith("Cone a: 3 g of lot L-0417, recorded. "
                + "Taken as usual: lot L-0417, 2 L at 25 ppt. Next: ");
        assertThat(s.batch("a").stock().orElseThrow().cystsG()).isEqualTo(3);
        assertThat(said(s, new Ask.Withdraw("stocked"))).contains("'stocked' of 09:00 is withdrawn");
        said(s, new Ask.DidFill(1.75, 30));
        s.seconds(2);
        assertThat(said(s, tin))
                .startsWith("Cone a: 2 g of lot L-0500, recorded. Taken as usual: 2 g. Next: ");
        Story full = Story.at();
        assertThat(said(full, new Ask.DidStock("L-0500", 1))).startsWith("Cone a: 1 g of lot L-0500, "
                + "recorded. Taken as usual: 2 L at 25 ppt. Next: ");
        Story no = Story.at();
        assertThat(no.ask("a", new Ask.DidStockAsUsual(Optional.empty(), Optional.of(300.0))).sentence())
                .contains("cysts-g = 300.0 cannot be right");
        assertThat(no.ask("a", new Ask.DidStockAsUsual(Optional.of(" "), Optional.empty())).sentence())
                .contains("a lot needs a label");
        said(no, new Ask.SetUsual(Optional.of("unknown"), Optional.empty(), Optional.empty(),
                Optional.empty()));
        assertThat(said(no, grams)).as("no label, no name").contains("3 g of cysts, recorded. Taken as "
                + "usual: 2 L at 25 ppt.");
    }

    /** By the time it is answered its batch may be over. */
    @Test
    void aBareWordWhoseBatchIsOverIsAnsweredWithNone() {
        Story s = Story.at();
        Request r = s.send("a", new Ask.Did(Step.STARTED));
        assertThat(Answers.recorded(s.settings(), s.last().next().book(), new Answers.Asked(r, ""),
                new NextStep.When(s.now(), 0))).startsWith("Cone a: 'started' is recorded. Next: ");
    }

    /** A comma in 26,5 or other digits would be read as another figure, or not at all. */
    @ParameterizedTest
    @CsvSource({"de-DE", "ar-EG", "fa-IR", "hi-IN", "tr-TR"})
    void figuresAreTheSameInEveryLanguage(String language) {
        Locale.setDefault(Locale.forLanguageTag(language));
        Story s = Story.at();
        assertThat(said(s, new Ask.DidFill(1.75, 30))).contains("1.75 L at 30 ppt");
        assertThat(said(s, new Ask.DidStock("L-0417", 0.5))).contains("0.5 g");
        assertThat(said(s, new Ask.DidCount(1_200, 3, 9, 1))).contains("count of 1200 nauplii");
        assertThat(s.ask("a", new Ask.SetSetpoint(31)).sentence()).contains("31 °C", "15 to 30 °C");
        s.minutes(2);
        assertThat(Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now()))
                .containsEntry("homie/5/larkmoor-a/water/temperature", "27.0")
                .containsEntry("homie/5/larkmoor-a/hatch/stage", "hydrating")
                .containsEntry("homie/5/larkmoor/feed/digest",
                        "For the feed at 12:30 no cone is sure to be ready.");
        assertThat(Sentences.clock(tuesday(), ZoneId.of("UTC"), tuesday() - 86_400_000L))
                .isEqualTo("Tue 08:05");
    }

    private static long tuesday() {
        return Instant.parse("2026-03-03T08:05:00Z").toEpochMilli();
    }

    @Test
    void anHourOfAnotherDayIsToldWithItsDay() {
        ZoneId utc = ZoneId.of("UTC");
        assertThat(Sentences.clock(tuesday(), utc, tuesday() + 3_600_000)).isEqualTo("08:05");
        assertThat(Sentences.clock(tuesday(), utc, tuesday() + 24 * 3_600_000)).isEqualTo("Tue 08:05");
        assertThat(Sentences.clock(tuesday(), ZoneId.of("Australia/Sydney"), tuesday() + 6 * 3_600_000))
                .as("the same day in UTC, but not at the cone").isEqualTo("Tue 19:05");
    }

    /** What is asked for next must be what is then accepted: the person follows the sentence. */
    @Test
    void followingTheSentencesLeadsThroughAWholeBatch() {
        for (Fitting pump : new Fitting[] {Fitting.SIPHONING, Fitting.LEVEL}) {
            Settings settings = Larkmoor.with(pump);
            Story s = new Story(settings);
            asksFor(s, "started");
            s.does(Step.STARTED, Step.FIRST_SEEN);
            if (pump == Fitting.SIPHONING) {
                s.does(Step.VALVE_SHUT);
            }
            s.does(Step.SETTLE, Step.HANDS_IN, Step.VALVE_OPEN);
            s.minutes(16);
            if (pump == Fitting.SIPHONING) {
                asksFor(s, "valve-shut");
            }
            asksFor(s, "settle");
            s.minutes(7);
            asksFor(s, "drawing");
            asksFor(s, "drained");
            asksFor(s, "cleaned");
            assertThat(s.stage()).isEqualTo("clean");
        }
    }

    /** Who was told to shut the valve and then to settle is not told to open it in between. */
    @Test
    void aValveShutForAHarvestOfAHatchingConeIsAnsweredByTheHarvest() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED);
        assertThat(s.did("a", Step.VALVE_SHUT).sentence()).as("of cysts nothing can settle")
                .contains("Next: open the air valve and report 'valve-open'; ");
        s.does(Step.VALVE_OPEN, Step.FIRST_SEEN);
        assertThat(s.did("a", Step.SETTLE).sentence()).endsWith("report 'valve-shut', then 'settle'.");
        assertThat(s.did("a", Step.VALVE_SHUT).sentence()).endsWith("Next: report 'settle' to stop the air, "
                + "or open the air valve and report 'valve-open'.");
        s.minutes(20);
        String no = s.did("a", Step.SETTLE).sentence();
        assertThat(no).contains("shut for too long; open it");
        assertThat(published(s)).startsWith("open the air valve and report 'valve-open'");
    }

    private static String published(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now())
                .get("homie/5/larkmoor-a/hand/next-step");
    }

    /** The sentence names that step; saying it is accepted. */
    private static void asksFor(Story s, String step) {
        String next = next(s);
        assertThat(next).contains("'" + step + "'").endsWith(".");
        if (!step.equals("started")) {
            s.does(Step.of(step).orElseThrow());
        }
    }

    @Test
    void saltThatWasNeverReportedIsAskedForUntilItIs() {
        Story s = Story.at();
        said(s, new Ask.DidFill(2, 0));
        assertThat(next(s)).startsWith("add the salt and report 'salted'");
        said(s, new Ask.DidStock("L-0417", 2));
        assertThat(next(s)).isEqualTo("add the salt and report 'salted'.");
        s.minutes(125);
        assertThat(s.stage()).isEqualTo("incubating");
        assertThat(next(s)).contains("the salt was never reported");
        s.does(Step.SALTED);
        assertThat(next(s)).isEqualTo("nothing; it is growing.");
    }

    private static final String ASKED =
            "Was the hour right? Say 'too-early', 'right' or 'late', if you like.";

    @Test
    void afterAHarvestOneAnswerIsAskedOnceAndNotAgainWhenGiven() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE, Step.DRAWING);
        assertThat(s.did("a", Step.DRAINED).sentence()).containsOnlyOnce(ASKED);
        assertThat(next(s)).endsWith(ASKED);
        assertThat(s.did("a", Step.LATE).sentence()).doesNotContain(ASKED);
        assertThat(next(s)).doesNotContain(ASKED);
        assertThat(s.did("a", Step.CLEANED).sentence()).doesNotContain(ASKED);
    }

    @Test
    void whoOnlyReportsTheCleaningIsAskedThenAndWhoIgnoresItIsLeftAlone() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN);
        assertThat(s.did("a", Step.CLEANED).sentence()).containsOnlyOnce(ASKED);
        assertThat(next(s)).doesNotContain(ASKED);
        assertThat(s.did("a", Step.RIGHT).accepted()).isTrue();

        Story ignored = Story.at();
        ignored.does(Step.STARTED, Step.FIRST_SEEN, Step.DRAINED);
        assertThat(ignored.did("a", Step.CLEANED).sentence()).doesNotContain(ASKED);
    }

    @Test
    void ofABatchThatNeverHatchedNothingIsAsked() {
        Story s = Story.at();
        s.does(Step.STARTED);
        assertThat(s.did("a", Step.DRAINED).sentence()).doesNotContain(ASKED);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.ABANDONED);
        assertThat(s.did("a", Step.DRAINED).sentence()).doesNotContain(ASKED);
    }

    @Test
    void disinfectedAsksForTheChlorine() {
        assertThat(Story.at().did("a", Step.DISINFECTED).sentence())
                .contains("Was the chlorine neutralised, and tested for?");
    }

    @Test
    void aReadyBatchMayWaitUntilItsFeedLessTheLead() {
        Story s = Story.at();
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        s.minutes(16);
        assertThat(next(s)).endsWith("Or wait until 11:45, for the feed at 12:30.");
        s.minutes(170);
        assertThat(next(s)).endsWith("It is time, for the feed at 12:30.");
        s.minutes(40);
        assertThat(next(s)).endsWith("Or wait until 17:15, for the feed at 18:00.");
        s.wall(0, false);
        assertThat(next(s)).endsWith("comes on.");
    }

    private static String next(Story s) {
        return NextStep.of(s.settings(), s.settings().cones().getFirst(), s.state().book().cone("a"),
                new NextStep.When(s.now(), 0));
    }

    @ParameterizedTest
    @CsvSource({"2, 2", "2.5, 2.5", "-3, -3", "0.1, 0.1", "1000000, 1000000"})
    void aNumberHasNoNeedlessDigits(double number, String text) {
        assertThat(Sentences.plain(number)).isEqualTo(text);
    }
}

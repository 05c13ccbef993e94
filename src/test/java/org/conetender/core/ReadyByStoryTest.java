package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.face.Names;
import org.conetender.core.face.Tree;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** A batch that is wanted at an hour. Stories begin on Monday 2026-03-02 at 09:00; a hatch takes a day. */
class ReadyByStoryTest {

    private static final String A = "homie/5/larkmoor-a/";

    private static Ask.ReadyBy by(String hour) {
        return new Ask.ReadyBy(Optional.of(Hour.parse(hour)));
    }

    private static final Ask NONE = new Ask.ReadyBy(Optional.empty());

    private static Story started(Fitting... fittings) {
        Story s = Story.at(fittings);
        RealWater.in(s, 27);
        return s.does(Step.STARTED);
    }

    private static String asks(Story s, String hour, boolean accepted) {
        Result.Reply r = s.ask("a", by(hour));
        assertThat(r.accepted()).as(r.sentence()).isEqualTo(accepted);
        s.tick();
        return r.sentence();
    }

    /** The hour that a refusal names, as it can be said. */
    private static String hour(String refusal) {
        return refusal.replaceAll(".*it comes at [-0-9]+ ([0-9:]+) \\((\\w+)\\);.*", "$2 $1");
    }

    private static double aim(Story s) {
        return s.state().live().cones().get("a").hold().aimC();
    }

    private static Map<String, String> tree(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
    }

    private static String wanted(Story s) {
        return tree(s).getOrDefault(A + "hatch/ready-by-outlook", "nothing");
    }

    @Test
    void anHourIsTakenHeldForAndToldOnAllFaces() {
        Story s = started();
        assertThat(asks(s, "14:30", false)).contains("cannot be ready by 2026-03-02 14:30 (Mon)",
                "30.0 °C, the most that is safe", "it comes at 2026-03-03 ")
                .endsWith("The chance that it is ready by the hour you asked for all the same is less "
                        + "than 1 %.");
        String answer = asks(s, "tue 14:30", true);
        assertThat(answer).startsWith("Cone a: wanted ready by 2026-03-03 14:30 (Tue), recorded.")
                .contains("Held at 25.", "reckoned anew every minute", "nobody has seen such cysts hatch")
                .matches(".* The chance of being ready by then is 7[3-7] %\\.");
        assertThat(s.batch("a").marks().readyBy()).contains(Hour.parse("2026-03-03 14:30"));
        s.minutes(2);
        assertThat(aim(s)).isBetween(24.0, 26.0);
        assertThat(tree(s)).containsEntry(A + "hatch/ready-by", "2026-03-03 14:30");
        assertThat(Double.parseDouble(tree(s).get(A + "water/setpoint"))).isCloseTo(aim(s), within(1e-9));
        assertThat(wanted(s)).startsWith("Ready by Tue 14:30: holding 2").contains(" °C. The chance of being "
                + "ready by then is 7");
        assertThat(Integer.parseInt(tree(s).get(A + "hatch/ready-by-chance"))).isBetween(70, 79);
        assertThat(tree(s).get(A + "hatch/ready-at")).startsWith("2026-03-03T14:");
    }

    @Test
    void theHarvestPointFallsOnTheHour() {
        Story s = started(Fitting.LEVEL);
        asks(s, "tue 14:30", true);
        s.pass(Duration.ofHours(27));
        assertThat(s.stage()).isEqualTo("hatching");
        Instant hour = Instant.parse("2026-03-03T14:30:00Z");
        while (!s.stage().equals("ready") && s.now().wallMs() < hour.plusSeconds(7_200).toEpochMilli()) {
            s.minutes(1);
        }
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(Math.abs(s.now().wallMs() - hour.toEpochMilli()))
                .as("a lot not known is called ready a little before its announced hour")
                .isLessThan(Duration.ofMinutes(45).toMillis());
        s.minutes(2);
        assertThat(aim(s)).as("a ready batch has its floor, whatever was wanted").isEqualTo(20);
        assertThat(wanted(s)).startsWith("Ready since ")
                .contains(" 14:30, when it is wanted; its food keeps until ");
        assertThat(s.told("hour-missed")).isZero();
    }

    @Test
    void anHourThatCannotBeKeptIsRefusedWithTheNearestThatCan() {
        Story s = started();
        String soon = asks(s, "mon 20:00", false);
        String nearest = hour(soon);
        assertThat(nearest).matches("Tue \\d\\d:\\d\\d");
        asks(s, nearest, true);
        assertThat(aim(s)).isGreaterThan(29.5).isLessThanOrEqualTo(30);
        String late = asks(s, "sat 07:30", false);
        assertThat(late).contains("cannot wait until 2026-03-07 07:30 (Sat): at 22.0 °C");
        asks(s, hour(late), true);
        assertThat(aim(s)).isLessThan(22.5).isGreaterThanOrEqualTo(22);
    }

    @Test
    void whatNobodyCanReckonIsRefusedWithWhatToDo() {
        Story s = Story.at();
        assertThat(asks(s, "tue 14:30", false)).contains("no cysts are in it", "report 'started'");
        RealWater.in(s, 27);
        s.does(Step.STARTED);
        assertThat(asks(s, "2026-03-01 07:30", false)).contains("that hour is past");
        s.wall(0, false);
        assertThat(asks(s, "tue 14:30", false)).contains("the clock is not set", "network", "'setpoint'");
        s.wall(0, true);
        s.each(x -> { });
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(40);
        assertThat(asks(s, "tue 14:30", false)).contains("its water is not known", "probe");
    }

    @Test
    void aBatchAtItsHarvestPointNeedsNoHour() {
        Story s = started().does(Step.FIRST_SEEN, Step.SETTLE);
        assertThat(asks(s, "tue 14:30", false)).contains("come to its harvest point already");
        s.minutes(12);
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(asks(s, "tue 14:30", false)).contains("come to its harvest point already");
    }

    @Test
    void theLaterOfASetPointAndAnHourHolds() {
        Story s = started();
        s.ask("a", new Ask.SetSetpoint(28));
        asks(s, "tue 14:30", true);
        assertThat(s.batch("a").marks().setpointC()).isEmpty();
        assertThat(aim(s)).isLessThan(27);
        assertThat(s.ask("a", new Ask.SetSetpoint(26)).accepted()).isTrue();
        s.tick();
        assertThat(s.batch("a").marks().readyBy()).isEmpty();
        assertThat(aim(s)).isEqualTo(26);
        assertThat(wanted(s)).isEqualTo("nothing");
        assertThat(tree(s)).containsEntry(A + "hatch/ready-by", "\0");
        assertThat(s.ask("a", NONE).accepted()).as("giving up what was not asked").isTrue();
        s.tick();
        assertThat(aim(s)).as("leaves a set-point alone").isEqualTo(26);
    }

    @Test
    void anHourIsGivenUpTakenBackAndEndsWithItsBatch() {
        Story s = started();
        asks(s, "tue 14:30", true);
        assertThat(s.ask("a", NONE).sentence()).contains("no hour is wanted for this batch any more");
        s.seconds(2);
        assertThat(aim(s)).isEqualTo(27);
        asks(s, "tue 14:30", true);
        assertThat(s.ask("a", new Ask.Withdraw("ready-by")).accepted()).isTrue();
        s.seconds(2);
        assertThat(aim(s)).isEqualTo(27);
        asks(s, "tue 14:30", true);
        s.does(Step.DRAINED, Step.CLEANED, Step.STARTED);
        assertThat(s.batch("a").marks().readyBy()).isEmpty();
        s.seconds(2);
        assertThat(aim(s)).isEqualTo(27);
    }

    @Test
    void anHourOutlivesARestartAndAPowerCutAndIsReckonedAnew() {
        Story s = started();
        asks(s, "tue 14:30", true);
        s.minutes(5);
        double before = aim(s);
        s.restart("boot-1", 3_000).minutes(2);
        assertThat(s.batch("a").marks().readyBy()).contains(Hour.parse("2026-03-03 14:30"));
        assertThat(aim(s)).isCloseTo(before, within(0.11));
        s.restart("boot-2", Duration.ofHours(2).toMillis()).minutes(2);
        assertThat(aim(s)).as("time was lost, and the water is as warm as it was").isBetween(22.0, 30.0);
        assertThat(wanted(s)).contains("by Tue 14:30: holding");
    }

    @Test
    void aClockThatIsLostInThisBootIsNotNeededAnyMore() {
        Story s = started();
        asks(s, "tue 14:30", true);
        s.wall(-9L * 365 * 24 * 3_600_000, false).minutes(90);
        assertThat(wanted(s)).contains("14:30: holding");
        assertThat(aim(s)).isBetween(24.0, 26.0);
    }

    @Test
    void withoutAClockAfterAPowerCutTheSetPointStaysAndItIsSaid() {
        Story s = started();
        asks(s, "tue 14:30", true);
        s.minutes(5);
        double before = aim(s);
        s.wall(0, false).restart("boot-2", 60_000).minutes(3);
        assertThat(wanted(s)).contains("2026-03-03 14:30 is wanted, but the clock is not set");
        assertThat(aim(s)).isEqualTo(before);
        assertThat(tree(s)).doesNotContainKey(A + "hatch/ready-by-chance");
        s.wall(0, true).minutes(2);
        assertThat(wanted(s)).startsWith("Ready by Tue 14:30: holding");
    }

    @Test
    void whatSlipsAwayIsSaidAtOnceAndCallsAPersonOnlyNearTheHour() {
        Story s = started();
        asks(s, "tue 14:30", true);
        s.minutes(5);
        s.wall(Duration.ofHours(14).toMillis(), true).minutes(2);
        assertThat(wanted(s)).startsWith("Not likely enough to be ready by Tue 14:30: holding 30.0 °C, the "
                + "most that is safe, which brings it at ");
        assertThat(aim(s)).isEqualTo(30);
        s.minutes(50);
        assertThat(s.told("hour-missed")).as("still far off").isZero();
        s.wall(Duration.ofHours(10).toMillis(), true).minutes(15);
        assertThat(s.told("hour-missed")).isEqualTo(1);
        String told = s.told().getLast().what();
        assertThat(told).startsWith("it will not be ready by 14:30; as warm as is safe it comes at ");
        s.wall(-Duration.ofMinutes(40).toMillis(), true).minutes(16);
        assertThat(s.told("hour-missed")).isEqualTo(2);
        String again = s.told().stream().filter(a -> a.kind() == AlarmKind.HOUR_MISSED)
                .reduce((a, b) -> b).orElseThrow().what();
        assertThat(again.replaceAll("[0-9]+", "N")).as("the same").isEqualTo(told.replaceAll("[0-9]+", "N"));
        assertThat(again).as("with the hour of now").isNotEqualTo(told);
        s.ask("a", new Ask.Acknowledge("hour-missed"));
        s.pass(Duration.ofHours(3));
        assertThat(s.told("hour-missed")).as("not again once it was seen").isEqualTo(2);
        s.ask("a", NONE);
        s.minutes(3);
        assertThat(s.standing("a")).doesNotContain("hour-missed");
    }

    /** What may well come true is not called impossible, and the odds are those of its own line. */
    @Test
    void whoIsCalledOfAnHourThatMayBeKeptAllTheSameIsToldTheOdds() {
        Story s = started();
        asks(s, "tue 14:30", true);
        s.pass(Duration.ofHours(22));
        while (!wanted(s).startsWith("Not likely enough to be ready by 14:30: holding 30.0 °C")) {
            s.wall(Duration.ofMinutes(40).toMillis(), true).minutes(2);
        }
        for (int i = 0; i < 30 && s.told("hour-missed") == 0; i++) {
            s.minutes(5);
        }
        assertThat(s.told().getLast().what()).matches("it is not likely enough to be ready by 14:30 \\(the "
                + "chance is [0-9]+ %\\); as warm as is safe it comes at 1[4-9]:[0-9]{2}");
        long last = s.told("hour-missed");
        s.wall(Duration.ofHours(5).toMillis(), true).minutes(65);
        assertThat(s.told("hour-missed")).isGreaterThan(last);
        assertThat(s.told().getLast().what()).as("past").startsWith("it was not ready by 14:30; as warm as");
    }

    /** The hours to go are other ones from that tick on, and so is what can be kept. */
    @Test
    void anHourIsReckonedAnewInTheTickInWhichTheClockIsStepped() {
        Story s = started();
        asks(s, "tue 14:30", true);
        long at = s.state().live().cones().get("a").outlook().atMs();
        while (s.state().live().cones().get("a").outlook().atMs() == at) {
            s.tick();
        }
        s.wall(Duration.ofHours(14).toMillis(), true).tick();
        assertThat(wanted(s)).startsWith("Not likely enough to be ready by Tue 14:30");
    }

    private static void loseProbe(Story s) {
        s.each(_ -> { });
        s.senses.probe("a-water", new Reading.Absent());
    }

    /** 25 °C for five hours is 65 degree-hours: as warm as is safe, they take less than four. */
    @Test
    void anHourSlipsAwayFromWaterThatNobodyMeasuresAndIsMissedOnceItIsSure() {
        Story s = started();
        asks(s, "tue 14:30", true);
        s.pass(Duration.ofMinutes(24 * 60 + 30));
        loseProbe(s);
        s.minutes(25);
        assertThat(wanted(s)).startsWith("Ready by 14:30 is wanted, but its water is not measured");
        assertThat(s.told("hour-missed")).isZero();
        s.minutes(170);
        assertThat(s.now().wallMs()).isLessThan(Instant.parse("2026-03-03T13:00:00Z").toEpochMilli());
        assertThat(wanted(s)).startsWith("Not likely enough to be ready by 14:30: its water is not "
                + "measured, so it is not heated; look at its probe.");
        assertThat(s.told("hour-missed")).isEqualTo(1);
        assertThat(s.told().getLast().what()).isEqualTo("it will not be ready by 14:30, since its water is "
                + "not measured and so not heated");
        RealWater.in(s, 21);
        s.minutes(10);
        assertThat(wanted(s)).startsWith("Not likely enough to be ready by 14:30: holding 30.0 °C");
        assertThat(s.standing("a")).contains("hour-missed");
    }

    /** Its reading leaves the water between the request and the answer of the record. */
    @Test
    void anHourWhoseProbeFailsBeforeItIsOnRecordIsAnsweredWithThat() {
        Story s = started().minutes(2);
        s.send("a", by("tue 14:30"));
        s.tick();
        s.each(_ -> { });
        s.senses.water("a", 85);
        s.seconds(3);
        assertThat(s.replies().getLast().sentence()).contains("wanted ready by 2026-03-03 14:30", "recorded.",
                "its water is not measured").doesNotContain("Held at");
    }

    /** What people see of it meanwhile counts, and not what was foreseen before. */
    @Test
    void anHourIsNotMissedWhereALookTellsThatItMayBeKeptThoughNobodyMeasures() {
        Story s = started();
        asks(s, "tue 14:30", true);
        s.pass(Duration.ofHours(22));
        s.wall(Duration.ofHours(4).toMillis(), true).minutes(2);
        assertThat(wanted(s)).contains(" be ready by 14:30: holding 30.0 °C, the most that is safe");
        loseProbe(s);
        s.minutes(1);
        s.ask("a", new Ask.DidCount(95, 3, 2, 1));
        s.pass(Duration.ofHours(1));
        assertThat(wanted(s)).startsWith("Ready by 14:30 is wanted, but its water is not measured");
        assertThat(s.told("hour-missed")).isZero();
    }

    @Test
    void anHourAfterARestartWithoutItsProbeIsJudgedByTheWaterOfBefore() {
        Story s = started();
        asks(s, "tue 14:30", true);
        s.pass(Duration.ofHours(25));
        loseProbe(s);
        s.minutes(5);
        s.restart("boot-2", 60_000).minutes(2);
        assertThat(wanted(s)).startsWith("Ready by 14:30 is wanted, but its water is not measured");
        s.pass(Duration.ofHours(3));
        assertThat(s.told("hour-missed")).isPositive();
    }

    /** It was wanted at an hour, and whoever comes for it then wants to know what became of that. */
    @Test
    void aBatchThatIsReadyEarlySaysSoBesideItsHourAndHowLongItKeeps() {
        Story s = Story.at().does(Step.STARTED).minutes(2);
        asks(s, "tue 16:00", true);
        s.pass(Duration.ofHours(29));
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(wanted(s)).matches("Ready since 1[0-3]:[0-9]{2}, [2-5]\\.[0-9] h before "
                + "16:00, when it is wanted; its food keeps until [A-Z0-9][a-z0-9: ]{4,8}\\.");
        s.pass(Duration.ofHours(24));
        assertThat(wanted(s)).as("it kept").matches(".*16:00, when it is wanted; most of its food was there "
                + "until [A-Z0-9][a-z0-9: ]{4,8}\\.");
        s.ask("a", new Ask.Away("Jo"));
        s.pass(Duration.ofHours(12)).minutes(1);
        assertThat(wanted(s)).as("not to be fed").endsWith("16:00, when it is wanted.");
    }

    @Test
    void aSetPointSaysWhichHourItGivesUpAndHowToAskForItAgain() {
        Story s = started();
        asks(s, "tue 14:30", true);
        assertThat(s.ask("a", new Ask.SetSetpoint(26)).sentence()).endsWith(" 2026-03-03 14:30 (Tue) is no "
                + "longer wanted: a set-point takes the place of an hour. To want it again say 'ready-by "
                + "2026-03-03 14:30'.");
        assertThat(s.ask("a", new Ask.SetSetpoint(25)).sentence()).doesNotContain("ready-by");
    }

    @Test
    void aConeWithoutHeaterIsHeldForNoHour() {
        Story s = Story.at(Fitting.NO_HEAT, Fitting.ROOM_PROBE);
        s.senses.water("a", 26).room(28);
        s.does(Step.STARTED).minutes(2);
        assertThat(asks(s, "tue 12:00", false)).contains("no heater", "nothing to hold for 2026-03-03 "
                + "12:00 (Tue)")
                .matches(".*: in its room it comes at about 2026-03-03 [0-9:]+ \\(Tue\\); go by the "
                        + "forecast\\..*")
                .matches(".* The chance of being ready by then is [4-7][0-9] %\\.");
        assertThat(asks(s, "mon 09:30", false)).endsWith("is less than 1 %.");
        assertThat(asks(s, "thu 12:00", false)).endsWith("is more than 99 %.");
        assertThat(s.batch("a").marks().readyBy()).isEmpty();
        assertThat(wanted(s)).isEqualTo("nothing");
        assertThat(s.ask("a", NONE).accepted()).isTrue();
    }

    /** Who asks for an hour and who looks at the screen are told one. */
    @Test
    void theHourOfAConeWithoutHeaterIsTheOneOnTheScreen() {
        for (Fitting[] fitted : new Fitting[][] {{Fitting.NO_HEAT}, {Fitting.NO_HEAT, Fitting.ROOM_PROBE}}) {
            Story s = Story.at(fitted);
            s.senses.water("a", 26).room(24);
            s.does(Step.STARTED).minutes(2);
            for (int i = 0; i < 40; i++) {
                s.senses.water("a", 26 - i / 10.0);
                s.seconds(31);
                String shown = tree(s).get(A + "hatch/ready-at");
                String said = asks(s, "wed 12:00", false).replaceAll(".*at about ([-0-9]+ [0-9:]+).*", "$1");
                assertThat(said.replace(" ", "T") + ":00+00:00").isEqualTo(shown);
            }
        }
    }

    /** What is refused may well come true: it is called unlikely then, and not impossible. */
    @Test
    void anHourThatHalfOfSuchBatchesKeepIsNotCalledImpossible() {
        Story s = started();
        String nearest = hour(asks(s, "mon 20:00", false));
        String early = "tue " + LocalTime.parse(nearest.substring(4)).minusHours(2);
        assertThat(asks(s, early, false)).contains("it is not likely enough to be ready by 2026-03-03 ")
                .doesNotContain("cannot").matches(".* all the same is [3-6][0-9] %\\.");
    }

    /** Whoever looks is told at once what that look does to the hour. */
    @Test
    void aLookThatBreaksTheHourIsAnsweredWithThat() {
        Story s = started();
        asks(s, "tue 14:30", true);
        s.pass(Duration.ofHours(6));
        assertThat(s.ask("a", new Ask.Did(Step.NONE_SEEN)).sentence()).doesNotContain("14:30");
        s.pass(Duration.ofHours(20));
        String broken = s.ask("a", new Ask.DidCount(2, 40, 360, 1)).sentence();
        assertThat(broken).contains("Not likely enough to be ready by 14:30: holding 30.0 °C, the most that "
                + "is safe");
    }

    @Test
    void guardsAndStagesWinOverAnHour() {
        Story s = started();
        asks(s, "tue 10:00", true);
        s.minutes(2);
        assertThat(aim(s)).isLessThanOrEqualTo(30);
        s.each(x -> assertThat(x.on("a.heat")).isFalse());
        s.senses.water("a", 31.5);
        s.minutes(3);
        assertThat(s.found("too-hot")).isNotEmpty();
    }

    @Test
    void theHourIsOfTheSitesOwnDay() {
        Story s = started();
        asks(s, "13:00", false);
        asks(s, "2026-03-03 13:00", true);
        assertThat(s.batch("a").marks().readyBy().orElseThrow().wallMs(ZoneOffset.UTC))
                .isEqualTo(Instant.parse("2026-03-03T13:00:00Z").toEpochMilli());
        assertThat(s.batch("a").marks().readyBy().orElseThrow().time()).isEqualTo(LocalTime.of(13, 0));
    }
}

package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.face.Names;
import org.conetender.core.face.Tree;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** A separation that starts by itself: only where it is allowed, and only where it is provably safe. */
class OfferingTest {

    /** A ripe batch at about half past nine; the next feed is at 12:30, the offer 45 minutes before. */
    private static Story ripe(Settings settings) {
        return ripe(new Story(settings), 2);
    }

    private static Story ripe(Story s, double cystsG) {
        s.pass(Duration.ofHours(20));
        s.ask("a", new Ask.DidStock("L-0417", cystsG));
        s.does(Step.SALTED).pass(Duration.ofMinutes(28 * 60 + 30));
        assertThat(s.stage()).isEqualTo("ready");
        return s;
    }

    /** It was called ready by a person who then gave the separation up. */
    @Test
    void neverOfABatchThatIsKnownToBeUnripe() {
        Story s = new Story(Larkmoor.with(Fitting.AUTOMATIC));
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        s.minutes(30);
        Map<String, String> tree = Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
        String told = tree.get("homie/5/larkmoor-a/hatch/ready-at");
        assertThat(tree.get("homie/5/larkmoor-a/hand/next-step"))
                .isEqualTo("wait; it is not ripe yet and is kept warm, ready at about Tue "
                        + told.substring(11, 16) + ".");
        assertThat(tree.get("homie/5/larkmoor/feed/digest")).contains("cone a is not ripe yet and is kept "
                + "warm, ready at about Tue " + told.substring(11, 16));
        assertThat(untilOffer(s).stage()).isEqualTo("ready");
        assertThat(s.did("a", Step.SETTLE).accepted()).as("but a person may").isTrue();
    }

    /** The record may say that it is ready, but a new life has not looked at its water yet. */
    @Test
    void neverBeforeItsHourIsReckonedAnew() {
        Story s = new Story(Larkmoor.with(Fitting.AUTOMATIC));
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        untilOffer(s.minutes(30)).restart("boot-1", 5_000);
        assertThat(s.minutes(20).stage()).isEqualTo("ready");
    }

    private static Story untilOffer(Story s) {
        return s.pass(Duration.ofMinutes(100)).minutes(40);
    }

    @Test
    void itStartsAtFeedHourLessLead() {
        Story s = ripe(Larkmoor.with(Fitting.AUTOMATIC));
        s.pass(Duration.ofMinutes(130));
        assertThat(s.stage()).isEqualTo("ready");
        s.minutes(7);
        assertThat(s.stage()).isEqualTo("settling");
        assertThat(s.on("a.air-pause")).isTrue();
    }

    @Test
    void ifNobodyComesItIsNotRepeatedBeforeTheNextFeed() {
        Story s = untilOffer(ripe(Larkmoor.with(Fitting.AUTOMATIC)));
        s.minutes(30);
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.told("air-back")).isEqualTo(1);
        s.pass(Duration.ofMinutes(180));
        assertThat(s.told("air-back")).isEqualTo(1);
    }

    @Test
    void byDefaultAPersonStartsIt() {
        assertThat(untilOffer(ripe(Larkmoor.with())).stage()).isEqualTo("ready");
    }

    @Test
    void neverWhereThePumpCouldBeFlooded() {
        Story s = ripe(Larkmoor.with(Fitting.AUTOMATIC, Fitting.SIPHONING));
        assertThat(untilOffer(s).stage()).isEqualTo("ready");
    }

    @Test
    void neverWhileNobodyIsNear() {
        Story s = ripe(Larkmoor.with(Fitting.AUTOMATIC));
        s.ask("", new Ask.Away("neighbour"));
        assertThat(untilOffer(s).stage()).isEqualTo("ready");
    }

    @Test
    void neverByAClockThatIsNotTrusted() {
        Story s = ripe(Larkmoor.with(Fitting.AUTOMATIC));
        s.wall(0, false);
        assertThat(untilOffer(s).stage()).isEqualTo("ready");
    }

    @Test
    void neverWhileTheRecordFails() {
        Story s = ripe(Larkmoor.with(Fitting.AUTOMATIC));
        s.pass(Duration.ofMinutes(100));
        s.paper.mood(Paper.Mood.REFUSING);
        s.did("b", Step.STARTED);
        s.minutes(60);
        assertThat(s.stage()).isEqualTo("ready");
    }

    @Test
    void neverWhereAirOrWaterIsNotKnownToBeWell() {
        Story shut = ripe(Larkmoor.with(Fitting.AUTOMATIC)).does(Step.VALVE_SHUT);
        assertThat(untilOffer(shut).stage()).as("its air valve is shut").isEqualTo("ready");
        Story blind = ripe(Larkmoor.with(Fitting.AUTOMATIC));
        blind.senses.probe("a-water", new Reading.Absent());
        assertThat(untilOffer(blind).stage()).as("no temperature").isEqualTo("ready");
        for (Level says : new Level[] {Level.OPEN, Level.UNKNOWN}) {
            Story still = ripe(Larkmoor.with(Fitting.AUTOMATIC, Fitting.AIR_PROOF));
            still.senses.contact("a.air-proof", says);
            assertThat(untilOffer(still).stage()).as("air proof " + says).isEqualTo("ready");
        }
        assertThat(untilOffer(ripe(Larkmoor.with(Fitting.AUTOMATIC, Fitting.AIR_PROOF))).stage())
                .as("where all is well it begins").isEqualTo("settling");
    }

    @Test
    void neverWhereTheTimeWithoutAirIsTooShortToSettle() {
        assertThat(untilOffer(ripe(Larkmoor.room(Fitting.AUTOMATIC).airOff(6, 5.5).build())).stage())
                .isEqualTo("ready");
        Story dense = ripe(new Story(Larkmoor.with(Fitting.AUTOMATIC)), 14);
        assertThat(dense.replies().getFirst().sentence()).contains("too short to settle");
        assertThat(untilOffer(dense).stage()).isEqualTo("ready");
    }

    @Test
    void aUsualChargeIsNotCalledTooDense() {
        assertThat(Story.at().did("a", Step.STARTED).sentence()).doesNotContain("without air");
    }

    @Test
    void theNextFeedIsTodaysOrTomorrowsFirst() {
        Site.Feeding f = new Site.Feeding(ZoneId.of("Europe/Berlin"),
                List.of(LocalTime.of(18, 0), LocalTime.of(7, 30)), 45);
        assertThat(next(f, "2026-03-02T06:30:00Z")).isEqualTo("2026-03-02T07:30+01:00[Europe/Berlin]");
        assertThat(next(f, "2026-03-02T06:30:01Z")).isEqualTo("2026-03-02T18:00+01:00[Europe/Berlin]");
        assertThat(next(f, "2026-03-28T20:00:00Z")).as("the night the clocks change")
                .isEqualTo("2026-03-29T07:30+02:00[Europe/Berlin]");
        assertThat(Offering.nextFeed(new Site.Feeding(ZoneId.of("UTC"), List.of(), 45),
                at("2026-03-02T06:00:00Z")))
                .isEmpty();
    }

    private static String next(Site.Feeding f, String now) {
        return Offering.nextFeed(f, at(now)).orElseThrow().toString();
    }

    private static Moment at(String wall) {
        return new Moment("boot-1", 0, Instant.parse(wall).toEpochMilli(), true);
    }
}

package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.Larkmoor;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;
import org.junit.jupiter.api.Test;

/** When a cone is said to be ready: in the site's own hours, with its margin, and in time for a feed. */
class ReadyTimesTest {

    private static final String A = "homie/5/larkmoor-a/hatch/";
    private static final String DIGEST = "homie/5/larkmoor/feed/digest";

    private static Map<String, String> tree(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
    }

    private static OffsetDateTime time(Story s, String property) {
        return OffsetDateTime.parse(tree(s).get(A + property));
    }

    private static Settings fedAt(String zone, LocalTime... hours) {
        Settings l = Larkmoor.with();
        Site s = l.site();
        return new Settings(new Site(s.id(), s.name(),
                new Site.Feeding(ZoneId.of(zone), List.of(hours), 45), s.supply(), s.roomProbe(), s.second(),
                s.saltSlows()),
                l.cones());
    }

    @Test
    void theHourStandsInItsMarginAndStaysWhileTheWaterStays() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(2);
        OffsetDateTime first = time(s, "ready-at");
        for (int hours = 0; hours < 16; hours += 4) {
            s.pass(Duration.ofHours(4));
            assertThat(time(s, "ready-from")).isBefore(time(s, "ready-half-from"));
            assertThat(time(s, "ready-half-from")).isBefore(time(s, "ready-half-until"));
            assertThat(time(s, "ready-half-until")).as("of a lot nobody has seen, the later quartile")
                    .isEqualTo(time(s, "ready-at"));
            assertThat(time(s, "ready-at")).isBefore(time(s, "ready-until"));
            assertThat(Duration.between(first, time(s, "ready-at")).abs()).isLessThan(Duration.ofMinutes(10));
        }
    }

    /**
     * Told all the way, also while the batch waits. Ripe water is foreseen to cool, which keeps food; here it
     * stays warm, so that the window's end comes nearer than was told, and never moves away.
     */
    @Test
    void theHoursOfMostFoodStayWhileTheWaterStays() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(2);
        OffsetDateTime most = time(s, "food-most-at");
        OffsetDateTime until = time(s, "food-until");
        for (int hours = 0; hours < 28; hours += 4) {
            s.pass(Duration.ofHours(4));
            assertThat(time(s, "food-from")).isBefore(time(s, "food-most-at"));
            assertThat(time(s, "food-most-at")).isBefore(time(s, "food-until"));
            assertThat(Duration.between(most, time(s, "food-most-at")).toMinutes()).isBetween(-45L, 45L);
            assertThat(Duration.between(until, time(s, "food-until")).toMinutes()).isBetween(-180L, 15L);
        }
        assertThat(s.stage()).isEqualTo("ready");
        s.does(Step.DRAINED);
        s.minutes(2);
        assertThat(tree(s)).doesNotContainKeys(A + "food-most-at", A + "food-from", A + "food-until");
    }

    /** Counted until it is sure: from a tenth to nine tenths is longer than to the first moult. */
    @Test
    void aLotThatHatchesOverLongIsToldWithTwoHarvestsUntilTheFirst() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(2);
        assertThat(tree(s)).doesNotContainKeys(A + "harvest-first-at", A + "harvest-second-at");
        for (int h = 8; h <= 20; h += 2) {
            s.pass(Duration.ofHours(h == 8 ? 8 : 2));
            int swim = (int) Math.round(1_000 * wide(h));
            for (int i = 0; i < 3; i++) {
                s.ask("a", new Ask.DidCount(swim, 0, 1_000 - swim, 1));
            }
        }
        s.minutes(2);
        assertThat(time(s, "harvest-first-at")).isBefore(time(s, "food-most-at"));
        assertThat(time(s, "harvest-second-at")).isAfter(time(s, "food-most-at"));
        assertThat(Integer.parseInt(tree(s).get(A + "harvest-first-share"))).isBetween(25, 75);
        s.does(Step.VALVE_SHUT, Step.SETTLE);
        s.pass(Duration.ofMinutes(7));
        s.does(Step.DRAWING, Step.PART_DRAWN);
        s.minutes(2);
        assertThat(tree(s)).doesNotContainKeys(A + "harvest-first-at", A + "harvest-second-at");
    }

    /** Of a lot of K50 271 and sigma 0.28 what has hatched after so many hours at 27 °C. */
    private static double wide(int hours) {
        return 1 / (1 + Math.exp(-1.702 * Math.log(15.0 * hours / 271) / 0.28));
    }

    /** The hatch does not wait for the clock: when that is set right, the hour told is set right too. */
    @Test
    void theHourFollowsAClockThatIsSetRight() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(2);
        OffsetDateTime was = time(s, "ready-at");
        s.wall(3 * 3_600_000, true).tick();
        assertThat(Duration.between(was.plusHours(3), time(s, "ready-at")).abs())
                .isLessThanOrEqualTo(Duration.ofMinutes(1));
    }

    @Test
    void warmerWaterIsReadyEarlierAndColderLater() {
        Story s = Story.at(Larkmoor.Fitting.MAT);
        s.does(Step.STARTED);
        s.pass(Duration.ofHours(4));
        OffsetDateTime was = time(s, "ready-at");
        assertThat(s.ask("a", new Ask.SetSetpoint(24)).accepted()).isTrue();
        s.minutes(2);
        assertThat(time(s, "ready-at")).isAfter(was.plusHours(2));
        assertThat(tree(s)).containsEntry("homie/5/larkmoor-a/water/setpoint", "24");
    }

    @Test
    void everyHourIsToldInTheZoneOfTheSite() {
        Story s = new Story(fedAt("Asia/Kathmandu", LocalTime.of(18, 0)));
        s.does(Step.STARTED);
        s.minutes(2);
        assertThat(tree(s).get(A + "ready-at")).endsWith(":00+05:45");
        assertThat(tree(s)).containsEntry("homie/5/larkmoor/feed/next", "2026-03-02T18:00:00+05:45");
    }

    @Test
    void whereNoFeedIsNamedNoneIsTold() {
        Story s = new Story(fedAt("UTC"));
        s.does(Step.STARTED);
        assertThat(tree(s)).doesNotContainKeys(DIGEST, "homie/5/larkmoor/feed/next");
    }

    /** Cone a was stocked hours before b; by the feed at half past seven a will be ready and b will not. */
    @Test
    void theDigestNamesOnlyWhatWillBeReadyByTheFeed() {
        Story s = new Story(fedAt("UTC", LocalTime.of(7, 30)));
        s.does(Step.STARTED);
        s.pass(Duration.ofHours(12));
        s.did("b", Step.STARTED);
        s.minutes(3);
        OffsetDateTime ready = time(s, "ready-at");
        String feed = "For the feed at Tue 07:30";
        OffsetDateTime feedAt = OffsetDateTime.parse("2026-03-03T07:30:00Z");
        for (int hour = 0; hour < 14 && !ready.isBefore(feedAt); hour++) {
            assertThat(tree(s).get(DIGEST)).isEqualTo(feed + " no cone is sure to be ready.");
            s.wall(-3_600_000, true);
            s.minutes(1);
            ready = time(s, "ready-at");
        }
        assertThat(tree(s).get(DIGEST))
                .matches("For the feed at (Tue )?07:30: cone a at (Tue )?0[0-7]:[0-5][0-9]\\.");
    }

    @Test
    void conesThatAreReadyAreNamedInTheOrderOfTheRoom() {
        Story s = new Story(fedAt("UTC", LocalTime.of(18, 0)));
        for (String cone : List.of("c", "a")) {
            assertThat(s.did(cone, Step.STARTED).accepted()).isTrue();
        }
        s.pass(Duration.ofHours(28));
        assertThat(s.did("a", Step.STARTED).accepted()).as("a was fed from and filled anew").isTrue();
        assertThat(tree(s)).containsEntry(DIGEST, "For the feed at 18:00: cone c is ready, but past its best "
                + "by then.");
    }

    /** Above arrest nothing grows, and an hour that will not come is not told. */
    @Test
    void waterThatStaysTooWarmHasNoReadyHour() {
        Story s = Story.at(Larkmoor.Fitting.ROOM_PROBE);
        s.does(Step.STARTED);
        s.senses.room(35);
        for (double c = 27; c < 33.6; c += 0.1) {
            s.senses.water("a", c);
            s.seconds(60);
        }
        assertThat(tree(s)).doesNotContainKeys(A + "ready-at", A + "ready-from", A + "ready-until")
                .containsEntry(A + "stage", "hydrating").containsEntry(A + "arrested", "true");
        assertThat(tree(s).get(A + "outlook")).contains("stands still", "in arrest");
        s.senses.room(20);
        s.minutes(2);
        assertThat(tree(s)).as("it will cool by itself now").containsKey(A + "ready-at")
                .containsEntry(A + "arrested", "false");
    }

    /** Nobody heats water that nobody measures, so an hour that was reckoned with heat does not come. */
    @Test
    void noHourIsToldOfWaterThatIsNotMeasured() {
        Story s = Story.at();
        s.does(Step.STARTED).pass(Duration.ofHours(23));
        Hour wanted = Hour.parse("11:50");
        assertThat(s.ask("a", new Ask.ReadyBy(Optional.of(wanted))).sentence()).contains("11:50");
        s.minutes(2);
        assertThat(tree(s).get(DIGEST)).contains("cone a at");
        assertThat(tree(s)).containsKey(A + "ready-by-outlook");
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(10);
        assertThat(tree(s).get("homie/5/larkmoor-a/water/trust")).isEqualTo("untrusted");
        assertThat(tree(s)).as("for a while it holds").containsKey(A + "ready-at");
        s.minutes(12);
        assertThat(tree(s)).doesNotContainKeys(A + "ready-at", A + "ready-from", A + "ready-until",
                A + "ready-half-from", A + "ready-half-until", A + "food-most-at", A + "ready-by-chance");
        assertThat(tree(s).get(A + "outlook")).isEqualTo(Sentences.UNMEASURED);
        assertThat(tree(s).get(A + "ready-by-outlook")).contains("not measured");
        assertThat(tree(s).get(DIGEST)).doesNotContain("cone a");
        s.senses.water("a", 27);
        s.minutes(5);
        assertThat(tree(s)).as("and comes back").containsKeys(A + "ready-at", A + "food-most-at");
        assertThat(tree(s).get(A + "outlook")).isEqualTo("developing");
        assertThat(tree(s).get(DIGEST)).contains("cone a at");
    }
}

package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Map;
import java.util.TreeMap;
import org.conetender.core.Larkmoor;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.conetender.homie.Homie5Checker;
import org.junit.jupiter.api.Test;

/** What is shown of a state: a valid Homie 5 tree in every stage, and never a stale value. */
class TreeTest {

    private static final String A = "homie/5/larkmoor-a/";

    private static Map<String, String> tree(Story s) {
        Names names = Names.of("homie", s.settings());
        Map<String, String> all = new TreeMap<>(Tree.of(s.settings(), names, s.last(), s.now()));
        all.put(names.root() + "/$description", Description.root(s.settings(), 1));
        all.put(names.root() + "/$state", "ready");
        s.settings().cones().forEach(c -> {
            all.put(names.cone(c.id()) + "/$description", Description.cone(s.settings(), c, 1));
            all.put(names.cone(c.id()) + "/$state", "ready");
        });
        return all;
    }

    private static Map<String, String> valid(Story s) {
        Map<String, String> all = tree(s);
        // What is not known is not there (mqtt.md): a value may be missing, but none may be wrong.
        assertThat(Homie5Checker.check(all)).filteredOn(v -> !v.endsWith("has no value")).isEmpty();
        assertThat(Topics.everything(s.settings(), Names.of("homie", s.settings())))
                .containsAll(all.keySet().stream().filter(t -> !t.endsWith("$state")
                        && !t.endsWith("$description"))
                        .toList());
        return all;
    }

    @Test
    void everyStageIsAValidTree() {
        Story s = new Story(Larkmoor.with(Fitting.AIR_PROOF, Fitting.LEVEL, Fitting.ROOM_PROBE,
                Fitting.SIPHONING));
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "clean")
                .containsEntry(A + "siphon/state", "at-risk")
                .doesNotContainKey(A + "hatch/degree-hours");
        s.does(Step.FILLED);
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "filled");
        s.does(Step.STOCKED);
        s.minutes(2);
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "hydrating")
                .containsKeys(A + "hatch/degree-hours",
                A + "hatch/ready-at", A + "hatch/ready-from", A + "hatch/ready-until", A
                        + "hatch/degree-hours-needed");
        s.pass(Duration.ofHours(3));
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "incubating");
        s.pass(Duration.ofHours(14));
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "hatching");
        s.pass(Duration.ofHours(10));
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "ready")
                .doesNotContainKey(A + "hatch/ready-at").containsKeys(A + "hatch/food-most-at", A
                        + "hatch/food-until");
        s.does(Step.VALVE_SHUT, Step.SETTLE);
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "settling").containsEntry(A + "air/on", "false")
                .containsEntry(A + "lamp/on", "true").containsEntry(A + "siphon/state", "valve-shut");
        s.minutes(6);
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "settled");
        s.does(Step.DRAWING);
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "drawing");
        s.does(Step.DRAINED);
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "drained");
        s.does(Step.FILLED, Step.ABANDONED);
        assertThat(valid(s)).containsEntry(A + "hatch/stage", "abandoned");
    }

    @Test
    void alertsAreWholeSentencesThatSayWhatWhereSinceWhenAndWhatToDo() {
        Story s = new Story(Larkmoor.with(Fitting.AIR_PROOF));
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.senses.contact("a.air-proof", Level.OPEN);
        s.minutes(1);
        assertThat(valid(s).get(A + "$alert/air-failed-animals")).isEqualTo(
                "Cone a: its air is switched on but none arrives, since Mon 09:00. The nauplii "
                + "suffocate within minutes: start the pump, put the hose on, open the air valve. Whoever "
                + "has seen it says: conetender tell a acknowledge air-failed-animals.");
        s.senses.contact("a.air-proof", Level.CLOSED);
        s.minutes(2);
        assertThat(valid(s)).doesNotContainKey(A + "$alert/air-failed-animals");
    }

    @Test
    void aTemperatureThatIsNotKnownIsNotThere() {
        Story s = new Story(Larkmoor.with());
        s.does(Step.STARTED);
        assertThat(valid(s)).containsEntry(A + "water/temperature", "27.0")
                .containsEntry(A + "water/trust", "trusted")
                .doesNotContainKey(A + "water/why");
        s.minutes(3);
        s.senses.silent("a-water", s.now().monoMs() - 1_000);
        s.seconds(30);
        assertThat(valid(s)).containsEntry(A + "water/trust", "projected");
        s.seconds(100);
        assertThat(valid(s)).doesNotContainKey(A + "water/temperature")
                .containsEntry(A + "water/trust", "untrusted")
                .containsKey(A + "water/why").containsKey(A + "$alert/probe").satisfies(t -> assertThat(
                        t.get(A + "heat/on")).isEqualTo("false"));
    }

    @Test
    void whyHeatIsWithheldIsShownWhileItIsWanted() {
        Story s = new Story(Larkmoor.with(Fitting.AIR_PROOF));
        s.does(Step.STARTED);
        s.minutes(1);
        assertThat(valid(s)).doesNotContainKey(A + "heat/vetoed");
        s.senses.contact("a.air-proof", Level.OPEN);
        s.tick();
        assertThat(valid(s)).containsEntry(A + "heat/vetoed", "no air stirs the water")
                .containsEntry(A + "air/proven", "failed");
    }

    @Test
    void ofADamagedRecordEachConeOnlyPointsToItsAlarm() {
        Story s = new Story(Larkmoor.with());
        s.does(Step.STARTED).minutes(1);
        String why = "the record is that of a backup, b.zip, which ends with fact number 231";
        s.damages.add(why);
        s.restart("boot-1", 2_000).minutes(1);
        assertThat(valid(s)).containsEntry(A + "heat/vetoed",
                "the record was damaged, or restored; see record-damaged");
        assertThat(valid(s).get("homie/5/larkmoor/$alert/record-damaged")).contains(why);
    }

    /** Through every separation its contact says that no air comes: as it should be. */
    @Test
    void airThatIsPausedIsNotCalledFailed() {
        Story s = new Story(Larkmoor.with(Fitting.AIR_PROOF));
        s.senses.contact("a.air-proof", Level.CLOSED);
        s.does(Step.STARTED, Step.FIRST_SEEN).seconds(30);
        assertThat(valid(s)).containsEntry(A + "air/on", "true").containsEntry(A + "air/proven", "proven");
        s.does(Step.SETTLE);
        s.senses.contact("a.air-proof", Level.OPEN);
        s.minutes(2);
        assertThat(valid(s)).containsEntry(A + "air/on", "false").containsEntry(A + "air/proven",
                "unverified");
        s.does(Step.HANDS_IN).seconds(20);
        assertThat(valid(s)).as("now it is meant to come").containsEntry(A + "air/on", "true")
                .containsEntry(A + "air/proven", "failed");
    }

    @Test
    void howWellTheConeIsKnownIsShownWhereItIsLearned() {
        Story s = new Story(Larkmoor.with(Fitting.ROOM_PROBE));
        Basin basin = new Basin(Basin.Build.USUAL, 22, 1);
        s.senses.room(20);
        s.each(x -> {
            s.senses.water("a", basin.second(x.on("a.heat")));
            s.senses.frozen("a-water");
        });
        assertThat(valid(s)).doesNotContainKey(A + "heat/known");
        s.does(Step.STARTED);
        s.seconds(3);
        assertThat(valid(s)).containsEntry(A + "heat/known", "not yet");
        for (int t = 0; t < 6 * 3_600 && !"well".equals(tree(s).get(A + "heat/known")); t += 300) {
            for (int i = 0; i < 300; i++) {
                s.tick();
            }
        }
        assertThat(valid(s)).containsEntry(A + "heat/known", "well");
        assertThat(s.told()).isEmpty();
    }

    @Test
    void doubtsAreShownBeforeFeeding() {
        Story s = new Story(Larkmoor.with());
        s.does(Step.STARTED, Step.FIRST_SEEN);
        s.minutes(5);
        s.restart("boot-2", 3_600_000).minutes(1);
        assertThat(valid(s).get(A + "hatch/doubt"))
                .startsWith("Look before feeding: the power was off for about 60 min");
    }

    /** What a hole in the measurements may have brought is an interval, and stays one. */
    @Test
    void whatIsNotKnownOfTheDegreeHoursIsShownAsAnInterval() {
        Story s = new Story(Larkmoor.with());
        s.does(Step.STARTED);
        s.minutes(30);
        assertThat(valid(s).get(A + "hatch/degree-hours-least"))
                .isEqualTo(valid(s).get(A + "hatch/degree-hours-most"))
                .isEqualTo(valid(s).get(A + "hatch/degree-hours"));
        s.restart("boot-1", 20 * 60_000);
        s.minutes(2);
        double least = Double.parseDouble(valid(s).get(A + "hatch/degree-hours-least"));
        double most = Double.parseDouble(valid(s).get(A + "hatch/degree-hours-most"));
        assertThat(most - least).isBetween(0.3, 5.0);
        assertThat(Double.parseDouble(valid(s).get(A + "hatch/degree-hours")))
                .isCloseTo((least + most) / 2, within(0.11));
        s.does(Step.DRAINED);
        assertThat(valid(s)).doesNotContainKeys(A + "hatch/degree-hours-least",
                A + "hatch/degree-hours-most");
    }

    @Test
    void oneDigestPerFeedForAllCones() {
        Story s = new Story(Larkmoor.with());
        String digest = "homie/5/larkmoor/feed/digest";
        assertThat(valid(s)).containsEntry(digest, "For the feed at 12:30 no cone is sure to be ready.")
                .containsEntry("homie/5/larkmoor/feed/next", "2026-03-02T12:30:00+00:00");
        s.does(Step.STARTED).pass(Duration.ofHours(28)).does(Step.SETTLE);
        assertThat(valid(s).get(digest)).contains("cone a is being harvested");
        s.does(Step.HANDS_IN);
        assertThat(valid(s).get(digest)).isEqualTo("For the feed at 18:00: cone a is ready, but past its "
                + "best by then.");
    }

    @Test
    void theSiteShowsClockRoomAndWhoIsNear() {
        Story s = new Story(Larkmoor.with(Fitting.ROOM_PROBE));
        assertThat(valid(s)).containsEntry("homie/5/larkmoor/site/record", "kept")
                .containsEntry("homie/5/larkmoor/site/clock", "trusted")
                .containsEntry("homie/5/larkmoor/room/temperature", "20.0")
                .containsEntry("homie/5/larkmoor/site/away", "\0");
        s.ask("", new Ask.Away("neighbour"));
        s.senses.probe("room", new Reading.Absent());
        s.wall(0, false).tick();
        assertThat(valid(s)).containsEntry("homie/5/larkmoor/site/clock", "untrusted")
                .containsEntry("homie/5/larkmoor/site/away", "neighbour")
                        .doesNotContainKey("homie/5/larkmoor/room/temperature");
    }

    /** A client shows what is described: it must not offer to set what nothing can follow. */
    @Test
    void whatIsNotFittedIsNeitherDescribedNorShown() {
        Story s = Story.at(Fitting.NO_HEAT, Fitting.NO_LAMPS);
        s.does(Step.STARTED).minutes(2);
        assertThat(valid(s).get(A + "$description")).contains("\"temperature\"", "\"air\"")
                .doesNotContain("\"heat\"", "\"setpoint\"", "\"held\"", "\"lamp\"");
        assertThat(valid(s)).containsKey(A + "air/on").doesNotContainKey(A + "lamp/on");
        assertThat(Description.cone(Larkmoor.with(), Larkmoor.with().cones().getFirst(), 1))
                .contains("\"heat\"", "\"setpoint\"", "\"held\"", "\"lamp\"");
    }

    /** Nor is anybody told that it comes back. */
    @Test
    void nobodyIsToldOfLampsWhereThereAreNone() {
        Story s = Story.at(Fitting.NO_HEAT, Fitting.NO_LAMPS);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.HANDS_IN);
        assertThat(tree(s).get(A + "hand/next-step")).isEqualTo("hands are in it, until 09:15.");
        s.pass(Duration.ofHours(30));
        assertThat(tree(s).get(A + "hand/next-step"))
                .startsWith("to harvest, report 'settle'; the air stops. After ");
        Story heated = Story.at(Fitting.NO_LAMPS).does(Step.STARTED, Step.HANDS_IN);
        assertThat(tree(heated).get(A + "hand/next-step")).endsWith("plug it in again after; heat returns at "
                + "09:15.");
        heated.does(Step.DRAINED);
        assertThat(tree(heated).get(A + "hand/next-step")).endsWith("until the cone is filled again.");
    }

    /** Whoever drains with hands in it must not be sent to heat an empty cone. */
    @Test
    void nobodyIsToldToPlugInAHeaterThatHasNoWater() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(5);
        s.does(Step.HANDS_IN, Step.ABANDONED, Step.CLEANED);
        assertThat(tree(s).get(A + "hand/next-step"))
                .contains("leave it unplugged until the cone is filled again; lamps return at")
                .doesNotContain("plug it in");
    }

    @Test
    void theNextStepIsASentenceForEveryStageAndGeometry() {
        for (Fitting[] f : new Fitting[][] {{}, {Fitting.SIPHONING}}) {
            Story s = new Story(Larkmoor.with(f));
            String next = A + "hand/next-step";
            assertThat(tree(s).get(next)).contains("then report 'started'");
            s.does(Step.STARTED).pass(Duration.ofHours(28));
            s.does(Step.VALVE_SHUT, Step.SETTLE, Step.HANDS_IN);
            assertThat(tree(s).get(next)).contains("unplug the heater before hands go in");
            s.minutes(16);
            assertThat(tree(s).get(next)).contains("'valve-open'");
            s.does(Step.VALVE_OPEN);
            assertThat(tree(s).get(next)).contains(f.length > 0 ? "report 'valve-shut', then 'settle'"
                    : "report 'settle'");
        }
    }
}

package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.face.Names;
import org.conetender.core.face.Tree;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A person wants to hear nothing of an alarm for some hours: never of a danger, and never for good. */
class ShelvingTest {

    /** A level contact that is broken: it says that the water is low. */
    private static Story brokenContact() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED);
        s.senses.contact("a.level", Level.OPEN);
        return s;
    }

    @Test
    void itIsNotToldStaysInTheListAndComesBackByItself() {
        Story s = brokenContact();
        assertThat(s.ask("a", new Ask.Shelve("dry", 2)).sentence()).startsWith(
                "Cone a: alarm 'dry' does not stand now; if it comes within 2 h nobody is called");
        s.minutes(119);
        assertThat(s.told("dry")).isZero();
        assertThat(s.standing("a")).contains("dry");
        assertThat(s.ask("a", new Ask.Alarms()).sentence()).startsWith("1 alarm.\nCone a, dry: its level "
                + "contact says the water is low, since 09:03; active, not acknowledged, shelved until "
                + "11:00.");
        assertThat(s.on("a.heat")).as("what it locks off stays so").isFalse();
        s.minutes(2);
        assertThat(s.told("dry")).isEqualTo(1);
        assertThat(s.ask("a", new Ask.Alarms()).sentence()).doesNotContain("shelved")
                .endsWith("\n  Heat is off. Fill up to the mark, or check the level contact.\n"
                + "  To acknowledge: "
                + "conetender tell a acknowledge dry");
    }

    /** Else nobody finds out what was put aside, and for how long. */
    @Test
    void whatDoesNotStandIsListedTooWithItsHour() {
        Story s = Story.at();
        s.ask("a", new Ask.Shelve("dry", 8));
        s.ask("b", new Ask.Shelve("probe", 2));
        s.ask("", new Ask.Shelve("clock", 1.5));
        s.tick();
        assertThat(s.ask("", new Ask.Alarms()).sentence()).isEqualTo("No alarm stands.\nShelved: clock until "
                + "10:30, cone a dry until 17:00, cone b probe until 11:00.");
        assertThat(s.ask("a", new Ask.Alarms()).sentence())
                .isEqualTo("No alarm stands.\nShelved: cone a dry until 17:00.");
        assertThat(s.ask("c", new Ask.Alarms()).sentence()).isEqualTo("No alarm stands.");
        var tree = Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
        assertThat(tree.get("homie/5/larkmoor/site/alarms")).contains("Shelved: clock until 10:30, cone a");
        assertThat(tree.get("homie/5/larkmoor-a/hand/alarms")).endsWith("Shelved: cone a dry until 17:00.");
        s.ask("a", new Ask.Shelve("dry", 0));
        s.pass(Duration.ofHours(3));
        assertThat(s.ask("", new Ask.Alarms()).sentence()).isEqualTo("No alarm stands.");
    }

    @Test
    void besideOneThatStandsTheOthersAreListed() {
        Story s = brokenContact();
        s.ask("a", new Ask.Shelve("probe", 2));
        s.minutes(30);
        assertThat(s.ask("a", new Ask.Alarms()).sentence()).startsWith("1 alarm.\nCone a, dry: ")
                .endsWith("\nShelved: cone a probe until 11:00.");
        s.ask("a", new Ask.Shelve("dry", 2));
        s.tick();
        assertThat(s.ask("a", new Ask.Alarms()).sentence()).contains("shelved until 11:30.\n  "
                + "To acknowledge: conetender tell a acknowledge dry\nShelved: cone a ")
                .doesNotContain("cone a dry");
    }

    @Test
    void whatIsShelvedInOneConeIsToldOfTheOthers() {
        Story s = brokenContact();
        s.did("b", Step.STARTED);
        s.ask("a", new Ask.Shelve("dry", 2));
        s.senses.contact("b.level", Level.OPEN);
        s.minutes(10);
        assertThat(s.told()).extracting(a -> a.cone()).containsOnly("b");
    }

    @Test
    void itOutlivesARestartAndEndsAtItsHourAllTheSame() {
        Story s = brokenContact();
        s.ask("a", new Ask.Shelve("dry", 2));
        s.minutes(30);
        s.restart("boot-1", 30 * 60_000).minutes(55);
        assertThat(s.told("dry")).isZero();
        s.minutes(10);
        assertThat(s.told("dry")).isEqualTo(1);
    }

    @Test
    void whereNoClockTellsHowLongThePowerWasOffItEnds() {
        Story s = brokenContact();
        s.ask("a", new Ask.Shelve("dry", 12));
        s.minutes(5);
        s.wall(0, false).restart("boot-2", 60_000).minutes(3);
        assertThat(s.told("dry")).isEqualTo(1);
    }

    @Test
    void noHoursTakeItOffTheShelf() {
        Story s = brokenContact();
        assertThat(s.ask("a", new Ask.Shelve("dry", 0)).sentence()).contains("is not on the shelf");
        s.ask("a", new Ask.Shelve("dry", 12));
        s.minutes(5);
        assertThat(s.ask("a", new Ask.Shelve("dry", 0)).sentence())
                .startsWith("Cone a: alarm 'dry' is told again.");
        s.seconds(2);
        assertThat(s.told("dry")).isEqualTo(1);
    }

    /** The shelf is not the lock: who opens that is told what stays. */
    @Test
    void whoAcknowledgesIsToldWhetherHeatComesBackAndHowLongTheShelfLasts() {
        Story s = Story.at(Fitting.ROOM_PROBE, Fitting.LEVEL);
        s.senses.water("a", 22).room(22).dead("a");
        s.does(Step.STARTED).minutes(50);
        s.ask("a", new Ask.Shelve("no-effect", 8));
        assertThat(s.ask("a", new Ask.Acknowledge("no-effect")).sentence()).startsWith("Cone a: alarm "
                + "'no-effect' is acknowledged; heat is allowed again and comes back where it is wanted. It "
                + "stays shelved until 17:50, so nobody is called if it comes again before that; 'shelve "
                + "no-effect 0' ends the shelf. Next: ");
        s.ask("b", new Ask.Did(Step.STARTED));
        s.senses.contact("b.level", Level.OPEN);
        s.minutes(20);
        assertThat(s.ask("b", new Ask.Acknowledge("dry")).sentence()).startsWith("Cone b: alarm 'dry' is "
                + "acknowledged; it is not told again while its cause lasts. Next: ");
    }

    @ParameterizedTest
    @EnumSource(AlarmKind.class)
    void whatEndangersPeopleOrAnimalsIsNeverPutAside(AlarmKind k) {
        Story s = Story.at();
        Result.Reply r = s.ask("a", new Ask.Shelve(k.id(), 1));
        assertThat(r.accepted()).isEqualTo(!k.dangerous());
        if (k.dangerous()) {
            assertThat(r.sentence()).contains("cannot be shelved", "may come to harm", "acknowledge it");
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, 12.1, Double.NaN, Double.POSITIVE_INFINITY})
    void itIsAlwaysTimed(double hours) {
        assertThat(Story.at().ask("a", new Ask.Shelve("dry", hours)).sentence())
                .contains("give a number from 0 to 12.");
    }

    @Test
    void whatNobodyDeclaredIsRefusedWithWhatThereIs() {
        assertThat(Story.at().ask("a", new Ask.Shelve("dryness", 1)).sentence())
                .contains("there is no alarm 'dryness'; the alarms that can be shelved are room-too-warm,");
    }

    @Test
    void anAlarmOfTheSiteIsShelvedThroughAnyConeOrTheSite() {
        for (String through : new String[] {"b", ""}) {
            Story s = Story.at();
            assertThat(s.ask(through, new Ask.Shelve("clock", 10)).accepted()).isTrue();
            s.wall(0, false).pass(Duration.ofHours(5));
            assertThat(s.told("clock")).isZero();
            assertThat(s.standing("")).contains("clock");
            assertThat(s.ask("c", new Ask.Shelve("clock", 0)).accepted()).isTrue();
            s.seconds(2);
            assertThat(s.told("clock")).isEqualTo(1);
        }
    }

    @Test
    void withoutARecordNothingIsShelved() {
        Story s = brokenContact();
        s.minutes(2);
        s.paper.mood(Paper.Mood.REFUSING);
        s.send("b", new Ask.Did(Step.STARTED));
        s.seconds(5);
        assertThat(s.ask("a", new Ask.Shelve("dry", 2)).sentence()).contains("not recorded, so not done");
        assertThat(s.ask("a", new Ask.Alarms()).accepted()).as("a question needs no record").isTrue();
    }
}

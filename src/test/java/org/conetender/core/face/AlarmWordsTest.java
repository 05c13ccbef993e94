package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.conetender.core.Larkmoor;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** What a person reads of one incident, of many at once, of all of them; and what the second one reads. */
class AlarmWordsTest {

    private static final String SITE = "homie/5/larkmoor/";
    private static final String A = "homie/5/larkmoor-a/";

    private static Map<String, String> tree(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
    }

    private static List<String> alerts(Story s) {
        return tree(s).keySet().stream().filter(t -> t.contains("$alert")).toList();
    }

    /** Nauplii swim in all three cones and the pump that feeds them dies. */
    private static Story pumpDead() {
        Story s = Story.at(Fitting.AIR_PROOF);
        for (String cone : List.of("a", "b", "c")) {
            s.did(cone, Step.STARTED);
            s.did(cone, Step.FIRST_SEEN);
        }
        s.seconds(60);
        for (String cone : List.of("a", "b", "c")) {
            s.senses.contact(cone + ".air-proof", Level.OPEN);
        }
        return s.seconds(40);
    }

    @Test
    void oneIncidentIsOneAlertThatNamesAllItsCones() {
        Story s = pumpDead();
        assertThat(alerts(s)).containsExactly(A + "$alert/air-failed-animals");
        assertThat(tree(s).get(A + "$alert/air-failed-animals")).isEqualTo("Cone a: its air is switched on "
                + "but none arrives, since Mon 09:01; the same in cones b and c. The nauplii suffocate "
                + "within minutes: start the pump, put the hose on, open the air valve. Whoever has seen it "
                + "says: conetender tell a acknowledge air-failed-animals.");
        assertThat(tree(s).get("homie/5/larkmoor-b/hand/alarms")).isEqualTo("1 alarm.\nCone b, "
                + "air-failed-animals: its air is switched on but none arrives, since 09:01; active, not "
                + "acknowledged, follows from air-failed-animals of cone a.");
        assertThat(tree(s).get(SITE + "site/alarms")).startsWith("3 alarms.\nCone a, air-failed-animals: ");
    }

    /** The list says the hour alone while it is today; a message that did would be another the next day. */
    @Test
    void aMessageReadsTheSameTheNextDay() {
        Story s = pumpDead();
        s.minutes(15);
        Moment then = s.now();
        Moment next = new Moment(then.boot(), then.monoMs(), then.wallMs() + 86_400_000, true);
        Map<String, String> later = Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), next);
        for (String topic : List.of(A + "$alert/air-failed-animals", SITE + "site/escalated")) {
            assertThat(tree(s).get(topic)).contains(", since Mon 09:01");
            assertThat(later).containsEntry(topic, tree(s).get(topic));
        }
        assertThat(tree(s).get(A + "hand/alarms")).contains(", since 09:01");
        assertThat(later.get(A + "hand/alarms")).contains(", since Mon 09:01");
    }

    /** New words would call anew; and nobody is to be asked for what was given. */
    @Test
    void anAcknowledgementChangesNoMessageAndIsAskedForNoMore() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED);
        s.senses.contact("a.level", Level.OPEN);
        s.minutes(10);
        String said = tree(s).get(A + "$alert/dry");
        assertThat(said).endsWith(" Whoever has seen it says: conetender tell a acknowledge dry.");
        assertThat(tree(s).get(A + "hand/alarms"))
                .contains("; active, not acknowledged.\n", "\n  To acknowledge: conetender tell a");
        s.ask("a", new Ask.Acknowledge("dry"));
        s.tick();
        assertThat(tree(s)).containsEntry(A + "$alert/dry", said);
        assertThat(tree(s).get(A + "hand/alarms")).endsWith("; active, acknowledged.\n  Heat is off. Fill up "
                + "to the mark, or check the level contact.");
        assertThat(tree(s).get(SITE + "site/alarms")).doesNotContain("o acknowledge");
    }

    /** The water warmed past the guard temperature with the heater at work. */
    private static Story overheated() {
        Story s = new Story(Larkmoor.room(Fitting.MAT).setpoint(30).build());
        s.senses.water("a", 30.2);
        s.does(Step.STARTED);
        for (int i = 0; i < 900 && !s.on("a.heat"); i++) {
            s.tick();
        }
        return ramp(s, 30.2, 31.1, 1);
    }

    /** A hundredth of a degree each so many seconds. */
    private static Story ramp(Story s, double fromC, double toC, int seconds) {
        for (int i = 1; i <= Math.abs(toC - fromC) * 100 + 0.5; i++) {
            s.senses.water("a", fromC + i * Math.copySign(0.01, toC - fromC));
            s.seconds(seconds);
        }
        return s;
    }

    /** A lock asks once more, and says when. */
    @Test
    void whoAcknowledgedBeforeTheCauseIsOverIsAskedOnceMoreAndToldWhen() {
        Story s = overheated();
        assertThat(tree(s).get(A + "hand/alarms")).contains("Cone a, overheat: ");
        s.ask("a", new Ask.Acknowledge("overheat"));
        s.tick();
        assertThat(tree(s).get(A + "hand/alarms")).contains("active, acknowledged, latched until "
                + "acknowledged once more.\n",
                "  To acknowledge once more when its cause is over: conetender tell a acknowledge overheat");
    }

    /** Nobody is ordered to do what is no more to be done. */
    @Test
    void aLockWhoseCauseIsOverSaysSoAndWhatIsStillAsked() {
        Story s = overheated();
        assertThat(tree(s).get(A + "$alert/overheat"))
                .contains("since Mon 09:07. Heat is locked off. Unplug");
        ramp(s, 31.1, 29.5, 2);
        String said = tree(s).get(A + "$alert/overheat");
        assertThat(tree(s).get(A + "hand/alarms")).endsWith("; its cause is over, not acknowledged, latched "
                + "until acknowledged.\n  Find out first why it came, so that it does not come again.\n  To "
                + "acknowledge: conetender tell a acknowledge overheat");
        assertThat(said).as("new words would call").contains("Unplug");
        s.minutes(15);
        assertThat(tree(s).get(A + "$alert/overheat")).isEqualTo("Cone a: the water passed 31.0 °C with the "
                + "heater at work; that is over now, but heat stays locked off until this alarm is "
                + "acknowledged, since Mon 09:07. Find out first why it came, so that it does not come "
                + "again. Whoever has seen it says: conetender tell a acknowledge overheat.");
        ramp(s, 29.5, 31.1, 2);
        assertThat(tree(s).get(A + "$alert/overheat")).as("it may flutter").contains("over now");
        s.minutes(10);
        assertThat(s.told().getLast().kind()).as("it came back, which is told").isEqualTo(AlarmKind.OVERHEAT);
        assertThat(tree(s).get(A + "$alert/overheat")).contains("Unplug").doesNotContain("over now");
    }

    /** While the probe is silent nobody knows whether it is over; that calls nobody. */
    @Test
    void whatWasToldOfALockStaysUntilItIsToldNext() {
        Story s = ramp(overheated(), 31.1, 28, 2);
        for (int i = 0; i < 9; i++) {
            staysTold(s, 120);
            s.senses.probe("a-water", new Reading.Absent());
            staysTold(s, 480);
            s.senses.water("a", 28);
        }
        assertThat(s.told("overheat")).as("after 15 min and an hour").isEqualTo(3);
    }

    /** Of the lock and to the second person, at every second. */
    private static void staysTold(Story s, int seconds) {
        List<String> before = told(s);
        for (int i = 0; i < seconds; i++) {
            long times = s.told("overheat");
            s.tick();
            List<String> now = told(s);
            if (s.told("overheat") == times) {
                assertThat(now).isEqualTo(before);
            }
            before = now;
        }
    }

    private static List<String> told(Story s) {
        return List.of(tree(s).get(A + "$alert/overheat"), tree(s).get(SITE + "site/escalated"));
    }

    @Test
    void whatWasPutRightInASeparationIsCalledOverThoughNobodyHasSeenIt() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE, Step.VALVE_OPEN);
        s.seconds(5);
        assertThat(tree(s).get(A + "$alert/siphon")).contains("Shut the air valve while");
        s.does(Step.VALVE_SHUT).seconds(15);
        assertThat(tree(s).get(A + "$alert/siphon")).startsWith("Cone a: over: stopping the pump")
                .endsWith(", since Mon 09:00. Whoever has seen it says: conetender tell a acknowledge "
                        + "siphon.");
        assertThat(tree(s).get(A + "hand/alarms")).contains("its cause is over, not acknowledged, latched")
                .endsWith(".\n  To acknowledge: conetender tell a acknowledge siphon");
    }

    /** Nobody knows any more when it was over; and new words would call at each start. */
    @Test
    void whatNobodyHasSeenReadsTheSameThroughRestarts() {
        Story s = Story.at(Fitting.SIPHONING);
        s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE, Step.VALVE_OPEN);
        s.seconds(5).does(Step.VALVE_SHUT).seconds(15);
        String said = tree(s).get(A + "$alert/siphon");
        for (String boot : List.of("boot-1", "boot-2", "boot-3")) {
            s.restart(boot, 3_600_000).seconds(2);
            assertThat(tree(s)).containsEntry(A + "$alert/siphon", said);
            s.minutes(30);
            assertThat(tree(s)).containsEntry(A + "$alert/siphon", said);
        }
    }

    /** It leaves the list by itself. */
    @Test
    void whatIsOverAsksNothing() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED);
        s.senses.contact("a.level", Level.OPEN);
        s.minutes(10);
        s.senses.contact("a.level", Level.CLOSED);
        s.seconds(30);
        assertThat(tree(s).get(A + "$alert/dry")).startsWith("Cone a: over since Mon 09:10: ");
        assertThat(tree(s).get(A + "hand/alarms")).endsWith("; its cause is over, not acknowledged.");
    }

    @Test
    void theListIsThereAlsoWhenNothingStands() {
        Story s = Story.at();
        assertThat(tree(s)).containsEntry(SITE + "site/alarms", "No alarm stands.")
                .containsEntry(A + "hand/alarms", "No alarm stands.")
                .containsEntry(SITE + "site/escalated", "\0");
        assertThat(s.ask("", new Ask.Alarms()).sentence()).isEqualTo("No alarm stands.");
    }

    @Test
    void theSecondPersonIsAddressedWhenNobodyAnswersForAQuarterOfAnHour() {
        Story s = pumpDead();
        s.minutes(14);
        assertThat(tree(s)).containsEntry(SITE + "site/escalated", "\0");
        s.minutes(1);
        assertThat(tree(s).get(SITE + "site/escalated")).startsWith("For the neighbour: nobody has answered. "
                + "Cone a: its air is switched on but none arrives, since Mon 09:01; the same in cones b and "
                + "c; with it doubtful in cones a, b and c. The nauplii suffocate");
        s.ask("a", new Ask.Acknowledge("air-failed-animals"));
        s.tick();
        assertThat(tree(s)).containsEntry(SITE + "site/escalated", "\0");
    }

    /** What calls is published anew though it says the same, and nothing else is. */
    @Test
    void whatCallsAPersonIsPublishedAgain() {
        Story s = pumpDead();
        Names names = Names.of("homie", s.settings());
        assertThat(Topics.rung(names, s.messages().getLast())).containsExactly(
                A + "$alert/air-failed-animals");
        s.minutes(16);
        assertThat(Topics.rung(names, s.messages().getLast())).containsExactly(
                A + "$alert/air-failed-animals", SITE + "site/escalated");
        assertThat(Topics.rung(names, storm().messages().getLast())).containsExactly(SITE + "$alert/many");
        assertThat(Topics.everything(s.settings(), names)).contains(SITE + "$alert/many",
                SITE + "site/escalated", A + "hand/alarms", A + "hand/shelve/$target");
    }

    @Test
    void whileTheyAreAwayItIsTheirHelper() {
        Story s = pumpDead();
        s.ask("", new Ask.Away("aunt next door"));
        s.minutes(15);
        assertThat(tree(s).get(SITE + "site/escalated")).startsWith("For aunt next door: nobody has");
    }

    /** Three different things at three cones in one second. */
    private static Story storm() {
        Story s = Story.at(Fitting.AIR_PROOF, Fitting.LEVEL);
        s.did("a", Step.STARTED);
        s.did("b", Step.STARTED);
        s.did("b", Step.FIRST_SEEN);
        s.did("c", Step.STARTED);
        s.minutes(10);
        s.senses.probe("a-water", new Reading.Absent());
        s.senses.contact("c.level", Level.OPEN);
        s.seconds(30);
        s.senses.contact("b.air-proof", Level.OPEN);
        s.unset.add("c.heat");
        return s.minutes(3);
    }

    @Test
    void manyIncidentsAreOneSentenceWithTheDangersFirst() {
        Story s = storm();
        assertThat(tree(s).get(SITE + "$alert/many")).isEqualTo("Larkmoor Fry Room: many alarms at once. "
                + "Danger, go now: air-failed-animals in cone b (the air is switched on but none arrives; "
                + "nauplii swim). Then: dry in cone c. What to do for each: conetender tell "
                + "site alarms.");
        assertThat(s.told("probe")).as("two have rung already").isZero();
        assertThat(tree(s).get(SITE + "site/alarms")).contains("Cone a, probe: ",
                "Cone b, air-failed-animals", "Cone c, heater-stuck: ", "Unplug the heater now",
                "Cone c, dry: ");
    }

    @Test
    void thatSentenceStaysAsItWasUntilAllOfItIsOver() {
        Story s = storm();
        String said = tree(s).get(SITE + "$alert/many");
        s.senses.contact("b.air-proof", Level.CLOSED);
        s.minutes(2);
        assertThat(s.standing("b")).isEmpty();
        assertThat(tree(s)).containsEntry(SITE + "$alert/many", said);
        s.senses.contact("c.level", Level.CLOSED);
        s.minutes(2);
        assertThat(tree(s)).doesNotContainKey(SITE + "$alert/many");
    }
}

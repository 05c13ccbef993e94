package org.conetender.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The page that {@code watch} and {@code demo} show, letter by letter. */
class ScreenTest {

    private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-03-02T22:00:00Z");

    private static List<String> page(Published p, int width) {
        return Screen.of(p.view("a"), frame(width, "Mon 22:00"));
    }

    private static Screen.Frame frame(int width, String head) {
        return new Screen.Frame(new Terminal.Size(width, 100), false, NOW, new Screen.Around(head, "", ""));
    }

    @Test
    void aConeThatGrows() {
        Published p = new Published().incubating("a")
                .says("/feed/digest", "For the feed at Tue 12:30: cone a at Tue 10:40.")
                .says("/room/temperature", "19.6").says("/site/clock", "trusted");
        assertThat(String.join("\n", page(p, 78))).isEqualTo("""
                Larkmoor Fry Room                                                    Mon 22:00
                For the feed at Tue 12:30: cone a at Tue 10:40.
                Room 19.6 °C

                Cone a  incubating  ██████████░░░░░░░░  212-224 of 380 °C·h, about 3 % hatched
                  ready   Tue 10:40, in 8 of 10 cases between Tue 05:10 and Tue 14:20
                  water   26.9 °C, set-point 27.0 °C · heat on (31 % of the time) · air on
                          (not verified) · lamp off
                  next    nothing; it is growing.""");
    }

    /** Once it is ready the question is how long that lasts. */
    @Test
    void aReadyBatchShowsHowLongItsFoodLasts() {
        Published p = new Published().incubating("a")
                .says("-a/hatch/food-most-at", "2026-03-03T12:40:00+00:00")
                .says("-a/hatch/food-until", "2026-03-03T16:05:00+00:00");
        assertThat(page(p, 78)).noneMatch(l -> l.contains("food"));
        assertThat(ViewJson.of(p.view("a"))).contains("\"food-until\":\"2026-03-03T16:05Z\"");
        p.says("-a/hatch/ready-at", null);
        assertThat(page(p, 78)).contains("  food    most about Tue 12:40, 95 % of it until Tue 16:05");
    }

    @Test
    void theHalfOfAllCasesAndTwoHarvestsStandWhereTheWindowIsTallEnough() {
        Published p = new Published().incubating("a")
                .says("-a/hatch/ready-half-from", "2026-03-03T08:02:00+00:00")
                .says("-a/hatch/ready-half-until", "2026-03-03T12:09:00+00:00")
                .says("-a/hatch/harvest-first-at", "2026-03-03T06:30:00+00:00")
                .says("-a/hatch/harvest-first-share", "41")
                .says("-a/hatch/harvest-second-at", "2026-03-03T19:45:00+00:00")
                .says("-a/hatch/ready-by-chance", "64");
        assertThat(page(p, 78)).contains("          in 5 of 10 cases between Tue 08:02 and Tue 12:09",
                "  twice   it hatches over long: harvest about Tue 06:30 (41 %) and the rest",
                "          about Tue 19:45");
        assertThat(ViewJson.of(p.view("a"))).contains("\"ready-half-from\":\"2026-03-03T08:02Z\"",
                "\"ready-half-until\":\"2026-03-03T12:09Z\"", "\"harvest-first-at\":\"2026-03-03T06:30Z\"",
                "\"harvest-first-share-percent\":41", "\"harvest-second-at\":\"2026-03-03T19:45Z\"",
                "\"ready-by-chance-percent\":64");
    }

    @Test
    void whatIsKnownExactlyIsOneFigure() {
        Published p = new Published().incubating("a").says("-a/hatch/degree-hours-least", "218.0")
                .says("-a/hatch/degree-hours-most", "218.1");
        assertThat(page(p, 78)).anyMatch(l -> l.contains(" 218 of 380 °C·h"));
        // An older daemon does not say how sure it is.
        p.says("-a/hatch/degree-hours-least", null).says("-a/hatch/degree-hours-most", null);
        assertThat(page(p, 78)).anyMatch(l -> l.contains(" 218 of 380 °C·h"));
    }

    /** What is shelved or follows from another is no alert; it stands there all the same. */
    @Test
    void whatNobodyIsCalledForIsListed() {
        String list = "Cone a, dry: low, since 21:40; active, follows from probe.";
        Published p = new Published().incubating("a").says("-a/hand/alarms", "1 alarm.\n" + list);
        assertThat(page(p, 100)).contains("  alarms  1 alarm.", "          " + list);
        p.says("-a/hand/alarms", "1 alarm.\n" + list + "\n  To acknowledge: tell");
        assertThat(page(p, 100)).contains("          " + list, "          To acknowledge: tell");
        assertThat(ViewJson.of(p.view("a"))).contains("\"alarms\":\"1 alarm.\\n" + list);
        p.says("-a/$alert/probe", "Cone a: no probe answers.");
        assertThat(page(p, 100)).noneMatch(l -> l.contains("alarms"));
        p.says("-a/$alert/probe", null).says("-a/hand/alarms", "No alarm stands.");
        assertThat(page(p, 100)).noneMatch(l -> l.contains("alarm"));
        assertThat(ViewJson.of(p.view("a"))).doesNotContain("alarms");
    }

    /** Also beside an alarm that calls. */
    @Test
    void whatIsShelvedIsListedWhereTheAlarmsAre() {
        Published p = new Published().incubating("a").says("-a/hand/alarms",
                "No alarm stands. Shelved: cone a dry until 06:23.")
                .says("/site/alarms", "No alarm stands. Shelved: clock until 07:00, cone a dry until 06:23.");
        assertThat(page(p, 100)).contains("  alarms  No alarm stands. Shelved: cone a dry until 06:23.",
                "Shelved: clock until 07:00.");
        p.says("-a/$alert/probe", "Cone a: no probe answers.").says("-a/hand/alarms", "1 alarm. Cone a, "
                + "probe: no probe answers; active. Shelved: cone a dry until 06:23.");
        assertThat(page(p, 100)).contains("  ! Cone a: no probe answers.",
                "  alarms  Shelved: cone a dry until 06:23.");
    }

    /** One that stands says so in its own line of the list, which an alert of the same cone takes away. */
    @Test
    void whatStandsOnTheShelfIsNamedBesideAnotherAlertOfItsCone() {
        String dry = "\nCone a, dry: low; that is over, since 21:40; active, not acknowledged, shelved until "
                + "Tue 23:00, follows from probe.";
        Published p = new Published().incubating("a").says("-a/$alert/probe", "Cone a: no probe answers.")
                .says("-a/hand/alarms", "2 alarms." + dry + "\nCone a, probe: no probe answers, since 21:40; "
                        + "active, not acknowledged.\nShelved: cone a late until 06:23.")
                .says("/site/alarms", "2 alarms." + dry + "\nLarkmoor, its Fry Room, clock: not set, since "
                        + "21:40; active, shelved until 07:00.\n  Check the network.");
        assertThat(page(p, 100)).contains(
                "  alarms  Shelved: cone a dry until Tue 23:00, cone a late until 06:23.",
                "Shelved: clock until 07:00.");
    }

    @Test
    void whatIsWrongStandsOutInWords() {
        Published p = new Published().incubating("a").says("-a/water/temperature", null)
                .says("-a/water/trust", "untrusted").says("-a/water/why", "the probe does not answer")
                .says("-a/water/held", null).says("-a/heat/on", "false")
                .says("-a/heat/vetoed", "no trusted temperature").says("-a/air/proven", "failed")
                .says("-a/hatch/doubt", "Look before feeding: the power was off for about 60 min.")
                .says("-a/hatch/feed-missed", "It was to be ready for the feed at 12:30 and will not be: now "
                        + "it is about 13:10.")
                .says("-a/$alert/probe", "Cone a: no probe answers, since 21:40. Heat is off meanwhile.");
        assertThat(page(p, 78)).contains(
                "  ! Look before feeding: the power was off for about 60 min.",
                "  ! It was to be ready for the feed at 12:30 and will not be: now it is about",
                "    13:10.",
                "  ! Cone a: no probe answers, since 21:40. Heat is off meanwhile.",
                "  water   not known (the probe does not answer) · heat off (withheld: no");
        assertThat(String.join(" ", page(p, 200)))
                .contains("heat off (withheld: no trusted temperature) · air on (failed)");
    }

    @Test
    void ofAirThatIsMeantToBeOffNothingIsToBeProven() {
        for (String proof : List.of("failed", "unverified", "proven")) {
            assertThat(page(new Published().incubating("a").says("-a/air/on", "false")
                    .says("-a/air/proven", proof), 200)).anyMatch(l -> l.contains(" · air off · lamp off"));
        }
    }

    /** In a window of 24 rows one sentence is enough: the one that says what to do. */
    @Test
    void aDoubtThatIsToldAsAnAlarmStandsThereOnce() {
        String why = "no air was seen to arrive for more than 14 min with nauplii in the water";
        Published p = new Published().incubating("a").says("-a/hatch/doubt", "Look before feeding: " + why
                + ".").says("-a/$alert/doubtful", "Cone a: " + why + ", since 21:40. Look before feeding.");
        assertThat(page(p, 200)).contains("  ! Cone a: " + why + ", since 21:40. Look before feeding.")
                .filteredOn(l -> l.contains(why)).hasSize(1);
        p.says("-a/hatch/doubt", "Look before feeding: " + why + "; the power was off.");
        assertThat(page(p, 200)).as("of two reasons").filteredOn(l -> l.contains(why)).hasSize(2);
        p.says("-a/hatch/doubt", "Do not feed it: " + why + ".");
        assertThat(page(p, 200)).as("which says more").filteredOn(l -> l.contains(why)).hasSize(2);
        p.says("-a/hatch/doubt", "Look before feeding: " + why + ".").says("-a/$alert/doubtful", null);
        assertThat(page(p, 200)).as("once nobody is called any more")
                .contains("  ! Look before feeding: " + why + ".");
    }

    @Test
    void aSiteWithoutItsDaemonSaysThatItMayBeOld() {
        assertThat(page(new Published().incubating("a").says("/$state", "lost"), 78))
                .contains("No daemon keeps this true at present: the state is 'lost'. What is shown may",
                        "be old. To start it, on its board: sudo systemctl start conetender")
                .first().asString().endsWith("lost, Mon 22:00");
        assertThat(page(new Published().incubating("a").says("/$state", "init"), 78))
                .contains("The daemon is starting. What is shown may be old.");
        assertThat(Screen.of(new Published().view(), frame(78, "")))
                .contains("No cones are described.");
    }

    /** In a window of 24 rows the others need the room. */
    @Test
    void conesThatWaitForTheSameShareTheirLines() {
        Published p = new Published().incubating("b");
        for (String idle : new String[] {"a", "c"}) {
            p.says("-" + idle + "/hatch/stage", "clean").says("-" + idle + "/hand/next-step", "fill it.")
                    .says("-" + idle + "/hand/alarms", "No alarm stands.")
                    .says("-" + idle + "/water/trust", "trusted");
        }
        assertThat(Screen.of(p.view("a", "b", "c"), frame(78, "")))
                .contains("Cones a and c  clean", "  next    fill it.")
                .noneMatch(l -> l.startsWith("Cone a") || l.startsWith("Cone c"));
        p.says("-c/hand/alarms", "1 alarm. Cone c, wet-contact: it says wet; active, not acknowledged.");
        assertThat(Screen.of(p.view("a", "b", "c"), frame(78, ""))).as("not one that has an alarm")
                .contains("Cone a  clean", "Cone c  clean");
    }

    /** Cones without a heater ask for something else than the first one does. */
    @Test
    void conesThatWaitForSomethingElseShareTheirLinesToo() {
        Published p = new Published();
        for (String idle : List.of("a", "b", "c", "d", "e")) {
            p.says("-" + idle + "/hatch/stage", "clean").says("-" + idle + "/water/trust", "trusted")
                    .says("-" + idle + "/hand/next-step",
                            "cd".contains(idle) ? "fill it." : "fill, plug in.");
        }
        assertThat(Screen.of(p.view("a", "b", "c", "d", "e"), frame(78, "")))
                .containsSubsequence("Cones a, b and e  clean", "  next    fill, plug in.",
                        "Cones c and d  clean", "  next    fill it.")
                .noneMatch(l -> l.startsWith("Cone "));
        p.says("-d/hand/next-step", "wait.");
        assertThat(Screen.of(p.view("a", "b", "c", "d", "e"), frame(78, "")))
                .contains("Cones a, b and e  clean", "Cone c  clean", "Cone d  clean");
    }

    @Test
    void noLineIsWiderThanTheTerminal() {
        Published p = new Published().incubating("a").says("-a/hand/next-step",
                "let the first 20 to 50 mL go, draw the orange layer into the sieve, stop before the shells, "
                + "shut the drain; then report 'drained', or 'part-drawn' to leave the rest.")
                .says("-a/$alert/x", "a".repeat(300));
        for (int width = 40; width < 200; width++) {
            int most = width;
            assertThat(page(p, width)).as("width " + width).allMatch(l -> l.length() <= most);
        }
    }
}

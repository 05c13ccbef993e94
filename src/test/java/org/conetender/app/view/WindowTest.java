package org.conetender.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.face.Names;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a keeper sees fits the window, title and alarms first, and says how things stand and why. */
class WindowTest {

    private static final String ROOT = "homie/5/larkmoor";
    private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-03-03T14:10:00Z");
    private static final String FOOT = "Ctrl-C ends the demonstration. Elsewhere: conetender watch --broker "
            + "mqtt://127.0.0.1:40757 --site larkmoor";

    private final Map<String, String> topics = new TreeMap<>();

    WindowTest() {
        topics.put(ROOT + "/$state", "ready");
        topics.put(ROOT + "/feed/digest", "For the feed at 18:00: cone b is ready, cone c is ready.");
        topics.put(ROOT + "/room/temperature", "21.8");
        for (String cone : List.of("a", "b", "c")) {
            say(cone, "hatch/stage", "hydrating", "hatch/degree-hours", "12.0", "hatch/degree-hours-needed",
                    "376.0", "hatch/hatched", "0", "hatch/ready-at", "2026-03-04T14:35:00Z",
                    "hatch/ready-from", "2026-03-04T06:05:00Z", "hatch/ready-until", "2026-03-04T18:49:00Z",
                    "water/temperature", "27.0", "water/setpoint", "27", "water/held", "27",
                    "water/trust", "trusted", "heat/on", "true", "heat/duty", "31", "air/on", "true",
                    "air/proven", "unverified", "lamp/on", "false",
                    "hand/next-step", "after an hour or two swirl stuck cysts back in.");
        }
    }

    private void say(String cone, String... pairs) {
        for (int i = 0; i < pairs.length; i += 2) {
            topics.put(ROOT + "-" + cone + "/" + pairs[i], pairs[i + 1]);
        }
    }

    private SiteView site() {
        return SiteView.of(topics, new Names("homie", "larkmoor"), List.of("a", "b", "c"),
                Optional.of("Larkmoor Fry Room"));
    }

    private static Screen.Frame frame(int columns, int rows, String head) {
        return new Screen.Frame(new Terminal.Size(columns, rows), false, NOW,
                new Screen.Around(head, "", FOOT));
    }

    private List<String> page(int columns, int rows) {
        return Screen.of(site(), frame(columns, rows, "Tue 14:10, simulated, 900 times as fast"));
    }

    private String words(int columns, int rows) {
        return String.join(" ", page(columns, rows)).replaceAll("\\s+", " ");
    }

    /** A real one, with its longest what. */
    private static String sentence(String cone, AlarmKind kind) {
        return "Cone " + cone + ": the reading jumped from 27.0 to 22.1 °C, as a probe does that left the "
                + "water, since 14:05. " + kind.todo();
    }

    @ParameterizedTest
    @CsvSource({"80, 24", "96, 24", "96, 40", "60, 24", "40, 50"})
    void anAlarmIsShownToItsEnd(int columns, int rows) {
        for (AlarmKind kind : AlarmKind.values()) {
            say("b", "$alert/" + kind.id(), sentence("b", kind));

            assertThat(words(columns, rows)).as(kind.id()).contains(sentence("b", kind))
                    .doesNotContain("…");
            topics.remove(ROOT + "-b/$alert/" + kind.id());
        }
    }

    @ParameterizedTest
    @CsvSource({"80, 24", "80, 10", "96, 24", "40, 24", "200, 60", "80, 2", "80, 1"})
    void thePageFitsTheWindowAndBeginsWithItsTitle(int columns, int rows) {
        topics.put(ROOT + "/$state", "lost");
        say("a", "$alert/crash-loop", sentence("a", AlarmKind.CRASH_LOOP));
        say("c", "$alert/late", sentence("c", AlarmKind.LATE));

        List<String> page = page(columns, rows);

        assertThat(page).hasSizeLessThanOrEqualTo(rows).allMatch(l -> l.length() <= columns);
        assertThat(page.getFirst()).contains("lost, Tue 14:10").satisfies(t -> assertThat(columns < 60
                || t.startsWith("Larkmoor Fry Room  ") && t.endsWith("900 times as fast")).as(t).isTrue());
    }

    @Test
    void anAlarmIsShownAsTheListHasItByNow() {
        say("b", "$alert/dry", "Cone b: the water is low, since 14:05. Heat is off. Whoever has seen it "
                + "says: conetender tell b acknowledge dry.");
        say("b", "hand/alarms", "2 alarms.\nCone b, dry: the water is low, since 14:05; active, seen.\n"
                + "  Heat is off.\nCone b, probe: silent; active, follows from dry of cone b.\nShelved: x.");
        topics.put(ROOT + "/$alert/late", "Larkmoor Fry Room: it runs late, since 14:00. Restart it.");
        topics.put(ROOT + "/site/alarms", "4 alarms.\nLarkmoor Fry Room, late: it runs late, since 14:00; "
                + "active, not acknowledged.\n  Restart it.\n  To acknowledge: say so\nLarkmoor Fry Room, "
                + "record: slow; active, follows from late.\nCone b, dry: the water is low, since 14:05; "
                + "active, seen.\n  Heat is off.\nCone b, probe: silent; active, follows from dry of "
                + "cone b.\nCone c, probe: silent: no answer; active, follows from late.");

        assertThat(words(80, 40)).contains("! Cone b, dry: the water is low, since 14:05; active, seen. Heat "
                + "is off. With it: probe of cone b. alarms Shelved: x.",
                "! Larkmoor Fry Room, late: it runs late, since 14:00; "
                + "active, not acknowledged. Restart it. To acknowledge: say so With it: "
                + "record, probe of cone c. Room")
                .doesNotContain("Whoever");
    }

    @Test
    void whatIsHiddenIsCounted() {
        List<String> all = page(80, 100);
        long told = all.stream().filter(l -> !l.isEmpty()).count();

        List<String> some = page(80, 16);

        long shown = some.stream().filter(l -> !l.isEmpty()).count() - 1;
        assertThat(some.getLast()).isEqualTo((told - shown) + " lines hidden: make the window taller.");
        assertThat(String.join("\n", all)).doesNotContain("hidden").contains("--site larkmoor");
    }

    @Test
    void whatMattersLeastGoesFirst() {
        say("c", "$alert/air-failed-animals", sentence("c", AlarmKind.AIR_FAILED_ANIMALS));

        assertThat(words(80, 17)).contains(sentence("c", AlarmKind.AIR_FAILED_ANIMALS), "Cone a hydrating",
                "Cone b hydrating", "Cone c hydrating", "ready Wed 14:35")
                .doesNotContain("Ctrl-C", "Room 21.8");
        assertThat(words(80, 5)).contains(sentence("c", AlarmKind.AIR_FAILED_ANIMALS))
                .doesNotContain("Cone a");
    }

    @Test
    void aLongNameGivesWayToTheHour() {
        SiteView s = site();
        SiteView long_ = new SiteView("The room behind the old mill at Larkmoor where the fry are", s.state(),
                s.notes(), s.cones(), s.alerts());

        assertThat(Screen.of(long_, frame(80, 24, "Tue 14:10, simulated, 900 times as fast")).getFirst())
                .hasSize(80).endsWith("… " + " Tue 14:10, simulated, 900 times as fast");
    }

    @Test
    void aReadyConeIsSeenToBeKeptCoolOnPurpose() {
        say("a", "hatch/stage", "ready", "water/temperature", "23.9", "water/held", "20", "heat/on", "false",
                "heat/duty", "0");

        assertThat(words(100, 40)).contains("water 23.9 °C, kept above 20.0 °C until the harvest · heat off "
                + "(warm enough) · air on");
    }

    @Test
    void aHeaterThatIsOffSaysWhy() {
        say("a", "heat/on", "false", "heat/duty", "25", "heat/limited",
                "gently at first, until the water is seen to warm");
        say("b", "heat/on", "false", "heat/duty", "40", "heat/vetoed", "the site's 60 W are taken");
        say("c", "heat/on", "false", "heat/duty", "0", "hatch/stage", "settling");
        topics.remove(ROOT + "-c/water/held");

        assertThat(words(120, 60)).contains("heat off in between (on 25 % of the time; gently at first, "
                + "until the water is seen to warm)", "heat off (withheld: the site's 60 W are taken)",
                "water 27.0 °C · heat off · air on");
    }

    @Test
    void aConeWithoutALampShowsNone() {
        topics.remove(ROOT + "-b/lamp/on");

        assertThat(words(120, 60)).contains("· lamp off");
        topics.keySet().removeIf(t -> t.endsWith("/lamp/on"));
        assertThat(words(120, 60)).contains("air on (not verified)").doesNotContain("lamp");
    }

    @Test
    void aConeWithoutAHeaterShowsNone() {
        topics.keySet().removeIf(t -> t.startsWith(ROOT + "-b/heat/") || t.equals(ROOT + "-b/water/held"));

        assertThat(words(120, 60)).contains("water 27.0 °C · air on (not verified) · lamp off");
    }

    @Test
    void doubtIsPutInPlainWords() {
        say("a", "water/trust", "projected");
        topics.remove(ROOT + "-b/water/temperature");
        say("b", "water/trust", "untrusted", "water/why", "the probe has gone silent");

        assertThat(words(120, 60)).contains("27.0 °C a moment ago (its probe is silent)",
                "not known (the probe has gone silent)").doesNotContain("projected", "untrusted");
    }

    @Test
    void withoutItsBrokerThePictureStaysAndSaysHowOldItIs() {
        Kept kept = new Kept();
        kept.saw(site(), NOW.minusSeconds(190));
        List<String> fresh = page(80, 40);

        List<String> old = kept.page(frame(80, 40, "Tue 14:10:00"), "The broker: nothing listens there.");

        assertThat(old.getFirst()).endsWith("  old, Tue 14:10:00");
        assertThat(String.join(" ", old)).contains("The broker: nothing listens there. Trying again. This "
                + "picture is of Tue 14:06:50, 3 min ago.");
        assertThat(old).containsAll(fresh.subList(1, fresh.size()));
    }

    @Test
    void aBrokerThatForgotEverythingDoesNotEmptyThePicture() {
        Kept kept = new Kept();
        SiteView before = site();
        kept.saw(before, NOW);
        SiteView empty = SiteView.of(Map.of(), new Names("homie", "larkmoor"), List.of(), Optional.empty());

        kept.saw(empty, NOW.plusSeconds(5));

        assertThat(kept.shows(empty)).isFalse();
        assertThat(String.join("\n", kept.page(frame(80, 40, ""), "Nobody is there.")))
                .contains("Cone c  hydrating", "0 s ago");
    }
}

package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.adapter.mqtt.Eventually;
import org.conetender.adapter.sqlite.SqliteStore;
import org.conetender.app.TestBench.Told;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.hatch.Development;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.conetender.homie.Homie5Checker;
import org.conetender.port.Store;
import org.junit.jupiter.api.Test;

/** The real process on a folder that looks like a board, a real broker, and a person at the keyboard. */
class DaemonEndToEndTest extends OnTheBench {

    /** What one minute at 30 °C is worth, °C·h: 18 K above 12 °C for a sixtieth of an hour. */
    private static final double A_MINUTES_WORTH = 0.3;

    private void started() throws IOException {
        bench.start();
        bench.shows("the daemon is there", "\"state\":\"ready\".*\"water-c\":.*\"water-c\":.*");
    }

    @Test
    void aStepIsRecordedOutputsSwitchAndNonsenseChangesNothing() throws IOException, Store.StoreException {
        started();
        connect();
        assertThat(violations(tree())).isEmpty();

        ended(1, bench.command("tell", "z", "started"), "There is no cone 'z' here; the cones are a, b.");
        ended(1, bench.command("tell", "a", "drawing"), "Cone a: ");
        ended(2, bench.command("tell", "a", "dance"), "there is no step 'dance'; the steps are started, ");
        ended(2, bench.command("tell", "a", "filled", "litres=lots"),
                "'litres' must be a number, not 'lots'");
        ended(1, bench.command("tell", "z", "started", "--socket", bench.socket().toString()),
                "There is no cone 'z'");
        assertThat(bench.command("tell", "site", "alarms")).isEqualTo(new Told(0, "No alarm stands.\n"));
        assertThat(bench.command("tell", "a", "alarms", "--socket", bench.socket().toString()))
                .isEqualTo(new Told(0, "No alarm stands.\n"));
        assertThat(bench.command("tell", "a", "shelve", "one-probe", "2").code()).isZero();
        ended(1, bench.command("tell", "a", "shelve", "welded", "2"), "cannot be shelved");
        Told usual = bench.command("tell", "b", "usual", "lot=L-0500", "cysts-g=1", "ppt=30");
        assertThat(usual.text().lines()).as(usual.text()).singleElement().asString()
                .contains(" at 30 ppt with 1 g of lot L-0500. Next: ");
        nonsense();
        assertThat(tree()).containsEntry(ROOT + "-a/hatch/stage", "clean")
                .containsEntry(ROOT + "-b/hatch/stage", "clean");

        assertThat(bench.command("tell", "a", "started")).isEqualTo(new Told(0,
                "Cone a: 'started' is recorded. Taken as usual: 2 g of lot L-0417 in 2 L at 25 ppt. Next: "
                + "after an hour or two swirl stuck cysts back in, with the heater unplugged meanwhile. "
                + "At its harvest, at 27 °C, "
                + "the air may be off for 10 min at most, 12 min while you draw.\n"));
        Told near = bench.command("tell", "b", "started", "--socket", bench.socket().toString());
        assertThat(near.code()).as(near.text()).isZero();
        Eventually.holds("heat goes on, its cut-out first; " + bench.lines(), 120, () ->
                "on".equals(bench.outputs().get("a.cut-out"))
                && bench.lines().stream().anyMatch(l -> l.startsWith("a.heat on")));
        assertThat(violations(tree())).isEmpty();

        assertThat(bench.signal("INT")).as(bench.log()).isEqualTo(130);
        assertThat(bench.outputs().values()).as("every output is safe").containsOnly("off");
        Eventually.holds("goodbye", 5, () -> "disconnected".equals(tree().get(ROOT + "/$state")));
        assertThat(bench.facts()).extracting(Fact::change)
                .contains(new Change.Told(new Ask.Did(Step.STARTED)))
                .noneMatch(c -> c.toString().contains("DRAWING"));
        assertThat(bench.command("tell", "a", "drained").code()).as("nobody is there to answer").isEqualTo(3);
    }

    /**
     * What is not known has no value, since a stale one is worse than none (mqtt.md): of all that the
     * checker finds, only that is no violation here.
     */
    static List<String> violations(Map<String, String> retained) {
        return Homie5Checker.check(retained).stream()
                .filter(v -> !v.endsWith("is described but has no value")).toList();
    }

    /** As a stranger's client may send it. */
    private void nonsense() throws IOException {
        for (String[] m : new String[][] {{"hand/step", "dance"}, {"hand/filled", "{\"litres\":"},
            {"water/setpoint", "hot"}, {"hatch/stage", "ready"}, {"hand/filled", "[1,2]"}}) {
            site.say(ROOT + "-a/" + m[0] + "/set", m[1]);
            String needle = m[0].equals("hatch/stage") ? "cannot be set" : "Not understood";
            Eventually.holds("a clear sentence for " + m[1], 10,
                    () -> tree().getOrDefault(ROOT + "-a/hand/answer", "").contains(needle));
        }
    }

    private static void ended(int code, Told told, String sentence) {
        assertThat(told.text()).contains(sentence);
        assertThat(told.code()).isEqualTo(code);
    }

    @Test
    void afterAKillItStandsWhereItStood() throws IOException, Store.StoreException {
        double before = history();
        bench.water(TestBench.PROBE_A, "30000");
        started();
        connect();
        assertThat(bench.command("tell", "b", "filled", "litres=2", "ppt=25").code()).isZero();
        Eventually.holds("it goes on developing", 20, () -> degreeHours("") >= before);
        bench.kill();
        Eventually.holds("the broker says lost", 10, () -> "lost".equals(tree().get(ROOT + "/$state")));
        double killed = degreeHours("");
        List<Fact> facts = bench.facts();
        assertThat(facts.getLast().change()).isEqualTo(new Change.Told(new Ask.DidFill(2, 25)));

        // It cooled meanwhile, nobody knows when.
        bench.water(TestBench.PROBE_A, "16000");
        bench.start();
        Eventually.holds("it is back; " + bench.log(), 60,
                () -> "ready".equals(tree().get(ROOT + "/$state")));
        assertThat(tree()).containsEntry(ROOT + "-a/hatch/stage", "hydrating")
                .containsEntry(ROOT + "-b/hatch/stage", "filled");
        Eventually.holds("degree-hours are shown", 20, () -> degreeHours("-most") > 0);
        double least = degreeHours("-least");
        double most = degreeHours("-most");
        // What the last minute brought is not known any more, and is shown as what it may have been.
        assertThat(killed).isBetween(least, most);
        assertThat(most - least).isGreaterThan(0).isLessThan(2 * A_MINUTES_WORTH);
        assertThat(degreeHours("")).isBetween(least, most).isCloseTo(killed, within(A_MINUTES_WORTH));
        assertThat(bench.command("watch", "--once").text())
                .containsPattern("^.* \\w{3} \\d\\d:\\d\\d:\\d\\d on this computer\n")
                .containsPattern("hydrating .* \\d+(-\\d+)? of \\d+ °C·h");
        assertThat(bench.command("tell", "a", "swirled").code()).isEqualTo(2);

        assertThat(bench.signal("TERM")).as(bench.log()).isEqualTo(143);
        assertThat(bench.outputs().values()).containsOnly("off");
        assertThat(bench.facts().subList(0, facts.size())).isEqualTo(facts);
    }

    @Test
    void whoTellsWhileTheBrokerIsAwayIsHeardThroughTheSocket() throws IOException {
        started();
        broker.stop();
        Told told = bench.command("tell", "a", "started");
        assertThat(told.text()).containsPattern("^The broker: .*[.?] Trying the local socket\\.\n")
                .contains("Cone a: 'started' is recorded.");
        assertThat(told.code()).isZero();
        ended(1, bench.command("tell", "a", "drawing"), "nothing has settled yet");
        broker.start();
        connect();
        Eventually.holds("it is shown once the broker is back", 60,
                () -> "hydrating".equals(tree().get(ROOT + "-a/hatch/stage")));
    }

    @Test
    void aConeThatIsConfiguredNoLongerLeavesNothingAtTheBroker() throws IOException {
        started();
        connect();
        Map<String, String> before = tree();
        assertThat(before).containsEntry(ROOT + "-b/$state", "ready");
        assertThat(bench.signal("TERM")).as(bench.log()).isEqualTo(143);
        bench.takeAwayConeB();
        bench.start();
        Eventually.holds("it is back, and cone b is gone; " + bench.log(), 60, () ->
                "ready".equals(tree().get(ROOT + "/$state")) && tree().get(ROOT + "-b/$state") == null);
        Eventually.holds("nothing of it is left", 10,
                () -> tree().keySet().stream().noneMatch(t -> t.startsWith(ROOT + "-b/")));
        assertThat(violations(tree())).isEmpty();
        assertThat(Homie5Checker.checkChange(before, tree())).isEmpty();
        assertThat(tree().get(ROOT + "-a/$description")).isEqualTo(before.get(ROOT + "-a/$description"));
        assertThat(tree().get(ROOT + "/$description")).isNotEqualTo(before.get(ROOT + "/$description"));
    }

    @Test
    void aCorruptReadingNeverBecomesATemperature() throws IOException {
        started();
        connect();
        List<String> published = new CopyOnWriteArrayList<>();
        site.listen((topic, payload) -> {
            if (topic.endsWith("/water/temperature") && !payload.isEmpty()) {
                published.add(payload);
            }
        });
        for (String wrong : List.of("85000", "127937", "", "not a number", "0", "99999999999", "-999999")) {
            bench.water(TestBench.PROBE_A, wrong);
            site.await(() -> false, 3_000);
        }
        assertThat(tree().get(ROOT + "-a/water/trust")).isNotEqualTo("trusted");
        bench.water(TestBench.PROBE_A, "21000");
        Eventually.holds("a good reading is believed again", 240,
                () -> "trusted".equals(tree().get(ROOT + "-a/water/trust")));
        assertThat(tree()).containsEntry(ROOT + "-a/water/temperature", "21.0");
        assertThat(published).allMatch("21.0"::equals);
    }

    /** A batch that was stocked a while ago in this boot, with its last checkpoint half a minute old. */
    private double history() throws Store.StoreException {
        Moment now = new LinuxClock().now();
        Moment then = now.plusMs(-Math.min(40 * 60_000L, now.monoMs() / 2));
        List<Change> changes = List.of(new Change.Told(new Ask.Did(Step.STARTED)),
                new Change.Told(new Ask.DidFill(2, 25)), new Change.Told(new Ask.Did(Step.SALTED)),
                new Change.Told(new Ask.DidStock("L-0417", 2)));
        List<Fact> facts = new ArrayList<>();
        for (Change c : changes) {
            facts.add(new Fact(facts.size() + 1, then, "a", "earlier", c));
        }
        try (SqliteStore store = SqliteStore.open(bench.record())) {
            store.append(facts);
            Moment at = now.plusMs(-Math.min(30_000, now.monoMs() / 4));
            store.minute(new Checkpoint(at, List.of(new Checkpoint.Temperature("a", 30)),
                    List.of(new Checkpoint.ConePoint("a", 1, new Development(9.5, 9.5, 0, 0, 0),
                            new Checkpoint.At(at.boot(), at.monoMs())))));
        }
        return 9.5;
    }

    /** @param which nothing for the middle, {@code -least} or {@code -most} */
    private double degreeHours(String which) {
        return Double.parseDouble(tree().getOrDefault(ROOT + "-a/hatch/degree-hours" + which, "-1"));
    }
}

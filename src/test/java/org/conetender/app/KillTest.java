package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.adapter.mqtt.Eventually;
import org.conetender.adapter.socket.Answer;
import org.conetender.adapter.socket.TellClient;
import org.conetender.adapter.sqlite.SqliteStore;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.hatch.Development;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store;
import org.junit.jupiter.api.Test;

/** The real process is killed without warning, in every stage and in the middle of commits. */
class KillTest extends OnTheBench {

    /** In the middle of commits; with {@code -Dconetender.kills=500} an hour of them. */
    private static final int KILLS = Integer.getInteger("conetender.kills", 5);

    private static final Change FILL = new Change.Told(new Ask.DidFill(2, 25));

    /** A stage that a record can stand in. @param after what the daemon says once it stands there again */
    private record Where(String after, double degreeHours, List<Change> changes) {

        static Where at(String after, double degreeHours, Change... more) {
            List<Change> all = new ArrayList<>(List.of(did(Step.STARTED), FILL,
                    did(Step.SALTED), new Change.Told(new Ask.DidStock("L-0417", 2))));
            all.addAll(List.of(more));
            return new Where(after, degreeHours, all);
        }
    }

    private static Change did(Step step) {
        return new Change.Told(new Ask.Did(step));
    }

    private static Change moved(String stage) {
        return new Change.Moved(stage, "as the test has it");
    }

    /** Every stage, in pairs for the two cones. */
    private static List<Where> everywhere() {
        Change grows = moved("incubating");
        Change hatching = moved("hatching");
        return List.of(new Where("clean", 0, List.of(FILL, did(Step.CLEANED))),
                new Where("filled", 0, List.of(FILL)),
                Where.at("hydrating", 5), Where.at("incubating", 50, grows),
                Where.at("hatching", 250, grows, hatching),
                Where.at("ready", 380, grows, hatching, moved("ready")),
                Where.at("drained", 380, grows, hatching, moved("ready"), did(Step.DRAINED)),
                Where.at("abandoned", 20, did(Step.ABANDONED)),
                // Air that was off comes back at once, and the separation is over.
                Where.at("ready", 380, grows, hatching, did(Step.SETTLE), moved("settled")),
                Where.at("ready", 380, grows, hatching, did(Step.SETTLE), did(Step.DRAWING)));
    }

    @Test
    void inEveryStageItComesBackWhereItStood() throws IOException, Store.StoreException {
        SplittableRandom dice = new SplittableRandom(6);
        List<Where> all = everywhere();
        for (int i = 0; i < all.size(); i += 2) {
            write(all.get(i), all.get(i + 1));
            for (int kills = 0; kills < 2; kills++) {
                bench.start();
                look();
                stands("a", all.get(i).after());
                stands("b", all.get(i + 1).after());
                assertThat(bench.outputs().getOrDefault("a.air-pause", "off")).isEqualTo("off");
                site.await(() -> false, dice.nextInt(1_200));
                bench.kill();
            }
        }
    }

    /** From real separations, not written ones: one cone settles, the other is drawn. */
    @Test
    void killedWhileItSettlesOrIsDrawnTheAirComesBackAndTheBatchIsReady()
            throws IOException, Store.StoreException {
        bothSeparate();
        assertThat(bench.command("tell", "b", "drawing").code()).isZero();
        stands("a", "settling");
        stands("b", "drawing");
        comesBackReady();
    }

    /** The shortest wait that a configuration may ask for is two minutes, and this test waits for it. */
    @Test
    void killedWhenItHasSettledTheAirComesBackAndTheBatchIsReady() throws IOException, Store.StoreException {
        bench.settings(c -> c.replace("  [cone.usual]", "  [cone.timing]\n  settle-min = 2\n  [cone.usual]"));
        bothSeparate();
        site.await(() -> "settled".equals(site.topics().get(ROOT + "-b/hatch/stage")), 150_000);
        stands("a", "settled");
        stands("b", "settled");
        assertThat(bench.outputs()).containsEntry("a.air-pause", "on").containsEntry("b.air-pause", "on");
        comesBackReady();
    }

    private void bothSeparate() throws IOException, Store.StoreException {
        write(everywhere().get(4), everywhere().get(5));
        bench.start();
        look();
        stands("a", "hatching");
        separates("a");
        separates("b");
    }

    private void separates(String cone) {
        assertThat(bench.command("tell", cone, "settle").code()).isZero();
        Eventually.holds("air goes off", 20, () -> "on".equals(bench.outputs().get(cone + ".air-pause")));
    }

    private void comesBackReady() throws IOException {
        bench.kill();
        bench.start();
        look();
        for (String cone : List.of("a", "b")) {
            stands(cone, "ready");
            Eventually.holds("air is back", 20, () -> "off".equals(bench.outputs().get(cone + ".air-pause")));
        }
        assertThat(bench.signal("TERM")).isEqualTo(143);
    }

    @Test
    void whatWasAcknowledgedSurvivesAKillInTheMiddleOfCommitsWhole()
            throws IOException, Store.StoreException {
        write(everywhere().get(0), everywhere().get(5));
        SplittableRandom dice = new SplittableRandom(7);
        Set<String> acknowledged = ConcurrentHashMap.newKeySet();
        for (int round = 0; round < KILLS; round++) {
            bench.start();
            look();
            stands("b", "ready");
            int before = acknowledged.size();
            try (ExecutorService hands = Executors.newFixedThreadPool(4)) {
                String name = "r" + round + "-";
                hands.submit(() -> keepTelling("a", name + "a", List.of("started", "cleaned"), acknowledged));
                for (int h = 0; h < 3; h++) {
                    String other = name + "b" + h + "-";
                    hands.submit(() -> keepTelling("b", other, List.of("topped-up"), acknowledged));
                }
                Eventually.holds("answers come", 60, () -> acknowledged.size() > before + 2);
                site.await(() -> false, dice.nextInt(1_500));
                bench.kill();
            }
            assertThat(bench.facts().stream().map(Fact::source).collect(Collectors.toSet()))
                    .containsAll(acknowledged);
            wholeOrNotAtAll(bench.facts());
        }
        assertThat(acknowledged).hasSizeGreaterThan(10).anyMatch(id -> id.contains("-a"));
    }

    /** One report of {@code started} is four facts. */
    private static void wholeOrNotAtAll(List<Fact> facts) {
        Map<String, List<Change>> bySource = facts.stream().filter(f -> f.source().startsWith("r"))
                .collect(Collectors.groupingBy(Fact::source,
                        Collectors.mapping(Fact::change, Collectors.toList())));
        for (List<Change> told : bySource.values()) {
            boolean started = told.contains(FILL) || told.contains(did(Step.STARTED));
            assertThat(told).satisfies(t -> assertThat(!started || t.containsAll(List.of(did(Step.STARTED),
                    FILL, did(Step.SALTED), new Change.Told(new Ask.DidStock("L-0417", 2))))).isTrue());
        }
    }

    @Test
    void killedThreeTimesWithinTenMinutesItLocksTheHeatersRunsTheAirAndCalls() throws Exception {
        write(everywhere().get(3), everywhere().get(4));
        bench.water(TestBench.PROBE_A, "25500");
        for (int kills = 0; kills < 3; kills++) {
            bench.start();
            look();
            Eventually.holds("it heats, life " + kills, 60, () -> "on".equals(bench.outputs().get("a.heat")));
            if (kills == 2) {
                assertThat(bench.command("tell", "a", "setpoint", "26").code()).isZero();
            }
            bench.kill();
        }
        int before = bench.lines().size();
        bench.start();
        String alert = ROOT + "/$alert/crash-loop";
        Eventually.holds("a person is called", 60, () -> site.topics().getOrDefault(alert, "")
                .contains("the last report ('setpoint' of cone a) was set aside"));
        site.await(() -> false, 8_000);
        assertThat(bench.lines().subList(before, bench.lines().size()))
                .noneMatch(l -> l.startsWith("a.heat on") || l.startsWith("b.heat on"))
                .noneMatch(l -> l.contains("air-pause on"));
        assertThat(site.topics()).containsEntry(ROOT + "-a/water/setpoint", "27");
        assertThat(bench.command("tell", "a", "setpoint", "26").code()).isZero();
        assertThat(bench.command("tell", "a", "acknowledge", "crash-loop").code()).isZero();
        Eventually.holds("it heats again", 60, () -> "on".equals(bench.outputs().get("a.heat")));
        assertThat(bench.signal("TERM")).isEqualTo(143);
        assertThat(bench.facts().getLast().change()).isEqualTo(new Change.Left());
    }

    /** A bit has fallen over in the middle of the record while nobody ran. */
    @Test
    void aDamagedRecordLocksTheHeatersThroughAKillUntilAPersonConfirms() throws Exception {
        write(everywhere().get(3), everywhere().get(4));
        bench.water(TestBench.PROBE_A, "25500");
        try (var db = DriverManager.getConnection("jdbc:sqlite:" + bench.record());
                var s = db.createStatement()) {
            s.execute("UPDATE fact SET wall_ms = wall_ms + 1 WHERE seq = 9");
        }
        String alert = ROOT + "/$alert/record-damaged";
        for (int lives = 0; lives < 2; lives++) {
            bench.start();
            look();
            Eventually.holds("a person is called", 60, () -> site.topics().getOrDefault(alert, "")
                    .contains("8 facts of it could be read"));
            stands("a", "incubating");
            site.await(() -> false, 5_000);
            assertThat(bench.lines()).noneMatch(l -> l.startsWith("a.heat on") || l.startsWith("b.heat on"))
                    .noneMatch(l -> l.contains("air-pause on"));
            if (lives == 0) {
                bench.kill();
            }
        }
        assertThat(bench.command("tell", "a", "acknowledge", "record-damaged").code()).isZero();
        Eventually.holds("it heats again", 60, () -> "on".equals(bench.outputs().get("a.heat")));
        assertThat(bench.signal("TERM")).isEqualTo(143);
        try (var files = Files.list(bench.record().getParent())) {
            assertThat(files.filter(f -> f.getFileName().toString().startsWith("damaged-"))).hasSize(1);
        }
    }

    /** Says one thing after another, round and round, until nobody answers any more. */
    private void keepTelling(String cone, String name, List<String> steps, Set<String> acknowledged) {
        for (int i = 0; i < 500; i++) {
            String id = name + i;
            try {
                Answer answer = TellClient.tell(bench.socket(), cone + " " + steps.get(i % steps.size())
                        + " id=" + id, Duration.ofSeconds(15));
                if (answer.kind() == Answer.Kind.OK) {
                    acknowledged.add(id);
                }
            } catch (IOException e) {
                return;
            }
        }
    }

    private void stands(String cone, String stage) {
        String topic = ROOT + "-" + cone + "/hatch/stage";
        site.await(() -> stage.equals(site.topics().get(topic))
                && "ready".equals(site.topics().get(ROOT + "/$state")), 30_000);
        assertThat(site.topics()).as(bench.log()).containsEntry(topic, stage)
                .containsEntry(ROOT + "/$state", "ready");
    }

    /** Begins to look once the daemon has described itself. */
    private void look() throws IOException {
        if (site == null) {
            bench.shows("the daemon is there", "\"state\":\"ready\".*");
            connect();
        }
        Eventually.holds("it lives; " + bench.log(), 60, () -> bench.listens()
                && "ready".equals(site.topics().get(ROOT + "/$state")));
    }

    /** A fresh record in which the two cones stand so. */
    private void write(Where a, Where b) throws IOException, Store.StoreException {
        try (var old = Files.list(bench.record().getParent())) {
            for (Path p : old.toList()) {
                Files.delete(p);
            }
        }
        Moment now = new LinuxClock().now();
        Moment then = now.plusMs(-Math.min(TimeUnit.MINUTES.toMillis(2), now.monoMs() / 2));
        List<Fact> facts = new ArrayList<>();
        a.changes().forEach(c -> facts.add(new Fact(facts.size() + 1, then, "a", "", c)));
        b.changes().forEach(c -> facts.add(new Fact(facts.size() + 1, then, "b", "", c)));
        try (SqliteStore store = SqliteStore.open(bench.record())) {
            store.append(facts);
            store.minute(new Checkpoint(now, List.of(new Checkpoint.Temperature("a", 21),
                    new Checkpoint.Temperature("b", 21)), List.of(point("a", a, now), point("b", b, now))));
        }
    }

    private static Checkpoint.ConePoint point(String cone, Where w, Moment now) {
        return new Checkpoint.ConePoint(cone, 1, new Development(w.degreeHours(), w.degreeHours(), 0, 0, 0),
                new Checkpoint.At(now.boot(), now.monoMs()), OptionalDouble.empty(),
                Optional.of(new Checkpoint.Air(0, 0)));
    }
}

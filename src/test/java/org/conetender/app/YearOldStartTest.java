package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.adapter.mqtt.Eventually;
import org.conetender.adapter.sqlite.SqliteStore;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;
import org.junit.jupiter.api.Test;

/** The real process, from its start to the first beat of its heart, with a year of eight cones behind it. */
class YearOldStartTest extends OnTheBench {

    /** Starts of each kind, by turns; the middle one counts, for the machine has other work too. */
    private static final int STARTS = 5;
    /** A batch in a day and a half (guess). */
    private static final int BATCHES = 243;
    /** Batches between two power cuts (guess: one in a week and a bit). */
    private static final int A_WEEK = 5;
    /** Changes of a batch until it grows. */
    private static final int GROWING = 5;
    /** The aim is 1.5; 1.3 to 1.55 were found where seven waited for two processors, and 1.8 before. */
    private static final double MOST = 1.75;

    @Test
    void aYearOfHistoryMakesTheFirstDecisionLittleLater() throws Exception {
        connect();
        bench.settings(c -> c.replace("[site]", "[site]\nheartbeat-line = 25"));
        Path empty = Files.createDirectories(folder.resolve("empty"));
        Path old = Files.createDirectories(folder.resolve("old"));
        SqliteStore.open(empty.resolve("conetender.db")).close();
        year(old.resolve("conetender.db"));
        List<Double> nothing = new ArrayList<>();
        List<Double> aYear = new ArrayList<>();
        for (int i = 0; i < STARTS; i++) {
            nothing.add(seconds(empty));
            aYear.add(seconds(old));
        }
        double withNothing = nothing.stream().sorted().toList().get(STARTS / 2);
        double withAYear = aYear.stream().sorted().toList().get(STARTS / 2);
        System.out.println(Text.of("to the first decision: %.2f s with an empty record, %.2f s with a year",
                withNothing, withAYear));
        assertThat(withAYear).isLessThan(MOST * withNothing);
    }

    /** From the start of the process to the first level that its loop has set. */
    private double seconds(Path record) throws IOException {
        try (var files = Files.list(bench.record().getParent())) {
            for (Path p : files.toList()) {
                Files.delete(p);
            }
        }
        try (var files = Files.list(record)) {
            for (Path p : files.toList()) {
                Files.copy(p, bench.record().resolveSibling(p.getFileName()));
            }
        }
        int before = bench.lines().size();
        LinuxClock clock = new LinuxClock();
        long beganMs = clock.now().monoMs();
        bench.start();
        while (bench.lines().stream().skip(before).noneMatch(l -> l.startsWith("site.heartbeat on"))) {
            assertThat(clock.now().monoMs() - beganMs).as(bench.log()).isLessThan(60_000);
            LockSupport.parkNanos(2_000_000);
        }
        double s = (clock.now().monoMs() - beganMs) / 1e3;
        // Ended before it has introduced itself, its will would be the first that is heard of it.
        Eventually.holds("it has introduced itself", 60, () -> "ready".equals(tree().get(ROOT + "/$state")));
        bench.signal("TERM");
        return s;
    }

    /**
     * Eight cones, batch after batch, each with an alarm and what was seen of it, of a new tin each month;
     * the last one growing. Thirty days of minutes, eleven months of means.
     */
    private static void year(Path book) throws Exception {
        Moment now = new LinuxClock().now();
        List<Fact> facts = new ArrayList<>();
        for (int batch = 0; batch < BATCHES; batch++) {
            for (String cone : List.of("a", "b", "c", "d", "e", "f", "g", "h")) {
                String id = "r-" + batch + cone;
                int number = batch + 1;
                long told = number < BATCHES ? Long.MAX_VALUE : GROWING;
                batch(number, cone).limit(told).forEach(c -> facts.add(new Fact(facts.size() + 1,
                        at(now, number, facts.size()), cone,
                        c instanceof Change.Told ? id + facts.size() : "", c)));
            }
        }
        try (SqliteStore store = SqliteStore.open(book)) {
            store.append(facts);
            Checkpoint minute = new Checkpoint(now, List.of(new Checkpoint.Temperature("a", 21)), List.of());
            store.minute(minute);
            store.history(Minute.of(minute));
        }
        rows(book.resolveSibling("conetender-history.db"));
    }

    /** A boot a week, the last two in this one: each fact a moment of its own, as in a real year. */
    private static Moment at(Moment now, int batch, int fact) {
        boolean lately = batch > BATCHES - 2 * A_WEEK;
        return lately ? now.plusMs(fact / 10 - 5_000) : new Moment("boot-" + batch / A_WEEK, 1_000 + fact, 0,
                false);
    }

    /** No two batches teach the same. */
    private static Stream<Change> batch(int number, String cone) {
        double off = number % 17 + cone.charAt(0) / 100.0;
        String lot = Text.of("L-04%02d", number * 12 / BATCHES);
        return Stream.of(did(Step.STARTED), new Change.Told(new Ask.DidFill(2, 25)), did(Step.SALTED),
                new Change.Told(new Ask.DidStock(lot, 2)), new Change.Moved("incubating", "it is time"),
                new Change.Tripped("no-effect", "the water did not warm"),
                new Change.Told(new Ask.Acknowledge("no-effect")), new Change.Released("no-effect",
                "acknowledged"), new Change.AlarmOver("no-effect"),
                did(Step.NONE_SEEN), taught(lot, number, 150 + off, new Lesson.Sight.NoneYet()),
                did(Step.FIRST_SEEN), taught(lot, number, 165 + off, new Lesson.Sight.First()),
                new Change.Told(new Ask.DidCount(1, 90, 10, 30)),
                taught(lot, number, 290 + off, new Lesson.Sight.Counted(90, 10, 30)),
                new Change.Moved("hatching", "it is time"),
                new Change.Moved("ready", "it is time"), did(Step.SETTLE), new Change.Moved("settled", "it is"
                + " time"), did(Step.DRAWING), did(Step.DRAINED), did(Step.RINSED), did(Step.CLEANED));
    }

    private static Change taught(String lot, int batch, double degreeHours, Lesson.Sight sight) {
        return new Change.Taught(lot, batch, new Lesson(new Lesson.At(degreeHours, degreeHours,
                degreeHours / 15), sight));
    }

    private static Change did(Step step) {
        return new Change.Told(new Ask.Did(step));
    }

    private static void rows(Path history) throws Exception {
        String counted = "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d),"
                + " s(c) AS (VALUES ('a'), ('b'), ('c'), ('d'), ('e'), ('f'), ('g'), ('h'), ('room'))";
        try (var db = DriverManager.getConnection("jdbc:sqlite:" + history); var s = db.createStatement()) {
            s.execute("INSERT INTO temperature " + Text.of(counted, 43_200)
                    + " SELECT 1, i * 60000, c, i * 60000, 1, 26.5 FROM n, s");
            s.execute("INSERT INTO output " + Text.of(counted, 43_200)
                    + " SELECT 1, i * 60000, c, 40, 100, 100, 0, 2700 FROM n, s WHERE c <> 'room'");
            s.execute("INSERT INTO output_mean " + Text.of(counted, 48_240)
                    + " SELECT 10, 1, i * 600000, c, 40, 100, 100, 0, 2700 FROM n, s WHERE c <> 'room'");
            s.execute("INSERT INTO mean " + Text.of(counted, 48_240)
                    + " SELECT 1, i * 600000, c, i * 600000, 1, 26.5, 10 FROM n, s");
        }
    }
}

package org.conetender.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.conetender.adapter.sqlite.CrashWork.Bug;
import org.conetender.adapter.sqlite.FileTrace.Op;
import org.conetender.core.batch.Fact;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;
import org.conetender.port.Store;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A real process writes a real record, all that it does to its files is recorded, and then the power goes
 * after any of these operations, in any way that the syncs leave open. The record is opened as the next life
 * opens it: it must start, hold all that was said to be kept, and not call a crash a damage.
 */
class CrashStatesTest {

    /** With {@code -Dconetender.states=1000000} a million. */
    private static final int STATES = Integer.getInteger("conetender.states", 20_000);
    /** Enough to catch what is planted. */
    private static final int SOME = 2_000;
    /** States of one moment, which share what was synced by then. */
    private static final int EACH = 10;
    /** Of each so many-th the history is read. */
    private static final int READ = 5;
    /** Each so many-th is gone on with. */
    private static final int GONE_ON = 40;
    /** In memory where there is some: nothing here depends on a disk. */
    private static final Path MEMORY = Path.of("/dev/shm");

    private static final Moment ALL = new Moment("?", 0, 0, false);

    @TempDir
    Path folder;

    private Path lab;
    private final List<String> broken = new ArrayList<>();

    @BeforeEach
    void aLab() throws IOException {
        lab = Files.createTempDirectory(Files.isWritable(MEMORY) ? MEMORY : folder, "crash");
        Files.createDirectories(folder.resolve("work"));
    }

    @AfterEach
    void nothingIsLeft() throws IOException {
        clear();
        Files.delete(lab);
    }

    private Path book() {
        return folder.resolve("work").resolve("record.db");
    }

    private FileTrace begun() throws IOException {
        return new FileTrace(book().getParent());
    }

    private FileTrace run(FileTrace t, int transactions, int lives, Bug bug) throws Exception {
        return t.run(folder.resolve("log"), CrashWork.class, book().toString(), "" + transactions, "" + lives,
                bug.name());
    }

    /**
     * What a state must hold.
     *
     * @param history minutes that were said to be in it  @param damaged whether the record was damaged before
     */
    private record Due(int fact, int minute, List<Long> history, boolean damaged) {

        Due(int fact, int minute, boolean damaged) {
            this(fact, minute, List.of(), damaged);
        }
    }

    private void replay(List<Op> ops, int first, int states, Due before, long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        for (int done = 0; done < states && broken.size() < 20; done += EACH) {
            int after = random.nextInt(first, ops.size() + 1);
            CrashDisk disk = new CrashDisk(ops, after);
            Due due = due(ops.subList(0, after), before);
            for (int i = 0; i < EACH; i++) {
                clear();
                for (Map.Entry<String, byte[]> f : disk.state(random).entrySet()) {
                    Files.write(lab.resolve(f.getKey()), f.getValue());
                }
                String where = "seed " + seed + ", state " + (done + i) + " after operation " + after;
                // Before the first minute is kept the file may be half made; whoever keeps one mends that.
                if ((done + i) % READ == 0 && !due.history().isEmpty()) {
                    history(due.history(), where);
                }
                look(due, where, (done + i) % GONE_ON == 0);
            }
        }
    }

    private static Due due(List<Op> past, Due before) {
        int fact = before.fact();
        int minute = before.minute();
        List<Long> history = new ArrayList<>(before.history());
        for (Op op : past) {
            if (op instanceof Op.Said(String line) && line.matches("(fact|minute|history) \\d+")) {
                int number = Integer.parseInt(line.substring(line.indexOf(' ') + 1));
                switch (line.charAt(0)) {
                    case 'f' -> fact = number;
                    case 'm' -> minute = number;
                    default -> history.add((long) number);
                }
            }
        }
        return new Due(fact, minute, history, before.damaged());
    }

    private void look(Due due, String where, boolean goOn) {
        List<Long> history = new ArrayList<>(due.history());
        try (SqliteStore store = SqliteStore.open(lab.resolve("record.db"))) {
            Store.Kept kept = store.load();
            int facts = kept.facts().size();
            long minute = kept.checkpoint().map(c -> c.at().monoMs()).orElse(0L);
            require(facts >= due.fact(), where + ": said to be kept were " + due.fact() + ", there are "
                    + facts);
            require(kept.facts().equals(LongStream.rangeClosed(1, facts).mapToObj(RecordWriter::fact)
                    .toList()), where + ": other facts than were written");
            require(minute >= due.minute(), where + ": a minute is lost");
            require(kept.damages().size() == (due.damaged() ? 1 : 0), where + ": " + kept.damages());
            if (goOn) {
                store.append(List.of(RecordWriter.fact(facts + 1)));
                store.history(RecordWriter.history(facts + 1));
                history.add(facts + 1L);
                require(store.load().facts().size() == facts + 1, where + ": it does not go on");
            }
        } catch (Store.StoreException e) {
            broken.add(where + ": " + e.getMessage());
        }
        if (goOn) {
            history(history, where + ", gone on");
        }
    }

    /** What was said to be in it is there as it was written, and all of it can be read. */
    private void history(List<Long> said, String where) {
        Map<Long, Double> water = new TreeMap<>();
        Map<Long, Double> heat = new TreeMap<>();
        try {
            HistoryReader reader = new HistoryReader(lab.resolve("record-history.db"));
            reader.temperatures(ALL, (series, r) -> {
                if (series.equals("a")) {
                    water.put(r.at().monoMs(), r.degreesC());
                }
            });
            reader.outputs(ALL, s -> {
                if (s.outputs().cone().equals("a")) {
                    heat.put(s.from().monoMs() + Units.MINUTE_MS, s.outputs().heat());
                }
            });
            List<Long> alarms = reader.alarms().stream().map(t -> t.at().monoMs()).toList();
            for (long n : said) {
                require(water.containsKey(n) && heat.containsKey(n), where + ": minute " + n
                        + " of history is lost");
                require(n % 16 > 0 || alarms.contains(n), where + ": an alarm of history is lost");
            }
            water.forEach((n, c) -> require(c == n / 16.0, where + ": another temperature than was written"));
            heat.forEach((n, h) -> require(h == n % 101 / 100.0, where + ": another share of heat"));
        } catch (Store.StoreException e) {
            broken.add(where + ": history: " + e.getMessage());
        }
    }

    private void require(boolean so, String else_) {
        if (!so) {
            broken.add(else_);
        }
    }

    private void clear() throws IOException {
        try (var all = Files.list(lab)) {
            for (Path p : all.toList()) {
                Files.delete(p);
            }
        }
    }

    /** Made, left without a word, begun again, closed, begun once more. */
    private FileTrace lives(Bug bug) throws Exception {
        FileTrace t = run(begun(), 40, 1, bug);
        return run(t, 30, 2, bug);
    }

    @Test
    void whatWasSaidToBeKeptIsThereAfterEveryCrash() throws Exception {
        FileTrace t = lives(Bug.NONE);
        assertThat(t.ops()).filteredOn(Op.Said.class::isInstance).hasSizeGreaterThan(120);
        assertThat(t.ops()).filteredOn(o -> o instanceof Op.Wrote).hasSizeGreaterThan(300);
        replay(t.ops(), 1, STATES, new Due(0, 0, false), 1);
        assertThat(broken).isEmpty();
    }

    /** Each eleventh write finds no room, of whichever file: what facts need is cut off the reserve. */
    @Test
    void whatWasSaidToBeKeptOnAFullDiskIsThereAfterEveryCrash() throws Exception {
        FileTrace t = run(begun(), 3, 1, Bug.NONE);
        int first = t.ops().size();
        t.run(folder.resolve("log"), List.of("-e", "inject=pwrite64:error=ENOSPC:when=12+11"),
                CrashWork.class, book().toString(), "60", "1", Bug.FULL.name());
        List<Integer> reserve = t.ops().stream().filter(o -> o instanceof Op.Made(String name, int _)
                && name.endsWith("-reserve")).map(o -> ((Op.Made) o).file()).toList();
        assertThat(t.ops().subList(first, t.ops().size())).filteredOn(o ->
                o instanceof Op.Cut(int file, int _) && reserve.contains(file)).as("pieces cut off")
                .hasSizeGreaterThan(5);
        assertThat(t.ops()).filteredOn(o -> o instanceof Op.Said(String line) && line.startsWith("fact "))
                .hasSize(63);
        replay(t.ops(), 1, STATES / 4, new Due(0, 0, false), 9);
        assertThat(broken).isEmpty();
    }

    @Test
    void aDamagedRecordIsMadeAnewThroughEveryCrash() throws Exception {
        try (SqliteStore store = SqliteStore.open(book())) {
            store.append(LongStream.rangeClosed(1, 40).mapToObj(RecordWriter::fact).toList());
            store.minute(RecordWriter.minute(30));
        }
        try (Connection db = Opening.plain(book()); Statement s = db.createStatement()) {
            s.execute("UPDATE fact SET cone = 'z' WHERE seq = 31");
        }
        FileTrace t = begun();
        int first = t.ops().size();
        run(t, 5, 1, Bug.NONE);
        assertThat(t.ops()).filteredOn(o -> o instanceof Op.Renamed).hasSize(2);
        replay(t.ops(), first, STATES / 10, new Due(30, 30, true), 2);
        assertThat(broken).isEmpty();
    }

    @Test
    void aRecordInWhichAllLayTogetherIsPartedThroughEveryCrash() throws Exception {
        List<Fact> facts = LongStream.rangeClosed(1, 20).mapToObj(RecordWriter::fact).toList();
        try (Connection db = Opening.connect(book())) {
            Together.make(db);
            Together.insert(db, facts, RecordWriter.minute(20));
        }
        FileTrace t = begun();
        int first = t.ops().size();
        run(t, 5, 1, Bug.NONE);
        replay(t.ops(), first, STATES / 10, new Due(20, 20, false), 3);
        assertThat(broken).isEmpty();
    }

    @Test
    void aJournalThatIsNotSyncedAtEachCommitIsCaught() throws Exception {
        replay(lives(Bug.NORMAL).ops(), 1, SOME, new Due(0, 0, false), 4);
        assertThat(broken).isNotEmpty()
                .allMatch(b -> b.contains("there are") || b.contains("a minute is lost"));
    }

    @Test
    void anAnswerBeforeItsCommitIsCaught() throws Exception {
        replay(lives(Bug.EARLY).ops(), 1, SOME, new Due(0, 0, false), 5);
        assertThat(broken).isNotEmpty().allMatch(b -> b.contains("there are"));
    }

    /** SQLite syncs the folder too, when it makes a journal: only without both is it missed. */
    @Test
    void aFolderThatIsNeverSyncedIsCaught() throws Exception {
        List<Op> ops = lives(Bug.NONE).ops().stream().filter(o -> !(o instanceof Op.FolderSynced)).toList();
        replay(ops, 1, SOME, new Due(0, 0, false), 6);
        assertThat(broken).isNotEmpty();
    }

    @Test
    void aFileThatIsNeverSyncedIsCaught() throws Exception {
        List<Op> ops = lives(Bug.NONE).ops().stream().filter(o -> !(o instanceof Op.Synced)).toList();
        replay(ops, 1, SOME, new Due(0, 0, false), 7);
        assertThat(broken).isNotEmpty();
    }

    @Test
    void aHistoryThatIsNeverSyncedIsCaught() throws Exception {
        List<Op> all = lives(Bug.NONE).ops();
        Set<Integer> history = all.stream().filter(o -> o instanceof Op.Made(String name, int _)
                && name.contains("history")).map(o -> ((Op.Made) o).file()).collect(Collectors.toSet());
        List<Op> ops = all.stream().filter(o -> !(o instanceof Op.Synced(int file)
                && history.contains(file))).toList();
        replay(ops, 1, SOME, new Due(0, 0, false), 8);
        assertThat(broken).isNotEmpty().allMatch(b -> b.contains("history"));
    }
}

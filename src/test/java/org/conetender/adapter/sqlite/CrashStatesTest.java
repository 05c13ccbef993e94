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
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.conetender.adapter.sqlite.CrashWork.Bug;
import org.conetender.adapter.sqlite.FileTrace.Op;
import org.conetender.core.batch.Fact;
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
    /** Each so many-th is gone on with. */
    private static final int GONE_ON = 40;
    /** In memory where there is some: nothing here depends on a disk. */
    private static final Path MEMORY = Path.of("/dev/shm");

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

    /** What a state must hold. @param damaged whether the record was damaged before all of it */
    private record Due(int fact, int minute, boolean damaged) {}

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
                look(due, "seed " + seed + ", state " + (done + i) + " after operation " + after,
                        (done + i) % GONE_ON == 0);
            }
        }
    }

    private static Due due(List<Op> past, Due before) {
        Due due = before;
        for (Op op : past) {
            if (op instanceof Op.Said(String line) && line.startsWith("fact ")) {
                due = new Due(Integer.parseInt(line.substring(5)), due.minute(), due.damaged());
            } else if (op instanceof Op.Said(String line) && line.startsWith("minute ")) {
                due = new Due(due.fact(), Integer.parseInt(line.substring(7)), due.damaged());
            }
        }
        return due;
    }

    private void look(Due due, String where, boolean goOn) {
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
                require(store.load().facts().size() == facts + 1, where + ": it does not go on");
            }
        } catch (Store.StoreException e) {
            broken.add(where + ": " + e.getMessage());
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
}

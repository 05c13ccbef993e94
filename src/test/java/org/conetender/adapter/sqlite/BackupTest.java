package org.conetender.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.LongStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.conetender.adapter.sqlite.FileTrace.Op;
import org.conetender.core.Damage;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Lives;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store;
import org.conetender.port.Store.StoreException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A record is copied while a real process writes it, and put back through every crash. */
@Timeout(300)
class BackupTest {

    private static final int STATES = 600;
    private static final int OLD = 30;
    private static final int NEW = 12;

    @TempDir
    Path folder;

    private Path book(String name) throws Exception {
        return Files.createDirectories(folder.resolve(name)).resolve("record.db");
    }

    private static List<Fact> facts(long most) {
        return LongStream.rangeClosed(1, most).mapToObj(RecordWriter::fact).toList();
    }

    private static void write(Path book, int facts) throws Exception {
        try (SqliteStore store = SqliteStore.open(book)) {
            store.append(facts(facts));
            store.minute(RecordWriter.minute(facts));
            for (int i = 1; i <= facts; i++) {
                store.history(RecordWriter.history(i));
            }
        }
    }

    private static int temperatures(Path book) throws Exception {
        List<HistoryReader.Reading> all = new ArrayList<>();
        RecordReader.of(book).history().temperatures(new Moment("?", 0, 0, false), (series, r) -> {
            if (series.equals("a")) {
                all.add(r);
            }
        });
        return all.size();
    }

    private Map<String, Long> names(Path where) throws Exception {
        Map<String, Long> all = new TreeMap<>();
        try (var files = Files.list(where)) {
            for (Path f : files.toList()) {
                all.put(f.getFileName().toString(), Files.size(f));
            }
        }
        return all;
    }

    @Test
    void aRecordThatAProcessWritesIsCopiedWithAllThatItAcknowledgedBefore() throws Exception {
        Path book = book("work");
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Process writer = new ProcessBuilder(java,
                "--enable-native-access=ALL-UNNAMED", "-XX:TieredStopAtLevel=1", "-Xmx64m", "-cp",
                System.getProperty("java.class.path"), RecordWriter.class.getName(), book.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT).start();
        try (BufferedReader out = writer.inputReader()) {
            for (int i = 0; i < 4; i++) {
                long told = 0;
                for (int lines = 0; lines < 60; lines++) {
                    String line = out.readLine();
                    told = line.startsWith("fact ") ? Long.parseLong(line.substring(5)) : told;
                }
                Path copy = folder.resolve("copy-" + i);
                assertThat(Backup.of(book, copy)).isEqualTo(Files.size(copy));
                Path there = book("there-" + i);
                assertThat(Restore.of(copy, there)).isEmpty();
                List<Fact> kept = RecordReader.of(there).kept().facts();
                assertThat(kept).hasSizeGreaterThanOrEqualTo((int) told).isEqualTo(facts(kept.size()));
                assertThat(temperatures(there)).isGreaterThanOrEqualTo((int) told / 8);
                Path first = folder.resolve("copy-0");
                assertThatThrownBy(() -> Restore.of(first, book)).isInstanceOf(StoreException.class)
                        .hasMessageContaining("in use by another conetender; stop that one first");
            }
            assertThat(writer.isAlive()).isTrue();
        } finally {
            writer.toHandle().destroyForcibly();
            writer.waitFor();
        }
        assertThat(names(folder)).as("nothing else is left").hasSize(9);
    }

    @Test
    void aBackupTakesNoOtherFilesPlace() throws Exception {
        write(book("work"), NEW);
        Path copy = folder.resolve("copy");
        Files.writeString(copy, "a letter");
        assertThatThrownBy(() -> Backup.of(book("work"), copy)).hasMessageContaining("exists already");
        assertThat(Files.readString(copy)).isEqualTo("a letter");
        assertThatThrownBy(() -> Backup.of(book("work"), folder.resolve("none").resolve("copy")))
                .hasMessageContaining("there is no folder " + folder.resolve("none"));
        assertThatThrownBy(() -> Backup.of(book("empty"), folder.resolve("second")))
                .hasMessageContaining("there is no record");
        assertThat(names(folder)).hasSize(3);
    }

    private static void hoursAgo(Path touched) throws Exception {
        Files.setLastModifiedTime(touched, FileTime.from(Files.getLastModifiedTime(touched).toInstant()
                .minusSeconds(7_200)));
    }

    /** Its working copy goes with the next one; that of another which still works does not. */
    @Test
    void whatAKilledBackupLeftIsTakenAwayByTheNext() throws Exception {
        write(book("work"), NEW);
        Path killed = Files.createDirectory(folder.resolve(Backup.FOLDER + "1"));
        Files.write(killed.resolve("book.db"), new byte[5_000]);
        Files.createFile(killed.resolve("working"));
        Path young = Files.createDirectory(folder.resolve(Backup.FOLDER + "3"));
        Path letter = Files.createFile(Files.createDirectory(folder.resolve("letters")).resolve("letter"));
        Files.createSymbolicLink(folder.resolve(Backup.FOLDER + "4"), letter.getParent());
        hoursAgo(letter.getParent());
        hoursAgo(killed);
        Path busy = Files.createDirectory(folder.resolve(Backup.FOLDER + "2"));
        Files.write(busy.resolve("book.db"), new byte[5_000]);
        try (FileChannel working = FileChannel.open(busy.resolve("working"), StandardOpenOption.CREATE,
                StandardOpenOption.WRITE); FileLock lock = working.lock()) {
            hoursAgo(busy);
            Backup.of(book("work"), folder.resolve("copy"));
            assertThat(killed).doesNotExist();
            assertThat(young).as("somebody may be about to work there").exists();
            assertThat(letter).exists();
            assertThat(names(letter.getParent())).containsOnlyKeys("letter");
            assertThat(busy).as("somebody works there, by " + lock).isNotEmptyDirectory();
        }
        hoursAgo(young);
        Backup.of(book("work"), folder.resolve("second"));
        assertThat(names(folder)).containsOnlyKeys("work", "copy", "second", "letters",
                Backup.FOLDER + "4");
    }

    @Test
    void theRecordOfBeforeIsKeptAsideWithADate() throws Exception {
        Path book = book("work");
        write(book, NEW);
        Backup.of(book, folder.resolve("copy"));
        write(book("other"), OLD);
        String old = Restore.of(folder.resolve("copy"), book("other")).orElseThrow();
        assertThat(old).matches("before-restore-\\d{4}-\\d\\d-\\d\\d-\\d{6}-record\\.db");
        Path aside = folder.resolve("other").resolve(old);
        assertThat(RecordReader.of(aside).kept().facts()).isEqualTo(facts(OLD));
        assertThat(temperatures(aside)).isEqualTo(OLD);
        try (SqliteStore store = SqliteStore.open(book("other"))) {
            assertThat(store.load().facts()).isEqualTo(facts(NEW));
            assertThat(store.load().checkpoint()).contains(RecordWriter.minute(NEW));
            assertThat(store.load().damages()).as("so that heaters are locked").containsExactly("the record"
                    + " is that of a backup, copy, which ends with fact number 12: what happened after it"
                    + " was made is not in it; the record of before is kept as " + old);
            store.append(List.of(RecordWriter.fact(NEW + 1)));
            store.history(RecordWriter.history(NEW + 1));
        }
        assertThat(temperatures(book("other"))).isEqualTo(NEW + 1);
        assertThat(Restore.of(folder.resolve("copy"), book("other")).orElseThrow()).isNotEqualTo(old);
        assertThat(RecordReader.of(aside).kept().facts()).isEqualTo(facts(OLD));
    }

    /** Its temperatures lie in the book itself, and the next life parts it. */
    @Test
    void aRestoredRecordOfTheFirstVersionKeepsItsTemperatures() throws Exception {
        Path first = book("first");
        try (Connection db = Opening.plain(first)) {
            Together.make(db);
            Together.insert(db, facts(NEW), RecordWriter.minute(NEW));
        }
        Backup.of(first, folder.resolve("copy"));
        write(book("other"), OLD);
        String old = Restore.of(folder.resolve("copy"), book("other")).orElseThrow();
        Restore.of(folder.resolve("copy"), book("empty"));
        for (Path there : List.of(book("empty"), book("other"))) {
            for (int life = 0; life < 2; life++) {
                try (SqliteStore store = SqliteStore.open(there)) {
                    assertThat(store.load().facts()).isEqualTo(facts(NEW));
                }
                assertThat(temperatures(there)).as("%s, life %d", there, life).isEqualTo(1);
            }
        }
        assertThat(temperatures(folder.resolve("other").resolve(old))).isEqualTo(OLD);
    }

    /** Laid there by hand: it is nobody's to throw away, neither the one nor the other. */
    @Test
    void aRecordOfTheFirstVersionBesideAHistoryIsKeptToo() throws Exception {
        Path book = book("work");
        write(book, OLD);
        Files.delete(book);
        try (Connection db = Opening.plain(book)) {
            Together.make(db);
            Together.insert(db, facts(NEW), RecordWriter.minute(NEW));
        }
        try (SqliteStore store = SqliteStore.open(book)) {
            assertThat(store.load().facts()).isEqualTo(facts(NEW));
        }
        assertThat(temperatures(book)).isEqualTo(OLD);
        assertThat(names(book.getParent()).keySet()).filteredOn(n -> n.startsWith("before-parting-"))
                .singleElement().satisfies(n -> assertThat(RecordReader.of(book.resolveSibling(n)).kept()
                        .facts()).isEqualTo(facts(NEW)));
    }

    @Test
    void aBackupThatIsNoneOrDamagedChangesNothing() throws Exception {
        Path book = book("work");
        write(book, OLD);
        Path good = folder.resolve("good");
        Backup.of(book, good);
        byte[] all = Files.readAllBytes(good);
        SplittableRandom random = new SplittableRandom(7);
        Map<String, Long> before = names(book.getParent());
        int refused = 0;
        for (int i = 0; i < 60; i++) {
            byte[] bad = all.clone();
            bad[random.nextInt(all.length)] ^= (byte) (1 << random.nextInt(8));
            Path there = book("try-" + i);
            try {
                Restore.of(Files.write(folder.resolve("bad"), bad), there);
                // A date of the archive, or a bit that nothing reads.
                assertThat(RecordReader.of(there).kept().facts()).as("try %d", i).isEqualTo(facts(OLD));
                assertThat(temperatures(there)).isEqualTo(OLD);
            } catch (StoreException e) {
                refused++;
                assertThat(e).hasMessageContaining("the record is as it was");
                assertThat(names(there.getParent())).containsOnlyKeys("record.db.lock");
            }
        }
        assertThat(refused).isGreaterThan(40);
        for (int i = 0; i < 20; i++) {
            Path file = Files.write(folder.resolve("bad"), Arrays.copyOf(all, random.nextInt(all.length)));
            assertThatThrownBy(() -> Restore.of(file, book)).isInstanceOf(StoreException.class)
                    .hasMessageContaining("the record is as it was");
        }
        assertThatThrownBy(() -> Restore.of(folder.resolve("none"), book)).hasMessageContaining("no backup");
        assertThatThrownBy(() -> Restore.of(newer(), book)).hasMessageContaining("by a newer conetender");
        assertThat(names(book.getParent())).isEqualTo(before);
        assertThat(RecordReader.of(book).kept().facts()).isEqualTo(facts(OLD));
    }

    /** All that a life writes down of the damages which the store knows of, and that a person saw them. */
    private static int locks(Path book, boolean seen) throws Exception {
        try (SqliteStore store = SqliteStore.open(book)) {
            Store.Kept kept = store.load();
            Moment now = new Moment("boot-1", 9_000, 9_000, false);
            List<Fact> owed = new ArrayList<>(Damage.facts(kept.facts(), kept.damages(), now));
            int locks = owed.size();
            if (seen) {
                owed.add(new Fact(kept.facts().size() + locks + 1L, now, "a", "r",
                        new Change.Told(new Ask.Acknowledge(Lives.DAMAGED))));
                store.append(owed);
            }
            return locks;
        }
    }

    @Test
    void aBackupOfTheSameNameLocksAnotherCardThoughTheFirstRestoreWasSeen() throws Exception {
        write(book("work"), NEW);
        Backup.of(book("work"), folder.resolve("copy"));
        Restore.of(folder.resolve("copy"), book("card-1"));
        assertThat(locks(book("card-1"), true)).isEqualTo(1);
        assertThat(locks(book("card-1"), true)).as("it was seen").isZero();
        Files.delete(folder.resolve("copy"));
        Backup.of(book("card-1"), folder.resolve("copy"));
        Restore.of(folder.resolve("copy"), book("card-2"));
        assertThat(locks(book("card-2"), false)).as("the lock, and that the sight of the first is over")
                .isEqualTo(2);
    }

    private Path newer() throws Exception {
        write(book("newer"), NEW);
        try (Connection db = Opening.plain(book("newer")); Statement s = db.createStatement()) {
            s.execute("PRAGMA user_version = 99");
        }
        Path file = folder.resolve("newer.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            zip.putNextEntry(new ZipEntry(Backup.BOOK));
            Files.copy(book("newer"), zip);
        }
        return file;
    }

    /** All that a real restore does to the files, and the power goes after any of it, in any way. */
    private List<String> crashes(List<Op> ops, int first) throws Exception {
        List<String> broken = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(9);
        for (int i = 0; i < STATES; i++) {
            int after = random.nextInt(first, ops.size() + 1);
            Path lab = Files.createDirectories(folder.resolve("lab-" + i));
            for (Map.Entry<String, byte[]> f : new CrashDisk(ops, after).state(random).entrySet()) {
                Files.write(lab.resolve(f.getKey()), f.getValue());
            }
            boolean said = ops.subList(0, after).contains(new Op.Said("restored true"));
            String found = found(lab.resolve("record.db"));
            boolean whole = found.equals(NEW + " " + NEW) || found.equals(OLD + " " + OLD) && !said;
            if (!whole) {
                broken.add("after " + after + (said ? ", said: " : ": ") + found);
            }
            org.assertj.core.util.Files.delete(lab.toFile());
        }
        return broken;
    }

    /** How many facts and temperatures the next life finds. */
    private static String found(Path book) throws Exception {
        int facts;
        try (SqliteStore store = SqliteStore.open(book)) {
            List<String> damages = store.load().damages();
            List<Fact> kept = store.load().facts();
            boolean told = damages.size() == 1 && damages.getFirst().contains("that of a backup");
            if (kept.size() == NEW ? !told : !damages.isEmpty()) {
                return "a damage, or a backup that is not said to be one: " + damages;
            }
            if (!kept.equals(facts(kept.size()))) {
                return "other facts";
            }
            facts = kept.size();
        } catch (StoreException e) {
            return e.getMessage();
        }
        try (var left = Files.list(book.getParent())) {
            if (left.anyMatch(f -> f.toString().contains(".new-"))) {
                return "something half done";
            }
        }
        try {
            return facts + " " + temperatures(book);
        } catch (StoreException e) {
            return e.getMessage();
        }
    }

    private FileTrace restored() throws Exception {
        write(book("backed"), NEW);
        Backup.of(book("backed"), folder.resolve("copy"));
        write(book("work"), OLD);
        return new FileTrace(folder.resolve("work"));
    }

    private FileTrace run(FileTrace t) throws Exception {
        return t.run(folder.resolve("log"), RestoreWork.class, folder.resolve("copy").toString(),
                book("work").toString());
    }

    @Test
    void whateverACutLeavesTheNextLifeFindsBothFilesOfOneOrOfTheOther() throws Exception {
        FileTrace t = restored();
        int first = t.ops().size();
        run(t);
        assertThat(t.ops()).contains(new Op.Said("restored true"));
        assertThat(t.ops()).filteredOn(o -> o instanceof Op.Renamed).hasSizeGreaterThanOrEqualTo(6);
        assertThat(crashes(t.ops(), first)).isEmpty();
    }

    @Test
    void aRestoreThatSyncsNothingIsCaught() throws Exception {
        FileTrace t = restored();
        int first = t.ops().size();
        run(t);
        List<Op> begin = t.ops().subList(0, first);
        List<Op> all = new ArrayList<>(begin);
        t.ops().subList(first, t.ops().size()).stream()
                .filter(o -> !(o instanceof Op.Synced) && !(o instanceof Op.FolderSynced)).forEach(all::add);
        assertThat(crashes(all, first)).isNotEmpty();
    }
}

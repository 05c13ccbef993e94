package org.conetender.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.RandomFacts;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store;
import org.conetender.port.Store.StoreException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A book whose bytes are not those that were written: what is kept, what is said, and what is left. */
class DamagedBookTest {

    private static final int PAGE = 4096;

    @TempDir
    Path folder;

    private final List<Fact> written = new ArrayList<>();

    @BeforeEach
    void aBookOfSomeHundredFacts() throws Exception {
        Random random = new Random(11);
        for (long seq = 1; seq <= 600; seq++) {
            written.add(RandomFacts.fact(random, seq));
        }
        try (SqliteStore store = SqliteStore.open(book())) {
            store.append(written);
            store.minute(RecordWriter.minute(7));
        }
    }

    private Path book() {
        return folder.resolve("record.db");
    }

    private void tell(String sql) throws Exception {
        try (Connection db = Opening.plain(book()); Statement s = db.createStatement()) {
            s.execute(sql);
        }
    }

    private List<Path> aside() throws IOException {
        try (var files = Files.list(folder)) {
            return files.filter(f -> f.getFileName().toString().startsWith("damaged-")).toList();
        }
    }

    /** What the next life reads; the life after it reads the same and finds nothing new. */
    private Store.Kept found() throws Exception {
        Store.Kept kept;
        try (SqliteStore store = SqliteStore.open(book())) {
            kept = store.load();
        }
        try (SqliteStore store = SqliteStore.open(book())) {
            assertThat(store.load()).isEqualTo(kept);
        }
        return kept;
    }

    @Test
    void aBitThatFellOverInsideAFactIsFoundAndTheFactsBeforeItAreKept() throws Exception {
        tell("UPDATE fact SET wall_ms = wall_ms + 1 WHERE seq = 400");
        byte[] before = Files.readAllBytes(book());
        Store.Kept kept = found();
        assertThat(kept.facts()).isEqualTo(written.subList(0, 399));
        assertThat(kept.checkpoint()).contains(RecordWriter.minute(7));
        assertThat(kept.damages()).singleElement().asString().contains("399 facts of it could be read")
                .contains(aside().getFirst().getFileName().toString());
        assertThat(Files.readAllBytes(aside().getFirst())).isEqualTo(before);
    }

    /** Ten minutes later a report lies in the book itself, not in a journal that any byte may end. */
    @Test
    void aByteThatFallsOverInTheJournalTakesNoReportAlong() throws Exception {
        Random random = new Random(12);
        try (SqliteStore store = SqliteStore.open(book())) {
            for (long seq = 601; seq <= 640; seq++) {
                written.add(RandomFacts.fact(random, seq));
                store.append(written.subList((int) seq - 1, (int) seq));
            }
            for (int m = 0; m < SqliteStore.SETTLES_AFTER_MIN; m++) {
                store.minute(RecordWriter.minute(m));
            }
            Path journal = folder.resolve("record.db-wal");
            assertThat(Files.size(journal)).isPositive();
            for (int at : new int[] {0, 9, 40, 100, 4_000}) {
                Path killed = Files.createTempDirectory(folder, "killed");
                Files.copy(book(), killed.resolve("record.db"));
                byte[] bytes = Files.readAllBytes(journal);
                bytes[at] ^= 0x10;
                Files.write(killed.resolve("record.db-wal"), bytes);
                try (SqliteStore next = SqliteStore.open(killed.resolve("record.db"))) {
                    assertThat(next.load().facts()).as("byte %d", at).isEqualTo(written);
                }
            }
        }
    }

    @Test
    void eachPageOverwrittenInItsTurnNeverStopsTheStartAndKeepsATruePrefix() throws Exception {
        byte[] whole = Files.readAllBytes(book());
        int shorter = 0;
        for (int page = 0; page < whole.length / PAGE; page++) {
            byte[] noise = new byte[PAGE];
            new Random(page).nextBytes(noise);
            byte[] spoilt = whole.clone();
            System.arraycopy(noise, 0, spoilt, page * PAGE, PAGE);
            Files.write(book(), spoilt);
            Store.Kept kept = found();
            assertThat(kept.damages()).as("page %d", page).hasSize(1);
            assertThat(timed(kept.facts(), written)).isEqualTo(written.subList(0, kept.facts().size()));
            shorter += kept.facts().size() < 600 ? 1 : 0;
            for (Path p : aside()) {
                Files.delete(p);
            }
        }
        assertThat(shorter).isGreaterThan(5);
    }

    /** Those facts with the moments of these, where their own are lost. */
    private static List<Fact> timed(List<Fact> facts, List<Fact> of) {
        List<Fact> out = new ArrayList<>();
        for (int i = 0; i < facts.size(); i++) {
            Fact f = facts.get(i);
            out.add(f.at().boot().startsWith("lost-at-") && !f.at().wallTrusted()
                    ? new Fact(f.seq(), of.get(i).at(), f.cone(), f.source(), f.change()) : f);
        }
        return out;
    }

    /** Ten facts a boot. */
    private List<Fact> ofSixtyBoots() throws Exception {
        List<Fact> all = new ArrayList<>();
        for (Fact f : written) {
            all.add(new Fact(f.seq(), new Moment("boot-" + (f.seq() - 1) / 10, f.seq(), f.seq(), true),
                    f.cone(), f.source(), f.change()));
        }
        Files.delete(book());
        try (SqliteStore store = SqliteStore.open(book())) {
            store.append(all);
        }
        return all;
    }

    /** The row of a boot tells only when things were: what was said stays said. */
    @Test
    void aBootThatNobodyCanReadTakesItsTimesAlongAndNothingElse() throws Exception {
        for (String spoil : List.of("UPDATE boot SET id = 'boot-X' WHERE id = 'boot-20'",
                "DELETE FROM boot WHERE id = 'boot-20'")) {
            List<Fact> all = ofSixtyBoots();
            tell(spoil);
            Store.Kept kept = found();
            assertThat(timed(kept.facts(), all)).as(spoil).isEqualTo(all);
            assertThat(kept.facts()).as("of that boot only").filteredOn(f -> !all.contains(f)).hasSize(10)
                    .allMatch(f -> f.at().boot().equals("lost-at-201") && !f.at().wallTrusted());
            assertThat(kept.damages()).singleElement().asString().contains(
                    "600 facts of it could be read", "when 10 of them were, nobody knows any more");
        }
    }

    /** Its boot is right, as others of it show: it is the fact that is wrong. */
    @Test
    void aFactOfASoundBootStillEndsTheReading() throws Exception {
        List<Fact> all = ofSixtyBoots();
        tell("UPDATE fact SET mono_ms = 0 WHERE seq = 205");
        assertThat(found().facts()).isEqualTo(all.subList(0, 204));
    }

    @Test
    void aFileCutShortIsFound() throws Exception {
        try (RandomAccessFile f = new RandomAccessFile(book().toFile(), "rw")) {
            f.setLength(f.length() / 2);
        }
        Store.Kept kept = found();
        assertThat(kept.damages()).hasSize(1);
        assertThat(kept.facts()).isEqualTo(written.subList(0, kept.facts().size())).hasSizeLessThan(600);
    }

    @Test
    void whatIsNoDatabaseAnyMoreLeavesAnEmptyBookThatSaysSo() throws Exception {
        Files.writeString(book(), "pencil\n".repeat(5_000));
        Store.Kept kept = found();
        assertThat(kept.facts()).isEmpty();
        assertThat(kept.damages()).singleElement().asString().contains("nothing of it could be read");
    }

    /** The service manager tries each second: copies of what could not be made anew would fill the card. */
    @Test
    void whatCannotBeMadeAnewLeavesNoCopyBehind() throws Exception {
        tell("UPDATE fact SET cone = 'z' WHERE seq = 500");
        byte[] before = Files.readAllBytes(book());
        Path inTheWay = Files.createDirectories(Swap.making(book()).resolve("in the way"));
        for (int start = 0; start < 3; start++) {
            assertThatThrownBy(() -> SqliteStore.open(book())).isInstanceOf(StoreException.class);
            assertThat(aside()).isEmpty();
            assertThat(Files.readAllBytes(book())).isEqualTo(before);
        }
        Files.delete(inTheWay);
        assertThat(found().facts()).isEqualTo(written.subList(0, 499));
        assertThat(aside()).hasSize(1);
    }

    @Test
    void aBookThatIsGoneIsNoNewBeginningWhereItsHistoryIsThere() throws Exception {
        try (SqliteStore store = SqliteStore.open(book())) {
            store.history(RecordWriter.history(7));
        }
        Files.delete(book());
        assertThat(found().damages()).singleElement().asString().contains("nothing of it could be read");
        Files.write(book(), new byte[0]);
        assertThat(found().damages()).as("what was known is gone too").hasSize(1);
    }

    @Test
    void oneDamageAfterAnotherIsToldAndAllThatWasWrittenMeanwhileIsThere() throws Exception {
        tell("UPDATE fact SET cone = 'z' WHERE seq = 500");
        try (SqliteStore store = SqliteStore.open(book())) {
            store.append(List.of(written.get(499)));
        }
        tell("UPDATE fact SET cone = 'z' WHERE seq = 450");
        Store.Kept kept = found();
        assertThat(kept.facts()).isEqualTo(written.subList(0, 449));
        assertThat(kept.damages()).hasSize(2).doesNotHaveDuplicates();
        assertThat(kept.damages().getFirst()).contains("number 499");
        assertThat(kept.damages().getLast()).contains("number 449");
    }

    @Test
    void aFactOfAnotherVersionIsNotTakenForDamage() throws Exception {
        Fact f = written.get(9);
        long sum = Sum.of(f.seq(), f.at().boot(), f.at().monoMs(), f.at().wallMs(),
                f.at().wallTrusted() ? 1 : 0, f.cone(), f.source(), "danced");
        tell("UPDATE fact SET change = 'danced', sum = " + sum + " WHERE seq = 10");
        assertThatThrownBy(() -> SqliteStore.open(book())).isInstanceOf(StoreException.class)
                .hasMessageContaining("fact 10").hasMessageContaining("another version");
        assertThat(aside()).isEmpty();
    }

    /** Whatever was done of the exchange when the power went, the next life ends with the same book. */
    @Test
    void anExchangeThatWasCutOffIsCarriedToItsEnd() throws Exception {
        tell("UPDATE fact SET cone = 'z' WHERE seq = 500");
        Path lab = Files.createDirectories(folder.resolve("lab"));
        try (SqliteStore store = SqliteStore.open(book())) {
            assertThat(store.load().facts()).hasSize(499);
        }
        Path old = aside().getFirst();
        String ready = "record.db.new-old-becomes-" + old.getFileName();
        for (int done = 0; done < 3; done++) {
            Path at = Files.createDirectories(lab.resolve("at-" + done));
            Files.copy(book(), at.resolve(ready));
            Files.copy(old, at.resolve("record.db"));
            Files.write(at.resolve("record.db-wal"), new byte[] {1, 2, 3});
            if (done > 0) {
                Files.move(at.resolve("record.db-wal"), at.resolve(old.getFileName() + "-wal"));
            }
            if (done > 1) {
                Files.move(at.resolve("record.db"), at.resolve(old.getFileName()));
            }
            try (SqliteStore store = SqliteStore.open(at.resolve("record.db"))) {
                assertThat(store.load().facts()).isEqualTo(written.subList(0, 499));
                assertThat(store.load().damages()).hasSize(1);
            }
            assertThat(at.resolve(old.getFileName())).hasSameBinaryContentAs(old);
            assertThat(at.resolve(ready)).doesNotExist();
        }
    }
}

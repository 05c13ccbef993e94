package org.conetender.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.conetender.port.Store.StoreException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Disks that really are full, small ones of their own: what finds room there all the same, and what not. */
@Timeout(120)
class ReserveTest {

    private static final String MOUNT = "mount -t tmpfs -o size=2m tmpfs disk; D=$PWD/disk; ";

    @TempDir
    Path folder;

    @BeforeEach
    void aPlace() throws IOException {
        Files.createDirectories(folder.resolve("disk"));
    }

    private Map<String, String> lives(String shell) throws Exception {
        return DiskWordsTest.mounted(folder, ReserveWork.class, MOUNT + shell);
    }

    private String full() {
        return "the disk of " + folder.resolve("disk") + " is full; free some space";
    }

    @Test
    void aLatchThatTripsOnAFullDiskOutlivesAKillAndStartsOnItAreCounted() throws Exception {
        Map<String, String> said = lives("$WORK latch $D one; $WORK start $D two; $WORK start $D three");
        assertThat(said).containsEntry("one latch", "done").containsEntry("two start", "done")
                .containsEntry("two latches", "1").containsEntry("two began", "3")
                .containsEntry("three start", "done").containsEntry("three began", "4");
    }

    @Test
    void withoutItTheLatchIsLostAndTheNextLifeDoesNotBegin() throws Exception {
        Map<String, String> said = lives("$WORK latch-without $D one; $WORK start $D two");
        assertThat(said.get("one latch")).contains(full(), "recording goes on by itself");
        assertThat(said.get("two start")).contains(full());
        assertThat(said).containsEntry("two latches", "0").doesNotContainKey("two began");
    }

    /** After a stop in good order SQLite has no file beside the book to reuse. */
    @Test
    void aDaemonThatWasStoppedStartsOnAFullDisk() throws Exception {
        Map<String, String> said = lives("$WORK make $D one; $WORK start $D two; $WORK start $D three");
        assertThat(said).containsEntry("two start", "done").containsEntry("three began", "2");
        assertThat(lives("$WORK make $D one; rm $D/*-reserve; $WORK start $D two").get("two start"))
                .as("without it").contains(full());
    }

    /** Where SQLite would be killed in the middle of making its files. */
    @Test
    void inSmallBlocksAStartHasItsRoomBeforeItNeedsIt() throws Exception {
        Map<String, String> said = lives("$WORK make $D one; $WORK small-blocks $D two");
        assertThat(said).containsEntry("two left in large ones", "" + Reserve.BYTES)
                .containsEntry("two begin", "done");
        assertThat(Integer.parseInt(said.get("two free"))).isBetween(48 << 10, 128 << 10);
        assertThat(Integer.parseInt(said.get("two left"))).isBetween(Reserve.BYTES - (128 << 10),
                Reserve.BYTES - (48 << 10));
        assertThat(said.get("two begin without")).contains(full());
    }

    @Test
    void aMinuteIsRefusedInWordsBeforeItTakesTheRoomOfFacts() throws Exception {
        Map<String, String> said = lives("$WORK latch $D one; $WORK room $D two");
        assertThat(said.get("one minute after")).contains(full(), "recording goes on by itself");
        assertThat(Integer.parseInt(said.get("one left"))).as("the first piece was enough")
                .isEqualTo(Reserve.BYTES - Reserve.PIECE_BYTES);
        assertThat(said.get("two minute")).contains(full());
        assertThat(said).containsEntry("two minute with room", "done");
        assertThat(Integer.parseInt(said.get("two left"))).isLessThan(Reserve.BYTES);
        assertThat(said).containsEntry("two left with room", "" + Reserve.BYTES);
    }

    @Test
    void itTakesTheRoomThatItIsSaidToTakeAndNotTheLastOne() throws Exception {
        assertThat(Long.parseLong(lives("$WORK latch $D one").get("one took")))
                .isGreaterThanOrEqualTo(Reserve.BYTES);
        assertThat(lives("mount -o remount,size=900k $D; $WORK latch $D one"))
                .as("there is less than twice as much").containsEntry("one left", "0");
    }

    @Test
    void itIsRoomForAThousandFactsEvenWhereOthersTakeWhatIsLetGo() throws Exception {
        Map<String, String> said = lives("$WORK count $D alone; rm $D/*; $WORK count-greedy $D among");
        assertThat(said.get("alone fact")).as("the first that found none").contains(full());
        assertThat(Integer.parseInt(said.get("alone facts"))).isGreaterThan(2_000);
        assertThat(said.get("among fact")).contains(full());
        assertThat(Integer.parseInt(said.get("among facts"))).isGreaterThan(1_000);
    }

    /** A card is not worn by a disk that is full again and again. */
    @Test
    void whatWasCutOffIsPutBackOnceAnHour() throws Exception {
        Path book = folder.resolve("record.db");
        Reserve r = new Reserve(book);
        r.fill();
        assertThat(r.left()).isEqualTo(Reserve.BYTES);
        for (int piece = 1; piece <= 2; piece++) {
            spend(r);
            assertThat(r.left()).isEqualTo(Reserve.BYTES - Reserve.PIECE_BYTES);
            for (int m = 0; m < Reserve.RESTS_MIN; m++) {
                r.fill();
                assertThat(r.left()).isLessThan(Reserve.BYTES);
            }
            r.fill();
            assertThat(r.left()).isEqualTo(Reserve.BYTES);
        }
        assertThat(new Reserve(book).left()).as("for the next life").isEqualTo(Reserve.BYTES);
    }

    @Test
    void thatItCannotBeMadeIsLoggedOnce() {
        List<String> logged = new ArrayList<>();
        Handler handler = new Handler() {
            @Override
            public void publish(LogRecord record) {
                logged.add(record.getMessage());
            }

            @Override
            public void flush() {
                logged.size();
            }

            @Override
            public void close() {
                logged.clear();
            }
        };
        Logger log = Logger.getLogger(Reserve.class.getName());
        log.addHandler(handler);
        try {
            Reserve r = new Reserve(folder.resolve("nowhere").resolve("record.db"));
            for (int m = 0; m < 3 * Reserve.RESTS_MIN; m++) {
                r.fill();
            }
            assertThat(r.left()).isZero();
        } finally {
            log.removeHandler(handler);
        }
        assertThat(logged).singleElement().asString().contains("512 kB", "512 are missing", "nowhere");
    }

    /** As if the first try had found no room. */
    private static void spend(Reserve r) throws Exception {
        boolean[] tried = {false};
        r.within(() -> {
            if (!tried[0]) {
                tried[0] = true;
                throw new StoreException("full",
                        new SQLiteException("full", SQLiteErrorCode.SQLITE_FULL));
            }
            return tried;
        });
    }

    @Test
    void aBackupHasNone() throws Exception {
        Path book = folder.resolve("record.db");
        try (SqliteStore store = SqliteStore.open(book)) {
            store.append(List.of(RecordWriter.fact(1)));
            Backup.of(book, folder.resolve("record.zip"));
        }
        try (ZipFile zip = new ZipFile(folder.resolve("record.zip").toFile())) {
            assertThat(zip.stream().map(ZipEntry::getName)).containsExactly("book.db");
        }
    }

    @Test
    void aRestoredRecordHasTheOneThatLayThere() throws Exception {
        Path book = folder.resolve("record.db");
        SqliteStore.open(book).close();
        Backup.of(book, folder.resolve("record.zip"));
        String old = Restore.of(folder.resolve("record.zip"), book).orElseThrow();
        assertThat(folder.resolve(old)).exists();
        assertThat(folder.resolve(old + "-reserve")).doesNotExist();
        assertThat(Files.size(folder.resolve("record.db-reserve"))).isEqualTo(Reserve.BYTES);
    }
}

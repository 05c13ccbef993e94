package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store.StoreException;

/** Does to a record on a small disk what people do, and prints a line for each: done, or the words. */
public final class DiskWork {

    private interface Work {
        void run() throws Exception;
    }

    private final Path book;
    private final Path filler;
    private long seq;

    private DiskWork(Path disk) {
        book = disk.resolve("conetender.db");
        filler = disk.resolve("filler");
    }

    /** @param args {@code full}, {@code make} or {@code read-only}; the small disk; a stick with no room */
    public static void main(String[] args) throws Exception {
        DiskWork w = new DiskWork(Path.of(args[1]));
        switch (args[0]) {
            case "full" -> w.full(Path.of(args[2]));
            case "make" -> SqliteStore.open(w.book).close();
            default -> w.readOnly(Path.of(args[2]));
        }
    }

    private static void say(String what, Work work) throws Exception {
        try {
            work.run();
            System.out.println(what + ": done");
        } catch (StoreException e) {
            System.out.println(what + ": " + e.getMessage().replace('\n', ' '));
        }
    }

    private void full(Path stick) throws Exception {
        SqliteStore.open(book).close();
        fill();
        say("start", () -> SqliteStore.open(book).close());
        say("report", () -> RecordReader.of(book).kept());
        Files.delete(filler);
        say("start with room", () -> SqliteStore.open(book).close());
        say("backup to a full stick", () -> Backup.of(book, stick.resolve("record.zip")));
        try (SqliteStore store = SqliteStore.open(book)) {
            append(store);
            fill();
            say("fact", () -> {
                while (seq < 200) {
                    append(store);
                }
            });
            Files.delete(filler);
            say("fact with room", () -> append(store));
        }
    }

    private void readOnly(Path stick) throws Exception {
        say("start", () -> SqliteStore.open(book).close());
        say("report", () -> RecordReader.of(book).kept());
        say("backup", () -> Backup.of(book, book.resolveSibling("record.zip")));
        say("restore", () -> Restore.of(stick.resolve("record.zip"), book));
    }

    private void append(SqliteStore store) throws StoreException {
        store.append(List.of(new Fact(seq + 1, new Moment("boot-1", seq, 0, false), "a", "r" + seq,
                new Change.Told(new Ask.Acknowledge("x".repeat(3_000))))));
        seq++;
    }

    private void fill() throws IOException {
        try (OutputStream out = Files.newOutputStream(filler)) {
            while (true) {
                out.write(new byte[1_024]);
            }
        } catch (IOException full) {
            System.out.println("full after " + Files.size(filler) + " bytes");
        }
    }
}

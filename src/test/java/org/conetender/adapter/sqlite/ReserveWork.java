package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store;
import org.conetender.port.Store.StoreException;

/** A daemon's record on a disk that somebody fills; it dies without a word. Prints a line for each thing. */
public final class ReserveWork {

    /** More facts than are tried. */
    private static final int MOST = 3_000;

    private interface Work {
        void run() throws Exception;
    }

    private final String life;
    private final Path book;
    private final Path filler;
    private long seq;

    private ReserveWork(String life, Path disk) {
        this.life = life;
        book = disk.resolve("conetender.db");
        filler = disk.resolve("filler");
    }

    /** @param args what to do; the small disk; a word for this life */
    public static void main(String[] args) throws Exception {
        ReserveWork w = new ReserveWork(args[2], Path.of(args[1]));
        switch (args[0]) {
            case "make" -> SqliteStore.open(w.book).close();
            case "latch" -> w.latch(false);
            case "latch-without" -> w.latch(true);
            case "start" -> w.start();
            case "small-blocks" -> w.smallBlocks();
            case "count" -> w.count(false);
            case "count-greedy" -> w.count(true);
            default -> w.room();
        }
        Runtime.getRuntime().halt(0);
    }

    private void say(String what, Object said) {
        System.out.println(life + " " + what + ": " + said.toString().replace('\n', ' '));
    }

    private boolean said(String what, Work work) throws Exception {
        try {
            work.run();
            say(what, "done");
            return true;
        } catch (StoreException e) {
            say(what, e.getMessage());
            return false;
        }
    }

    /** A latch that trips while the disk is full. @param without the reserve is gone, and its room taken */
    private void latch(boolean without) throws Exception {
        long before = book.toFile().getParentFile().getUsableSpace();
        SqliteStore store = SqliteStore.open(book);
        say("took", before - book.toFile().getParentFile().getUsableSpace());
        seq = store.load().facts().size();
        append(store, new Change.Began(Optional.empty()));
        store.minute(RecordWriter.minute(1));
        if (without) {
            Files.delete(reserve());
        }
        fill();
        said("minute", () -> store.minute(RecordWriter.minute(2)));
        said("latch", () -> append(store, tripped()));
        said("minute after", () -> store.minute(RecordWriter.minute(3)));
        say("left", Files.exists(reserve()) ? Files.size(reserve()) : 0);
    }

    /** A start while it is full. */
    private void start() throws Exception {
        fill();
        said("start", () -> {
            SqliteStore store = SqliteStore.open(book);
            Store.Kept kept = store.load();
            seq = kept.facts().size();
            say("latches", kept.facts().stream().filter(f -> f.change() instanceof Change.Tripped).count());
            append(store, new Change.Began(Optional.empty()));
            say("began", seq);
        });
    }

    /** A start in blocks of a kilobyte: this disk has larger ones. */
    private void smallBlocks() throws Exception {
        fill();
        Reserve reserve = new Reserve(book);
        reserve.begin(4_096);
        say("left in large ones", reserve.left());
        said("begin", () -> reserve.begin(1_024));
        say("left", reserve.left());
        say("free", book.toFile().getParentFile().getUsableSpace());
        Files.delete(reserve());
        fill();
        said("begin without", () -> new Reserve(book).begin(1_024));
    }

    /** As many latches as there is room for. @param greedy what is let go and not used is taken at once */
    private void count(boolean greedy) throws Exception {
        SqliteStore store = SqliteStore.open(book);
        append(store, new Change.Began(Optional.empty()));
        fill();
        while (seq < MOST && said("fact", () -> append(store, tripped()))) {
            if (greedy) {
                fill();
            }
        }
        say("facts", seq);
    }

    /** Somebody makes room while it runs. */
    private void room() throws Exception {
        fill();
        SqliteStore store = SqliteStore.open(book);
        seq = store.load().facts().size();
        append(store, new Change.Began(Optional.empty()));
        said("minute", () -> store.minute(RecordWriter.minute(2)));
        say("left", Files.size(reserve()));
        Files.delete(filler);
        said("minute with room", () -> store.minute(RecordWriter.minute(3)));
        say("left with room", Files.size(reserve()));
    }

    private Path reserve() {
        return book.resolveSibling("conetender.db-reserve");
    }

    private Change tripped() {
        return new Change.Tripped("welded", "the water warms though its heater is off, number " + seq);
    }

    private void append(SqliteStore store, Change change) throws StoreException {
        store.append(List.of(new Fact(seq + 1, new Moment(life, seq, 0, false), "a", "", change)));
        seq++;
    }

    private void fill() throws IOException {
        try (OutputStream out = Files.newOutputStream(filler, StandardOpenOption.CREATE,
                StandardOpenOption.APPEND)) {
            while (true) {
                out.write(new byte[1_024]);
            }
        } catch (IOException full) {
            say("filled", full.getMessage());
        }
    }
}

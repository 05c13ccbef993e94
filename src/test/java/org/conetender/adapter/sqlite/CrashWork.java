package org.conetender.adapter.sqlite;

import java.nio.file.Path;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.conetender.core.batch.Fact;
import org.conetender.port.Store.StoreException;

/**
 * Opens a record, writes so many transactions and says of each that it is kept, as {@link RecordWriter} does,
 * then ends without a word, or closes it and begins once more. A bug may be planted.
 */
public final class CrashWork {

    /** What is done wrong; {@code FULL} is none, but of the disk: what is not kept is not said. */
    enum Bug { NONE, NORMAL, EARLY, FULL }

    /** A few pages, so that a short run has many checkpoints of the journal. */
    private static final int PAGES = 25;

    private CrashWork() {}

    /** @param args the book, how many transactions, how many lives in this process, the bug */
    public static void main(String[] args) throws Exception {
        int lives = Integer.parseInt(args[2]);
        for (int life = 1; life <= lives; life++) {
            SqliteStore store = SqliteStore.open(Path.of(args[0]), 1);
            work(store, Integer.parseInt(args[1]), Bug.valueOf(args[3]));
            if (life < lives) {
                store.close();
            }
        }
        Runtime.getRuntime().halt(0);
    }

    private static void work(SqliteStore store, int transactions, Bug bug) throws Exception {
        try (Statement s = store.connection().createStatement()) {
            s.execute("PRAGMA wal_autocheckpoint = " + PAGES);
            if (bug == Bug.NORMAL) {
                s.execute("PRAGMA synchronous = NORMAL");
            }
        }
        long seq = store.load().facts().size();
        for (int i = 0; i < transactions; i++) {
            List<Fact> together = new ArrayList<>();
            for (long n = seq % 3; n >= 0; n--) {
                seq++;
                together.add(RecordWriter.fact(seq));
            }
            if (bug == Bug.EARLY) {
                System.out.println("fact " + seq);
            }
            store.append(together);
            if (bug != Bug.EARLY) {
                System.out.println("fact " + seq);
            }
            if (i % 4 == 0) {
                minute(store, seq, bug);
            }
        }
    }

    private static void minute(SqliteStore store, long seq, Bug bug) throws StoreException {
        try {
            store.minute(RecordWriter.minute(seq));
            System.out.println("minute " + seq);
            store.history(RecordWriter.history(seq));
            System.out.println("history " + seq);
        } catch (StoreException e) {
            if (bug != Bug.FULL) {
                throw e;
            }
        }
    }
}

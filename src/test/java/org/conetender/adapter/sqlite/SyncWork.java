package org.conetender.adapter.sqlite;

import java.nio.file.Path;
import java.util.List;
import org.conetender.port.Store.StoreException;

/** Writes facts until one fails, says which and what a caller was told of it, and dies without a word. */
public final class SyncWork {

    private static final long MOST = 50;

    private SyncWork() {}

    /** @param args the book */
    public static void main(String[] args) throws Exception {
        SqliteStore store = SqliteStore.open(Path.of(args[0]));
        for (long seq = 1; seq <= MOST; seq++) {
            try {
                store.append(List.of(RecordWriter.fact(seq)));
            } catch (StoreException e) {
                System.out.println("failed " + seq + " " + e.mayBeKept() + " " + e.getMessage());
                System.out.flush();
                Runtime.getRuntime().halt(0);
            }
        }
    }
}

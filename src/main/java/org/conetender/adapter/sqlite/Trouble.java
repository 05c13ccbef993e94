package org.conetender.adapter.sqlite;

import java.nio.file.Path;
import java.sql.SQLException;
import org.conetender.port.Store.StoreException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** SQLite's result codes as sentences: what it means for the record, and what to do next. */
final class Trouble {

    /** SQLite's extended codes keep the primary one in their low byte. */
    static final int PRIMARY = 0xff;

    private Trouble() {}

    /** The exception to hand to the agent; {@code doing} such as "keep a fact in". */
    static StoreException of(String doing, Path file, SQLException e) {
        return new StoreException("could not " + doing + " the record " + file + ": " + advice(e)
                + " (" + e.getMessage() + ")", e);
    }

    /** Whether the file itself is damaged, and not only what lies around it. */
    static boolean damaged(SQLException e) {
        int code = e instanceof SQLiteException s ? s.getResultCode().code & PRIMARY : 0;
        return code == SQLiteErrorCode.SQLITE_CORRUPT.code || code == SQLiteErrorCode.SQLITE_NOTADB.code;
    }

    /** Never the bare code: the person at the cones must know whether to free space or change the card. */
    private static String advice(SQLException e) {
        if (!(e instanceof SQLiteException s)) {
            return "the database library failed; restart conetender, and keep this message if it comes again";
        }
        int code = s.getResultCode().code & PRIMARY;
        if (code == SQLiteErrorCode.SQLITE_FULL.code) {
            return "the disk is full; free some space (journalctl --vacuum-size=50M is a start),"
                    + " recording goes on by itself";
        }
        if (code == SQLiteErrorCode.SQLITE_READONLY.code) {
            return "it cannot be written; the file was moved or its rights changed, or the card has gone"
                    + " read-only, which often means that it is failing: copy the record and change the card";
        }
        if (damaged(e)) {
            return "the file is damaged; restart conetender: it keeps the damaged record aside and goes on"
                    + " with what can be read of it";
        }
        if (code == SQLiteErrorCode.SQLITE_BUSY.code || code == SQLiteErrorCode.SQLITE_LOCKED.code) {
            return "another program holds it; close whatever has the record open for writing";
        }
        if (code == SQLiteErrorCode.SQLITE_CANTOPEN.code) {
            return "it cannot be opened; see that the folder and the file belong to the user conetender";
        }
        if (code == SQLiteErrorCode.SQLITE_IOERR.code) {
            return "the disk answers with errors; copy the record and change the card or disk soon";
        }
        if (code == SQLiteErrorCode.SQLITE_CONSTRAINT.code) {
            return "it contradicts what is already recorded, which is a fault of conetender; restart it and"
                    + " keep this message";
        }
        return "the database failed; restart conetender, and keep this message if it comes again";
    }
}

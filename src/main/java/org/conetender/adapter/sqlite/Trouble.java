package org.conetender.adapter.sqlite;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import org.conetender.port.Store.StoreException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** SQLite's result codes as sentences: what it means for the record, and what to do next. */
final class Trouble {

    /** SQLite's extended codes keep the primary one in their low byte. */
    static final int PRIMARY = 0xff;

    private Trouble() {}

    /** The exception to hand to the agent; {@code doing} such as "open". */
    static StoreException of(String doing, Path file, SQLException e) {
        return new StoreException(sentence(doing, file, advice(file, e), e), e);
    }

    /**
     * While the daemon runs, which goes on by itself once there is room.
     *
     * @param doing "keep a fact in"  @param mayBeKept as {@link StoreException#mayBeKept}
     */
    static StoreException running(String doing, Path file, SQLException e, boolean mayBeKept) {
        String advice = advice(file, e);
        return new StoreException(advice.equals(Disk.full(file.getParent())) ? goesOn(advice)
                : sentence(doing, file, advice, e), e, mayBeKept);
    }

    /** What a full disk asks of whoever reported something; neither what failed nor the library's words. */
    static String goesOn(String full) {
        return full + "; recording goes on by itself";
    }

    private static String sentence(String doing, Path file, String advice, SQLException e) {
        return "could not " + doing + " the record " + file + ": " + advice + " (" + e.getMessage() + ")";
    }

    /** Whether no room was left for what had to be written: then its end was not written either. */
    static boolean room(SQLException e) {
        return e instanceof SQLiteException s
                && (s.getResultCode().code & PRIMARY) == SQLiteErrorCode.SQLITE_FULL.code;
    }

    /** Whether it could not be written, whatever the code says of the reason. */
    static boolean disk(SQLException e) {
        int code = e instanceof SQLiteException s ? s.getResultCode().code & PRIMARY : 0;
        return code == SQLiteErrorCode.SQLITE_FULL.code || code == SQLiteErrorCode.SQLITE_IOERR.code
                || code == SQLiteErrorCode.SQLITE_READONLY.code
                || code == SQLiteErrorCode.SQLITE_CANTOPEN.code;
    }

    /** Whether the file itself is damaged, and not only what lies around it. */
    static boolean damaged(SQLException e) {
        int code = e instanceof SQLiteException s ? s.getResultCode().code & PRIMARY : 0;
        return code == SQLiteErrorCode.SQLITE_CORRUPT.code || code == SQLiteErrorCode.SQLITE_NOTADB.code;
    }

    /** Never the bare code: the person at the cones must know whether to free space or change the card. */
    private static String advice(Path file, SQLException e) {
        return (disk(e) ? Disk.trouble(file.getParent()) : Optional.<String>empty())
                .orElseGet(() -> byCode(file, e));
    }

    private static String byCode(Path file, SQLException e) {
        if (!(e instanceof SQLiteException s)) {
            return Disk.unpacking().orElse("the database library failed; restart conetender, and keep this"
                    + " message if it comes again");
        }
        int code = s.getResultCode().code & PRIMARY;
        if (code == SQLiteErrorCode.SQLITE_FULL.code) {
            return Disk.full(file.getParent());
        }
        if (code == SQLiteErrorCode.SQLITE_READONLY.code) {
            return "it cannot be written; the file was moved or its rights changed: it must belong to the"
                    + " user conetender";
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

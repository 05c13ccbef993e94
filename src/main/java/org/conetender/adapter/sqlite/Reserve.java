package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import org.conetender.port.Store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Room for facts on a full disk: a file beside the book that means nothing and takes room. What a fact, or a
 * start, cannot find on the disk is cut off its end, in pieces, since whatever filled the disk takes what is
 * let go and not used at once. Minutes leave it alone, and as much of the disk as it lacks.
 *
 * <p>One thread at a time, the one that has the record's lock.
 */
final class Reserve {

    private static final Logger LOG = LoggerFactory.getLogger(Reserve.class);

    /**
     * Its size (guess). Beside a start, 2,550 latches found room in it where nobody else wrote, and 1,260
     * where whatever was let go and not used was taken by others after each ({@code ReserveTest}): years of
     * them.
     */
    static final int BYTES = 512 << 10;

    /** The first piece that is cut off; each further one for the same facts is twice as long. Guess. */
    static final int PIECE_BYTES = 16 << 10;

    /** What a start takes, bytes: SQLite's index of the journal, and the journal's first pages (measured). */
    private static final int START_BYTES = 48 << 10;

    /** SQLite makes that index longer by a byte in each of such pieces. */
    private static final int INDEX_PAGE_BYTES = 4_096;

    /**
     * With less than this left on the disk an error of it is believed to be for want of room, bytes: guess,
     * twice what a start takes.
     */
    private static final int SCARCE_BYTES = 96 << 10;

    /**
     * Minutes from one filling to the next (guess): on a disk that is full again and again, or has no room
     * where it says that it has, this writes 12 MB a day at most.
     */
    static final int RESTS_MIN = 60;

    private final Path book;
    private final Path file;
    /** Its length, bytes. */
    private long left;
    private int restsMin;
    private boolean told;

    /** As it lies there. @param book absolute */
    Reserve(Path book) {
        this.book = book;
        file = Swap.beside(book, "-reserve");
        try {
            left = Files.exists(file) ? Files.size(file) : 0;
        } catch (IOException e) {
            LOG.debug("how long {} is cannot be told", file, e);
        }
    }

    interface Write<T> {
        T run() throws StoreException;
    }

    /**
     * Before SQLite opens the book. In smaller blocks most of its index has no room yet when it was made, and
     * a process that writes there is killed (SIGBUS, seen on a full ext4 with blocks of 1 kB): there a start
     * has its room first, or none.
     *
     * @param blockBytes of the file system
     */
    void begin(long blockBytes) throws StoreException {
        if (blockBytes >= INDEX_PAGE_BYTES) {
            return;
        }
        int piece = PIECE_BYTES;
        while (scarce(START_BYTES) && cut(piece)) {
            piece *= 2;
        }
        if (scarce(START_BYTES)) {
            throw new StoreException("could not open the record " + book + ": "
                    + Disk.full(file.getParent()), null);
        }
    }

    /** Does that; if there is no room for it, again, with more and more of the reserve, until it is done. */
    <T> T within(Write<T> write) throws StoreException {
        for (int piece = PIECE_BYTES;; piece *= 2) {
            try {
                return write.run();
            } catch (StoreException e) {
                // What may be kept already had its room.
                if (e.mayBeKept() || !forRoom(e.getCause()) || !cut(piece)) {
                    throw e;
                }
            }
        }
    }

    /** SQLite calls it by other names too, where a file beside the database cannot grow. */
    private boolean forRoom(Throwable cause) {
        if (cause instanceof SQLException e) {
            return Trouble.room(e) || Trouble.disk(e) && scarce(SCARCE_BYTES);
        }
        return cause instanceof IOException && scarce(SCARCE_BYTES);
    }

    private boolean scarce(long bytes) {
        OptionalLong free = Disk.free(file.getParent());
        return free.isPresent() && free.getAsLong() < bytes;
    }

    /** False when nothing of it is left. The disk has the room only once the cut is synced. */
    private boolean cut(int bytes) {
        if (left == 0) {
            return false;
        }
        if (left == BYTES) {
            LOG.warn("the disk of {} is full: facts go into the {} kB that are kept for them, minutes rest",
                    file.getParent(), BYTES >> 10);
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            left = Math.max(0, left - bytes);
            channel.truncate(left);
            channel.force(true);
        } catch (IOException e) {
            LOG.warn("the room that is kept for facts, {}, cannot be had: {}", file, e.toString());
            left = 0;
            return false;
        }
        if (left == 0) {
            LOG.warn("nothing is left of the room that was kept for facts");
        }
        return true;
    }

    /** How much of it is there, bytes. */
    long left() {
        return left;
    }

    /**
     * Before a minute is written.
     *
     * @throws StoreException while the disk has no more room than this lacks
     */
    void spare() throws StoreException {
        if (left < BYTES && scarce(BYTES - left)) {
            throw new StoreException(Trouble.goesOn(Disk.full(file.getParent())), null);
        }
    }

    /**
     * Makes it, or what was cut off it, where the disk keeps as much again: the last room is not taken for
     * it. To be called each minute.
     */
    void fill() {
        if (restsMin > 0) {
            restsMin--;
        } else if (left < BYTES) {
            if (scarce(BYTES - left + BYTES)) {
                tell("the disk has too little room");
            } else {
                write();
            }
        }
    }

    /** With bytes that no file system makes shorter: holes, zeros and repeats take no room on some. */
    private void write() {
        restsMin = RESTS_MIN;
        byte[] piece = new byte[PIECE_BYTES];
        try (FileChannel out = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            long from = left;
            try {
                for (long at = from; at < BYTES; at += piece.length) {
                    new SplittableRandom(at).nextBytes(piece);
                    for (ByteBuffer b = ByteBuffer.wrap(piece); b.hasRemaining();) {
                        out.write(b, at + b.position());
                    }
                }
                out.force(true);
                left = BYTES;
                told = false;
            } catch (IOException e) {
                out.truncate(from);
                throw e;
            }
        } catch (IOException e) {
            tell(e.toString());
        }
    }

    private void tell(String why) {
        if (!told) {
            LOG.warn("of {} kB that are kept in {} for facts on a full disk {} are missing: {}", BYTES >> 10,
                    file, (BYTES - left) >> 10, why);
        }
        told = true;
    }
}

package org.conetender.adapter.sqlite;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.conetender.port.Store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Puts a {@link Backup} in the place of the record, while no daemon has it. The copies are made beside the
 * record and looked through whole first. Then one change of a name decides for both files ({@link Swap}): a
 * cut before it leaves the record as it was, one after it is gone on with by whoever opens the record next.
 */
public final class Restore {

    private static final Logger LOG = LoggerFactory.getLogger(Restore.class);

    /** Unpacked in one go. */
    private static final int PIECE_BYTES = 1 << 16;

    private final Path backup;
    private final Path book;
    private final Path history;

    private Restore(Path backup, Path book) {
        this.backup = backup;
        this.book = book;
        this.history = Opening.history(book);
    }

    /**
     * Restores the record.
     *
     * @param backup made by {@link Backup#of}  @param book file of the record, whose folder must exist
     * @return the name under which the record of before is kept; empty when there was none
     * @throws StoreException with what to do; then the record is as it was, or becomes the backup's as soon
     *     as it is opened, and the message says which
     */
    public static Optional<String> of(Path backup, Path book) throws StoreException {
        if (!Files.isRegularFile(backup)) {
            throw new StoreException("there is no backup " + backup, null);
        }
        Restore r = new Restore(backup.toAbsolutePath(), book.toAbsolutePath());
        try (RecordLock lock = Opening.lock(r.book)) {
            LOG.debug("nobody else has the record, by {}", lock);
            own(Swap.beside(r.book, ".lock"));
            return r.locked();
        } catch (IOException e) {
            throw new StoreException("the backup " + backup + " could not be restored: " + Disk.trouble(
                    book.toAbsolutePath().getParent()).orElse("see that the folder of the record can be "
                    + "written and has room") + " (" + e + "); the record is as it was", e);
        }
    }

    /** Nobody else has the record meanwhile. */
    private Optional<String> locked() throws StoreException, IOException {
        Swap.finish(book);
        try {
            return inPlace();
        } finally {
            // What was not decided is left over from nothing.
            clear(Swap.making(book), true);
            clear(Swap.making(history), true);
        }
    }

    /** What reading made beside it. @param itself also the file */
    private static void clear(Path made, boolean itself) throws IOException {
        for (String end : itself ? List.of("-journal", "-wal", "-shm", "") : List.of("-wal", "-shm")) {
            Files.deleteIfExists(Swap.beside(made, end));
        }
    }

    private Optional<String> inPlace() throws StoreException, IOException {
        boolean before = Files.exists(book) || Files.exists(history);
        String old = Salvage.aside(book, "before-restore-");
        unpack(": what happened after it was made is not in it" + (before
                ? "; the record of before is kept as " + old : ""));
        try {
            Swap.wait(history, book, old);
            Swap.decide(book, old);
        } catch (IOException e) {
            throw new StoreException("the backup could not be put in place (" + e + "); the record is as it "
                    + "was", e);
        }
        try {
            Swap.finish(book);
        } catch (IOException e) {
            throw new StoreException("the backup is whole beside the record, and takes its place when "
                    + "conetender is started next; what stopped it now is " + e, e);
        }
        return before ? Optional.of(old) : Optional.empty();
    }

    /**
     * Both files beside the record, looked through and synced; what is in the way is of an earlier try.
     *
     * @param missing what the next life says that it lacks
     */
    private void unpack(String missing) throws StoreException, IOException {
        try (ZipFile zip = new ZipFile(backup.toFile())) {
            ZipEntry entry = zip.getEntry(Backup.BOOK);
            if (entry == null) {
                throw noBackup("there is no book in it", null);
            }
            unpack(zip, entry, Swap.making(book));
            ZipEntry temperatures = zip.getEntry(Backup.HISTORY);
            if (temperatures == null) {
                Files.deleteIfExists(Swap.making(history));
                Files.createFile(Swap.making(history));
            } else {
                unpack(zip, temperatures, Swap.making(history));
            }
        } catch (ZipException | EOFException e) {
            throw noBackup(e.getMessage(), e);
        }
        look(Swap.making(book), Schema.BOOK);
        look(Swap.making(history), Schema.HISTORY);
        lacks(missing);
        for (Path made : List.of(Swap.making(book), Swap.making(history))) {
            clear(made, false);
            own(made);
        }
    }

    private static void unpack(ZipFile zip, ZipEntry entry, Path to) throws IOException {
        clear(to, true);
        CheckedInputStream in = new CheckedInputStream(zip.getInputStream(entry), new CRC32());
        try (FileChannel out = FileChannel.open(to, StandardOpenOption.CREATE,
                StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE)) {
            byte[] piece = new byte[PIECE_BYTES];
            long at = 0;
            for (int n = in.read(piece); n >= 0; n = in.read(piece)) {
                for (ByteBuffer b = ByteBuffer.wrap(piece, 0, n); b.hasRemaining();) {
                    at += out.write(b, at);
                }
            }
            out.force(true);
        }
        if (in.getChecksum().getValue() != entry.getCrc()) {
            throw new ZipException(entry.getName() + " is not as it was written");
        }
    }

    /** Whether it is a sound file that this program can read. */
    private void look(Path made, Schema schema) throws StoreException {
        try (Connection db = RecordReader.connect(made); Statement s = db.createStatement()) {
            s.execute("BEGIN");
            int version = RecordReader.checked(db, schema);
            Opening.check(db, "");
            if (schema == Schema.BOOK && version == 0) {
                throw noBackup("its book is empty", null);
            }
            if (schema == Schema.BOOK) {
                Opening.read(db, version);
            }
        } catch (Schema.Refused e) {
            throw new StoreException("the backup " + backup + " " + e.getMessage() + ". The record is as it "
                    + "was", e);
        } catch (SQLException | Damaged | IllegalArgumentException e) {
            throw noBackup(e.getMessage(), e);
        }
    }

    /**
     * That the book tells of a state that is past: a life that begins with it locks the heaters until a
     * person has looked, as behind a damage. The number of its last fact makes the words those of this
     * restore alone: a book in which they stand as seen has later facts.
     */
    private void lacks(String missing) throws StoreException {
        try (Connection db = Opening.plain(Swap.making(book)); Statement s = db.createStatement()) {
            s.execute("PRAGMA journal_mode = DELETE");
            s.execute("PRAGMA synchronous = FULL");
            s.execute(Schema.DAMAGE);
            long last = Schema.number(db, "SELECT coalesce(max(seq), 0) FROM fact");
            new Rows(db, true).damaged("the record is that of a backup, " + backup.getFileName()
                    + ", which ends with fact number " + last + missing);
        } catch (SQLException e) {
            throw Trouble.of("write into", Swap.making(book), e);
        }
    }

    private StoreException noBackup(String why, Exception cause) {
        return new StoreException("the backup " + backup + " is damaged, or is none (" + why + "); the "
                + "record is as it was", cause);
    }

    /** A file that the administrator makes must be the daemon's, whose folder it is. */
    private static void own(Path file) throws IOException {
        PosixFileAttributes folder = Files.readAttributes(file.getParent(), PosixFileAttributes.class);
        PosixFileAttributes now = Files.readAttributes(file, PosixFileAttributes.class);
        if (!now.owner().equals(folder.owner())) {
            PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
            view.setOwner(folder.owner());
            view.setGroup(folder.group());
        }
    }
}

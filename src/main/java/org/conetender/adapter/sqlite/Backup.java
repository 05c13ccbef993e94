package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.conetender.port.Store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A copy of the record in one file, a ZIP archive that holds the book and the history, each whole and as it
 * stood at one moment. The daemon may run: the copy reads as a report does. The history is copied first, so
 * that the book knows all that the history is about. The file gets its name when it is whole and synced.
 */
public final class Backup {

    /** Names in the archive, whatever the record's files are called. */
    static final String BOOK = "book.db";
    static final String HISTORY = "history.db";

    /** Begin of the name of the folder in which a copy is made. */
    static final String FOLDER = ".conetender-backup-";

    /** A folder that was made is locked within this time (guess: the next call locks it). */
    private static final Duration LOCKED_WITHIN = Duration.ofMinutes(10);

    private static final Logger LOG = LoggerFactory.getLogger(Backup.class);

    private final Path book;
    private final Path to;

    private Backup(Path book, Path to) {
        this.book = book.toAbsolutePath();
        this.to = to.toAbsolutePath();
    }

    /**
     * Copies the record.
     *
     * @param book its file, as {@link SqliteStore#open} takes it  @param to must not exist
     * @return how large the copy is, bytes
     * @throws StoreException with what to do; then there is no such file
     */
    public static long of(Path book, Path to) throws StoreException {
        return new Backup(book, to).make();
    }

    private long make() throws StoreException {
        if (Files.exists(to)) {
            throw exists(null);
        }
        if (!Files.isDirectory(to.getParent())) {
            throw new StoreException("there is no folder " + to.getParent() + " to put the backup into; make "
                    + "it, or plug in the disk that has it, and ask again. The record is as it was", null);
        }
        // Says what is wrong with the record, if anything is.
        RecordReader.of(book).kept();
        try {
            Path folder = Files.createTempDirectory(to.getParent(), FOLDER);
            try (FileChannel working = working(folder); FileLock lock = working.lock()) {
                LOG.debug("copying under {}", lock);
                sweep(folder);
                return make(folder);
            } finally {
                remove(folder);
            }
        } catch (FileAlreadyExistsException e) {
            throw exists(e);
        } catch (IOException e) {
            throw unwritten(e);
        }
    }

    /** Where it was to lie something is amiss, not where the record lies. */
    private StoreException unwritten(Exception e) {
        String why = Disk.trouble(to.getParent()).orElse("see that its folder is there, can be written "
                + "and has room for twice the record");
        return new StoreException("the backup " + to + " could not be written: " + why + " (" + e
                + "). The record is as it was", e);
    }

    private StoreException exists(Exception cause) {
        return new StoreException(to + " exists already, and a backup takes no other's place; give another "
                + "name", cause);
    }

    private long make(Path folder) throws IOException, StoreException {
        Path history = Opening.history(book);
        if (Files.exists(history)) {
            copy(history, folder.resolve(HISTORY));
        }
        copy(book, folder.resolve(BOOK));
        Path whole = folder.resolve("whole.zip");
        try (FileChannel channel = FileChannel.open(whole, StandardOpenOption.CREATE_NEW,
                StandardOpenOption.WRITE)) {
            ZipOutputStream zip = new ZipOutputStream(Channels.newOutputStream(channel));
            zip.setLevel(Deflater.BEST_SPEED);
            add(zip, folder.resolve(BOOK));
            if (Files.exists(folder.resolve(HISTORY))) {
                add(zip, folder.resolve(HISTORY));
            }
            zip.finish();
            channel.force(true);
        }
        // Not over another file, and under its name only when it is whole.
        Files.move(whole, to);
        Swap.syncFolder(to.getParent());
        return Files.size(to);
    }

    private void copy(Path from, Path copy) throws StoreException {
        try (Connection db = RecordReader.connect(from);
                PreparedStatement p = db.prepareStatement("VACUUM INTO ?")) {
            p.setString(1, copy.toString());
            p.execute();
        } catch (SQLException e) {
            boolean there = Trouble.disk(e) && Disk.trouble(from.getParent()).isEmpty();
            throw there ? unwritten(e) : Trouble.of("copy", from, e);
        }
    }

    private static void add(ZipOutputStream zip, Path file) throws IOException {
        zip.putNextEntry(new ZipEntry(file.getFileName().toString()));
        Files.copy(file, (OutputStream) zip);
        zip.closeEntry();
    }

    /** Held while its folder is worked in; a kill lets go of it. */
    private static FileChannel working(Path folder) throws IOException {
        return FileChannel.open(folder.resolve("working"), StandardOpenOption.CREATE,
                StandardOpenOption.WRITE);
    }

    /**
     * What killed ones left lying beside this one: folders in which nobody works, nor is about to. Their age
     * is asked of the disk alone, whatever the clock says meanwhile. @param own made just now
     */
    private void sweep(Path own) {
        try (DirectoryStream<Path> left = Files.newDirectoryStream(to.getParent(), FOLDER + "*")) {
            FileTime young = FileTime.from(Files.getLastModifiedTime(own).toInstant().minus(LOCKED_WITHIN));
            for (Path folder : left) {
                if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
                        && Files.getLastModifiedTime(folder).compareTo(young) < 0 && nobodyWorks(folder)) {
                    remove(folder);
                }
            }
        } catch (IOException | DirectoryIteratorException e) {
            LOG.debug("what an earlier backup left beside {} stays there", to, e);
        }
    }

    private static boolean nobodyWorks(Path folder) throws IOException {
        try (FileChannel working = working(folder); FileLock lock = working.tryLock()) {
            return lock != null;
        } catch (OverlappingFileLockException inThisProcess) {
            return false;
        }
    }

    private static void remove(Path folder) throws IOException {
        try (DirectoryStream<Path> all = Files.newDirectoryStream(folder)) {
            for (Path p : all) {
                Files.delete(p);
            }
        }
        Files.delete(folder);
    }
}

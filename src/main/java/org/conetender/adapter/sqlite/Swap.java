package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;

/**
 * Puts a new file in the place of a record and keeps the old one under another name, so that a power cut at
 * any moment leaves the old one or the new one, and never the new one beside the old one's journal, which
 * SQLite would take for its own. The new file lies ready, whole and synced, under a name that says what the
 * old one becomes; whoever finds it there goes on where the last one was cut off.
 */
final class Swap {

    /** Between the record's name and the name that the old one gets. */
    private static final String BECOMES = ".new-old-becomes-";

    /** Between the history's name and that of the book's new file with which it takes its place. */
    private static final String WAITS = ".new-waits-for-";

    /** What belongs to a database beside its file, the journal first: without it the file is an old state. */
    private static final List<String> BESIDE = List.of("-wal", "-shm", "");

    private Swap() {}

    /** Where the new file is made: what is found there is not whole, and may be written over. */
    static Path making(Path record) {
        return beside(record, ".making");
    }

    /** From here on the new file counts. @param old the name that the old one gets, in the same folder */
    static void decide(Path record, String old) throws IOException {
        Files.move(making(record), beside(record, BECOMES + old), StandardCopyOption.ATOMIC_MOVE);
        syncFolder(record.getParent());
    }

    /**
     * The new file that lies ready for {@code other} takes its place with the one for {@code record}, once
     * that is decided with that name, and never without.
     */
    static void wait(Path other, Path record, String old) throws IOException {
        Files.move(making(other), waiting(other, old), StandardCopyOption.ATOMIC_MOVE);
        syncFolder(record.getParent());
    }

    private static Path waiting(Path other, String old) {
        return beside(other, WAITS + old);
    }

    /** Those that waited for nothing are of a try that was cut off before it was decided. */
    private static void forget(Path other) throws IOException {
        try (DirectoryStream<Path> left = Files.newDirectoryStream(other.getParent(),
                other.getFileName() + WAITS + "*")) {
            for (Path p : left) {
                Files.delete(p);
            }
        }
    }

    /** Until the other file is in its place the decision stands, so this can be done again. */
    private static void finishOther(Path other, Path old) throws IOException {
        Path made = waiting(other, old.getFileName().toString());
        if (Files.exists(made)) {
            for (String end : BESIDE) {
                aside(beside(other, end), beside(Opening.history(old), end));
            }
            syncFolder(other.getParent());
            Files.move(made, other, StandardCopyOption.ATOMIC_MOVE);
            syncFolder(other.getParent());
        }
    }

    /** Carries out what was decided, here or in a life before; nothing when nothing was. */
    static void finish(Path record) throws IOException {
        String prefix = record.getFileName() + BECOMES;
        try (DirectoryStream<Path> ready = Files.newDirectoryStream(record.getParent(), prefix + "*")) {
            for (Path made : ready) {
                Path old = record.resolveSibling(made.getFileName().toString().substring(prefix.length()));
                finishOther(Opening.history(record), old);
                for (String end : BESIDE) {
                    aside(beside(record, end), beside(old, end));
                }
                syncFolder(record.getParent());
                Files.move(made, record, StandardCopyOption.ATOMIC_MOVE);
                syncFolder(record.getParent());
            }
        }
        forget(Opening.history(record));
    }

    /** A file of no length, which would be in the way, with whatever lies beside it. */
    static void forgetEmpty(Path file) throws IOException {
        if (Files.exists(file) && Files.size(file) == 0) {
            for (String end : BESIDE) {
                Files.deleteIfExists(beside(file, end));
            }
            syncFolder(file.getParent());
        }
    }

    /** What was copied there already is only taken away. */
    private static void aside(Path from, Path to) throws IOException {
        if (Files.exists(from) && Files.exists(to)) {
            Files.delete(from);
        } else if (Files.exists(from)) {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        }
    }

    /** A copy of the file and its journal under that name, for good. */
    static void copy(Path record, String to) throws IOException {
        for (String end : List.of("-wal", "")) {
            Path from = beside(record, end);
            Path copy = beside(record.resolveSibling(to), end);
            if (Files.exists(from)) {
                byte[] all = Files.readAllBytes(from);
                try (FileChannel out = FileChannel.open(copy, StandardOpenOption.CREATE,
                        StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE)) {
                    for (ByteBuffer b = ByteBuffer.wrap(all); b.hasRemaining();) {
                        out.write(b, b.position());
                    }
                    out.force(true);
                }
            }
        }
        syncFolder(record.getParent());
    }

    /** Takes such a copy away again. @param why it is not needed; gets what stops that */
    static void forget(Path record, String copied, Exception why) {
        try {
            for (String end : BESIDE) {
                Files.deleteIfExists(beside(record.resolveSibling(copied), end));
            }
        } catch (IOException e) {
            why.addSuppressed(e);
        }
    }

    static Path beside(Path record, String end) {
        return record.resolveSibling(record.getFileName() + end);
    }

    /** SQLite syncs its files; the name of a new file lives in the folder and is synced here. */
    static void syncFolder(Path folder) throws IOException {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }
}

package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * One daemon per record. The lock is on a file of its own beside the record, not on the database: a
 * report may then read the record while the daemon runs. The kernel drops it with the process, however
 * that ends, so a lock file left lying means nothing. A read-write open is needed for the lock only.
 */
final class RecordLock implements AutoCloseable {

    private final FileChannel channel;

    private RecordLock(FileChannel channel) {
        this.channel = channel;
    }

    /** The lock; empty when another daemon has it. */
    static Optional<RecordLock> take(Path record) throws IOException {
        Path file = record.resolveSibling(record.getFileName() + ".lock");
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            FileLock lock = channel.tryLock();
            if (lock != null) {
                return Optional.of(new RecordLock(channel));
            }
        } catch (OverlappingFileLockException heldInThisProcess) {
            channel.close();
            return Optional.empty();
        } catch (IOException e) {
            channel.close();
            throw e;
        }
        channel.close();
        return Optional.empty();
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}

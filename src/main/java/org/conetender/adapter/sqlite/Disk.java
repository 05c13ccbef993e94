package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What the disk says of itself after something failed on it. The errors alone mislead: on a full disk some
 * calls answer as a broken one does, and a read-only one looks like missing rights.
 */
final class Disk {

    /** With less nothing can be begun: SQLite's smallest file beside a database, bytes. */
    private static final long LEAST = 32 << 10;

    /** SQLite's library, which is unpacked for each process, with some to spare: 1.1 MB of it, bytes. */
    private static final long LIBRARY = 2 << 20;

    private Disk() {}

    /** Why nothing can be written into that folder, and what to do; empty where the disk is not to blame. */
    static Optional<String> trouble(Path folder) {
        return trouble(folder, LEAST);
    }

    /** As {@link #trouble}, of the folder into which the database library is unpacked. */
    static Optional<String> unpacking() {
        return trouble(Path.of(System.getProperty("java.io.tmpdir")), LIBRARY);
    }

    private static Optional<String> trouble(Path folder, long least) {
        try {
            FileStore disk = Files.getFileStore(folder);
            if (disk.isReadOnly()) {
                return Optional.of("the card or disk is read-only now. A card that fails often becomes so:"
                        + " copy the whole folder of the record to another disk (cp -a), look at the card"
                        + " with fsck, and change the card if anything is wrong. One that was only mounted"
                        + " so becomes writable by mount -o remount,rw");
            }
            return disk.getUsableSpace() < least ? Optional.of(full(folder)) : Optional.empty();
        } catch (NoSuchFileException e) {
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of("the disk of " + folder + " does not answer (" + e.getMessage()
                    + "); see that it is there");
        }
    }

    /** How much can be written into that folder, bytes; empty where that cannot be told, or nothing can. */
    static OptionalLong free(Path folder) {
        try {
            FileStore disk = Files.getFileStore(folder);
            return disk.isReadOnly() ? OptionalLong.empty() : OptionalLong.of(disk.getUsableSpace());
        } catch (IOException e) {
            return OptionalLong.empty();
        }
    }

    /** The least that a file takes there, bytes; as much as anywhere where that cannot be told. */
    static long block(Path folder) {
        try {
            return Files.getFileStore(folder).getBlockSize();
        } catch (IOException | UnsupportedOperationException e) {
            return Long.MAX_VALUE;
        }
    }

    /** No room is left where that folder lies. */
    static String full(Path folder) {
        return "the disk of " + folder + " is full; free some space on it, outside that folder (on the"
                + " board's own card journalctl --vacuum-size=50M is a start)";
    }
}

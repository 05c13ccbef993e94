package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What the disk says of itself after something failed on it. The errors alone mislead: on a full disk some
 * calls answer as a broken one does, and a read-only one looks like missing rights.
 */
final class Disk {

    /** With less nothing can be begun: SQLite's smallest file beside a database, bytes. */
    private static final long LEAST = 32 << 10;

    private Disk() {}

    /** Why nothing can be written into that folder, and what to do; empty where the disk is not to blame. */
    static Optional<String> trouble(Path folder) {
        try {
            FileStore disk = Files.getFileStore(folder);
            if (disk.isReadOnly()) {
                return Optional.of("the card or disk is read-only now. A card that fails often becomes so:"
                        + " copy the whole folder of the record to another disk (cp -a), look at the card"
                        + " with fsck, and change the card if anything is wrong. One that was only mounted"
                        + " so becomes writable by mount -o remount,rw");
            }
            return disk.getUsableSpace() < LEAST ? Optional.of(full(folder)) : Optional.empty();
        } catch (NoSuchFileException e) {
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of("the disk of " + folder + " does not answer (" + e.getMessage()
                    + "); see that it is there");
        }
    }

    /** No room is left where that folder lies. */
    static String full(Path folder) {
        return "the disk of " + folder + " is full; free some space on it (on the board's own card journalctl"
                + " --vacuum-size=50M is a start)";
    }
}

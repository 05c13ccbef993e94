package org.conetender.app.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Optional;
import java.util.Set;

/** Looks at a password file from outside; what is in it is never read here. */
final class PasswordFile {

    private PasswordFile() {}

    /** What a person should do about it; empty when all is well. */
    static Optional<String> look(Path file) {
        if (!Files.isRegularFile(file)) {
            return Optional.of("there is no such file, or this user may not see it; put the password in its "
                    + "first line before the daemon starts");
        }
        try {
            Set<PosixFilePermission> may = Files.getPosixFilePermissions(file);
            if (may.contains(PosixFilePermission.OTHERS_READ)
                    || may.contains(PosixFilePermission.OTHERS_WRITE)) {
                return Optional.of("others can read or change this file; run: chmod 640 " + file);
            }
            return Optional.empty();
        } catch (IOException | UnsupportedOperationException e) {
            return Optional.of("who may read this file cannot be told (" + e.getMessage()
                    + "); make sure that only the daemon may");
        }
    }
}

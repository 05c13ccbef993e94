package org.conetender.app.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.conetender.adapter.sqlite.Backup;
import org.conetender.adapter.sqlite.Restore;
import org.conetender.core.unit.Text;
import org.conetender.port.Store;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** The options {@code --backup} and {@code --restore} of {@code report}. */
final class RecordCopies {

    private static final double MB = 1e6;

    @Option(names = "--backup", paramLabel = "FILE", description = "copy the whole record into this file; "
            + "the daemon may run; another file's place is not taken")
    private Path backup;

    @Option(names = "--restore", paramLabel = "FILE", description = "put such a copy in the place of the "
            + "record, which is kept aside; the daemon must be stopped")
    private Path restore;

    boolean wanted() {
        return backup != null || restore != null;
    }

    void carryOut(Path book, CommandLine line) throws Store.StoreException {
        if (backup != null && restore != null) {
            throw new ParameterException(line, "--backup or --restore: choose one.");
        }
        PrintWriter out = line.getOut();
        if (backup != null) {
            out.println(Text.of("the record is copied into %s (%.1f MB)", backup,
                    Backup.of(book, backup) / MB));
        } else {
            Optional<String> old = Restore.of(restore, book);
            out.println("The record is restored from " + restore + old.map(o -> ". What was there before is "
                    + "kept beside it as " + o).orElse("") + ".");
            out.println("It tells how each cone stood when the copy was made. What to do now:");
            out.println("1. Unplug the heaters and look at the cones.");
            out.println("2. Start the daemon: sudo systemctl start conetender. Every heater is locked, the "
                    + "air runs.");
            out.println("3. Report how each cone stands now, such as: conetender tell a drained");
            // Before heat is allowed: one that is unplugged then seems to be broken.
            out.println("4. Plug in again the heaters that water covers.");
            out.println("5. Acknowledge, which allows heat again: conetender tell site acknowledge "
                    + "record-damaged");
        }
        out.flush();
    }
}

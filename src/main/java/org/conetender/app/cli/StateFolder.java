package org.conetender.app.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.conetender.app.config.Config;
import picocli.CommandLine.Option;

/**
 * The option {@code --state}, and the folder behind it in which {@code run} leaves the list of driven
 * lines and {@code safe} looks for it. The service manager names the same folder to both, whatever an
 * edit has done to the configuration meanwhile.
 */
final class StateFolder {

    /** Where the record lies unless the configuration says otherwise (app.config.SiteDocs). */
    private static final Path USUAL = Path.of("/var/lib/conetender");

    @Option(names = "--state", paramLabel = "FOLDER", defaultValue = "${env:STATE_DIRECTORY}",
            description = "where the list of driven lines is kept; default: $STATE_DIRECTORY, as systemd "
                    + "sets it, else the folder of the record")
    private String named;

    /** As named on the line or by the service manager, which may name several: the first is ours. */
    Optional<Path> named() {
        return Optional.ofNullable(named).filter(n -> !n.isBlank()).map(n -> Path.of(n.split(":")[0]));
    }

    /** The folder; without a name the record's, or where that usually lies. */
    Path of(Optional<Config> config) {
        return named().or(() -> config.map(c -> c.hardware().paths().store())).orElse(USUAL);
    }
}

package org.conetender.app.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.conetender.app.config.Config;
import org.conetender.app.config.ConfigLoader;
import org.conetender.app.config.Outcome;
import picocli.CommandLine.Option;

/** The option {@code --config}, and the file behind it. */
final class ConfigFile {

    /** Where the package puts it. */
    static final Path USUAL = Path.of("/etc/conetender/conetender.toml");

    @Option(names = {"-c", "--config"}, paramLabel = "FILE",
            description = "the site's configuration; default: /etc/conetender/conetender.toml")
    private Path file;

    /** Whether it was named, or stands at its usual place. */
    boolean there() {
        return file != null || Files.isReadable(USUAL);
    }

    /** The checked configuration; empty when it is refused, which has then been said in full. */
    Optional<Config> load(PrintWriter err) {
        Path from = file == null ? USUAL : file;
        return switch (ConfigLoader.load(from)) {
            case Outcome.Accepted a -> Optional.of(a.config());
            case Outcome.Refused r -> {
                err.print(CheckReport.text(from.toString(), r));
                err.flush();
                yield Optional.empty();
            }
        };
    }
}

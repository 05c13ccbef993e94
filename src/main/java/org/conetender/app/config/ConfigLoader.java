package org.conetender.app.config;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;

/** Turns the one configuration file into a checked {@link Config}, or says everything that is wrong. */
public final class ConfigLoader {

    /** Sixteen cones with every comment take a tenth of this. */
    private static final int MOST_BYTES = 1_000_000;

    private static final TomlPosition START = TomlPosition.positionAt(1, 1);

    private ConfigLoader() {}

    /** Reads a file; what keeps it from being read at all is an error like any other. Never throws. */
    public static Outcome load(Path file) {
        try {
            return parse(text(file));
        } catch (NoSuchFileException e) {
            return unreadable("there is no such file; give its path with --config, or copy one of the "
                    + "examples there");
        } catch (CharacterCodingException e) {
            return unreadable("this is not UTF-8 text; save it again as UTF-8");
        } catch (IOException e) {
            return unreadable("this file cannot be read (" + e.getMessage()
                    + "); look at its path, owner and mode");
        }
    }

    private static String text(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            if (bytes.length > MOST_BYTES) {
                throw new IOException("longer than 1 MB, which no configuration is");
            }
            String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
            // Some editors put a byte order mark first; it means nothing in UTF-8.
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        }
    }

    /** Reads the text of a configuration. */
    public static Outcome parse(String text) {
        return parse(text, new Findings());
    }

    /** As {@link #parse(String)}, leaving in {@code findings} which settings were asked for. */
    static Outcome parse(String text, Findings findings) {
        TomlParseResult toml = Toml.parse(text);
        if (toml.hasErrors()) {
            // What follows from half-read text would only confuse: syntax comes first.
            return new Outcome.Refused(toml.errors().stream().map(ConfigLoader::syntax).sorted().toList(),
                    List.of());
        }
        Section.Place top = new Section.Place("", "", 0, false);
        Config config = read(new Fields(new Section(top, toml, START, findings)));
        return findings.errors().isEmpty()
                ? new Outcome.Accepted(config, findings.effective(), findings.warnings())
                : new Outcome.Refused(findings.errors(), findings.warnings());
    }

    private static Problem syntax(TomlParseError e) {
        return new Problem(e.position().line(), e.position().column(), "", "", "column "
                + e.position().column() + ": " + e.getMessage()
                + "; this line is not TOML, and until it is nothing else is checked");
    }

    private static Outcome unreadable(String what) {
        return new Outcome.Refused(List.of(new Problem(1, 1, "", "", what)), List.of());
    }

    /** Reads all of it, whatever is found wrong on the way; the answer counts only without errors. */
    private static Config read(Fields root) {
        UnknownKeys.walk(root.at());
        Fields gpio = root.sub("gpio");
        LineBook lines = new LineBook(gpio);
        Ids ids = new Ids();
        Fields site = root.sub("site");
        String siteId = Ids.id(site, "id").orElse("");
        // The cones come before the site, because its power limit must carry the largest heater.
        List<Cone> cones = new ConesReader(root.at(), siteId, lines, ids).read();
        Site read = new SiteReader(site).read(cones, lines, ids, siteId);
        return new Config(new Settings(read, cones), hardware(root, gpio, lines));
    }

    private static Hardware hardware(Fields root, Fields gpio, LineBook lines) {
        // Stands in for a path that was refused; such a configuration is never handed out.
        Path none = Path.of("/");
        Fields oneWire = root.sub("one-wire");
        Fields socket = root.sub("socket");
        Optional<Path> socketPath = Ids.path(socket, "path");
        socketPath.ifPresent(p -> Ids.socketLength(socket, "path", p));
        return new Hardware(lines.gpio(Ids.path(gpio, "chip").orElse(none)),
                new Hardware.OneWire(Ids.path(oneWire, "root").orElse(none),
                        Math.round(oneWire.number("period-s") * 1_000)),
                mqtt(root),
                new Hardware.Paths(Ids.path(root.sub("record"), "folder").orElse(none),
                        socketPath.orElse(none)));
    }

    private static Optional<Hardware.Mqtt> mqtt(Fields root) {
        if (root.given("mqtt")) {
            return new MqttReader(root.sub("mqtt")).read();
        }
        root.at().warn("mqtt", "no broker: steps come through the local socket only, and nobody is told "
                    + "anything elsewhere");
        return Optional.empty();
    }
}

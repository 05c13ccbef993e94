package org.conetender.app.config;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;
import org.tomlj.Toml;
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
            return decoded(bytes(file));
        } catch (IOException e) {
            return refusal(file, e);
        }
    }

    /** Why a file cannot be read, and what to do: root reads everything, so a test names the reason. */
    static Outcome refusal(Path file, IOException e) {
        return new Outcome.Refused(List.of(new Problem(0, 0, "", "", switch (e) {
            case NoSuchFileException _ -> "there is no such file; give its path with --config, or copy one "
                    + "of the examples there";
            case AccessDeniedException _ -> "this user may not read it; give it to the user that runs "
                    + "conetender: chown, or chmod a+r";
            case IOException _ when Files.isDirectory(file) -> "this is a folder; name the file in it";
            case FileSystemException f when f.getReason() != null -> "this cannot be read: " + f.getReason();
            default -> "this cannot be read: " + e.getMessage();
        })), List.of());
    }

    private static byte[] bytes(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            if (bytes.length > MOST_BYTES) {
                throw new IOException("it is longer than 1 MB, which no configuration is");
            }
            return bytes;
        }
    }

    private static Outcome decoded(byte[] bytes) {
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        if (StandardCharsets.UTF_8.newDecoder().decode(in, out, true).isError()) {
            String before = out.flip().toString();
            int line = (int) before.chars().filter(c -> c == '\n').count() + 1;
            String good = before.substring(before.lastIndexOf('\n') + 1).strip();
            return new Outcome.Refused(List.of(new Problem(line, 1, "", "", "the character "
                    + (good.isEmpty() ? "at the beginning" : "behind \"" + good + "\"")
                    + " is not UTF-8; save the file again as UTF-8")), List.of());
        }
        String text = out.flip().toString();
        // Some editors put a byte order mark first; it means nothing in UTF-8.
        return parse(text.startsWith("\uFEFF") ? text.substring(1) : text);
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
            return new Outcome.Refused(Syntax.of(text, toml.errors()), List.of());
        }
        Section.Place top = new Section.Place("", "", 0, false);
        Config config = read(new Fields(new Section(top, toml, START, findings)));
        return findings.errors().isEmpty()
                ? new Outcome.Accepted(config, findings.effective(), findings.warnings())
                : new Outcome.Refused(findings.errors(), findings.warnings());
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
                new Hardware.Paths(record(root.sub("record")).orElse(none), socketPath.orElse(none)));
    }

    /** The folder of the record; that it is missing is no error, because it may come before the start. */
    private static Optional<Path> record(Fields record) {
        Optional<Path> folder = Ids.path(record, "folder");
        folder.filter(f -> !Files.isDirectory(f)).ifPresent(f -> record.at().warn("folder", (record.given(
                "folder") ? "" : f + " counts, and ") + "there is no such folder, or this user may not see "
                + "it; run does not start without it. The service makes /var/lib/conetender when it starts; "
                + "make any other one, and give it to the user that runs conetender"));
        return folder;
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

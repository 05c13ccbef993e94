package org.conetender.style;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.conetender.app.config.SettingDoc;
import org.conetender.app.config.SettingDocs;
import org.conetender.core.hatch.Rate;
import org.junit.jupiter.api.Test;

/** Whoever reads the documents and the help finds all they need there, and is not sent elsewhere. */
class ReadersTest {

    private static final Pattern NOTES = Pattern.compile("\\b[a-z]+\\.md\\b");
    private static final Pattern LITERAL = Pattern.compile("\"(?:[^\"\\\\]|\\\\.)*\"");

    private static String read(String file) throws IOException {
        return Files.readString(Path.of(file));
    }

    @Test
    void noKeeperIsSentToNotesThatAreNotHere() throws IOException {
        for (String file : List.of("README.md", "src/site/markdown/safety.md",
                "config/minimal.toml", "config/larkmoor.toml",
                "config/full.toml", "systemd/conetender.service", "src/main/launcher/conetender")) {
            assertThat(NOTES.matcher(read(file)).results().map(r -> r.group())
                    .filter(name -> !Files.exists(Path.of("src/site/markdown", name)))).as(file).isEmpty();
        }
        for (SettingDoc d : SettingDocs.all()) {
            assertThat(NOTES.matcher(d.purpose()).results().map(r -> r.group())).as(d.key()).isEmpty();
        }
    }

    @Test
    void noMessageNamesThem() throws IOException {
        List<String> found = new ArrayList<>();
        int literals = 0;
        try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
            for (Path f : files.filter(p -> p.toString().endsWith(".java")).toList()) {
                for (String line : Files.readAllLines(f)) {
                    String code = line.strip();
                    Matcher m = LITERAL.matcher(code.startsWith("*") || code.startsWith("/") ? "" : code);
                    for (; m.find(); literals++) {
                        if (NOTES.matcher(m.group()).find()) {
                            found.add(f + ": " + m.group());
                        }
                    }
                }
            }
        }
        assertThat(found).isEmpty();
        assertThat(literals).isGreaterThan(1_000);
    }

    @Test
    void theDeveloperIsToldWhatTheseNotesAre() throws IOException {
        assertThat(read("DEVELOPERS.md")).contains("## Where figures come from", "`science.md",
                "`control.md`", "`mqtt.md`", "`design.md`", "beside the repository");
    }

    @Test
    void theSumThatCanBeCheckedByHandHasItsBase() throws IOException {
        assertThat(Rate.USUAL.baseC()).isEqualTo(12);
        assertThat(Rate.USUAL.perHour(27)).isEqualTo(15);
        assertThat(read("README.md").replace('\n', ' ')).contains("the water's temperature less 12 °C",
                "10 x (27 - 12) = 150 °C·h");
    }

    @Test
    void runningWithoutWiresIsShownWhole() throws IOException {
        assertThat(read("DEVELOPERS.md")).contains("`RunOnRecordingWires`",
                "org.conetender.app.RunOnRecordingWires target/bench/conetender.toml target/bench/wires");
    }
}

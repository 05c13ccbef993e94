package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.conetender.adapter.gpio.DrivenLines;
import org.conetender.adapter.gpio.Lines;
import org.conetender.adapter.gpio.Lines.Bias;
import org.conetender.adapter.gpio.Lines.Line;
import org.conetender.adapter.gpio.SafeOutputs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What the service manager runs after the daemon, whatever has become of its files. */
class SafeCommandTest {

    private static final Lines DRIVEN = new Lines("/dev/gpiochip0",
            List.of(new Line("a.heat", 5, true, Bias.AS_IS)), List.of());

    @TempDir
    Path folder;
    private final List<Lines> driven = new ArrayList<>();
    private boolean obeys = true;
    private Path config;
    private String said;

    @BeforeEach
    void goodConfiguration() throws IOException {
        config = folder.resolve("conetender.toml");
        Files.copy(Path.of("config/larkmoor.toml"), config);
    }

    private int safe(String... more) {
        StringWriter text = new StringWriter();
        List<String> words = new ArrayList<>(List.of("--config", config.toString()));
        words.addAll(List.of(more));
        CommandLine line = new CommandLine(new SafeCommand(lines -> {
            driven.add(lines);
            return lines.outputs().stream().map(l -> new SafeOutputs.Outcome(l.id(), obeys, l.id() + "!"))
                    .toList();
        })).setOut(new PrintWriter(text, true)).setErr(new PrintWriter(text, true));
        int code = line.execute(words.toArray(String[]::new));
        said = text.toString();
        return code;
    }

    private int safeHere() {
        return safe("--state", folder.toString());
    }

    private void mistake() throws IOException {
        Files.writeString(config, Files.readString(config) + "\n[cone.heat\nwatts = \"many\"\n");
    }

    @Test
    void afterAnEditWithAMistakeTheHeaterThatWasDrivenIsStillMadeSafe() throws IOException {
        DrivenLines.keep(folder, DRIVEN);
        mistake();
        assertThat(safeHere()).isZero();
        assertThat(driven).containsExactly(DRIVEN);
        assertThat(said).startsWith("By the list of lines that the daemon drove, in " + folder)
                .contains("a.heat!");
    }

    @Test
    void whatWasDrivenRulesAlsoOverAGoodConfigurationThatNamesOtherLines() throws IOException {
        DrivenLines.keep(folder, DRIVEN);
        assertThat(safeHere()).isZero();
        assertThat(driven).containsExactly(DRIVEN);
    }

    @Test
    void withoutAListTheConfigurationCountsAndThatIsSaid() {
        assertThat(safeHere()).isZero();
        assertThat(driven).singleElement().satisfies(l -> assertThat(l.outputs()).extracting(Line::id)
                .contains("a.heat", "b.heat", "c.heat"));
        assertThat(said).contains("There is no list of driven lines").contains("lines of the configuration");
    }

    @Test
    void aDamagedListIsSaidAndTheConfigurationCounts() throws IOException {
        Files.writeString(folder.resolve("driven-lines"), "conetender driven lines 1\nchip");
        assertThat(safeHere()).isZero();
        assertThat(said).contains("is damaged").contains("lines of the configuration");
        assertThat(driven.getFirst().outputs()).extracting(Line::id).contains("a.heat");
    }

    @Test
    void withNeitherItSaysThatNothingWasDrivenAndFails() throws IOException {
        mistake();
        assertThat(safeHere()).isEqualTo(2);
        assertThat(driven).isEmpty();
        assertThat(said).contains("NOTHING was made safe").contains("Unplug the heaters by hand");
        Files.createDirectory(folder.resolve("driven-lines"));
        assertThat(safeHere()).isEqualTo(2);
        assertThat(said).contains("cannot be read").contains("NOTHING was made safe");
    }

    @Test
    void anOutputThatDoesNotObeyIsAFailureToo() throws IOException {
        DrivenLines.keep(folder, DRIVEN);
        obeys = false;
        assertThat(safeHere()).isEqualTo(1);
        assertThat(said).contains("Unplug the heaters by hand");
    }

    @Test
    void byHandItLooksBesideTheRecordThatTheConfigurationNames() throws IOException {
        Path record = Files.createDirectory(folder.resolve("record"));
        Files.writeString(config, Files.readString(config) + "\n[record]\nfolder = \"" + record + "\"\n");
        DrivenLines.keep(record, DRIVEN);
        // An empty name is no name, so this also holds where a service manager has set one.
        assertThat(safe("--state", "")).isZero();
        assertThat(driven).containsExactly(DRIVEN);
    }

    @Test
    void ofSeveralFoldersThatTheServiceManagerNamesTheFirstIsOurs() throws IOException {
        DrivenLines.keep(folder, DRIVEN);
        assertThat(safe("--state", folder + ":/nowhere")).isZero();
        assertThat(driven).containsExactly(DRIVEN);
    }
}

package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

class ForecastCommandTest {

    @TempDir
    private Path dir;

    private Path log;
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    /** Ten hours at 26 °C from 19:00: 140 degree-hours. */
    @BeforeEach
    void writeLog() throws IOException {
        log = write(60, 26);
    }

    private Path write(int tenMinutes, double waterC) throws IOException {
        StringBuilder text = new StringBuilder();
        LocalDateTime at = LocalDateTime.of(2026, 3, 1, 19, 0);
        for (int i = 0; i <= tenMinutes; i++) {
            text.append(at.plusMinutes(10L * i)).append(',').append(waterC).append('\n');
        }
        return Files.writeString(dir.resolve("cone-a.csv"), text);
    }

    private CommandLine command() {
        return new CommandLine(new ForecastCommand()).setOut(new PrintWriter(out));
    }

    private int run(String... args) {
        List<String> all = new ArrayList<>(List.of("--log", log.toString()));
        all.addAll(List.of(args));
        return command().setErr(new PrintWriter(err)).execute(all.toArray(String[]::new));
    }

    @Test
    void theAnswerStandsWithTheTableItCanBeCheckedBy() {
        assertThat(run("--zone", "Europe/London")).isZero();
        assertThat(out.toString())
                .contains("61 readings from 2026-03-01 19:00 to 2026-03-02 05:00 (Europe/London)")
                .contains("   1  2026-03-01 20:00    26.00  26.00  26.00   14.00   14.0")
                .contains("  10  2026-03-02 05:00    26.00  26.00  26.00   14.00  140.0")
                .contains("140.0 done of 375.9 needed")
                // At the later quartile: (375.9 − 140) / 14 = 16.85 h after 05:00, and what the sums may err
                .contains("ready at 2026-03-02 22:0").contains("; 8 in 10 such batches between ")
                // Half of such lots: (328.4 − 140) / 14 = 13.46 h after 05:00
                .contains("late on purpose", "half of such batches are ready by 2026-03-02 18:27")
                .contains("stay at 26.0 °C");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void aLotWhoseSpeedIsToldIsAnsweredMoreNarrowlyAndWithoutDelay() {
        run("--zone", "UTC", "--lot-speed", "250");
        assertThat(out.toString()).contains("140.0 done of 303.0 needed").contains("as told")
                .doesNotContain("late on purpose");
    }

    @Test
    void jsonSaysTheSameToAProgram() throws IOException {
        assertThat(run("--zone", "UTC", "--json")).isZero();
        JsonNode json = new ObjectMapper().readTree(out.toString());
        assertThat(json.get("degree-hours").asDouble()).isEqualTo(140);
        assertThat(json.get("degree-hours-needed").asDouble()).isCloseTo(375.9, within(0.1));
        assertThat(json.get("ready-median").asText()).startsWith("2026-03-02T18:27:");
        assertThat(json.get("ready-at").asText()).startsWith("2026-03-02T22:0");
        assertThat(json.get("ready-from").asText()).isLessThan(json.get("ready-at").asText());
        assertThat(json.get("ready-until").asText()).isGreaterThan(json.get("ready-at").asText());
        assertThat(json.get("hours")).hasSize(10);
        assertThat(json.get("hours").get(0).get("gained").asDouble()).isEqualTo(14);
    }

    @Test
    void stockingLaterLeavesTheEarlierHoursOut() {
        assertThat(run("--zone", "UTC", "--stocked", "2026-03-02T01:00Z")).isZero();
        assertThat(out.toString()).contains("cysts stocked 2026-03-02 01:00").contains("56.0 done of");
    }

    @Test
    void whereNothingDevelopsThereIsNoReadyTimeButAReason() throws IOException {
        log = write(60, 34);
        assertThat(run("--zone", "UTC")).isZero();
        assertThat(out.toString()).contains("stands still: the water is heading for 34.0 °C")
                .contains("10.0 h too warm").doesNotContain("ready at");
        out.getBuffer().setLength(0);
        run("--zone", "UTC", "--json");
        assertThat(new ObjectMapper().readTree(out.toString()).get("ready-at").isNull()).isTrue();
    }

    @Test
    void aHatchThatIsOverSaysSinceWhen() throws IOException {
        log = write(200, 27);
        assertThat(run("--zone", "UTC")).isZero();
        assertThat(out.toString()).contains("ready since about 2026-03-02 20:1");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "--zone UTC --stocked 2026-03-09T01:00Z | after the last reading",
        "--zone UTC --stocked 2026-02-09T01:00Z | more than 48 h before",
        "--zone UTC --stocked soon | --stocked \"soon\" is not a time",
        "--zone UTC --lot-speed 27 | is no K50",
        "--zone UTC --room 95 | is no room",
        "--zone UTC --litres 0 | is no cone",
        "--zone Narnia | Narnia",
        "--nonsense | --nonsense",
        "--fahrenheit --zone UTC | is the log in °C?",
        "--room 20 | name it with --zone"})
    void badInputEndsWithTwoAndASentenceAndNoAnswer(String args, String words) {
        assertThat(run(args.split(" "))).isEqualTo(2);
        assertThat(err.toString()).contains(words);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void helpShowsAnExampleThatWorks() throws IOException {
        assertThat(command().execute("--help")).isZero();
        assertThat(out.toString()).contains("Example:").contains("2026-03-01 19:10,23.1")
                .contains("Exit codes:");
        log = Files.writeString(dir.resolve("b.csv"), "2026-03-01 19:00,21.5\n2026-03-01 19:10,23.1\n");
        assertThat(run("--stocked", "2026-03-01 19:00", "--zone", "Europe/London")).isZero();
    }
}

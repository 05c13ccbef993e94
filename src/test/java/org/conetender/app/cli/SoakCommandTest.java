package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

class SoakCommandTest {

    private static final String[] TINY = {"--control", "--cones", "1", "--mishaps", "1", "--calm-hours", "1",
        "--hours-asked", "1", "--pairs", "1", "--pair-hours", "1"};

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return new CommandLine(new SoakCommand()).setOut(new PrintWriter(out)).setErr(new PrintWriter(err))
                .execute(args);
    }

    private int tiny(String... more) {
        String[] all = Arrays.copyOf(TINY, TINY.length + more.length);
        System.arraycopy(more, 0, all, TINY.length, more.length);
        return run(all);
    }

    @Test
    void theHelpSaysWhatItDoesHowLongItTakesAndThatNothingRealIsSwitched() {
        assertThat(run("--help")).isZero();
        assertThat(out.toString()).contains("--control", "--cones", "--mishaps", "--calm-hours",
                "--hours-asked", "--pairs", "--pair-hours", "--threads",
                "--json", "1000", "30000", "Takes minutes", "nothing real is switched", "Exit codes",
                "Example:");
        assertThat(err.toString()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"--cones,0", "--cones,-3", "--mishaps,0", "--calm-hours,0", "--hours-asked,0",
        "--pairs,0", "--pair-hours,0", "--threads,0"})
    void fewerThanOneIsRefusedBeforeAnythingRuns(String option, String value) {
        assertThat(run("--control", option, value)).isEqualTo(2);
        assertThat(err.toString()).contains(option + " " + value + ": give 1 or more")
                .as("no progress").doesNotContain("\r");
        assertThat(out.toString()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"--cones,many", "--cone,3"})
    void whatItDoesNotKnowIsRefused(String option, String value) {
        assertThat(run("--control", option, value)).isEqualTo(2);
        assertThat(err.toString()).contains(option);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void aSearchSaysHowFarEachPassCameAndThatNothingBroke() {
        assertThat(run("--search", "--states", "60", "--threads", "2")).isZero();
        assertThat(out.toString()).contains("siphoning  nothing wrong",
                "bare       clock lost; one sudden end",
                "all within", "0 rules broken", "different states (", "ticks in a second")
                .doesNotContain("BROKEN");
        assertThat(err.toString()).contains("100 %");
    }

    @Test
    void aSearchOfNothingIsRefused() {
        assertThat(run("--search", "--states", "0")).isEqualTo(2);
        assertThat(err.toString()).contains("--states 0: give 1 or more").doesNotContain("\r");
    }

    @ParameterizedTest
    @CsvSource({"--search,--hours,5,--seeds", "--control,--states,5,--search", "--search,--cones,5,--control",
        "--control,--batches,5,--forecast"})
    void anOptionThatWouldDoNothingIsRefused(String trial, String option, String value, String owner) {
        assertThat(run(trial, option, value)).isEqualTo(2);
        assertThat(err.toString()).contains(option + " is for " + owner + "; leave it out here.")
                .doesNotContain("\r");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void everyOptionBelongsToOneTrialOrToAll() {
        assertThat(new CommandLine(new SoakCommand()).getCommandSpec().options())
                .extracting(OptionSpec::longestName).containsExactlyInAnyOrderElementsOf(Stream.of(
                        SoakCommand.ONLY.keySet(), SoakCommand.ONLY.values().stream().flatMap(List::stream)
                        .toList(), List.of("--story", "--threads", "--json", "--help", "--version"))
                        .flatMap(Collection::stream).toList());
    }

    @Test
    void itIsToldWhatToSoak() {
        assertThat(run("--cones", "1")).isEqualTo(2);
        assertThat(err.toString()).contains("--control");
    }

    @Test
    void aProgramGetsOneObjectAndAPersonTheProgress() throws IOException {
        int exit = tiny("--json");
        JsonNode all = new ObjectMapper().readTree(out.toString());
        assertThat(all.get("lines")).isNotEmpty();
        boolean met = true;
        for (JsonNode t : all.get("targets")) {
            assertThat(t.get("what").asText()).isNotBlank();
            boolean well = t.get("enough").asBoolean() && t.get("got").isNumber()
                    && t.get("got").asDouble() <= t.get("most").asDouble();
            assertThat(t.get("met").asBoolean()).as(t.toString()).isEqualTo(well);
            met &= well;
        }
        assertThat(exit).as("says the same").isEqualTo(met ? 0 : 1);
        assertThat(out.toString()).as("no progress among it").startsWith("{").doesNotContain("\r");
        assertThat(err.toString()).contains("\r[").contains("100 %").endsWith(System.lineSeparator());
    }

    @Test
    void aPersonGetsTablesAndWhichTargetsWereMet() {
        int exit = tiny("--threads", "1");
        assertThat(out.toString()).contains("True water of 1 random cones", "Targets", "false alarms",
                "Hours asked for: 1 batches", "lot known where it is held")
                .contains("  too few rms, solid-state, p95, K: ", "Too few were tried to judge all of these")
                .doesNotContain("\r").doesNotContain("NaN");
        assertThat(exit).as("what was not judged is not met").isEqualTo(1);
    }
}

package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** A person, or a program, asks whether a configuration would be taken. */
class CheckCommandTest {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return new CommandLine(new CheckCommand()).setOut(new PrintWriter(out)).setErr(new PrintWriter(err))
                .execute(args);
    }

    @Test
    void aGoodFileIsPrintedAsItCountsWithDefaultsMarked(@TempDir Path folder) throws IOException {
        // Whether the usual folder of the record is there depends on the machine.
        Path file = Files.writeString(folder.resolve("larkmoor.toml"), Files.readString(
                Path.of("config/larkmoor.toml")) + "\n[record]\nfolder = \"" + folder + "\"\n");
        assertThat(run("--config", file.toString())).isZero();
        assertThat(err.toString()).isEmpty();
        assertThat(out.toString().lines())
                .anyMatch(l -> l.matches("cone\\[a]\\.heat\\.watts +=  ?25   # W"))
                .anyMatch(l -> l.matches("cone\\[c]\\.limits\\.guard-c += 31   # °C, default"))
                .anyMatch(l -> l.matches("site\\.heartbeat-line += none   # default"))
                .anyMatch(l -> l.startsWith("warning: " + file + ":"))
                .endsWith(file + " is good: 3 cones, 6 warnings. "
                        + "It counts from the next start of the daemon.",
                        "No real heater belongs on this release: leave heaters unplugged.");
    }

    @Test
    void aBrokenFileIsRefusedWithExitCodeTwoAndEveryError(@TempDir Path folder) throws IOException {
        Path file = broken(folder);
        assertThat(run("--config", file.toString())).isEqualTo(2);
        assertThat(out.toString()).isEmpty();
        assertThat(err.toString().lines()).contains(
                file + ":2: site.zone = \"Nowhere\": no such zone; it must be a name of the IANA list, "
                        + "such as Europe/London",
                "2 errors: " + file + " is refused as a whole. Mend what is listed, then run check again: "
                + "it may then find more.");
    }

    private static Path broken(Path folder) throws IOException {
        return Files.writeString(folder.resolve("broken.toml"), "[site]\nzone = \"Nowhere\"\n");
    }

    @Test
    void aProgramGetsWellFormedJsonEitherWay(@TempDir Path folder) throws IOException {
        assertThat(run("--config", "config/full.toml", "--json")).isZero();
        assertThat(values(out.toString())).isGreaterThan(200);
        assertThat(out.toString()).contains("\"accepted\":true", "\"key\":\"cone[a].limits.setpoint-c\"");
        out.getBuffer().setLength(0);
        assertThat(run("--config", broken(folder).toString(), "--json")).isEqualTo(2);
        assertThat(values(out.toString())).isGreaterThan(10);
        assertThat(out.toString()).contains("\"accepted\":false", "\"line\":2", "\"key\":\"site.zone\"");
        assertThat(err.toString()).isEmpty();
    }

    /** Reads to the end; throws where it is not JSON. @return how many values there are */
    private static int values(String json) throws IOException {
        int n = 0;
        try (JsonParser p = new JsonFactory().createParser(json)) {
            while (p.nextToken() != null) {
                n += p.currentToken().isScalarValue() ? 1 : 0;
            }
        }
        return n;
    }

    @Test
    void aSettingIsExplainedByItsName() throws IOException {
        assertThat(run("--explain", "setpoint-c")).isZero();
        assertThat(out.toString()).contains("cone.limits.setpoint-c", "What the water is held at",
                "allowed: 15 to 30 °C", "default: 27 °C", "example: setpoint-c = 27");
        out.getBuffer().setLength(0);
        assertThat(run("--explain", "cone.limits", "--json")).isZero();
        assertThat(values(out.toString())).isEqualTo(5 * 6);
    }

    @Test
    void everySettingIsExplainedWhenNoneIsNamed() {
        assertThat(run("--explain")).isZero();
        assertThat(out.toString()).contains("site.zone", "<line>.bias", "cone.usual.ppt");
        assertThat(out.toString().lines()).allMatch(l -> l.length() <= 110);
    }

    @Test
    void aMisspeltSettingIsAnsweredWithTheNearest() {
        assertThat(run("--explain", "setpiont-c")).isEqualTo(2);
        assertThat(err.toString()).contains("There is no setting \"setpiont-c\"; did you mean setpoint-c?");
    }

    @Test
    void withoutAFileTheCommandSaysWhatToType() {
        assertThat(run()).isEqualTo(2);
        assertThat(err.toString()).contains("Name it with --config FILE");
    }

    @Test
    void theHelpHasAnExampleAndTheExitCodes() {
        assertThat(run("--help")).isZero();
        assertThat(out.toString()).contains("conetender check --config", "Exit codes:", "refused");
    }
}

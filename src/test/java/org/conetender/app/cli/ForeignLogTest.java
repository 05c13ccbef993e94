package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** Logs as loggers of many countries write them: what is wrong throughout is told once, with its remedy. */
class ForeignLogTest {

    @TempDir
    Path dir;

    private List<String> problems(String text) throws IOException {
        Path file = Files.writeString(dir.resolve("cone-a.csv"), text, StandardCharsets.ISO_8859_1);
        return catchThrowableOfType(BadLog.class, () -> LogReader.read(file,
                new LogReader.Format(Optional.empty(), false, false))).problems();
    }

    @Test
    void aMissingZoneIsToldOnceAndCounted() throws IOException {
        assertThat(problems("2026-03-01 19:00,21.5\n" + "2026-03-01 19:10,22\n".repeat(60))).containsExactly(
                "line 1 of cone-a.csv: \"2026-03-01 19:00\" does not say its zone; name it with --zone, such "
                        + "as --zone Europe/London, or add an offset such as +01:00. It is the same with 60 "
                        + "more lines.");
    }

    @Test
    void whatElseIsWrongIsStillToldLineByLine() throws IOException {
        assertThat(problems("2026-03-01 19:00,21.5\n2026-03-01T19:10Z,warm\n")).hasSize(2)
                .last().asString().startsWith("line 2 of cone-a.csv: \"warm\" is not a temperature");
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "3/2/2026 7:00 PM",
        "02-03-2026 19:00"})
    void aTimeInAnUnclearOrderIsToldHowToBeConverted(String time) throws IOException {
        assertThat(problems(time + ",21.5\n" + time + ",21.6\n")).containsExactly(
                "line 1 of cone-a.csv: \"" + time + "\" may begin with the day or with the month: say "
                        + "--day-first if every date of the log begins with its day, or write it like "
                        + "2026-03-01 07:30; a spreadsheet does so when its time column has the format "
                        + "yyyy-mm-dd hh:mm. It is the same with 1 more line.");
    }

    @Test
    void theLineThatIsNoTextIsTheLineThatIsNamed() throws IOException {
        String text = "2026-03-01T07:30Z,26\n".repeat(19) + "# 26 \u00b0C\n";
        assertThat(problems(text)).containsExactly(
                "line 20 of cone-a.csv is not UTF-8 text; save the file as plain text in UTF-8.");
    }

    @Test
    void oneReadingIsOne() throws IOException {
        Path file = Files.writeString(dir.resolve("one.csv"), "2026-03-01T07:30Z,26\n");
        StringWriter out = new StringWriter();
        assertThat(new CommandLine(new ForecastCommand()).setOut(new PrintWriter(out))
                .execute("--log", file.toString())).isZero();
        assertThat(out.toString()).startsWith("1 reading from 2026-03-01 07:30 ");
    }
}

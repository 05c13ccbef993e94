package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.conetender.app.cli.LogReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LogReaderTest {

    private static final Format PLAIN = new Format(Optional.empty(), false, false);
    private static final Format BERLIN = new Format(Optional.of(ZoneId.of("Europe/Berlin")), false, false);
    private static final Format FAHRENHEIT = new Format(Optional.empty(), false, true);

    @TempDir
    private Path dir;

    private LogReader.Result read(String text, Format format) throws Exception {
        return LogReader.read(write(text.getBytes(StandardCharsets.UTF_8)), format);
    }

    private List<String> problems(String text, Format format) throws IOException {
        Path file = write(text.getBytes(StandardCharsets.UTF_8));
        return catchThrowableOfType(BadLog.class, () -> LogReader.read(file, format)).problems();
    }

    private Path write(byte[] bytes) throws IOException {
        return Files.write(dir.resolve("cone-a.csv"), bytes);
    }

    private static long ms(String instant) {
        return Instant.parse(instant).toEpochMilli();
    }

    @Test
    void twoColumnsWithoutAHeaderAreTimeAndTemperature() throws Exception {
        LogReader.Result r = read("2026-03-01T07:30+01:00,26.5\n2026-03-01T06:40:00Z,26.25\r\n", PLAIN);
        assertThat(r.log().size()).isEqualTo(2);
        assertThat(r.log().timeMs(0)).isEqualTo(ms("2026-03-01T06:30:00Z"));
        assertThat(r.log().waterC(1)).isEqualTo(26.25);
        assertThat(r.remarks()).isEmpty();
    }

    @Test
    void aHeaderNamesTheColumnsInAnyOrderAndOthersAreLeftAlone() throws Exception {
        String text = "\ufeffno;Room °C;Water °C;Timestamp\n# a remark\n\n"
                + "1;19,5;26,5;2026-03-01 07:30:00 +0100\n2;19,5;\"26,6\";2026-03-01T07:40:00+01\n";
        LogReader.Result r = read(text, PLAIN);
        assertThat(r.log().size()).isEqualTo(2);
        assertThat(r.log().waterC(0)).isEqualTo(26.5);
        assertThat(r.log().waterC(1)).isEqualTo(26.6);
        assertThat(r.log().lastMs()).isEqualTo(ms("2026-03-01T06:40:00Z"));
    }

    @Test
    void dateAndTimeMayStandInColumnsOfTheirOwn() throws Exception {
        LogReader.Result r = read("Date;Time;Water\n01.03.2026;07:30;26,5\n"
                + "01.03.2026;07:40:00;26,6\n", BERLIN);
        assertThat(r.log().firstMs()).isEqualTo(ms("2026-03-01T06:30:00Z"));
        assertThat(r.log().lastMs()).isEqualTo(ms("2026-03-01T06:40:00Z"));
        assertThat(problems("Date,Time,Water\n2026-03-01,,26\n,07:40,26\n", BERLIN)).containsExactly(
                "line 2 of cone-a.csv: has no time.", "line 3 of cone-a.csv: has no date.");
        assertThat(read("Date,Timestamp,Water\nx,2026-03-01T07:30Z,26\n", PLAIN).log().size()).isEqualTo(1);
        assertThat(read("Date,Water\n2026-03-01 07:30,26\n", BERLIN).log().size()).isEqualTo(1);
    }

    /** Points say that the day comes first; for other signs a person must. */
    @Test
    void theDayMayComeFirstInAStatedZone() throws Exception {
        LogReader.Result points = read("01.03.2026 07:30;26,5\n1.3.26 7:40:30,5;26,6\n", BERLIN);
        assertThat(points.log().firstMs()).isEqualTo(ms("2026-03-01T06:30:00Z"));
        assertThat(points.log().lastMs()).isEqualTo(ms("2026-03-01T06:40:30.500Z"));
        Format dayFirst = new Format(BERLIN.zone(), true, false);
        LogReader.Result signs = read("01/03/2026 07:30,26.5\n1-3-2026 7:40 +02:00,26.6\n", dayFirst);
        assertThat(signs.log().timeMs(0)).isEqualTo(ms("2026-03-01T05:40:00Z"));
        assertThat(signs.log().timeMs(1)).isEqualTo(ms("2026-03-01T06:30:00Z"));
        assertThat(signs.remarks()).containsExactly("line 2 is earlier than line 1: put in its place.");
        assertThat(problems("01/03/2026 07:30,26\n03/13/2026 07:30,26\n", dayFirst)).containsExactly(
                "line 2 of cone-a.csv: \"03/13/2026 07:30\" has no month 13; does the log write the month "
                        + "first? Write it like 2026-03-01 07:30; a spreadsheet does so when its time column "
                        + "has the format yyyy-mm-dd hh:mm.");
        assertThat(problems("01.03.2026 07:30;26\n", PLAIN).getFirst()).contains("does not say its zone");
    }

    @Test
    void fahrenheitIsReadWhenAskedFor() throws Exception {
        assertThat(read("time,temp °F\n2026-03-01T07:30Z,80.6\n", FAHRENHEIT).log().waterC(0))
                .isCloseTo(27, within(1e-9));
        assertThat(problems("time,temp °F\n2026-03-01T07:30Z,80.6\n", PLAIN).getFirst())
                .contains("line 1").contains("say --fahrenheit");
        assertThat(problems("2026-03-01T07:30Z,80.6\n", PLAIN).getFirst()).contains("say --fahrenheit");
        assertThat(problems("2026-03-01T07:30Z,26.5\n", FAHRENHEIT).getFirst()).contains("is the log in °C?");
    }

    /** Every line says the same then: it is told once, and what to do about it. */
    @Test
    void aWholeLogInTheOtherScaleIsToldInOneSentence() throws Exception {
        assertThat(problems("2026-03-01T07:30Z,80.6\n2026-03-01T07:40Z,81\n2026-03-01T07:50Z,79\n", PLAIN))
                .containsExactly("line 1 of cone-a.csv: \"80.6\" is not the temperature of water in a cone "
                        + "in °C; if the log is in °F, say --fahrenheit. It is the same with 2 more lines.");
        assertThat(problems("2026-03-01T07:30Z,26.5\n2026-03-01T07:40Z,27\n", FAHRENHEIT)).containsExactly(
                "line 1 of cone-a.csv: \"26.5\" is not the temperature of water in a cone in °F; is the log "
                        + "in °C? Then leave --fahrenheit out. It is the same with 1 more line.");
        assertThat(problems("2026-03-01T07:30Z,85\n", PLAIN).getFirst()).contains("--fahrenheit");
    }

    @Test
    void fieldsMayBePartedByTabs() throws Exception {
        LogReader.Result r = read("Time\tRoom\tWater\n01.03.2026 07:30\t19,5\t26,5\n"
                + "01.03.2026 07:40\t19,5\t26.6\n", BERLIN);
        assertThat(r.log().firstMs()).isEqualTo(ms("2026-03-01T06:30:00Z"));
        assertThat(r.log().waterC(0)).isEqualTo(26.5);
        assertThat(r.log().waterC(1)).isEqualTo(26.6);
        assertThat(read("2026-03-01T07:30Z\t26.5\n", PLAIN).log().size()).isEqualTo(1);
        assertThat(read("2026-03-01T07:30Z,26.5\t\n", PLAIN).log().size()).isEqualTo(1);
        assertThat(problems("2026-03-01T07:30Z\t26.5\n2026-03-01T07:40Z,26\n", PLAIN)).containsExactly(
                "line 2 of cone-a.csv: has 1 column, not 2.");
    }

    @Test
    void aTimeWithoutOffsetNeedsAZone() throws Exception {
        assertThat(problems("2026-03-01 07:30,26.5\n", PLAIN).getFirst())
                .isEqualTo("line 1 of cone-a.csv: \"2026-03-01 07:30\" does not say its "
                        + "zone; name it with --zone, such as --zone Europe/London, or add an offset such as "
                        + "+01:00.");
        assertThat(read("2026-03-01 07:30,26.5\n", BERLIN).log().firstMs())
                .isEqualTo(ms("2026-03-01T06:30:00Z"));
    }

    @Test
    void theHourThatComesTwiceInAutumnIsReadInOrder() throws Exception {
        LogReader.Result r = read("2026-10-25 01:30,25\n2026-10-25 02:30,25\n2026-10-25 02:30,25\n"
                + "2026-10-25 03:30,25\n", BERLIN);
        assertThat(r.log().size()).isEqualTo(4);
        assertThat(r.log().lastMs() - r.log().firstMs()).isEqualTo(3 * 3_600_000L);
        assertThat(r.remarks()).isEmpty();
        assertThat(problems("2026-03-29 02:30,25\n", BERLIN).getFirst()).contains("does not exist");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
        "2026-03-01T07:40Z,hello      | is not a temperature",
        "2026-03-01T07:40Z,           | has no temperature",
        "2026-03-01T07:40Z            | has 1 column, not 2",
        "2026-03-01T07:40Z,26,5       | has 3 columns, not 2",
        "2026-03-01T07:40Z,NaN        | is not a temperature",
        "2026-03-01T07:40Z,1e1        | is not a temperature",
        "2026-03-01T07:40Z,85         | just after power-up",
        "2026-03-01T07:40Z,127.937    | not the temperature of water",
        "2026-03-01T07:40Z,0.000      | not the temperature of water",
        "2026-13-01T07:40Z,26         | is not a time",
        "yesterday,26                 | is not a time",
        ",26                          | has no time"})
    void aRowThatIsNoReadingIsNamedWithItsLineAndNothingIsKept(String row, String words) throws Exception {
        List<String> problems = problems("2026-03-01T07:30Z,26\n" + row + "\n2026-03-01T07:50Z,26\n", PLAIN);
        assertThat(problems).hasSize(1);
        assertThat(problems.getFirst()).startsWith("line 2 of cone-a.csv: ").contains(words).endsWith(".");
    }

    @Test
    void everyBadRowIsToldAtOnce() throws Exception {
        assertThat(problems("2026-03-01T07:30Z,x\n2026-03-01T07:31Z,26\n2026-03-01T07:32Z,y\n", PLAIN))
                .hasSize(2).satisfies(p -> assertThat(p.get(1)).startsWith("line 3 "));
        List<String> many = problems("2026-03-01T07:30Z,x\n".repeat(1_000), PLAIN);
        assertThat(many).hasSize(21);
        assertThat(many.getLast()).isEqualTo("and 980 more lines are wrong.");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"garbage|neither a reading nor a header", "foo,bar|names one column",
        "morning,26.5|neither a reading", "2026-03-01T07:30Z,26.5,19|no header says which"})
    void aFirstLineThatIsNeitherReadingNorHeaderIsRefused(String line, String words) throws Exception {
        assertThat(problems(line + "\n2026-03-01T07:40Z,26\n", PLAIN).getFirst())
                .contains("line 1").contains(words);
    }

    @Test
    void rowsOutOfOrderAreSortedAndRepeatsDroppedAndBothAreTold() throws Exception {
        LogReader.Result r = read("2026-03-01T07:30Z,26\n2026-03-01T07:50Z,27\n2026-03-01T07:40Z,28\n"
                + "2026-03-01T07:50Z,29\n", PLAIN);
        assertThat(r.log().size()).isEqualTo(3);
        assertThat(r.log().waterC(1)).isEqualTo(28);
        assertThat(r.log().waterC(2)).isEqualTo(27);
        assertThat(r.remarks()).containsExactly("line 3 is earlier than line 2: put in its place.",
                "line 4 repeats the time of line 2 (29.00 and 27.00 °C): the first was kept.");
    }

    @Test
    void gapsAreToldWithTheLinesAroundThem() throws Exception {
        StringBuilder text = new StringBuilder("time,temp\n");
        for (int i = 0; i < 6; i++) {
            text.append("2026-03-01T07:%02dZ,26\n".formatted(10 * i));
        }
        text.append("2026-03-01T11:00Z,24\n");
        assertThat(read(text.toString(), PLAIN).remarks()).singleElement().asString()
                .contains("3 h 10 min between lines 7 and 8");
    }

    @Test
    void aWrongYearDoesNotMakeALogOfCenturies() throws Exception {
        assertThat(problems("2026-03-01T07:30Z,26\n2126-03-01T07:40Z,26\n", PLAIN).getFirst())
                .contains("lines 1 and 2").contains("check the year");
    }

    @Test
    void filesThatAreNoLogsGetASentence() throws Exception {
        assertThat(problems("", PLAIN).getFirst()).contains("holds no reading");
        assertThat(problems("time,temp\n", PLAIN).getFirst()).contains("holds no reading");
        Path bytes = write(new byte[] {'2', '\n', (byte) 0xff, (byte) 0xfe, '\n'});
        assertThat(catchThrowableOfType(BadLog.class, () -> LogReader.read(bytes, PLAIN)))
                .hasMessage("line 2 of cone-a.csv is not UTF-8 text; save the file as plain text in UTF-8.");
        Path absent = dir.resolve("absent.csv");
        assertThat(catchThrowableOfType(BadLog.class, () -> LogReader.read(absent, PLAIN)))
                .hasMessageContaining("is not there");
        assertThat(catchThrowableOfType(BadLog.class, () -> LogReader.read(dir, PLAIN)))
                .hasMessageContaining("cannot be read");
    }
}

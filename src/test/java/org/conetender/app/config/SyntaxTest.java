package org.conetender.app.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A line that no parser can read is told in one plain sentence that says what to write. */
class SyntaxTest {

    @TempDir
    Path folder;

    private static List<String> told(Outcome outcome) {
        assertThat(outcome).isInstanceOf(Outcome.Refused.class);
        return ((Outcome.Refused) outcome).errors().stream().map(p -> p.text("f")).toList();
    }

    /** That sentence of that line, and nothing else. */
    private static void saysOf(String line, String sentence) {
        assertThat(told(ConfigLoader.parse("# nothing yet\n" + line + "\n")))
                .containsExactly("f:2: " + sentence);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "litres = 2,5            | a figure has a point and no comma; write litres = 2.5",
        "litres = 2,5  # warm    | a figure has a point and no comma; write litres = 2.5",
        "id = “a”                | these are curly quotes; write straight ones: \"",
        "setpoint-c = 27 °C      | a figure stands without its unit; write setpoint-c = 27",
        "litres = 2L             | a figure stands without its unit; write litres = 2",
        "id = larkmoor           | text stands in quotes; write id = \"larkmoor\"",
        "zone = Europe/London    | text stands in quotes; write zone = \"Europe/London\"",
        "id =                    | a value is missing behind the =",
        "id: \"a\"               | a setting is written with =: id = \"a\"",
        "[site                   | the bracket ] is missing at the end",
        "id = \"larkmoor         | a quote \" is missing",
        "litres 2                | the = is missing; write litres = 2",
        "= 27                    | this line is not understood from its column 1 on; a setting reads name = "
                + "value, a section [name]; nothing else is checked until it does"})
    void oneSentenceWithItsRemedy(String line, String sentence) {
        saysOf(line, sentence);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "pump-outlet-cm = 250mm          | pump-outlet-cm is in cm: 250 mm are 25; write pump-outlet-cm = 25",
        "geometry.waterline-cm = 0.45 m  | waterline-cm is in cm: 0.45 m are 45; write "
                + "geometry.waterline-cm = 45",
        "litres = 2000 ml                | litres is in L: 2000 ml are 2; write litres = 2",
        "bath-l = 12,5 l                 | a figure stands without its unit; write bath-l = 12.5",
        "watts = 0.025kW   # the old one | watts is in W: 0.025 kW are 25; write watts = 25",
        "watts = 25000 mW                | watts is in W: 25000 mW are 25; write watts = 25",
        "ppt = 2.5 %                     | ppt is in ppt: 2.5 % are 25; write ppt = 25",
        "ppt = 25 ‰                      | a figure stands without its unit; write ppt = 25",
        "cysts-g = 2000mg                | cysts-g is in g: 2000 mg are 2; write cysts-g = 2",
        "cysts-g = 0.002 kg              | cysts-g is in g: 0.002 kg are 2; write cysts-g = 2",
        "settle-min = 360s               | settle-min is in min: 360 s are 6; write settle-min = 6",
        "hydration-h = 100 min           | hydration-h is in h: 100 min are 1.66667; write "
                + "hydration-h = 1.66667",
        "trigger-h = 6 hours             | a figure stands without its unit; write trigger-h = 6",
        "setpoint-c = 80 °F              | setpoint-c is in °C: 80 °F are 26.6667; write "
                + "setpoint-c = 26.6667",
        "cycles-per-day = 150 cycles     | a figure stands without its unit; write cycles-per-day = 150"})
    void aForeignUnitIsConvertedAndNeverJustStruckOut(String line, String sentence) {
        saysOf(line, sentence);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "pump-outlet-cm = 25 L           | pump-outlet-cm is in cm, not in L; write the figure in cm, "
                + "without a unit",
        "watts = 1e3W                    | watts is in W, not in e3W; write the figure in W, without a unit",
        "litres = 2,000 ml               | litres is in L; 2,000 may be 2.000 or 2000 ml: write the figure "
                + "in L, with a point and no comma, without a unit",
        "life-cycles = 100,000           | a figure has a point and no comma; write 100.000 or 100000, "
                + "whichever is meant",
        "id = 4a                         | this has no unit; it must be 1 to 32 lower-case letters, digits "
                + "and -, beginning with a letter",
        "line = 17GPIO                   | this has no unit; it must be 0 to 63",
        "pump-outlet-mm = 250 mm         | a figure stands without its unit, and there is no setting "
                + "pump-outlet-mm; check --explain lists them all"})
    void noFigureIsGivenWhereNobodyCanTellIt(String line, String sentence) {
        saysOf(line, sentence);
    }

    @Test
    void everySettingTakesItsOwnUnitAway() {
        List<SettingDoc> figures = SettingDocs.all().stream().filter(d -> !d.unit().isEmpty()).toList();
        assertThat(figures).hasSizeGreaterThan(20).allSatisfy(d ->
                assertThat(WrittenUnit.remedy(d.name(), "3", d.unit().split(" ")[0]))
                        .isEqualTo("a figure stands without its unit; write " + d.name() + " = 3"));
    }

    @Test
    void conesInOneBracketAreToldForEachConeAndNothingElse() throws IOException {
        String text = Files.readString(Path.of("config/larkmoor.toml")).replace("[[cone]]", "[cone]");

        assertThat(told(ConfigLoader.parse(text))).hasSize(3)
                .allMatch(l -> l.endsWith(": cones are a list: write [[cone]] with two brackets, once for "
                        + "each"));
    }

    @Test
    void aWrongByteIsToldInItsOwnLine() throws IOException {
        String text = "# a comment\n".repeat(19) + "name = \"Larkmoor Kälte\"\n";
        Path file = Files.write(folder.resolve("latin.toml"), text.getBytes(StandardCharsets.ISO_8859_1));

        assertThat(told(ConfigLoader.load(file))).containsExactly("f:20: the character behind \"name = "
                + "\"Larkmoor K\" is not UTF-8; save the file again as UTF-8");
    }

    @Test
    void whatConcernsTheWholeFileNamesNoLine() {
        assertThat(told(ConfigLoader.load(folder.resolve("nope")))).singleElement().asString()
                .startsWith("f: there is no such file; give its path");
    }

    @Test
    void aFileThatMayNotBeReadSaysSoAndNotItsPathAgain() {
        assertThat(told(ConfigLoader.refusal(Path.of("/x"), new AccessDeniedException("/x"))))
                .containsExactly("f: this user may not read it; give it to the user that runs conetender: "
                        + "chown, or chmod a+r");
        assertThat(told(ConfigLoader.refusal(Path.of("/x"), new IOException("Input/output error"))))
                .containsExactly("f: this cannot be read: Input/output error");
        assertThat(told(ConfigLoader.load(folder)))
                .containsExactly("f: this is a folder; name the file in it");
    }
}

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
        assertThat(told(ConfigLoader.parse("# nothing yet\n" + line + "\n")))
                .containsExactly("f:2: " + sentence);
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

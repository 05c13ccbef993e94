package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.conetender.app.cli.RunCommand;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whoever mistypes reads one sentence in plain words, and where more stands. */
class MisunderstoodTest {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String words) {
        return Main.commandLine(new RunCommand()).setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true))
                .execute(words.isEmpty() ? new String[0] : words.split(" "));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "forecast --log x.csv --room abc | --room takes a number such as 2.5, not 'abc'. | forecast",
        "forecast --log x --rate foo | --rate takes one of base, briere, enzyme, not 'foo'. | forecast",
        "demo --seed abc | --seed takes a whole number such as 20, not 'abc'. | demo",
        "tell a started --timeout soon | --timeout takes a whole number such as 20, not 'soon'. | tell",
        "forecast --log x.csv --zone Foo/Bar | --zone takes a time zone such as Europe/London, not "
                + "'Foo/Bar'. | forecast",
        "watch --broker a^b --site l | --broker takes an address such as mqtt://pi.local:1883, not 'a^b'. "
                + "| watch",
        "check larkmoor.toml | 'larkmoor.toml' is one word too many. | check",
        "check --confg larkmoor.toml | There is no option --confg; did you mean --config? | check",
        "chekc | There is no command 'chekc'; did you mean check? | ",
        "check --explain nokey | There is no setting \"nokey\". --explain alone lists them all. | check",
        "demo --speed 0 | --speed 0.0: give 1 to 20000. | demo",
        "soak --control --cones 0 | --cones 0: give 1 or more. | soak"})
    void oneSentenceAndWhereMoreStands(String words, String sentence, String command) {
        assertThat(run(words)).isEqualTo(2);

        String full = command == null ? "conetender" : "conetender " + command;
        assertThat(err.toString().lines()).containsExactly(sentence, "See " + full + " --help.");
        assertThat(out.toString()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "tell a | STEP is missing.",
        "tell | CONE is missing.",
        "forecast | --log FILE is missing.",
        "demo --seed | --seed N is missing.",
        "soak | One of these is missing: --control, --search, --forecast, --seeds N, --story FILE.",
        "'' | Which command? Begin with 'demo' to see it work."})
    void whatIsMissingIsNamedInOneSentence(String words, String sentence) {
        assertThat(run(words.replace("'", ""))).isEqualTo(2);

        assertThat(err.toString().lines()).hasSize(2).first().isEqualTo(sentence);
        assertThat(err.toString().lines()).last().asString().matches("See conetender.* --help\\.");
    }

    @Test
    void notUnderstoodIsNotRefused() {
        assertThat(run("tell a dance")).isEqualTo(2);
        assertThat(err.toString()).startsWith("Not understood: there is no step 'dance'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"-V", "run -V", "forecast -V", "soak -V", "watch --version"})
    void everyVersionIsSaid(String words) {
        assertThat(run(words)).isZero();
        assertThat(out.toString().strip()).matches("conetender \\d+\\.\\d+\\.\\d+");
    }
}

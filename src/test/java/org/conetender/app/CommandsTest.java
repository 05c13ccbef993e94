package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.conetender.app.cli.RunCommand;
import org.conetender.core.face.Heard;
import org.conetender.core.face.TellLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** Holds every command line that a document or a unit shows against the commands that there are. */
class CommandsTest {

    /** A line of a block, the content of a code span, or what a unit starts. */
    private static final Pattern SHOWN =
            Pattern.compile("(?m)(?:^\\s*|`|/usr/bin/)conetender ([a-z][^`\n]*)");

    private static CommandLine commands() {
        return Main.commandLine(new RunCommand());
    }

    @ParameterizedTest
    @ValueSource(strings = {"README.md", "systemd/conetender.service", "config/minimal.toml",
            "config/full.toml"})
    void everyCommandLineThatIsShownIsUnderstood(String document) throws IOException {
        String text = Files.readString(Path.of(document)).replaceAll("(?m)^#.*?  (?=conetender )", "");
        Matcher m = SHOWN.matcher(text);
        int found = 0;
        while (m.find()) {
            String[] words = m.group(1).replaceAll("\\s{2,}\\(.*|\\[.*?]", "").strip().split("\\s+");
            assertThatCode(() -> commands().parseArgs(words)).as("%s: conetender %s", document, m.group(1))
                    .doesNotThrowAnyException();
            found++;
        }
        assertThat(found).as(document).isPositive();
    }

    @Test
    void theReadmeShowsEveryCommandAndNoOther() throws IOException {
        Set<String> shown = new TreeSet<>();
        Matcher m = Pattern.compile("(?m)^\\| `([a-z]+)` \\|.*\\| `conetender \\1\\b.*` \\|$")
                .matcher(Files.readString(Path.of("README.md")).split("## Hand steps")[0]);
        while (m.find()) {
            shown.add(m.group(1));
        }
        Set<String> real = new TreeSet<>(commands().getSubcommands().keySet());
        real.removeAll(List.of("help"));
        assertThat(shown).isEqualTo(real);
    }

    /** Whoever needs a word at a cone finds it there, and may say it as it stands. */
    @Test
    void theHelpOfTellShowsEveryWordThatTakesAnotherAndEachIsUnderstood() {
        Set<String> shown = new TreeSet<>();
        commands().getSubcommands().get("tell").getUsageMessage().lines().map(String::strip)
                .filter(l -> l.startsWith("conetender tell "))
                .map(l -> l.substring("conetender tell ".length()).replaceFirst(" +(\\(|--).*", ""))
                .filter(l -> !l.startsWith("[")).forEach(line -> {
                    assertThat(TellLine.read(line)).as(line).isInstanceOf(Heard.Understood.class);
                    shown.add(line.split(" ")[1] + (line.split(" ").length > 2 ? " …" : ""));
                });
        assertThat(shown).contains("filled …", "stocked …", "count …", "weighed …", "tin …", "usual …",
                "setpoint …", "ready-by …", "withdraw", "withdraw …", "acknowledge …", "shelve …", "alarms",
                "away …", "back");
    }

    @Test
    void everyCommandHasHelpWithAnExample() {
        commands().getSubcommands().forEach((name, command) -> {
            if (!name.equals("help")) {
                assertThat(command.getUsageMessage()).as(name).contains("Example")
                        .contains("conetender " + name);
            }
        });
    }
}

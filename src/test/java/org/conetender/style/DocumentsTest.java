package org.conetender.style;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Follow;
import org.conetender.core.face.Heard;
import org.conetender.core.face.TellLine;
import org.conetender.core.guard.Guards;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Holds the documents against the program: links, files, types, tables, commands, words. */
class DocumentsTest {

    private static final String ALARMS = "src/site/markdown/alarms.md";
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)]+)\\)");
    private static final Pattern QUOTED = Pattern.compile("`([^`\n]+)`");

    private static final String SAFETY = "src/site/markdown/safety.md";

    private static String read(String file) throws IOException {
        return Files.readString(Path.of(file));
    }

    @ParameterizedTest
    @ValueSource(strings = {"README.md", "DEVELOPERS.md", "src/test/board/README.md", ALARMS})
    void everyLinkLeadsSomewhere(String document) throws IOException {
        String text = read(document);
        Set<String> headings = new TreeSet<>();
        text.lines().filter(l -> l.startsWith("#")).map(DocumentsTest::anchor).forEach(headings::add);
        Matcher m = LINK.matcher(text);
        while (m.find()) {
            String to = m.group(1);
            if (to.startsWith("#")) {
                assertThat(headings).as(document).contains(to.substring(1));
            } else {
                Path there = Path.of(document).resolveSibling(to.replaceFirst("#.*", ""));
                assertThat(Files.exists(there)).as("%s links to %s", document, to).isTrue();
                if (to.contains("#")) {
                    assertThat(Files.readString(there).lines().filter(l -> l.startsWith("#"))
                            .map(DocumentsTest::anchor)).as(document).contains(to.replaceFirst(".*#", ""));
                }
            }
        }
    }

    /** As the usual viewers of Markdown make it. */
    private static String anchor(String heading) {
        return heading.replaceFirst("#+ ", "").toLowerCase(java.util.Locale.ROOT).replaceAll("[^\\w\\- ]", "")
                .replace(' ', '-');
    }

    @ParameterizedTest
    @ValueSource(strings = {"README.md", "DEVELOPERS.md", SAFETY})
    void everyFileOfOursThatIsNamedExists(String document) throws IOException {
        Pattern ours = Pattern.compile("(?<![\\w/.-])((?:src|config|systemd|\\.ci)/[\\w./-]*\\w)");
        Matcher m = ours.matcher(read(document));
        int found = 0;
        while (m.find()) {
            assertThat(Files.exists(Path.of(m.group(1)))).as("%s names %s", document, m.group(1)).isTrue();
            found++;
        }
        assertThat(found).isGreaterThan(3);
    }

    @Test
    void everyTypeTheDeveloperIsSentToExists() throws IOException {
        Set<String> types = new TreeSet<>();
        for (String root : List.of("src/main/java", "src/test/java")) {
            SourceFile.under(root).forEach(f -> Outline.of(f).types().forEach(t -> types.addAll(
                    List.of(t.name(), t.name().substring(t.name().lastIndexOf('.') + 1)))));
        }
        List<String> unknown = new ArrayList<>();
        Matcher m = QUOTED.matcher(read("DEVELOPERS.md").replaceAll("(?s)```.*?```", ""));
        while (m.find()) {
            Matcher t = Pattern.compile("^(?:[a-z]+[./])*([A-Z]\\w+)(?:\\.\\w+)?(?:\\(.*\\))?$")
                    .matcher(m.group(1));
            if (t.matches() && !types.contains(t.group(1)) && !EVERYDAY.contains(t.group(1))) {
                unknown.add(m.group(1));
            }
        }
        assertThat(unknown).as("types that DEVELOPERS.md names and nobody wrote").isEmpty();
    }

    private static final Set<String> EVERYDAY = Set.of("N");

    @Test
    void everyPackageStandsInTheMap() throws IOException {
        String map = read("DEVELOPERS.md");
        for (SourceFile f : SourceFile.under("src/main/java")) {
            assertThat(map).contains("`" + f.packageName().replaceFirst("org\\.conetender\\.?", "") + "`");
        }
    }

    @Test
    void theAlarmTableHasOneTrueRowForEachAlarm() throws IOException {
        assertThat(rows(between(ALARMS, "<!-- alarms:", "<!-- /alarms -->")).stream().map(List::of))
                .containsExactlyElementsOf(Arrays.stream(AlarmKind.values()).map(k -> List.of(
                        "`" + k.id() + "`", k.cause(), k.consequence(), k.stakes().harm().words(), k.todo(),
                        k.stakes().time())).toList());
    }

    @Test
    void theTableOfWhatFollowsIsTheDeclaredOne() throws IOException {
        assertThat(rows(between(ALARMS, "<!-- follows:", "<!-- /follows -->")).stream().map(List::of))
                .containsExactlyElementsOf(Follow.TABLE.stream().map(f -> List.of(
                        "`" + f.cause().id() + "`",
                        f.where() == Follow.Where.HERE ? "in its cone" : "in every cone",
                        f.followers().stream().sorted().map(k -> "`" + k.id() + "`")
                                .collect(Collectors.joining(", ")),
                        f.span())).toList());
    }

    @Test
    void theSafetyTableHasOneRowForEachGuardWithItsStories() throws IOException {
        String text = read(SAFETY);
        List<String[]> rows = rows(text.substring(text.indexOf("<!-- guards:"),
                text.indexOf("<!-- /guards -->")));
        assertThat(rows.stream().map(r -> r[1])).containsExactlyInAnyOrderElementsOf(Guards.ALL.stream()
                .map(g -> "`" + g.getClass().getSimpleName() + "`").toList());
        Set<String> tests = new TreeSet<>();
        SourceFile.under("src/test/java").forEach(f -> Outline.of(f).types().forEach(t -> tests.add(
                t.name().substring(t.name().lastIndexOf('.') + 1))));
        for (String[] row : rows) {
            assertThat(row[3]).as("each has a class of its own")
                    .isEqualTo(row[1].replaceFirst("`$", "Test`"));
            assertThat(tests).as(row[0]).contains(row[3].replace("`", ""));
        }
    }

    @Test
    void everyHandStepHasItsRow() throws IOException {
        List<String> steps = rows(between("README.md", "| step | say it when", "These take a word")).stream()
                .map(r -> r[0]).toList();
        assertThat(steps).containsExactlyInAnyOrderElementsOf(
                Arrays.stream(Step.values()).map(s -> "`" + s.word() + "`").toList());
    }

    @Test
    void everyTellThatIsShownIsUnderstood() throws IOException {
        Matcher m = Pattern.compile("conetender tell ([^`\n]+)").matcher(read("README.md"));
        int found = 0;
        while (m.find()) {
            assertThat(TellLine.read(m.group(1))).as(m.group()).isInstanceOf(Heard.Understood.class);
            found++;
        }
        for (String figures
                : List.of("a filled litres=2 ppt=25", "a stocked lot=L-0417 cysts-g=2", "site back")) {
            assertThat(TellLine.read(figures)).as(figures).isInstanceOf(Heard.Understood.class);
        }
        assertThat(found).isGreaterThan(5);
    }

    @Test
    void theTestCommandIsTheSameEverywhere() throws IOException {
        assertThat(read("README.md")).contains("\nmvn -B verify\n")
                .contains("\nmvn -q compile exec:exec@demo\n");
        assertThat(read(".ci/run")).contains(" mvn -B verify ");
        assertThat(read("pom.xml")).contains("<id>demo</id>");
        assertThat(Files.isExecutable(Path.of(".ci/run"))).isTrue();
    }

    @Test
    void everyGuardStandsInAFileOfItsOwn() {
        assertThat(Guards.ALL).allSatisfy(g -> assertThat(Path.of("src/main/java/org/conetender/core/guard",
                g.getClass().getSimpleName() + ".java")).exists());
        assertThat(Guards.ALL.stream().map(g -> g.id())).doesNotHaveDuplicates();
    }

    @Test
    void thePersonWithTheConesIsWarnedFirst() throws IOException {
        String text = read("README.md");
        assertThat(text.indexOf("No real heater belongs on this release"))
                .isBetween(0, text.indexOf("## Try it"));
        assertThat(text)
                .contains("residual-current device (30 mA)", "independent thermal cut-out", "drip loop",
                "Unplug the heater before hands go into the water", "never ammonia", "thiosulfate",
                "local code decides", "licensed person", "not a protective device");
    }

    private static String between(String file, String from, String to) throws IOException {
        String text = read(file);
        assertThat(text).contains(from, to);
        return text.substring(text.indexOf(from), text.indexOf(to, text.indexOf(from)));
    }

    /** The rows of the table in that text, without its head. */
    private static List<String[]> rows(String text) {
        Stream<String> lines = text.lines().dropWhile(l -> !l.startsWith("| ---")).skip(1)
                .takeWhile(l -> l.startsWith("|"));
        return lines.map(l -> Arrays.stream(l.substring(1, l.length() - 1).split("\\|")).map(String::strip)
                .toArray(String[]::new)).toList();
    }
}

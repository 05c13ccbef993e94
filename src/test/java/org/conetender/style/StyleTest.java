package org.conetender.style;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Holds the source to the house numbers, the arrows of the map and the banned calls (style.md). */
class StyleTest {

    private static final List<SourceFile> MAIN = SourceFile.under("src/main/java");
    private static final List<SourceFile> TESTS = SourceFile.under("src/test/java");
    private static final List<SourceFile> ALL = both();

    private static List<SourceFile> both() {
        List<SourceFile> all = new ArrayList<>(MAIN);
        all.addAll(TESTS);
        return all;
    }

    @Test
    void noFileIsTooLongToRead() {
        Map<String, Integer> main = new TreeMap<>();
        MAIN.forEach(f -> main.put(place(f), f.lines().size()));
        Map<String, Integer> tests = new TreeMap<>();
        TESTS.forEach(f -> tests.put(place(f), f.lines().size()));
        assertThat(new Ratchet("file-lines", 400).complaints(main)).isEmpty();
        assertThat(new Ratchet("test-file-lines", 600).complaints(tests)).isEmpty();
    }

    @Test
    void noLineIsWiderThanAScreen() {
        List<String> wide = new ArrayList<>();
        for (SourceFile f : ALL) {
            for (int i = 0; i < f.lines().size(); i++) {
                if (f.lines().get(i).codePoints().count() > 110) {
                    wide.add(f.path() + ":" + (i + 1) + ": wider than 110 columns");
                }
            }
        }
        assertThat(wide).isEmpty();
    }

    @Test
    void nothingIsImportedForNothing() {
        assertThat(ALL.stream().flatMap(f -> f.idleImports().stream())).isEmpty();
    }

    @Test
    void noMethodIsTooLongOrTakesTooMuch() {
        Map<String, Integer> lines = new TreeMap<>();
        Map<String, Integer> parameters = new TreeMap<>();
        for (SourceFile f : ALL) {
            for (Outline.Method m : Outline.of(f).methods()) {
                String key = f.packageName().replace("org.conetender.", "") + "." + m.name();
                lines.merge(key, m.lines(), Math::max);
                if (f.isMain()) {
                    parameters.merge(key, m.parameters(), Math::max);
                }
            }
        }
        assertThat(lines).hasSizeGreaterThan(1_000);
        assertThat(new Ratchet("method-lines", 60).complaints(lines)).isEmpty();
        assertThat(new Ratchet("parameters", 4).complaints(parameters)).isEmpty();
    }

    @Test
    void coreIsTestedAboutLineForLine() {
        int tests = lines(TESTS);
        int main = lines(MAIN);
        assertThat(100 * tests / main).as("lines of core tests for 100 lines of core; the aim is 100")
                .isGreaterThanOrEqualTo(Ratchet.listed("core-test-lines-percent", "core"));
    }

    private static int lines(List<SourceFile> files) {
        return files.stream().filter(f -> Banned.in(f, "core")).mapToInt(f -> f.lines().size()).sum();
    }

    @Test
    void noTypeDoesTooMuch() {
        Map<String, Integer> methods = new TreeMap<>();
        Map<String, Integer> components = new TreeMap<>();
        for (SourceFile f : MAIN) {
            for (Outline.Type t : Outline.of(f).types()) {
                String key = f.packageName().replace("org.conetender.", "") + "." + t.name();
                methods.merge(key, t.methods(), Math::max);
                components.merge(key, t.components(), Math::max);
            }
        }
        assertThat(methods).hasSizeGreaterThan(200);
        assertThat(new Ratchet("methods", 15).complaints(methods)).isEmpty();
        assertThat(new Ratchet("components", 8).complaints(components)).isEmpty();
    }

    @Test
    void everyArrowOfTheMapPointsTheRightWay() {
        assertThat(MAIN.stream().flatMap(f -> Arrows.complaints(f).stream())).isEmpty();
    }

    @Test
    void noBannedCallIsMade() {
        assertThat(ALL.stream().filter(f -> !f.packageName().equals("org.conetender.style"))
                .flatMap(f -> Banned.ALL.stream().flatMap(b -> b.complaints(f).stream()))).isEmpty();
    }

    @Test
    void everyPackageSaysWhatLivesThere() {
        List<String> wrong = new ArrayList<>();
        for (Path folder : MAIN.stream().map(f -> f.path().getParent()).distinct().sorted().toList()) {
            SourceFile info = MAIN.stream().filter(f -> f.path().equals(folder.resolve("package-info.java")))
                    .findFirst().orElse(null);
            if (info == null) {
                wrong.add(folder
                        + ": write a package-info.java: what lives here, what may not, where to start");
            } else if (sentences(info.text()) < 2 || sentences(info.text()) > 6) {
                wrong.add(info.path() + ": " + sentences(info.text()) + " sentences; about three are wanted");
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** Ends of sentences in the package's comment. */
    private static long sentences(String text) {
        String comment = text.substring(text.indexOf("/**"), text.indexOf("*/") + 2).replace("*", " ");
        return Pattern.compile("[.?!](?=\\s)").matcher(comment.replaceAll("\\{@\\w+ [^}]*}", "it"))
                .results().count();
    }

    @Test
    void nothingIsLeftLyingAbout() throws IOException {
        // Split, so that this list does not find itself.
        Pattern left = Pattern.compile("/wo" + "rk/|\\bshar" + "ed/|/ro" + "ot/|\\bTO" + "DO\\b|\\bFIX"
                + "ME\\b");
        Pattern temporary = Pattern.compile("\"/t" + "mp\\b");
        List<String> found = new ArrayList<>();
        for (Path p : written()) {
            List<String> lines = Files.readAllLines(p);
            for (int i = 0; i < lines.size(); i++) {
                boolean main = p.startsWith("src/main") && temporary.matcher(lines.get(i)).find();
                if (main || left.matcher(lines.get(i)).find()) {
                    found.add(p + ":" + (i + 1) + ": " + lines.get(i).strip());
                }
            }
        }
        assertThat(found).isEmpty();
    }

    private static List<Path> written() throws IOException {
        List<Path> out = new ArrayList<>();
        for (String top : List.of("src", "config", "systemd", "README.md", "DEVELOPERS.md", "pom.xml")) {
            if (Files.exists(Path.of(top))) {
                try (var files = Files.walk(Path.of(top))) {
                    files.filter(Files::isRegularFile)
                            .filter(f -> f.toString().matches(".*\\.(java|toml|md|xml|sh|txt|service|rules)"))
                            .forEach(out::add);
                }
            }
        }
        return out;
    }

    private static String place(SourceFile f) {
        return f.path().toString().replaceFirst("src/\\w+/java/org/conetender/", "");
    }
}

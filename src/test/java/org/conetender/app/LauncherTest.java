package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.conetender.core.unit.Text;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The launcher chooses a Java that is new enough. The Javas here only say who they are. */
class LauncherTest {

    private static final String LAUNCHER = "src/main/launcher/conetender";

    @TempDir
    Path folder;

    private final Map<String, String> environment = new TreeMap<>();

    private record Ran(int code, String out, String err, long pid) {}

    @BeforeEach
    void nowhereElse() throws IOException {
        environment.put("CONETENDER_JVMS", Files.createDirectories(folder.resolve("jvm")).toString());
        environment.put("CONETENDER_JAR",
                Files.createFile(folder.resolve("the.jar")).toString());
        environment.put("PATH", Files.createDirectories(folder.resolve("bin")) + ":/usr/bin:/bin");
        // The machine's own java must not be found before those of a test.
        Files.createSymbolicLink(folder.resolve("bin/java"), java("own", "17.0.9").resolve("bin/java"));
    }

    @Test
    void anOlderJavaIsPassedOver() throws IOException {
        Path old = java("jdk-21", "21.0.4");
        Path young = java("jvm/java-25-openjdk", "25.0.1");
        java("jvm/java-17-openjdk", "17.0.9");
        environment.put("JAVA_HOME", old.toString());

        Ran ran = run("demo", "--seed", "two words");

        assertThat(ran.out()).startsWith(young + "\n").contains("\n-jar\n" + folder.resolve("the.jar")
                + "\ndemo\n--seed\ntwo words\n");
        assertThat(ran.code()).isZero();
    }

    @Test
    void withoutTheProgramItSaysWhereItShouldLie() throws IOException {
        java("jvm/java-25-openjdk", "25.0.1");
        environment.put("CONETENDER_JAR", "/somewhere/the.jar");

        Ran ran = run("demo");

        assertThat(ran.code()).isEqualTo(69);
        assertThat(ran.err()).startsWith("conetender's program /somewhere/the.jar is not there")
                .contains("set CONETENDER_JAR");
    }

    @Test
    void whoeverNamesAJavaGetsIt() throws IOException {
        Path named = java("named", "26-ea");
        java("jvm/java-25-openjdk", "25.0.1");
        environment.put("JAVA_HOME", named.toString());

        assertThat(run("help").out()).startsWith(named + "\n");
    }

    @Test
    void theUsualJavaComesBeforeTheFolder() throws IOException {
        Path usual = java("usual", "25");
        java("jvm/java-25-openjdk", "25.0.1");
        Files.delete(folder.resolve("bin/java"));
        Files.createSymbolicLink(folder.resolve("bin/java"), usual.resolve("bin/java"));

        assertThat(run("help").out()).startsWith(usual + "\n");
    }

    @Test
    void aJavaWithoutItsReleaseFileIsAsked() throws IOException {
        java("jvm/a", "1.8.0_392");
        Path young = java("jvm/b", "25.0.3");
        Files.delete(folder.resolve("jvm/a/release"));
        Files.delete(young.resolve("release"));

        assertThat(run("help").out()).startsWith(young + "\n");
    }

    /** Else the service manager would never hear that the daemon is ready. */
    @Test
    void javaTakesThePlaceOfTheLauncher() throws IOException {
        java("jvm/java-25-openjdk", "25.0.1");

        Ran ran = run("run");

        assertThat(ran.out()).contains("\npid " + ran.pid() + "\n");
    }

    @Test
    void javaIsQuietAboutItsLibraries() throws IOException {
        java("jvm/java-25-openjdk", "25.0.1");

        assertThat(run("demo").out()).contains("\n--sun-misc-unsafe-memory-access=allow\n",
                "\n--enable-native-access=ALL-UNNAMED\n");
    }

    /** Most of what these do is done before the second compiler would have been of use. */
    @Test
    void whatIsInAHurryDoesWithoutTheSecondCompiler() throws IOException {
        java("jvm/java-25-openjdk", "25.0.1");

        assertThat(run("run").out()).contains("\n-XX:TieredStopAtLevel=1\n");
        assertThat(run("safe").out()).contains("\n-XX:TieredStopAtLevel=1\n");
        assertThat(run("soak").out()).doesNotContain("TieredStopAtLevel");
    }

    @Test
    void aLongLogIsGivenMoreMemoryThanTheDaemon() throws IOException {
        java("jvm/java-25-openjdk", "25.0.1");

        assertThat(run("run").out()).contains("\n-Xmx128m\n");
        assertThat(run("forecast", "--log", "a.csv").out()).contains("\n-Xmx256m\n");
    }

    @Test
    void withoutAnyOneSentenceSaysWhatToInstall() throws IOException {
        Ran ran = run("run");

        assertThat(ran.code()).isEqualTo(69);
        assertThat(ran.err().lines()).singleElement().asString()
                .contains("needs Java 25", "apt install openjdk-25-jre-headless", "JAVA_HOME");
    }

    /** A home as a Java has it. @return it */
    private Path java(String name, String version) throws IOException {
        Path home = folder.resolve(name);
        Path java = Files.createDirectories(home.resolve("bin")).resolve("java");
        Files.writeString(home.resolve("release"), "IMPLEMENTOR=\"none\"\n"
                + "JAVA_VERSION=\"" + version + "\"\n");
        Files.writeString(java, Text.of("""
                #!/bin/sh
                if [ "$1" = -version ]; then
                    echo 'openjdk version "%s" 2025-09-16' >&2
                    exit 0
                fi
                echo '%s'
                echo "pid $$"
                printf '%%s\\n' "$@"
                """, version, home));
        assertThat(java.toFile().setExecutable(true)).isTrue();
        return home;
    }

    private Ran run(String... words) throws IOException {
        ProcessBuilder b = new ProcessBuilder(LAUNCHER);
        b.command().addAll(List.of(words));
        b.environment().remove("JAVA_HOME");
        b.environment().putAll(environment);
        Path err = folder.resolve("err");
        Process p = b.redirectError(err.toFile()).start();
        String out = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        try {
            assertThat(p.waitFor(60, TimeUnit.SECONDS)).as("the launcher ends").isTrue();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return new Ran(p.exitValue(), out, Files.readString(err), p.pid());
    }
}

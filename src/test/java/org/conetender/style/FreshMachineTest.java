package org.conetender.style;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What the build and {@code .ci/run} say on a machine that lacks something. What is there is hidden from
 * them: folders of Java that this test made, and a search path without Maven and the broker's clients.
 */
class FreshMachineTest {

    private static final String NEEDED = "conetender needs a JDK 25";
    /** All that the script itself calls. */
    private static final List<String> TOOLS = List.of("bash", "dirname", "sed", "id", "cat", "head", "grep");

    @TempDir
    Path folder;

    private Path jdks;

    @BeforeEach
    void anEmptyFolderOfJava() throws IOException {
        jdks = Files.createDirectories(folder.resolve("jvm"));
    }

    @Test
    void withoutAnyJavaOfThatAgeTheBuildSaysInOneSentenceWhatToInstall() throws Exception {
        java("java-21", "21.0.13", true);
        String said = build();
        assertThat(said).contains(NEEDED, "apt install openjdk-25-jdk-headless", "JAVA_HOME");
        assertThat(said.split(NEEDED)).as("said once: " + said).hasSize(2);
    }

    /** Installing the daemon by the README brings the runtime along, and Maven then runs on it. */
    @Test
    void aRuntimeWithoutItsCompilerIsNoJdk() throws Exception {
        java("java-25", "25.0.5", false);
        assertThat(build()).contains(NEEDED, "a Java runtime alone is none");
    }

    @Test
    void aJdkAmongOthersEndsTheSearch() throws Exception {
        java("java-17", "17.0.15", true);
        java("java-26", "26", true);
        assertThat(build()).doesNotContain(NEEDED);
    }

    @Test
    void theScriptInstallsAllThatIsMissingInOneGo() throws Exception {
        java("java-25", "25.0.5", false);
        tool("apt-cache", "exit 0");
        tool("apt-get", "echo \"$*\" >> " + folder + "/apt");
        Ran ran = script();
        assertThat(Files.readAllLines(folder.resolve("apt"))).hasSize(2).last().asString()
                .startsWith("install -y").contains(" maven ", "mosquitto-clients", "openjdk-25-jdk-headless");
        assertThat(ran.said()).contains("mvn is still missing after the installation");
        assertThat(ran.code()).isEqualTo(1);
    }

    @Test
    void whereDebianHasNoSuchJdkTheScriptSaysSoAndInstallsNothing() throws Exception {
        tool("apt-cache", "exit 100");
        tool("apt-get", "echo \"$*\" >> " + folder + "/apt");
        Ran ran = script();
        assertThat(ran.said()).contains("this Debian release has none", "install one under " + jdks);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(Files.readAllLines(folder.resolve("apt"))).containsExactly("update -q");
    }

    @Test
    void elsewhereThanOnDebianTheScriptNamesWhatIsMissing() throws Exception {
        java("java-25", "25.0.5", true);
        Ran ran = script();
        assertThat(ran.said()).contains("missing: maven ", "on Debian only").doesNotContain("openjdk");
        assertThat(ran.code()).isEqualTo(1);
    }

    /** A folder as an installation leaves it; only its layout is looked at. */
    private void java(String name, String version, boolean compiler) throws IOException {
        Path bin = Files.createDirectories(jdks.resolve(name).resolve("bin"));
        Files.writeString(jdks.resolve(name).resolve("release"), "JAVA_VERSION=\"" + version + "\"\n");
        if (compiler) {
            executable(bin.resolve("javac"), "#!/bin/sh\n");
        }
    }

    private void tool(String name, String does) throws IOException {
        executable(Files.createDirectories(folder.resolve("bin")).resolve(name), "#!/bin/sh\n" + does + "\n");
    }

    private static void executable(Path file, String text) throws IOException {
        Files.writeString(file, text);
        assertThat(file.toFile().setExecutable(true)).isTrue();
    }

    /** Maven up to the search for a JDK, with the places that this machine has hidden from it. */
    private String build() throws Exception {
        String repository = System.getProperty("localRepository",
                Path.of(System.getProperty("user.home"), ".m2", "repository").toString());
        return run(List.of("mvn", "-o", "-B", "-q", "-f", Path.of("pom.xml").toAbsolutePath().toString(),
                "antrun:run@need-jdk-25", "-Djdk.own=" + folder.resolve("none"), "-Djdk.folder=" + jdks,
                "-Duser.home=" + folder, "-Dmaven.repo.local=" + repository), Map.of()).said();
    }

    /** A copy of the script, so that nothing it does can touch this build. */
    private Ran script() throws Exception {
        Path copy = Files.createDirectories(folder.resolve("copy/.ci")).resolve("run");
        Files.copy(Path.of(".ci/run"), copy);
        for (String tool : TOOLS) {
            tool(tool, "exec " + found(tool) + " \"$@\"");
        }
        tool("sudo", "shift; exec \"$@\"");
        tool("env", "shift; exec \"$@\"");
        return run(List.of(found("bash").toString(), copy.toString()),
                Map.of("PATH", folder.resolve("bin").toString(), "JDK_FOLDER", jdks.toString()));
    }

    private static Path found(String tool) {
        return List.of("/usr/bin", "/bin").stream().map(d -> Path.of(d, tool)).filter(Files::exists)
                .findFirst().orElseThrow(() -> new AssertionError("no " + tool + " on this machine"));
    }

    private record Ran(int code, String said) {}

    private Ran run(List<String> words, Map<String, String> environment) throws Exception {
        ProcessBuilder builder = new ProcessBuilder(new ArrayList<>(words)).redirectErrorStream(true);
        builder.environment().putAll(environment);
        Process process = builder.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Ran(process.waitFor(), said);
    }
}

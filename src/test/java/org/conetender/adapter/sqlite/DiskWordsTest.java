package org.conetender.adapter.sqlite;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people read on a disk without room and on one that cannot be written: real ones, but small. */
class DiskWordsTest {

    @TempDir
    Path folder;

    @BeforeEach
    void places() throws IOException {
        Files.createDirectories(folder.resolve("disk"));
        Files.createDirectories(folder.resolve("stick"));
    }

    private Map<String, String> mounted(String shell) throws Exception {
        return mounted(folder, DiskWork.class, shell);
    }

    /** In a shell that may mount and is seen by nobody; {@code $WORK} does it. What it said, by what. */
    static Map<String, String> mounted(Path folder, Class<?> work, String shell) throws Exception {
        String java = Path.of(System.getProperty("java.home"), "bin", "java") + " -Xmx64m"
                + " --enable-native-access=ALL-UNNAMED -XX:TieredStopAtLevel=1 -cp "
                + System.getProperty("java.class.path") + " " + work.getName();
        ProcessBuilder b = new ProcessBuilder("unshare", "--map-root-user", "--mount", "sh", "-ec", shell)
                .directory(folder.toFile()).redirectErrorStream(true);
        b.environment().put("WORK", java);
        Process p = b.start();
        String out = new String(p.getInputStream().readAllBytes(), UTF_8);
        assertThat(p.waitFor()).as(out).isZero();
        Map<String, String> said = new TreeMap<>();
        out.lines().filter(l -> l.contains(": ") && !l.startsWith("WARNING")).forEach(l -> said.put(
                l.substring(0, l.indexOf(':')), l.substring(l.indexOf(':') + 2)));
        return said;
    }

    @Test
    void aFullDiskIsToldAsOneWhateverTheErrorIsCalled() throws Exception {
        Map<String, String> said = mounted("mount -t tmpfs -o size=400k tmpfs disk;"
                + " mount -t tmpfs -o size=8k tmpfs stick; $WORK full $PWD/disk $PWD/stick");
        String disk = "the disk of " + folder.resolve("disk") + " is full; free some space";
        assertThat(said.get("start")).contains(disk).doesNotContain("by itself").doesNotContain("change the");
        assertThat(said.get("report")).contains(disk).doesNotContain("by itself");
        assertThat(said.get("start with room")).isEqualTo("done");
        assertThat(said.get("backup to a full stick")).contains("the backup "
                + folder.resolve("stick/record.zip"), "the disk of " + folder.resolve("stick") + " is full",
                "The record is as it was").doesNotContain("by itself");
        assertThat(said.get("fact")).as("in the words of who reports").contains(disk,
                "recording goes on by itself").doesNotContain("SQLITE").doesNotContain("could not");
        assertThat(said.get("fact with room")).isEqualTo("done");
    }

    /** SQLite's own library is unpacked into it for each process. */
    @Test
    void aFullFolderForPassingFilesIsToldAsOne() throws Exception {
        assertThat(mounted("mount -t tmpfs -o size=400k tmpfs stick;"
                + " export JAVA_TOOL_OPTIONS=-Djava.io.tmpdir=$PWD/stick;"
                + " $WORK full $PWD/disk $PWD/stick || true").values()).anySatisfy(w -> assertThat(w)
                .contains("the disk of " + folder.resolve("stick") + " is full; free some space"));
    }

    @Test
    void aCardThatBecameReadOnlyIsToldAsOne() throws Exception {
        Files.write(folder.resolve("stick/record.zip"), new byte[10]);
        Map<String, String> said = mounted("mount -t tmpfs -o size=400k tmpfs disk; $WORK make $PWD/disk;"
                + " rm -f disk/*-wal disk/*-shm; mount -o remount,ro disk;"
                + " $WORK read-only $PWD/disk $PWD/stick");
        assertThat(said).hasSize(4).allSatisfy((what, words) -> assertThat(words).as(what)
                .contains("read-only now", "change the card", "mount -o remount,rw", "cp -a")
                .doesNotContain("belong to the user").doesNotContain("sudo")
                .doesNotContain("--backup"));
    }
}

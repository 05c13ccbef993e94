package org.conetender.app.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is good enough to run but weaker than it could be is said, and never refused. */
class WarningsTest {

    private static void warns(Draft draft, String... words) {
        assertThat(draft.errors()).isEmpty();
        assertThat(draft.warnings()).singleElement().asString().contains(words);
    }

    @Test
    void missingAirProofRoomProbeFeedsAndBrokerAreSaid() {
        warns(Draft.good().with("proof-line", ""), "cone[a].air.proof-line = (not given)",
                "no contact proves air");
        warns(Draft.good().with("room-probe", ""), "site.room-probe = (not given)", "no room probe");
        warns(Draft.good().with("feeds", ""), "no feed hours");
        warns(Draft.good().with("[mqtt]", "").with("uri", ""), "no broker");
    }

    @Test
    void stepsInTheClearThroughTheNetworkAreSaid() {
        warns(Draft.good().with("uri", "uri = \"mqtt://broker.example\""), "travel unencrypted");
        assertThat(Draft.good().with("uri", "uri = \"mqtts://broker.example\"").warnings()).isEmpty();
        assertThat(Draft.good().with("uri", "uri = \"mqtt://127.0.0.1\"").warnings()).isEmpty();
        assertThat(Draft.good().with("uri", "uri = \"mqtt://[::1]:1884\"").warnings()).isEmpty();
    }

    @Test
    void aPasswordFileThatOthersCanReadIsSaid(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("password"), "x\n");
        Draft draft = Draft.good().after("uri", "user = \"l\"\npassword-file = \"" + file + "\"");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
        warns(draft, "others can read", "chmod 640");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
        assertThat(draft.warnings()).isEmpty();
        assertThat(draft.accepted().config().hardware().mqtt().orElseThrow().passwordFile()).contains(file);
        Files.delete(file);
        warns(draft, "there is no such file");
    }

    @Test
    void aFolderOfTheRecordThatIsNotThereIsSaid(@TempDir Path folder) throws IOException {
        Path record = folder.resolve("record");
        Draft draft = Draft.good().with("folder", "folder = \"" + record + "\"");
        warns(draft, "record.folder = \"" + record + "\"", "there is no such folder", "does not start");
        Files.createFile(record);
        warns(draft, "there is no such folder");
        Files.delete(record);
        Files.createDirectory(record);
        assertThat(draft.warnings()).isEmpty();
        Files.delete(record);
        assertThat(draft.with("uri", "uri = \"nowhere\"").warnings()).as("beside errors too").hasSize(1);
        assertThat(ConfigLoader.parse(Draft.good().with("folder", "").text()).warnings())
                .hasSize(Files.isDirectory(Path.of("/var/lib/conetender")) ? 0 : 1)
                .allMatch(p -> p.what().startsWith("/var/lib/conetender counts, and there is no such "));
    }

    @Test
    void warningsAreToldBesideErrorsToo() {
        Draft draft = Draft.good().with("proof-line", "").with("setpoint-c", "setpoint-c = 99");
        assertThat(draft.errors()).hasSize(1);
        assertThat(draft.warnings()).hasSize(1);
    }
}

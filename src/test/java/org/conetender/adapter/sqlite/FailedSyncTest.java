package org.conetender.adapter.sqlite;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.conetender.core.batch.Fact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A commit of a real process whose journal the kernel, through {@code strace}, refuses to write. */
@Timeout(120)
class FailedSyncTest {

    /** Past the journal's head and the first commits: which of them it is does not matter. */
    private static final int FAILS_FROM = 6;

    @TempDir
    Path folder;

    private String failing(String call, String error) throws Exception {
        Path book = folder.toRealPath().resolve("record.db");
        SqliteStore.open(book).close();
        Process p = new ProcessBuilder("strace", "-f", "-qq", "-o", "/dev/null", "-P", book + "-wal", "-e",
                "trace=" + call, "-e", "inject=" + call + ":error=" + error + ":when=" + FAILS_FROM + "+",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED", "-XX:TieredStopAtLevel=1", "-Xmx64m", "-cp",
                System.getProperty("java.class.path"), SyncWork.class.getName(), book.toString())
                .redirectErrorStream(true).start();
        String out = new String(p.getInputStream().readAllBytes(), UTF_8);
        assertThat(p.waitFor()).as(out).isZero();
        return out.lines().filter(l -> l.startsWith("failed ")).findFirst().orElseThrow(
                () -> new AssertionError("no write failed: " + out));
    }

    private boolean kept(String failed) throws Exception {
        long seq = Long.parseLong(failed.split(" ")[1]);
        try (SqliteStore store = SqliteStore.open(folder.toRealPath().resolve("record.db"))) {
            assertThat(store.load().facts()).hasSizeGreaterThanOrEqualTo((int) seq - 1);
            return store.load().facts().stream().map(Fact::seq).anyMatch(s -> s == seq);
        }
    }

    @Test
    void aCommitThatFailsOnlyToLastIsToldAsPerhapsKeptForAStartFindsIt() throws Exception {
        String failed = failing("fsync,fdatasync", "EIO");
        assertThat(failed).matches("failed \\d+ true .*answers with errors.*");
        assertThat(kept(failed)).isTrue();
    }

    @Test
    void aCommitForWhichThereIsNoRoomIsSurelyNotKept() throws Exception {
        String failed = failing("pwrite64", "ENOSPC");
        assertThat(failed).matches("failed \\d+ false .* is full.*");
        assertThat(kept(failed)).isFalse();
    }
}

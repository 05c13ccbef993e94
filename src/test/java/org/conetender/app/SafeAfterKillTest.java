package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.conetender.adapter.gpio.Lines;
import org.conetender.adapter.gpio.Lines.Line;
import org.conetender.adapter.gpio.SafeOutputs;
import org.conetender.adapter.mqtt.Eventually;
import org.conetender.app.cli.SafeCommand;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** A real daemon is killed after somebody edited its configuration: what is made safe is what it drove. */
class SafeAfterKillTest {

    @TempDir
    Path folder;
    private TestBench bench;
    private String said;

    /** No broker answers there, and none is needed. */
    @BeforeEach
    void begin() throws IOException {
        bench = new TestBench(folder, URI.create("mqtt://127.0.0.1:1"));
    }

    @AfterEach
    void end() {
        bench.close();
    }

    private List<Line> safe() {
        List<Lines> driven = new ArrayList<>();
        StringWriter text = new StringWriter();
        CommandLine line = new CommandLine(new SafeCommand(lines -> {
            driven.add(lines);
            return lines.outputs().stream().map(l -> new SafeOutputs.Outcome(l.id(), true, l.id())).toList();
        })).setOut(new PrintWriter(text, true)).setErr(new PrintWriter(text, true));
        int code = line.execute("--config", bench.config().toString(), "--state", record().toString());
        said = text.toString();
        assertThat(code).as(said).isZero();
        return driven.getFirst().outputs();
    }

    private Path record() {
        return folder.resolve("record");
    }

    private void edit(String from, String to) throws IOException {
        String text = Files.readString(bench.config());
        assertThat(text).contains(from);
        Files.writeString(bench.config(), text.replace(from, to));
    }

    private void lives() throws IOException {
        bench.start();
        // The socket is there before the outputs are held; a held output has been seen to move.
        Eventually.holds("it lives; " + bench.log(), 60,
                () -> Files.exists(record().resolve("driven-lines")) && Files.exists(bench.socket()));
    }

    @Test
    void aHeaterThatAnEditMovedAndAMistakeHidIsFoundWhereItWasDriven() throws IOException {
        lives();
        edit("\n  line = 9\n", "\n  line = 17\n");
        edit("power-limit-w = 60", "power-limit-w = \"sixty\"");
        bench.kill();
        assertThat(safe()).contains(new Line("a.heat", 9, false, Lines.Bias.AS_IS))
                .extracting(Line::offset).doesNotContain(17);
        assertThat(said).contains("lines that the daemon drove").doesNotContain("power-limit-w");

        // Started in vain, as the service manager does: the list of what was driven stands.
        bench.start();
        Eventually.holds("it refuses; " + bench.log(), 60, () -> bench.log().contains("power-limit-w"));
        assertThat(safe()).extracting(Line::offset).contains(9).doesNotContain(17);
    }

    @Test
    void onceTheEditIsGoodAndTakenTheNewLinesAreTheOnesToMakeSafe() throws IOException {
        lives();
        edit("\n  line = 9\n", "\n  line = 17\n");
        bench.kill();
        Files.delete(bench.socket());
        bench.start();
        Eventually.holds("it lives again; " + bench.log(), 60, () -> Files.exists(bench.socket()));
        Eventually.holds("the list follows", 60, () -> safe().stream().anyMatch(l -> l.offset() == 17));
        bench.kill();
        assertThat(safe()).extracting(Line::offset).contains(17).doesNotContain(9);
    }

    @Test
    void withoutAListOfItsLinesItDoesNotStart() throws IOException {
        Files.createDirectory(record().resolve("driven-lines.new")); // stands where the list is written
        bench.start();
        Eventually.holds("it says why; " + bench.log(), 60,
                () -> bench.log().contains("nobody could make them safe after a crash"));
        assertThat(bench.signal("0")).isEqualTo(69);
        assertThat(bench.outputs()).as("nothing was energised").doesNotContainValue("on");
    }
}

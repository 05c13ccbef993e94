package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.conetender.adapter.mqtt.Eventually;
import org.conetender.app.TestBench.Told;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.port.Store;
import org.junit.jupiter.api.Test;

/** A record is copied while the real process writes it, and put back beside it. */
class RestoredDaemonTest extends OnTheBench {

    private String stage(String cone) {
        return tree().getOrDefault(ROOT + "-" + cone + "/hatch/stage", "");
    }

    private void tells(String cone, String step) {
        Told told = bench.command("tell", cone, step);
        assertThat(told.code()).as(told.text()).isZero();
    }

    @Test
    void itIsRefusedWhileTheDaemonRunsAndTheNextLifeBeginsWithWhatWasRestored()
            throws IOException, Store.StoreException {
        Path copy = folder.resolve("larkmoor.zip");
        bench.start();
        bench.shows("the daemon is there", "\"state\":\"ready\".*\"water-c\":.*\"water-c\":.*");
        connect();
        tells("a", "started");
        Told made = bench.command("report", "--backup", copy.toString());
        assertThat(made.text()).startsWith("the record is copied into " + copy);
        assertThat(made.code()).isZero();
        byte[] whole = Files.readAllBytes(copy);
        tells("b", "started");
        tells("a", "abandoned");

        Told refused = bench.command("report", "--restore", copy.toString());
        assertThat(refused.code()).isEqualTo(69);
        assertThat(refused.text()).startsWith("The record: ").contains("is in use by another conetender; "
                + "stop that one first (systemctl stop conetender)");
        assertThat(bench.command("report", "--csv").text()).as("the record is as it was")
                .contains("\r\nb,1,L-0417");
        tells("b", "topped-up");
        assertThat(stage("b")).isEqualTo("hydrating");
        String minute = "(?s).*\"set_c\":27,\"heat\":[0-9.]+,\"cut_out\":[0-9.]+,\"air\":1,.*";
        Eventually.holds("a minute of it is on record", 150, () -> bench.command("report", "--batch", "b/1",
                "--json").text().matches(minute));

        assertThat(bench.signal("TERM")).as(bench.log()).isEqualTo(143);
        Told restored = bench.command("report", "--restore", copy.toString());
        assertThat(restored.code()).as(restored.text()).isZero();
        assertThat(restored.text()).contains("is kept beside it as before-restore-")
                .contains("Unplug the heaters and look at the cones.");
        assertThat(Files.readAllBytes(copy)).as("the copy stays a copy").isEqualTo(whole);

        bench.start();
        Eventually.holds("it is back with the cones as they were; " + bench.log(), 60, () ->
                "ready".equals(tree().get(ROOT + "/$state")) && stage("a").equals("hydrating")
                && stage("b").equals("clean"));
        assertThat(bench.command("report", "--csv").text().lines().skip(1)).as("what is on record now")
                .singleElement().asString().startsWith("a,1,L-0417").contains("in the cone, hydrating");
        assertThat(tree().get(ROOT + "/$alert/record-damaged")).contains("that of a backup, larkmoor.zip",
                "acknowledge 'record-damaged'");
        assertThat(bench.outputs()).as("no heat, though cone a is cold and grows")
                .containsEntry("a.heat", "off");
        assertThat(bench.outputs()).containsEntry("a.cut-out", "off");
        assertThat(bench.command("tell", "a", "acknowledge", "record-damaged").code()).isZero();
        Eventually.holds("the heat is back", 60, () -> "on".equals(bench.outputs().get("a.cut-out")));
        Eventually.holds("and the alarm over", 60, () -> tree().getOrDefault(ROOT + "/$alert/record-damaged",
                "").isEmpty());
        tells("b", "started");
        assertThat(bench.signal("TERM")).as(bench.log()).isEqualTo(143);
        assertThat(bench.facts()).extracting(Fact::change).as("it goes on from there")
                .contains(new Change.Told(new Ask.Did(Step.STARTED)))
                .noneMatch(c -> c.equals(new Change.Told(new Ask.Did(Step.ABANDONED))))
                .endsWith(new Change.Left());
    }
}

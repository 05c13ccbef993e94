package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.conetender.app.report.LarkmoorRecord;
import org.conetender.core.batch.Change;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A separation that came to nothing, as the report tells it. */
class BrokenOffReportTest {

    @TempDir
    Path folder;

    private String report(String... options) throws Exception {
        return Reported.of(folder, options);
    }

    /** Drawn by mistake, or given up: what is drawn afterwards is the harvest, and nothing is assumed. */
    @Test
    void aSeparationThatWasBrokenOffIsNoHarvest() throws Exception {
        for (boolean drawnLater : new boolean[] {true, false}) {
            Path own = Files.createDirectories(folder.resolve("later-" + drawnLater));
            try (LarkmoorRecord r = LarkmoorRecord.in(own)) {
                r.started("a", "L-0417", 2).minutes(120, "a", 27).moved("a", "incubating")
                        .minutes(15 * 60, "a", 27).moved("a", "hatching").minutes(6 * 60, "a", 27)
                        .moved("a", "ready").did("a", Step.SETTLE).minutes(2, "a", 27)
                        .told("a", LarkmoorRecord.did(Step.DRAWING), drawn(345)).minutes(7, "a", 27)
                        .did("a", Step.PART_DRAWN)
                        .told("a", new Change.Told(new Ask.Withdraw("part-drawn")),
                                new Change.Moved("ready", "'part-drawn' was withdrawn; its air is on"))
                        .minutes(14, "a", 27).did("a", Step.SETTLE).minutes(7, "a", 27)
                        .told("a", LarkmoorRecord.did(Step.DRAWING), drawn(350));
                if (drawnLater) {
                    r.did("a", Step.DRAINED);
                } else {
                    r.minutes(3, "a", 27).moved("a", "ready").minutes(2, "a", 27)
                            .told("a", LarkmoorRecord.did(Step.DRAINED), drawn(351));
                }
                r.minutes(20, "a", 21);
            }
            folder = own;
            assertThat(report("--csv")).as("later " + drawnLater)
                    .contains("2026-11-21T17:" + (drawnLater ? "40" : "45"))
                    .doesNotContain("2026-11-21T17:12");
            assertThat(report()).contains("harvested").doesNotContain("assumed");
            assertThat(report("--json")).contains("\"assumed\":[]");
            String page = report("--batch", "a/1");
            assertThat(page).contains("- drawn after " + (drawnLater ? 350 : 351) + " °C·h",
                    "- ready: 'part-drawn' was withdrawn; its air is on")
                    .doesNotContain("after 345 °C·h", "assumed");
            folder = own.getParent();
        }
    }

    /** Separated by mistake long before its hour: that its air came back does not call it ready. */
    @Test
    void airThatComesBackCallsNoBatchReady() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(120, "a", 27).moved("a", "incubating")
                    .minutes(15 * 60, "a", 27).moved("a", "hatching").did("a", Step.SETTLE)
                    .told("a", LarkmoorRecord.did(Step.DRAWING), drawn(255)).moved("a", "ready")
                    .minutes(60, "a", 27);
            assertThat(report("--csv")).contains("2026-11-21T11:10:00+00:00,,,").contains("in the cone");
            r.did("a", Step.SETTLE).did("a", Step.DRAWING).did("a", Step.DRAINED);
        }
        assertThat(report("--csv"))
                .contains("2026-11-21T11:10:00+00:00,,2026-11-21T12:10:00+00:00,").contains("harvested");
    }

    private static Change drawn(double degreeHours) {
        return new Change.Drawn(1, new Lesson.At(degreeHours, degreeHours, degreeHours / 15));
    }
}

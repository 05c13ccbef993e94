package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.conetender.app.report.LarkmoorRecord;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A batch that goes on in its cone, as the report tells it. */
class PartDrawnReportTest {

    @TempDir
    Path folder;

    private String report(String... options) throws Exception {
        return Reported.of(folder, options);
    }

    private String picture() throws Exception {
        Path svg = folder.resolve("a-1.svg");
        report("--batch", "a/1", "--plot", svg.toString());
        return Files.readString(svg);
    }

    /** Begun on Friday at ten past six in the evening, drawn for the first time at ten past six. */
    private static LarkmoorRecord drawnInPart(LarkmoorRecord r) throws Exception {
        return r.started("a", "L-0417", 2).minutes(12 * 60, "a", 29).moved("a", "hatching")
                .did("a", Step.SETTLE).moved("a", "settled").did("a", Step.DRAWING).did("a", Step.PART_DRAWN);
    }

    @Test
    void thePictureGoesOnWithWhatWasLeft() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            drawnInPart(r).minutes(7 * 60, "a", 29);
        }
        assertThat(picture()).contains(">12:00<");
        assertThat(report("--batch", "a/1")).contains(" until the first harvest");
    }

    @Test
    void itEndsWhereTheRestWasDrawn() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            drawnInPart(r).minutes(7 * 60, "a", 29).did("a", Step.SETTLE).moved("a", "settled")
                    .did("a", Step.DRAWING).minutes(7 * 60, "a", 20);
        }
        assertThat(picture()).contains(">12:00<").doesNotContain(">18:00<");
    }

    @Test
    void itEndsWhereTheRestWasPouredAway() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            drawnInPart(r).minutes(7 * 60, "a", 29).did("a", Step.DRAINED).minutes(7 * 60, "a", 20);
        }
        assertThat(picture()).contains(">12:00<").doesNotContain(">18:00<");
    }

    /** One that was drawn as a whole ends with that, however long it stands there yet. */
    @Test
    void whatIsDrawnAtOnceEndsWithThat() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(12 * 60, "a", 29).moved("a", "hatching")
                    .did("a", Step.SETTLE).moved("a", "settled").did("a", Step.DRAWING)
                    .minutes(7 * 60, "a", 20);
        }
        assertThat(picture()).contains(">06:00<").doesNotContain(">12:00<");
        assertThat(report("--batch", "a/1")).contains(" until the harvest");
    }

    /** Nobody can have cleaned a cone that is full. */
    @Test
    void aBatchThatIsStillInWasNotCleanedAfter() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", new int[] {90, 5, 5}).started("a", "L-0417", 2).minutes(60, "a", 27)
                    .started("b", "L-0417", 2);
        }
        assertThat(report("--cleaning")).containsPattern("last cleaned: Sat 2026-11-21 \\d\\d:\\d\\d\n")
                .contains("last disinfected: not once in 1 batch\n", "  a/2: in the cone, hydrating\n",
                        "last cleaned: no batch is over yet\n", "  b/1: in the cone, hydrating\n")
                .doesNotContain("after a/2", "after b/1");
        assertThat(report("--cleaning", "--json")).contains("\"batch\":1,", "\"in-the-cone\":false",
                "\"in-the-cone\":true");
    }
}

package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.conetender.app.Main;
import org.conetender.app.report.LarkmoorRecord;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Minute;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportCommandTest {

    @TempDir
    Path folder;

    private String err = "";

    private String report(int code, String... options) throws Exception {
        List<String> all = new ArrayList<>(List.of("report", "--config",
                LarkmoorRecord.config(folder).toString()));
        all.addAll(List.of(options));
        StringWriter out = new StringWriter();
        StringWriter wrong = new StringWriter();
        int was = Main.commandLine(new RunCommand()).setOut(new PrintWriter(out))
                .setErr(new PrintWriter(wrong)).execute(all.toArray(String[]::new));
        err = wrong.toString();
        assertThat(was).as(out + err).isEqualTo(code);
        return out.toString();
    }

    private static final int[] GOOD = {400, 20, 80};

    @Test
    void batchesAreATableInTheZoneOfTheSiteThatEightyColumnsHold() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", GOOD).batch("a", 2, "a lot with a very long label indeed, 2026", GOOD);
            r.started("b", "L-0417", 1.5).minutes(60, "b", 27)
                    .told("b", new Change.Doubted("it stood without air for 40 minutes, and nobody knows how "
                            + "many of its nauplii have lived through that"));
            String table = report(0);
            // Temperatures are written ten minutes at a time: of b's hour up to nine are not there yet.
            assertThat(table.lines()).allMatch(l -> l.codePointCount(0, l.length()) <= 80)
                    .anyMatch(l -> l.matches("a/1 +L-0417 +2\\.0  11-20 18:10  11-21 11:10  11-21 17:10  "
                            + "11-21 19:10 +37[45]"))
                    .anyMatch(l -> l.strip().equals("lot a lot with a very long label indeed, 2026"))
                    .anyMatch(l -> l.matches("b/1 +L-0417 +1\\.5 .* -  +-  +-  +1[2-5]"))
                    .anyMatch(l -> l.strip().equals("in the cone, hydrating"))
                    .anyMatch(l -> l.strip().startsWith("in doubt: it stood without air"));
        }
    }

    /** Kin are learnt first; what the page says of the batch needs its own lot as well. */
    @Test
    void aPageKnowsWhatTheLotTaughtAlsoWhereItHasKin() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", GOOD).started("b", "L-0418", 2).moved("b", "incubating")
                    .minutes(25 * 60, "b", 27).taught("b", new Ask.DidCount(5, 5, 190, 1),
                    LarkmoorRecord.lesson("L-0418", 1, 375, new Lesson.Sight.Counted(5, 5, 190)));
        }
        String hatched = report(0, "--batch", "b/1").lines().filter(l -> l.startsWith("hatched: about"))
                .findFirst().orElseThrow();
        assertThat(Integer.parseInt(hatched.split("\\s+")[2])).as(hatched).isLessThan(80);
        assertThat(report(0, "--batch", "a/1")).contains("hatched: about 9");
    }

    @Test
    void aConeALotOrADayChooses() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", GOOD).batch("b", 1, "L-0418", GOOD).batch("a", 2, "L-0418", GOOD);
        }
        assertThat(report(0, "--csv", "--cone", "a").lines().skip(1)).hasSize(2);
        assertThat(report(0, "--csv", "--lot", "L-0418").lines().skip(1)).hasSize(2);
        assertThat(report(0, "--csv", "--since", "2026-11-22", "--cone", "a").lines().skip(1)).hasSize(1)
                .allMatch(l -> l.startsWith("a,2,L-0418,2.0,2.0,25.0,2026-11-22T"));
        assertThat(report(2, "--since", "yesterday")).isEmpty();
        assertThat(err).contains("--since yesterday is no day");
        assertThat(report(2, "--cone", "z")).isEmpty();
        assertThat(err).contains("--cone z is no cone of this site");
        assertThat(report(2, "--csv", "--json")).isEmpty();
    }

    /** The everyday slip: the wrong cone is called started, and that is taken back. */
    @Test
    void aBatchThatWasBegunByMistakeAndTakenBackLeavesTheOneBeforeWhole() throws Exception {
        String whole;
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", GOOD);
            whole = report(0, "--csv");
            assertThat(whole).contains("a,1,L-0417,2.0");
            r.started("a", "L-0418", 2).minutes(5, "a", 27)
                    .told("a", new Change.Told(new Ask.Withdraw("last")));
            assertThat(report(0, "--csv")).isEqualTo(whole);
            r.started("a", "L-0418", 2).minutes(15, "a", 27);
        }
        assertThat(report(0, "--csv").lines().filter(l -> l.startsWith("a,1,")).toList())
                .isEqualTo(whole.lines().filter(l -> l.startsWith("a,1,")).toList());
        assertThat(report(0, "--batch", "a/1")).contains("- hatching").contains("cleaned");
        assertThat(report(0, "--json")).contains("L-0418");
        assertThat(report(0, "--csv", "--cone", "a").lines().skip(1)).hasSize(2);
    }

    @Test
    void whatWasWithdrawnWasNeverThereAndWhatWasAssumedSaysSo() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(5, "a", 27)
                    .told("a", new Change.Told(new Ask.Withdraw("last"))).started("a", "L-0418", 3)
                    .minutes(120, "a", 27).moved("a", "incubating").minutes(600, "a", 27)
                    .did("a", Step.FIRST_SEEN).minutes(400, "a", 27).moved("a", "ready").minutes(60, "a", 27)
                    .did("a", Step.CLEANED);
        }
        String csv = report(0, "--csv");
        assertThat(csv.lines().skip(1)).hasSize(1).allMatch(l -> l.startsWith("a,1,L-0418,3.0")
                && l.endsWith("harvested,,settle; drawing; drained,,"));
        assertThat(csv).contains("\r\n");
        assertThat(report(0)).contains("harvested; assumed from later reports: settle, drawing, drained");
        assertThat(report(0, "--json")).startsWith("{\"batches\":[{\"cone\":\"a\",\"batch\":1,")
                .contains("\"assumed\":[\"settle\",\"drawing\",\"drained\"]");
    }

    /** Ten minutes without power, after which the hour is known; then a boot whose clock is never set. */
    @Test
    void acrossACutItIsToldHowMuchIsKnown() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(120, "a", 27).cut(60, true).minutes(120, "a", 25)
                    .did("a", Step.ABANDONED).did("a", Step.CLEANED);
            r.started("a", "L-0417", 2).minutes(60, "a", 27).cut(600, false).minutes(60, "a", 27)
                    .did("a", Step.DRAINED);
        }
        String table = report(0);
        assertThat(table).containsPattern("a/1 .* 6[5-9]\n +given up")
                .containsPattern("a/2 .* ≥(29|30|31)\n +emptied without a harvest");
        assertThat(report(0, "--json").split("\"degree_hours_most\"")).as("only where it is known")
                .hasSize(2);
        assertThat(report(0, "--batch", "a/1")).contains("- nobody minded the cones for about 60 min")
                .doesNotContain("≥", "too early");
        assertThat(report(0, "--batch", "a/2").replaceAll("\\s+", " "))
                .contains("or longer: no clock tells how long", " ≥", "hatched: at least about",
                        "hours after it are too early by as much");
    }

    private Map<String, FileTime> files() throws Exception {
        Map<String, FileTime> all = new TreeMap<>();
        try (var files = Files.list(folder)) {
            for (Path f : files.toList()) {
                if (!f.toString().endsWith(".toml")) {
                    all.put(f.getFileName().toString() + " " + Files.size(f), Files.getLastModifiedTime(f));
                }
            }
        }
        return all;
    }

    @Test
    void itNeitherMakesNorLiftsNorChangesARecord() throws Exception {
        assertThat(report(69)).isEmpty();
        assertThat(err).contains("there is no record").doesNotContain("Exception");
        assertThat(files()).isEmpty();
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(5, "a", 27);
            Map<String, FileTime> before = files();
            report(0);
            before.keySet().removeIf(f -> f.contains("-shm"));
            assertThat(files()).containsAllEntriesOf(before);
        }
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("conetender.db"));
                Statement s = db.createStatement()) {
            s.execute("PRAGMA user_version = 99");
        }
        assertThat(report(69)).isEmpty();
        assertThat(err).contains("was written by a newer conetender (record version 99");
    }

    @Test
    void aCopyIsMadeWhileTheDaemonHasTheRecordAndPutBackWhenItHasNot() throws Exception {
        Path copy = folder.resolve("copy.zip");
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(5, "a", 27);
            assertThat(report(0, "--backup", copy.toString())).contains("the record is copied into " + copy);
            assertThat(report(69, "--backup", copy.toString())).isEmpty();
            assertThat(err).contains("exists already");
            assertThat(report(69, "--restore", copy.toString())).isEmpty();
            assertThat(err).contains("stop that one first");
            r.did("a", Step.ABANDONED);
        }
        assertThat(report(0)).contains("given up");
        assertThat(report(2, "--restore", copy.toString(), "--csv")).isEmpty();
        assertThat(report(0, "--restore", copy.toString()))
                .startsWith("The record is restored from " + copy + ". What was there before is kept "
                        + "beside it as before-restore-2")
                .contains("\n1. Unplug the heaters and look at the cones.\n",
                        "\n4. Plug in again the heaters that water covers.\n5. Acknowledge, which allows "
                                + "heat again: conetender tell site acknowledge record-damaged\n");
        assertThat(report(0)).contains("in the cone, hydrating");
    }

    @Test
    void aLotHasItsCard() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", new int[] {400, 20, 80}).cut(20_000, true)
                    .batch("a", 2, "L-0417", new int[] {350, 0, 150}).cut(20_000, true)
                    .batch("a", 3, "L-0417", new int[] {300, 0, 200}).batch("a", 4, "L-0500", GOOD);
        }
        String card = report(0, "--lot", "L-0417");
        assertThat(card).contains("3 batches, 6.0 g used; first opened for a/1 on 2026-11-20")
                .contains("learnt from 3 batches").containsPattern("K50 +\\d{3} °C·h")
                // 400 in a millilitre of two litres with two grams; the root of 400 is 20.
                .contains("counted in a/1 at 375 °C·h: H% 80 ± 2, HE 400,000 ± 20,000 nauplii/g")
                .contains("H% 60 ± 2").containsPattern("H% changes by -\\d+\\.\\d points a month")
                .contains("K50 changes by").contains("batch   lot").doesNotContain("L-0500");
        assertThat(card.lines()).allMatch(l -> l.codePointCount(0, l.length()) <= 80);
        assertThat(report(0, "--lot", "L-0417", "--json"))
                .contains("\"grams_used\":6,\"batches_seen\":3,\"k10\":[")
                .contains("\"h_percent\":70").contains("\"batches\":[{");
        assertThat(report(2, "--lot", "L-9")).isEmpty();
        assertThat(err).contains("No batch of lot L-9");
    }

    /** As it lies in the sieve; several weighings of a batch are of several sieves. */
    @Test
    void whatWasWeighedStandsWithItsBatchAndItsLot() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", GOOD).told("a", weighed(6)).told("a", weighed(4)).cut(20_000, true)
                    .batch("a", 2, "L-0417", GOOD).told("a", weighed(9)).told("a", weighed(90))
                    .told("a", new Change.Told(new Ask.Withdraw("weighed"))).cut(20_000, true)
                    .batch("a", 3, "L-0417", GOOD).told("a", weighed(8)).batch("a", 4, "L-0417", GOOD);
        }
        assertThat(report(0).lines()).anyMatch(l -> l.strip()
                .equals("harvested; 10.0 g wet, 5.0 g of each gram"))
                .allMatch(l -> l.codePointCount(0, l.length()) <= 80);
        assertThat(report(0, "--batch", "a/1")).contains("weighed: 6.0 g wet")
                .contains("yield: 10.0 g wet, 5.0 g of each gram of cysts");
        assertThat(report(0, "--batch", "a/4")).doesNotContain("yield");
        assertThat(report(0, "--lot", "L-0417"))
                .contains("weighed after 3 batches: 4.5 g wet of each gram of cysts (4.0 to 5.0)")
                .containsPattern("yield changes by -1\\.\\d\\d g/g a month \\(± \\d\\.");
        assertThat(report(0, "--csv").lines().toList().get(1)).endsWith(",10.0,5.0");
        assertThat(report(0, "--lot", "L-0417", "--json")).contains("\"wet_g_per_g\":[5,4.5,4]",
                "\"wet_g_per_g_per_month\":[-1,");
    }

    /** What was only weighed is told in nauplii by what was counted beside it; what is taken back is not. */
    @Test
    void aCountTellsHowManyNaupliiItsLotsWeightsAre() throws Exception {
        int[] none = {0, 0, 0};
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", none).told("a", weighed(10)).cut(20_000, true)
                    .batch("a", 2, "L-0417", none).told("a", weighed(5));
        }
        assertThat(report(0, "--lot", "L-0417")).contains("how many nauplii that is, no weight tells: "
                + "nobody has published what one weighs\n").doesNotContain("HE ");
        assertThat(report(0, "--lot", "L-0417", "--json")).doesNotContain("he_per_g");
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.cut(20_000, true).batch("a", 3, "L-0417", new int[] {250, 10, 90}).told("a", weighed(10));
        }
        String card = report(0, "--lot", "L-0417");
        // 10 g of two grams of cysts; 250 in a millilitre of two litres with two grams are 250,000 a gram.
        assertThat(card)
                .containsPattern("with its counts: HE 23\\d,000 nauplii/g, in 8 of 10 batches 19\\d,")
                .containsPattern("one weighs 1\\d µg wet, out of the sieve; 1\\d to 2\\d in 8 of 10 cases")
                .containsPattern("by its weight a/1: HE 2[45]\\d,000 \\(2\\d\\d,000 to 30")
                .containsPattern("by its weight a/2: HE 2[01]\\d,000 \\(1")
                .doesNotContain("by its weight a/3", "no weight tells");
        assertThat(card.lines()).allMatch(l -> l.codePointCount(0, l.length()) <= 80);
        assertThat(report(0, "--lot", "L-0417", "--json")).contains("\"he_per_g\":[1",
                "\"wet_ug_per_nauplius\":[1", "\"he_per_g_by_weight\":[{");
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.told("a", new Change.Told(new Ask.Withdraw("weighed"))).told("a", weighed(5));
        }
        assertThat(report(0, "--lot", "L-0417")).as("then one weighs half as much, and so a/1 were more")
                .containsPattern("one weighs 1\\d µg").containsPattern("by its weight a/1: HE 3\\d\\d,000");
    }

    /** A slip that was told too late to be taken back. */
    @Test
    void aWeightThatNoCystsCanGiveIsNamedAndLeftOutOfItsLotsCard() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", GOOD).told("a", weighed(950)).cut(20_000, true)
                    .batch("a", 2, "L-0417", GOOD).told("a", weighed(9)).batch("a", 3, "L-0417", GOOD);
        }
        assertThat(report(0, "--lot", "L-0417"))
                .contains("weighed once: 4.5 g wet of each gram of cysts\n", "  left out: the weight of a/1, "
                        + "475.0 g of each gram, which no cysts give\n").doesNotContain("yield changes");
        assertThat(report(0, "--lot", "L-0417", "--json"))
                .contains("\"wet_g_per_g\":[4.5]", "\"weights_left_out\":[\"a/1\"]");
    }

    private static Change weighed(double wetG) {
        return new Change.Told(new Ask.DidWeigh(wetG));
    }

    private static Change left(String lot, double g) {
        return new Change.Told(new Ask.TinHolds(lot, g));
    }

    /** From the last time somebody looked into the tin; what was withdrawn took nothing out of it. */
    @Test
    void theCardTellsWhatIsLeftOfALot() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", GOOD).told("", left("L-0417", 500)).told("", left("L-0500", 3))
                    .batch("a", 2, "L-0417", GOOD).told("", left("L-0417", 425))
                    .batch("a", 3, "L-0417", GOOD).started("b", "L-0417", 1.5).started("c", "L-0417", 30)
                    .told("c", new Change.Told(new Ask.Withdraw("last"))).started("c", "L-0500", 4);
        }
        assertThat(report(0, "--lot", "L-0417").lines()).anyMatch(l -> l.matches(
                "  421\\.5 g left \\(425\\.0 g told on 2026-11-2\\d, 3\\.5 g stocked since\\)"));
        assertThat(report(0, "--lot", "L-0417", "--json")).contains("\"grams_left\":421.5");
        assertThat(report(0, "--lot", "L-0417", "--cone", "b")).as("of all cones").contains("421.5 g left");
        assertThat(report(0, "--lot", "L-0500")).contains("3.0 g told on", "but 4.0 g stocked since: look");
    }

    @Test
    void aTinThatIsStillShutHasItsCardToo() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.told("", left("L-0417", 500)).batch("a", 1, "L-0500", GOOD);
        }
        assertThat(report(0, "--lot", "L-0417")).contains("no batch yet", "500.0 g left");
        assertThat(report(0, "--lot", "L-0417", "--json")).contains("\"grams_left\":500");
        assertThat(report(0, "--lot", "L-0500")).doesNotContain(" left (");
    }

    @Test
    void theCleaningOfEachConeIsKept() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.batch("a", 1, "L-0417", GOOD).did("a", Step.DISINFECTED).batch("a", 2, "L-0417", GOOD);
            r.started("b", "L-0417", 2).minutes(60, "b", 27).did("b", Step.DRAINED).minutes(5, "b", 20)
                    .started("b", "L-0417", 2);
        }
        String text = report(0, "--cleaning");
        assertThat(text).containsPattern("last cleaned: Sun 2026-11-22 \\d\\d:\\d\\d\n")
                .containsPattern("last disinfected: Sat 2026-11-21 \\d\\d:\\d\\d, 1 batch since")
                .contains("last disinfected: not once in 1 batch\n")
                .contains("after b/1: cleaned as the next batch implies")
                .contains("  b/2: in the cone, hydrating\n");
        assertThat(report(2, "--cleaning", "--lot", "L-0417")).as("a lot was not cleaned").isEmpty();
        assertThat(report(0, "--cleaning", "--cone", "b", "--json"))
                .startsWith("{\"cleaning\":[{\"cone\":\"b\"")
                .contains("\"assumed-cleaned\":true");
    }

    @Test
    void aBatchIsAPageWithItsPicture() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(60, "a", 24)
                    .told("a", new Change.Told(new Ask.SetSetpoint(28))).minutes(60, "a", 26)
                    .moved("a", "incubating").minutes(600, "a", 28)
                    .told("a", new Change.Tripped("stuck-heater", "the water warms by itself"),
                            new Change.Doubted("it stood without air for 40 minutes"))
                    .minutes(300, "a", 28.5).moved("a", "hatching").minutes(300, "a", 28).cut(90, true)
                    .minutes(120, "a", 26).moved("a", "ready").minutes(120, "a", 28).did("a", Step.SETTLE)
                    .minutes(20, "a", 28).moved("a", "settled").did("a", Step.DRAWING).did("a", Step.DRAINED)
                    .did("a", Step.CLEANED).started("a", "L-0418", 2);
        }
        Path png = folder.resolve("a-1.png");
        String page = report(0, "--batch", "a/1", "--plot", png.toString());
        assertThat(page.lines()).allMatch(l -> l.codePointCount(0, l.length()) <= 80);
        assertThat(page).startsWith("batch a/1, lot L-0417, 2.0 g in 2.0 L at 25 g/kg; harvested")
                .contains("Fri 2026-11-20 18:10  stocked: 2.0 g of lot L-0417")
                .contains("ALARM stuck-heater: the water warms by itself").contains("set-point 28.0 °C")
                .containsPattern("incubating +15\\.0 +2[78]\\.\\d +28\\.[12] +28\\.[56]")
                .containsPattern("\\d{3} °C·h \\(\\d{3} to \\d{3}\\) until the harvest")
                .contains("hatched: about").doesNotContain("L-0418");
        assertThat(javax.imageio.ImageIO.read(png.toFile()).getWidth()).isGreaterThan(700);
        Path svg = folder.resolve("a-1.svg");
        report(0, "--batch", "a/1", "--plot", svg.toString(), "--json");
        assertThat(Files.readString(svg)).contains("stuck-heater").contains("incubating")
                .contains("set 28.0");
        assertThat(Files.readString(svg)).contains("what was switched is not on record");
        risesBelow(">Degree-hours above 12 °C, °C·h<", "#00664a", Files.readString(svg));
        risesBelow(">Hatched, % of what hatches<", "#b34700", Files.readString(svg));
        assertThat(report(2, "--batch", "a/9")).isEmpty();
        assertThat(report(2, "--plot", svg.toString())).isEmpty();
    }

    private static Optional<Minute.Outputs> outputs(String cone, double heat, double air, double setC) {
        return Optional.of(new Minute.Outputs(cone, heat, 1, air, 1 - air, setC > 0 ? OptionalDouble.of(setC)
                : OptionalDouble.empty()));
    }

    /** A batch with what was switched, a set-point that moves for an hour, and alarms of all fates. */
    private void switchedBatch() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.turned("b", "dry", Minute.Turn.RAISED, "the level of another cone is low");
            r.started("a", "L-0417", 2).switching(c -> outputs(c, 1, 1, 27)).minutes(60, "a", 24)
                    .switching(c -> outputs(c, 0.4, 1, 27)).minutes(60, "a", 27).moved("a", "incubating")
                    .turned("a", "one-probe", Minute.Turn.RAISED, "one of two probes is silent")
                    .minutes(25, "a", 27)
                    .turned("a", "one-probe", Minute.Turn.SEEN, "").minutes(95, "a", 27)
                    .turned("a", "one-probe", Minute.Turn.OVER, "")
                    .told("a", new Change.Told(new Ask.SetSetpoint(28)))
                    .switching(c -> outputs(c, 0.5, 1, 28)).minutes(600, "a", 28)
                    .turned("", "history", Minute.Turn.RAISED, "the disk is nearly full").minutes(30, "a", 28)
                    .told("a", new Change.Tripped("stuck-heater", "the water warms by itself"))
                    .turned("a", "welded", Minute.Turn.RAISED, "the water warms by itself")
                    .minutes(200, "a", 28).cut(15, true).switching(c -> outputs(c, 0.45, 1, 28))
                    .minutes(30, "a", 27)
                    .moved("a", "hatching").minutes(420, "a", 28).moved("a", "ready")
                    .switching(c -> outputs(c, 0, 1, 20)).minutes(60, "a", 26).did("a", Step.SETTLE)
                    .switching(c -> outputs(c, 0, 0, 0)).minutes(7, "a", 25).moved("a", "settled")
                    .did("a", Step.DRAWING).minutes(3, "a", 25).switching(c -> outputs(c, 0, 1, 0))
                    .did("a", Step.DRAINED).did("a", Step.CLEANED).minutes(20, "a", 22)
                    .turned("a", "dry", Minute.Turn.RAISED, "it is dry").minutes(15, "a", 21);
        }
    }

    @Test
    void aPageTellsWhatWasSwitchedAndHowLongAlarmsStood() throws Exception {
        switchedBatch();
        String page = report(0, "--batch", "a/1");
        assertThat(page.lines()).allMatch(l -> l.codePointCount(0, l.length()) <= 80);
        assertThat(page.replaceAll("\\s+", " ")).contains(
                "ALARM one-probe: one of two probes is silent; stood 2 h 00 min, acknowledged after 25 min",
                "ALARM history: the disk is nearly full; stood until conetender was started anew, or less",
                "ALARM welded: the water warms by itself; stood until", "ALARM dry: it is dry; stands")
                .doesNotContain("another cone").doesNotContain("ALARM stuck-heater");
        assertThat(page).containsPattern("hydrating +2\\.0 .* 27\\.0 +(69|70|71) +100 +0\n")
                .containsPattern("incubating .* 27\\.9 +4[89] +100 +0\n")
                .containsPattern("settling +0\\.1 .* - +0 +0 +100\n");
    }

    /** Who answers each repeat of an alarm is listed once; of the next alarm again. */
    @Test
    void anAlarmThatIsAcknowledgedAtEachRepeatIsListedOnce() throws Exception {
        Change seen = new Change.Told(new Ask.Acknowledge("late"));
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(60, "a", 27)
                    .turned("a", "late", Minute.Turn.RAISED, "nobody came").minutes(20, "a", 27)
                    .told("a", seen).minutes(60, "a", 27).told("a", seen).minutes(60, "a", 27)
                    .told("a", seen).turned("a", "late", Minute.Turn.OVER, "").minutes(60, "a", 27)
                    .turned("a", "late", Minute.Turn.RAISED, "nobody came").minutes(20, "a", 27)
                    .told("a", seen).did("a", Step.DRAINED).did("a", Step.CLEANED);
        }
        String page = report(0, "--batch", "a/1");
        assertThat(page.split("acknowledged: late", -1)).hasSize(3);
    }

    /** No share of a hundred is more than all of them. */
    @Test
    void theErrorOfAHatchingPercentageEndsAtAll() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(60, "a", 27).told("a", new Change.Told(
                    new Ask.DidCount(98, 0, 1, 1))).did("a", Step.DRAINED).did("a", Step.CLEANED);
        }
        assertThat(report(0, "--lot", "L-0417")).containsPattern("H% 99 \\(9[78] to 100\\), HE");
    }

    @Test
    void programsAreToldTheSame() throws Exception {
        switchedBatch();
        String json = report(0, "--batch", "a/1", "--json");
        assertThat(json).contains("\"stage\":\"settling\"")
                .contains("\"heat\":0,\"cut_out\":1,\"air\":0,\"lamp\":1")
                .contains("\"set_c\":27,").contains("{\"cone\":\"a\",\"alarm\":\"one-probe\"")
                .contains("\"stood_minutes\":120,\"stands\":false").contains("\"what\":\"it is dry\"")
                .contains("\"stands\":true");
        assertThat(report(0, "--csv").lines().findFirst().orElseThrow())
                .contains("degree_hours_most,heat_hours,alarms,ended");
        assertThat(report(0, "--csv").lines().skip(1)).singleElement().asString()
                .containsPattern(",12\\.5,4,harvested,");
    }

    @Test
    void aPictureShowsIt() throws Exception {
        switchedBatch();
        Path svg = folder.resolve("a-1.svg");
        report(0, "--batch", "a/1", "--plot", svg.toString());
        assertThat(Files.readString(svg)).contains(">heat<", ">air<", ">lamp<", ">set 27.0<", ">set 28.0<",
                ">one-probe<", ">welded<").doesNotContain("not on record");
        Path png = folder.resolve("a-1.png");
        report(0, "--batch", "a/1", "--plot", png.toString());
        assertThat(javax.imageio.ImageIO.read(png.toFile()).getWidth()).isGreaterThan(700);
    }

    /** Below that heading the first whole line of that colour begins low in its panel and climbs. */
    private static void risesBelow(String heading, String colour, String svg) {
        assertThat(svg).contains(heading);
        String panel = svg.substring(svg.indexOf(heading));
        var line = Pattern.compile("<polyline fill=\"none\" stroke=\"" + colour
                + "\" stroke-width=\"[\\d.]+\" [^>]*points=\"([^\"]+)\"").matcher(panel);
        assertThat(line.find()).as(heading).isTrue();
        double[] y = Arrays.stream(line.group(1).split(" "))
                .mapToDouble(p -> Double.parseDouble(p.split(",")[1])).toArray();
        for (int i = 1; i < y.length; i++) {
            assertThat(y[i]).as(heading + " point " + i).isLessThanOrEqualTo(y[i - 1]);
        }
        assertThat(y[0] - y[y.length - 1]).as(heading + " climbs by").isGreaterThan(80);
    }

    private String picture() throws Exception {
        Path svg = folder.resolve("a-1.svg");
        report(0, "--batch", "a/1", "--plot", svg.toString());
        return Files.readString(svg);
    }

    @Test
    void aCutThatNobodyCanMeasureTearsThePictureAndItsAxis() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(300, "a", 27).cut(400, false).minutes(300, "a", 26)
                    .did("a", Step.SETTLE);
        }
        assertThat(picture()).contains(">cut, length unknown<", ">2<", ">8<",
                "hours since the start, as no clock was set; without cuts").doesNotContain(
                ">18:00<", "1 Jan", "time in");
    }

    @Test
    void withoutAnyClockThePictureCountsHours() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.cut(1, false).started("a", "L-0417", 2).minutes(300, "a", 27).did("a", Step.SETTLE);
        }
        assertThat(picture()).contains(">0<", ">4<", "hours since the start, as no clock was set")
                .doesNotContain("1 Jan", "length unknown", "without cuts");
    }

    /** A cut between two clocks is as long as it was, and seen as a gap. */
    @Test
    void aCutThatIsKnownIsNoTear() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.started("a", "L-0417", 2).minutes(300, "a", 27).cut(400, true).minutes(300, "a", 26)
                    .did("a", Step.SETTLE);
        }
        assertThat(picture()).contains("no reading", "time in").doesNotContain("length unknown");
    }

    /** The clock is set in a later boot only: the hours before it are not those of 1970. */
    @Test
    void whatLiesBeforeTheFirstClockIsDrawnNextToIt() throws Exception {
        try (LarkmoorRecord r = LarkmoorRecord.in(folder)) {
            r.cut(1, false).started("a", "L-0417", 2).minutes(300, "a", 27).cut(400, true)
                    .minutes(300, "a", 26).did("a", Step.SETTLE);
        }
        assertThat(picture()).contains(">cut, length unknown<", ">0<", ">15<").doesNotContain("1 Jan",
                ">18<");
    }
}

package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

class ForecastCommandTest {

    @TempDir
    private Path dir;

    private Path log;
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    /** Ten hours at 26 °C from 19:00: 140 degree-hours. */
    @BeforeEach
    void writeLog() throws IOException {
        log = write(60, 26);
    }

    private Path write(int tenMinutes, double waterC) throws IOException {
        StringBuilder text = new StringBuilder();
        LocalDateTime at = LocalDateTime.of(2026, 3, 1, 19, 0);
        for (int i = 0; i <= tenMinutes; i++) {
            text.append(at.plusMinutes(10L * i)).append(',').append(waterC).append('\n');
        }
        return Files.writeString(dir.resolve("cone-a.csv"), text);
    }

    private CommandLine command() {
        return new CommandLine(new ForecastCommand()).setOut(new PrintWriter(out));
    }

    private int run(String... args) {
        List<String> all = new ArrayList<>(List.of("--log", log.toString()));
        all.addAll(List.of(args));
        return command().setErr(new PrintWriter(err)).execute(all.toArray(String[]::new));
    }

    private JsonNode byRate(String form) throws IOException {
        out.getBuffer().setLength(0);
        assertThat(run("--zone", "UTC", "--json", "--rate", form)).as(err.toString()).isZero();
        return new ObjectMapper().readTree(out.toString());
    }

    @Test
    void theOtherRatesAgreeAtTheirAnchorAndDifferElsewhere() throws IOException {
        log = write(60, 24);
        for (String form : List.of("base", "briere", "enzyme")) {
            JsonNode a = byRate(form);
            assertThat(a.get("degree-hours").asDouble()).as(form).isCloseTo(120, within(0.01));
            assertThat(a.get("rate").asText()).isEqualTo(form);
        }
        log = write(60, 19);
        double usual = byRate("base").get("degree-hours").asDouble();
        assertThat(usual).isCloseTo(70, within(0.01));
        // Briere's from 9.07 to 33 °C: 12·(19·9.93·√14)/(24·14.93·√9) an hour.
        assertThat(byRate("briere").get("degree-hours").asDouble()).isCloseTo(78.8, within(0.1));
        assertThat(byRate("enzyme").get("degree-hours").asDouble()).isBetween(50.0, 90.0);
    }

    @Test
    void anotherRateIsNamedAndGoesNeitherWithReportsNorWithThePicture() {
        assertThat(run("--zone", "UTC", "--rate", "briere")).isZero();
        assertThat(out.toString()).contains("reckoned by the rate \"briere\"").doesNotContain("less 12");
        assertThat(run("--zone", "UTC", "--rate", "briere", "--none-yet", "2026-03-02 01:00")).isEqualTo(2);
        assertThat(err.toString()).contains("a lot is learnt by the usual rate");
        assertThat(run("--zone", "UTC", "--rate", "enzyme", "--plot", dir.resolve("a.svg").toString()))
                .isEqualTo(2);
        assertThat(err.toString()).contains("--plot draws by the usual rate alone");
        assertThat(run("--zone", "UTC", "--rate", "logan")).isEqualTo(2);
    }

    /** Only the usual rate leaves its threshold in doubt, so only it may say that this widens anything. */
    @Test
    void onlyTheUsualRateSaysThatTheIntervalIsWiderInTheCold() throws IOException {
        log = write(60, 17);
        assertThat(run("--zone", "UTC")).isZero();
        assertThat(words()).contains("where little is published: the interval is wider");
        for (String form : List.of("briere", "enzyme")) {
            out.getBuffer().setLength(0);
            assertThat(run("--zone", "UTC", "--rate", form)).isZero();
            assertThat(words()).as(form).contains("where little is published").doesNotContain("is wider");
        }
    }

    private String words() {
        return out.toString().replaceAll("\\s+", " ");
    }

    @Test
    void theAnswerStandsWithTheTableItCanBeCheckedBy() {
        assertThat(run("--zone", "Europe/London", "--hours")).isZero();
        assertThat(out.toString())
                .contains("61 readings from 2026-03-01 19:00 to 2026-03-02 05:00 (Europe/London)")
                .contains("   1  2026-03-01 20:00    26.00  26.00  26.00   14.00   14.0")
                .contains("  10  2026-03-02 05:00    26.00  26.00  26.00   14.00  140.0")
                // The later quartile of such lots, 399.4, and a little for what the probe may err
                .containsPattern("140.0 done of (399\\.[4-9]|400\\.\\d) needed")
                // (399.4 − 140) / 14 = 18.53 h after 05:00, and a little
                .contains("ready at 2026-03-02 23:3").contains("\n  8 in 10 such batches between ")
                // Half of such lots: (345.7 − 140) / 14 = 14.69 h after 05:00
                .contains("late on purpose")
                // 271 · e^(0.19 · −2.3263) is 174.2, and (174.2 − 140) / 14 = 2.44 h after 05:00
                .containsPattern("T0, first nauplii +2026-03-02 07:26 +174.2 +1 %\n")
                .containsPattern("T50, half hatched +2026-03-02 14:21 +271.0 +50 %\n")
                .containsPattern("T90, nine tenths +2026-03-02 19:41 +345.7 +90 %\n")
                // The middle of such batches: 1.2816 · 0.19 · 271 and some food is hatched later than T90.
                .containsPattern("most food in the cone +2026-03-02 22:\\d\\d +\\d+\\.\\d +97 %")
                .contains("stay at 26.0 °C");
        assertThat(err.toString()).isEmpty();
    }

    /** Eighty columns, and of the hours only those with something to do; in their order. */
    @Test
    void thoseHoursAreToldThatMatterAndTheOthersOnlyWhenAskedFor() throws IOException {
        log = write(200, 24);
        for (String lot : List.of("8", "12")) {
            out.getBuffer().setLength(0);
            assertThat(run("--zone", "America/Argentina/Buenos_Aires", "--synchrony", lot)).isZero();
            assertThat(out.toString().lines()).hasSizeLessThan(28).allMatch(l -> l.length() <= 80);
            assertThat(out.toString().lines().filter(l -> l.matches("[a-zA-Z0-9].* +2026-\\d\\d-\\d\\d "
                    + "\\d\\d:\\d\\d +\\d+\\.\\d +\\d+ %")).map(l -> l.substring(26, 42))).isSorted()
                    .hasSize(lot.equals("8") ? 9 : 11);
            assertThat(out.toString()).contains("last reading").doesNotContain("by hand");
        }
        assertThat(out.toString()).contains("first harvest", "second harvest");
        run("--zone", "UTC", "--hours");
        assertThat(out.toString()).contains("  33  2026-03-03 04:00", "by hand");
    }

    @Test
    void aLotWhoseSpeedIsToldIsAnsweredMoreNarrowlyAndWithoutDelay() {
        run("--zone", "UTC", "--lot-speed", "250");
        assertThat(out.toString()).contains("140.0 done of 318.9 needed").contains("as told")
                .doesNotContain("late on purpose");
    }

    @Test
    void jsonSaysTheSameToAProgram() throws IOException {
        assertThat(run("--zone", "UTC", "--json")).isZero();
        JsonNode json = new ObjectMapper().readTree(out.toString());
        assertThat(json.get("degree-hours").asDouble()).isEqualTo(140);
        assertThat(json.get("degree-hours-needed").asDouble()).isBetween(399.4, 401.0);
        assertThat(json.get("ready-median").asText()).startsWith("2026-03-02T19:41:");
        assertThat(json.get("ready-at").asText()).startsWith("2026-03-02T23:3");
        assertThat(json.get("ready-from").asText()).isLessThan(json.get("ready-at").asText());
        assertThat(json.get("ready-until").asText()).isGreaterThan(json.get("ready-at").asText());
        assertThat(json.get("t0").asText()).startsWith("2026-03-02T07:26:");
        assertThat(json.get("t50").asText()).startsWith("2026-03-02T14:21:");
        assertThat(json.get("t90").asText()).isEqualTo(json.get("ready-median").asText());
        assertThat(json.get("food-from").asText()).isLessThan(json.get("food-most-at").asText());
        assertThat(json.get("food-until").asText()).isGreaterThan(json.get("food-most-at").asText());
        assertThat(json.get("harvest-twice")).isEmpty();
        assertThat(List.of(json.get("ready-from").asText(), json.get("ready-half-from").asText(),
                json.get("ready-median").asText(), json.get("ready-half-until").asText(),
                json.get("ready-until").asText())).isSorted();
        assertThat(json.get("held-at-c").asDouble()).isEqualTo(26);
        assertThat(json.get("repeats-last-day").asBoolean()).isFalse();
        assertThat(json.get("hours")).hasSize(10);
        assertThat(json.get("hours").get(0).get("gained").asDouble()).isEqualTo(14);
    }

    @Test
    void stockingLaterLeavesTheEarlierHoursOut() {
        assertThat(run("--zone", "UTC", "--stocked", "2026-03-02T01:00Z")).isZero();
        assertThat(out.toString()).contains("cysts stocked 2026-03-02 01:00").contains("56.0 done of");
    }

    @Test
    void whereNothingDevelopsThereIsNoReadyTimeButAReason() throws IOException {
        log = write(60, 34);
        assertThat(run("--zone", "UTC")).isZero();
        assertThat(out.toString()).contains("stands still: the water is heading for 34.0 °C")
                .contains("10.0 h too warm").doesNotContain("ready at");
        out.getBuffer().setLength(0);
        run("--zone", "UTC", "--json");
        assertThat(new ObjectMapper().readTree(out.toString()).get("ready-at").isNull()).isTrue();
    }

    @Test
    void aHatchThatIsOverSaysSinceWhen() throws IOException {
        log = write(200, 27);
        assertThat(run("--zone", "UTC")).isZero();
        assertThat(out.toString()).contains("ready since about 2026-03-02 21:3");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "--zone UTC --stocked 2026-03-09T01:00Z | after the last reading",
        "--zone UTC --stocked 2026-02-09T01:00Z | more than 48 h before",
        "--zone UTC --stocked soon | --stocked \"soon\" is not a time",
        "--zone UTC --lot-speed 27 | is no K50",
        "--zone UTC --first-seen 2026-03-09T01:00Z | 2026-03-09T01:00Z is after the last reading",
        "--zone UTC --none-yet 2026-03-01T19:00Z | is before the cysts can have begun",
        "--zone UTC --first-seen 2026-03-02T01:00Z --none-yet 2026-03-02T02:00Z | lies after --first-seen",
        "--zone UTC --count 12/3/4 | is no count; write it like",
        "--zone UTC --verdict 2026-03-02T01:00Z=good | is none; write it like",
        "--zone UTC --verdict 2026-03-09T01:00Z=right | is after the last reading",
        "--zone UTC --synchrony 9 --none-yet 2026-03-02T01:00Z | cannot go with what was seen",
        "--first-seen 2026-03-02T01:00 --zone UTC --count soon=1/2/3 | --count \"soon\" is not a time",
        "--zone UTC --by soon | --by \"soon\" is not a time",
        "--zone UTC --by 2026-03-01T19:00Z | is not after the cysts were stocked",
        "--zone UTC --by 2026-03-06T05:01Z | is more than 96 h after the last reading",
        "--zone UTC --plot a.jpg | must end in .svg or .png",
        "--zone UTC --synchrony 0 | from 10 to 90 % hatched a lot takes",
        "--zone UTC --room 95 | is no room",
        "--zone UTC --litres 0 | is no cone",
        "--zone Narnia | Narnia",
        "--nonsense | --nonsense",
        "--fahrenheit --zone UTC | is the log in °C?",
        "--room 20 | name it with --zone"})
    void badInputEndsWithTwoAndASentenceAndNoAnswer(String args, String words) {
        assertThat(run(args.split(" "))).isEqualTo(2);
        assertThat(err.toString()).contains(words);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void aLotThatHatchesOverLongIsHarvestedTwice() throws IOException {
        assertThat(run("--zone", "UTC", "--synchrony", "12")).isZero();
        assertThat(out.toString()).contains("harvest twice")
                .containsPattern("first harvest \\(82 %\\) +2026-03-02 18:4");
        out.getBuffer().setLength(0);
        run("--zone", "UTC", "--synchrony", "12", "--json");
        JsonNode json = new ObjectMapper().readTree(out.toString());
        assertThat(json.get("harvest-twice")).hasSize(2);
        // Ts at 25 °C, asked back from the answer: (K90 − K10) / 13 °C.
        double hours = number("t90", "--synchrony", "12") - number("t10", "--synchrony", "12");
        assertThat(14 * hours / 13).isCloseTo(12, within(0.01));
    }

    private double number(String name, String... args) throws IOException {
        List<String> all = new ArrayList<>(List.of("--zone", "UTC", "--json"));
        all.addAll(List.of(args));
        out.getBuffer().setLength(0);
        assertThat(run(all.toArray(String[]::new))).as(err.toString()).isZero();
        String text = new ObjectMapper().readTree(out.toString()).get(name).asText();
        return text.endsWith("Z") ? Instant.parse(text).toEpochMilli() / 3.6e6 : Double.parseDouble(text);
    }

    /** Half of such lots are ready by 2026-03-02 19:41, three in four at 23:3x. */
    @Test
    void whoAsksForAnHourIsToldTheChanceOfIt() throws IOException {
        assertThat(number("ready-by-chance", "--by", "2026-03-02 19:42")).isCloseTo(0.5, within(0.005));
        assertThat(number("ready-by-chance", "--by", "2026-03-02 23:33")).isCloseTo(0.75, within(0.01));
        assertThat(number("ready-by-chance", "--by", "2026-03-02 04:00")).isLessThan(0.01);
        assertThat(number("by", "--by", "2026-03-02 19:42")).isEqualTo(
                Instant.parse("2026-03-02T19:42:00Z").toEpochMilli() / 3.6e6);
        out.getBuffer().setLength(0);
        run("--zone", "UTC", "--by", "2026-03-02 19:42");
        run("--zone", "UTC", "--by", "2026-03-02 04:00");
        run("--zone", "UTC", "--by", "2026-03-06 05:00");
        assertThat(out.toString()).contains("chance of being ready by 2026-03-02 19:42: 50 %",
                "by 2026-03-02 04:00: less than 1 %", "by 2026-03-06 05:00: more than 99 %");
        out.getBuffer().setLength(0);
        run("--zone", "UTC");
        assertThat(out.toString()).doesNotContain("chance");
    }

    /** 24 ± 3 °C, coldest at six in the morning. */
    @Test
    void waterThatNobodyHeatsIsTakenToDoAsOnItsLastDay() throws IOException {
        StringBuilder text = new StringBuilder();
        LocalDateTime at = LocalDateTime.of(2026, 7, 1, 0, 0);
        for (int i = 0; i <= 180; i++) {
            text.append(at.plusMinutes(10L * i)).append(',')
                    .append(Math.round(2400 - 300 * Math.cos((i / 6.0 - 6) / 12 * Math.PI)) / 100.0)
                    .append('\n');
        }
        log = Files.writeString(dir.resolve("unheated.csv"), text);
        int code = run("--zone", "UTC", "--stocked", "2026-07-01 20:00");
        assertThat(code).as(err.toString()).isZero();
        assertThat(out.toString().replace('\n', ' ')).contains("is taken to do as in the 24 h before it: "
                + "21.0 to 27.0 °C, in the mean 24.0 °C").doesNotContain("stay at");
        out.getBuffer().setLength(0);
        run("--zone", "UTC", "--stocked", "2026-07-01 20:00", "--json");
        JsonNode json = new ObjectMapper().readTree(out.toString());
        assertThat(json.get("repeats-last-day").asBoolean()).isTrue();
        assertThat(json.get("held-at-c").isNull()).isTrue();
    }

    /** Seen early, the lot is a quick one; seen late, a slow one; a count tells most. */
    @Test
    void whatWasSeenOfTheBatchMovesItsForecast() throws IOException {
        log = write(90, 26);
        double wide = number("ready-until") - number("ready-from");
        String[] early = {"--first-seen", "2026-03-02 06:00Z"};
        String[] late = {"--none-yet", "2026-03-02 08:00Z", "--first-seen", "2026-03-02 10:00Z"};
        String[] count = {"--count", "2026-03-02 09:30Z=60/50/40"};
        assertThat(number("ready-median", early)).isLessThan(number("ready-median", late) - 2);
        assertThat(number("ready-median", count)).isLessThan(number("ready-median") - 1);
        assertThat(number("ready-until", count) - number("ready-from", count)).isLessThan(0.7 * wide);
        assertThat(number("hatched", count)).isBetween(0.3, 0.8);
        out.getBuffer().setLength(0);
        run("--zone", "UTC", "--first-seen", "2026-03-02 08:00");
        assertThat(out.toString()).contains("one look does not settle what a lot does")
                .doesNotContain("nobody has seen");
        String[] both = {"--first-seen", "2026-03-02 06:00Z", "--lot-speed", "300"};
        assertThat(number("ready-median", both)).isGreaterThan(number("ready-median", early) + 1);
    }

    /** A harvest that was judged right tells how long the lot takes; too early, that it takes longer. */
    @Test
    void aVerdictOnTheHarvestMovesItsForecast() throws IOException {
        log = write(150, 26);
        double right = number("ready-median", "--verdict", "2026-03-02 19:30Z=right");
        assertThat(right).isLessThan(number("ready-median", "--verdict", "2026-03-02 19:30Z=too-early") - 1);
        assertThat(right).isGreaterThan(number("ready-median", "--verdict", "2026-03-02 19:30Z=late") + 1);
    }

    @Test
    void aCountThatCanHardlyBeIsCalledASlip() throws IOException {
        log = write(110, 26);
        assertThat(run("--zone", "UTC", "--count", "2026-03-01 23:30=120/14/20", "--count",
                "2026-03-02 13:00=40/30/60")).isZero();
        assertThat(out.toString().replace('\n', ' ')).contains("note: the count of 120 nauplii, 14 umbrella "
                + "stages and 20 unhatched hardly can be: after 63 degree-hours, less than 1 % of what "
                + "hatches should have hatched. Taken for a slip").doesNotContain("count of 40");
    }

    /** As the daemon has it: told, and nothing learnt of it; what may be is learnt, with its half hour. */
    @Test
    void firstNaupliiBeforeAnyCouldSwimAreASlipAndTeachNothing() throws IOException {
        log = write(110, 26);
        double median = number("ready-median");
        String[] slip = {"--first-seen", "2026-03-01 20:30Z"};
        assertThat(number("ready-median", slip)).isEqualTo(median);
        assertThat(run("--zone", "UTC", slip[0], slip[1])).isZero();
        assertThat(out.toString().replace('\n', ' ')).contains("note: that nauplii were seen then hardly can "
                + "be: after ", "Taken for a slip, nothing is learnt from it");
        assertThat(number("ready-median", "--first-seen", "2026-03-02 06:00Z")).isLessThan(median - 0.5);
    }

    /** The first reading two hours late, and another two hours and ten minutes lost. */
    @Test
    void hoursWithoutReadingsAreToldWithWhatTheyMayHaveGiven() throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(log));
        lines.subList(13, 25).clear();
        Files.write(log, lines);
        assertThat(run("--zone", "UTC", "--stocked", "2026-03-01 17:00", "--hours")).isZero();
        String said = out.toString().replaceAll("\\s+", " ");
        assertThat(said).contains("the cysts were wetted 2 h 00 min before the first reading")
                .containsPattern("between \\d+\\.\\d and \\d+\\.\\d done, since 4 h 10 min without "
                        + "readings gave \\d+\\.\\d to \\d+\\.\\d °C·h of them")
                .containsPattern("\\(gained \\d+\\.\\d to \\d+\\.\\d, done ");
        double[] part = figures(said, "without readings gave ([0-9.]+) to ([0-9.]+)");
        double[] all = figures(said, "between ([0-9.]+) and ([0-9.]+) done");
        assertThat(all[1] - all[0]).as("the whole doubt comes from there").isCloseTo(part[1] - part[0],
                within(0.11));
        assertThat(all[0] - part[0]).as("what was read is certain").isCloseTo(14 * (10 - 13 / 6.0),
                within(0.11));
        run("--zone", "UTC", "--json", "--stocked", "2026-03-01 17:00");
        assertThat(out.toString()).contains("wetted 2 h 00 min before the first reading");
    }

    private static double[] figures(String text, String pattern) {
        Matcher m = Pattern.compile(pattern).matcher(text);
        assertThat(m.find()).as(pattern).isTrue();
        return new double[] {Double.parseDouble(m.group(1)), Double.parseDouble(m.group(2))};
    }

    @Test
    void theNeededDegreeHoursAreThoseOfTheAnnouncedMoment() {
        run("--zone", "UTC");
        Matcher needed = Pattern.compile("done of ([0-9.]+) needed").matcher(out.toString());
        Matcher ready = Pattern.compile("ready, as announced +\\S+ \\S+ +([0-9.]+)").matcher(out.toString());
        assertThat(needed.find() && ready.find()).isTrue();
        assertThat(ready.group(1)).isEqualTo(needed.group(1));
    }

    /** What happened is read from the log, though the water is colder by now. */
    @Test
    void aHatchInThePastIsTimedByTheWaterItHad() throws IOException {
        log = write(200, 27);
        Files.writeString(log, Files.readString(log) + "2026-03-03 04:30,20\n2026-03-03 05:30,20\n");
        run("--zone", "UTC");
        // The margin is that of the water now, 20 °C: 2 °C·h more.
        assertThat(out.toString()).containsPattern("T90, nine tenths +2026-03-02 18:02")
                .containsPattern("ready since about 2026-03-02 21:[34]");
    }

    @Test
    void thePictureMarksTheLooks() throws IOException {
        log = write(110, 26);
        Path picture = dir.resolve("looks.svg");
        assertThat(run("--zone", "UTC", "--plot", picture.toString(), "--none-yet", "2026-03-02 07:00",
                "--first-seen", "2026-03-02 08:00", "--count", "2026-03-02 10:00=30/20/50", "--verdict",
                "2026-03-02 13:00=too-early")).as(err.toString()).isZero();
        assertThat(Files.readString(picture)).contains("none yet", "first seen", "30 % counted",
                "judged too early");
    }

    @Test
    void aPictureIsDrawnBesideTheAnswer() throws IOException {
        for (String name : List.of("a.svg", "A.PNG")) {
            Path picture = dir.resolve(name);
            assertThat(run("--zone", "Europe/London", "--plot", picture.toString())).isZero();
            assertThat(out.toString()).contains("ready at 2026-03-02 23:3");
            assertThat(Files.size(picture)).isGreaterThan(5_000);
        }
        assertThat(Files.readString(dir.resolve("a.svg"))).contains(
                "<title id=\"title\">Ready about Mon 2 Mar 23:3",
                "8 in 10 such batches: Mon 2 Mar", "nobody has seen this lot hatch", "time in Europe/London");
    }

    /** After a change that moves it: the command of the README, drawn into that file. */
    @Test
    void thePictureInTheReadmeIsTheOneThatIsDrawn() throws IOException {
        Path pages = Path.of("src/site/markdown");
        log = pages.resolve("cone-a.csv");
        Path picture = dir.resolve("cone-a.svg");
        assertThat(run("--zone", "Europe/London", "--plot", picture.toString())).isZero();
        assertThat(Files.readString(picture)).as("draw it anew: conetender forecast --log %s --zone "
                + "Europe/London --plot %s", log, pages.resolve("cone-a.svg"))
                .isEqualTo(Files.readString(pages.resolve("cone-a.svg")));
        String title = Files.readString(picture)
                .replaceAll("(?s).*<title[^>]*>Ready about .* (.*?)</title>.*", "ready about $1");
        assertThat(Files.readString(Path.of("README.md"))).contains(title);
    }

    @Test
    void aPictureThatCannotBeWrittenIsToldAndNothingElse() {
        assertThat(run("--zone", "UTC", "--plot", dir.resolve("no/where.svg").toString())).isEqualTo(2);
        assertThat(err.toString()).contains("where.svg could not be written: its folder is not there");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void helpShowsAnExampleThatWorks() throws IOException {
        assertThat(command().execute("--help")).isZero();
        assertThat(out.toString()).contains("Example:").contains("2026-03-01 19:10,23.1")
                .contains("Exit codes:");
        log = Files.writeString(dir.resolve("b.csv"), "2026-03-01 19:00,21.5\n2026-03-01 19:10,23.1\n");
        assertThat(run("--stocked", "2026-03-01 19:00", "--zone", "Europe/London")).isZero();
    }
}

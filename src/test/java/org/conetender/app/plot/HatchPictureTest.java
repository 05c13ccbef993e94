package org.conetender.app.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.Speed;
import org.conetender.core.hatch.ThermometerLog;
import org.conetender.core.hatch.Zones;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** What a keeper sees: the right things, at the right places, in the stated zone. */
class HatchPictureTest {

    private static final long START = Instant.parse("2026-03-01T18:00:00Z").toEpochMilli();
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    private static Hatch hatch(int minutes, IntToDoubleFunction waterC, Speed speed) {
        long[] ms = new long[minutes + 1];
        double[] c = new double[minutes + 1];
        for (int i = 0; i <= minutes; i++) {
            ms[i] = START + i * 60_000L;
            c[i] = waterC.applyAsDouble(i);
        }
        ThermometerLog log = ThermometerLog.of(ms, c);
        return of(log, speed);
    }

    private static Hatch of(ThermometerLog log, Speed speed) {
        return new Hatch(log, log.replay(new Replay.Question(speed, Zones.USUAL, log.firstMs(),
                new Replay.Surroundings(20, 2))), BERLIN);
    }

    private static Document svg(Hatch hatch) throws Exception {
        return svg(hatch, "Ready & well", List.of("one <line>", "another"));
    }

    private static Document svg(Hatch hatch, String title, List<String> lines) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new HatchPicture(hatch, title, lines).svg(out);
        return DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new ByteArrayInputStream(out.toByteArray()));
    }

    private static List<Element> all(Document d, String tag) {
        List<Element> found = new ArrayList<>();
        NodeList nodes = d.getElementsByTagName(tag);
        for (int i = 0; i < nodes.getLength(); i++) {
            found.add((Element) nodes.item(i));
        }
        return found;
    }

    private static List<String> texts(Document d) {
        return all(d, "text").stream().map(Element::getTextContent).toList();
    }

    /** Ten hours at 27 °C since 19:00 in Berlin: 271 / 15 is 18 h 04 min. */
    @Test
    void everythingAKeeperAsksForIsWrittenOnIt() throws Exception {
        Document d = svg(hatch(600, i -> 27, Speed.UNKNOWN_LOT));
        assertThat(texts(d)).contains("Water, °C", "Degree-hours above 12 °C, °C·h",
                "Hatched, % of what hatches",
                "T10 09:09", "T50 13:04", "T90 18:02", "last reading", "time in Europe/Berlin", "Sun 1 Mar",
                "Mon 2 Mar", "90 % hatch by 346", "Ready & well", "one <line>")
                .anyMatch(t -> t.startsWith("Most food 20:")).anyMatch(t -> t.startsWith("ready 21:3"));
        assertThat(all(d, "title").getFirst().getTextContent()).isEqualTo("Ready & well");
        assertThat(all(d, "desc").getFirst().getTextContent()).isEqualTo("one <line>. another");
    }

    @Test
    void theMarksStandOnTheCurveAtTheirHours() throws Exception {
        Document d = svg(hatch(600, i -> 27, Speed.UNKNOWN_LOT));
        Element t50 = all(d, "text").stream().filter(t -> t.getTextContent().startsWith("T50")).findFirst()
                .orElseThrow();
        double y = Double.parseDouble(t50.getAttribute("y")) - 7;
        List<Pen.Point> curve = all(d, "polyline").stream()
                .filter(l -> l.getAttribute("stroke").equals("#b34700")
                        && !l.getAttribute("stroke-dasharray").isEmpty()
                        && l.getAttribute("stroke-width").equals("3.5")).map(HatchPictureTest::points)
                .findFirst().orElseThrow();
        Pen.Point there = curve.stream().min((a, b) -> Double.compare(Math.abs(a.y() - y),
                Math.abs(b.y() - y))).orElseThrow();
        // Sideways the text ends fifteen points before its mark.
        assertThat(Double.parseDouble(t50.getAttribute("x")) + 15).isCloseTo(there.x(), within(2.0));
    }

    private static List<Pen.Point> points(Element line) {
        List<Pen.Point> points = new ArrayList<>();
        for (String p : line.getAttribute("points").split(" ")) {
            String[] xy = p.split(",");
            points.add(new Pen.Point(Double.parseDouble(xy[0]), Double.parseDouble(xy[1])));
        }
        return points;
    }

    /** Cold, hot, brief, long, over long since, harvested twice: nothing leaves the sheet. */
    @Test
    void nothingIsDrawnBesideTheSheet() throws Exception {
        Speed wide = new Speed(271, 0.25, 0.1, 3);
        List<Hatch> hatches = List.of(hatch(0, i -> 25, Speed.UNKNOWN_LOT), hatch(60, i -> 11, wide),
                hatch(600, i -> 34, wide), hatch(9_000, i -> 26 + Math.sin(i / 300.0), Speed.UNKNOWN_LOT),
                hatch(300, i -> 18, wide), hatch(1_200, i -> i % 700 == 0 ? 40 : 28, wide));
        for (Hatch h : hatches) {
            nothingLeavesIt(svg(h));
        }
    }

    /** What cannot be forecast is told in a long sentence, and a log may have a long name. */
    @Test
    void aLongHeadingStaysOnTheSheetAndAboveThePanels() throws Exception {
        String title = "the-thermometer-of-the-second-cone-from-the-left, spring.csv: not ready in sight";
        String line = "stands still: the water is heading for 34.0 °C, in arrest; let it cool, and look in "
                + "an hour whether it does, for nothing goes on meanwhile";
        Document d = svg(hatch(600, i -> 34, Speed.UNKNOWN_LOT), title, List.of(line,
                "stocked Sun 1 Mar 19:00"));
        nothingLeavesIt(d);
        List<Element> texts = all(d, "text");
        double panel = texts.stream().filter(t -> t.getTextContent().equals("Water, °C"))
                .mapToDouble(t -> Double.parseDouble(t.getAttribute("y"))).findFirst().orElseThrow();
        List<Element> heading = texts.stream().filter(t -> Double.parseDouble(t.getAttribute("y")) < panel
                && t.getAttribute("x").equals(texts.getFirst().getAttribute("x"))).toList();
        assertThat(heading.getFirst().getTextContent()).startsWith("the-thermometer-of-the-second-cone");
        assertThat(heading.stream().skip(1).map(Element::getTextContent).reduce((a, b) -> a + " " + b))
                .contains(line + " stocked Sun 1 Mar 19:00");
        assertThat(heading.stream().map(t -> Double.parseDouble(t.getAttribute("y")))).isSorted()
                .allMatch(y -> y < panel - 10);
    }

    private static void nothingLeavesIt(Document d) {
        for (String tag : List.of("polyline", "polygon")) {
            assertThat(all(d, tag).stream().flatMap(e -> points(e).stream())).allSatisfy(p -> {
                assertThat(p.x()).isBetween(0.0, (double) Sheet.WIDTH);
                assertThat(p.y()).isBetween(0.0, (double) Sheet.HEIGHT);
            });
        }
        for (Element t : all(d, "text")) {
            double size = Double.parseDouble(t.getAttribute("font-size"));
            double wideAs = new Pen.Type(size, t.hasAttribute("font-weight"), Pen.Side.AROUND)
                    .width(t.getTextContent());
            double x = Double.parseDouble(t.getAttribute("x"));
            double left = switch (t.getAttribute("text-anchor")) {
                case "start" -> x;
                case "middle" -> x - wideAs / 2;
                default -> x - wideAs;
            };
            assertThat(left).as(t.getTextContent()).isGreaterThan(0);
            assertThat(left + wideAs).as(t.getTextContent()).isLessThan(Sheet.WIDTH + 0.1);
            assertThat(size).as("legible on a telephone").isGreaterThanOrEqualTo(19);
        }
    }

    @Test
    void aSpreadOutHatchShowsBothHarvests() throws Exception {
        assertThat(texts(svg(hatch(600, i -> 27, new Speed(271, 0.25, 0.1, 3)))))
                .anyMatch(t -> t.matches("Food: harvest twice, \\d\\d:\\d\\d and \\d\\d:\\d\\d"));
    }

    @Test
    void waterThatStandsStillForTheCystsShowsItsLimit() throws Exception {
        assertThat(texts(svg(hatch(600, i -> 34, Speed.UNKNOWN_LOT))))
                .contains("arrest from 33 °C on", "Food: none within the hours looked ahead");
        assertThat(texts(svg(hatch(600, i -> 12, Speed.UNKNOWN_LOT)))).contains("no development up to 12 °C");
    }

    /** A log that runs on for a week shows its hatch as large as one that does not. */
    @Test
    void daysAfterTheHatchAreLeftOut() {
        Hatch brief = hatch(2_400, i -> 27, Speed.UNKNOWN_LOT);
        Hatch overlong = hatch(10_000, i -> 27, Speed.UNKNOWN_LOT);
        assertThat(overlong.toMs()).isEqualTo(brief.toMs()).isLessThan(START + 48 * 3_600_000L);
    }

    @Test
    void aGapIsShaded() throws Exception {
        long[] ms = {START, START + 600_000, START + 1_200_000, START + 30_000_000, START + 30_600_000};
        Document d = svg(of(ThermometerLog.of(ms, new double[] {26, 26, 26, 25, 25}), Speed.UNKNOWN_LOT));
        assertThat(texts(d)).contains("no reading");
    }

    /** The same picture in pixels: water where water is, at both ends of the log. */
    @Test
    void thePixelsShowTheSame() throws Exception {
        Hatch hatch = hatch(600, i -> 27, Speed.UNKNOWN_LOT);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new HatchPicture(hatch, "Ready", List.of("one")).png(out);
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(out.toByteArray()));
        assertThat(image.getWidth()).isEqualTo(2 * Sheet.WIDTH);
        assertThat(image.getHeight()).isEqualTo(2 * Sheet.HEIGHT);
        List<Pen.Point> water = all(svg(hatch), "polyline").stream()
                .filter(l -> l.getAttribute("stroke").equals("#0072b2")).map(HatchPictureTest::points)
                .findFirst().orElseThrow();
        for (Pen.Point p : List.of(water.get(2), water.get(water.size() / 2), water.get(water.size() - 3))) {
            int rgb = image.getRGB((int) (2 * p.x()), (int) (2 * p.y())) & 0xffffff;
            assertThat(rgb).isEqualTo(0x0072b2);
        }
        // Letters: some dark pixels in the title's line.
        long dark = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            dark += (image.getRGB(x, 76) & 0xff) < 0x40 ? 1 : 0;
        }
        assertThat(dark).isGreaterThan(20);
    }
}

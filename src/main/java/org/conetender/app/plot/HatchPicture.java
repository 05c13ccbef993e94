package org.conetender.app.plot;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.stream.DoubleStream;
import org.conetender.core.hatch.Course;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Harvest;
import org.conetender.core.hatch.Speed;
import org.conetender.core.hatch.Zones;
import org.conetender.core.unit.Text;

/**
 * The picture of a forecast: water, degree-hours, food and the hatched share above one another, over the
 * same hours. Measured is drawn in whole lines, reckoned in dashes, what is unsure as a band.
 *
 * @param hatch what it shows  @param title what a person wants to know  @param lines what else, below it
 */
public record HatchPicture(Hatch hatch, String title, List<String> lines) {

    private static final double[] SHARES = {0.1, 0.5, 0.9};

    /** The least range of the water's scale, K: noise of a probe must not fill the panel. */
    private static final double LEAST_RANGE_K = 4;

    /** Beyond any picture, h. */
    private static final double BEYOND_H = 10_000;

    public HatchPicture {
        lines = List.copyOf(lines);
    }

    public void svg(OutputStream out) throws IOException {
        Output.svg(out, title, String.join(". ", lines), this::draw);
    }

    /** @throws IOException also where this Java has no letters to draw with */
    public void png(OutputStream out) throws IOException {
        Output.png(out, this::draw);
    }

    private void draw(Pen pen) {
        Sheet sheet = new Sheet(pen, hatch);
        Output.heading(pen, title, lines);
        water(sheet);
        degreeHours(sheet);
        food(sheet);
        hatched(sheet);
    }

    private void water(Sheet sheet) {
        Course course = hatch.course();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < course.size() && hatch.pointMs(i) <= hatch.toMs(); i++) {
            low = Math.min(low, course.waterC(i));
            high = Math.max(high, course.waterC(i));
        }
        double spare = Math.max(0.15 * (high - low), (LEAST_RANGE_K - high + low) / 2);
        Frame f = sheet.panel("Water, °C", 200, 360,
                new Frame.Range(Math.floor(low - spare), Math.ceil(high + spare)));
        Gaps.show(sheet, f);
        limit(sheet, f, Zones.USUAL.rate().ceilingC(), "arrest from %.0f °C on");
        limit(sheet, f, Zones.USUAL.rate().baseC(), "no development up to %.0f °C");
        Trace.of(hatch.log(), f).forEach(l -> sheet.drawn(Ink.WATER, Pen.Stroke.BOLD, l));
        sheet.drawn(Ink.WATER, Pen.Stroke.DASHED_BOLD,
                sheet.points(f, course::waterC, course.now() + 1, course.size() - 1));
        sheet.now(f);
        if (f.holds(hatch.ms(0))) {
            sheet.beside(Ink.QUIET, new Pen.Point(f.x(hatch.ms(0)) - 4, f.place().bottom() - 10),
                    Pen.Side.RIGHT_OF, "last reading");
        }
    }

    /** A line across the panel, where the water came near it. */
    private static void limit(Sheet sheet, Frame f, double c, String words) {
        if (c > f.range().low() && c < f.range().high()) {
            sheet.across(f, c, Ink.HATCHED, Pen.Stroke.DASHED_HAIR);
            sheet.pen().text(Ink.HATCHED, Sheet.SCALE, new Pen.Point(Sheet.LEFT + 8, f.y(c) - 6),
                    Text.of(words, c));
        }
    }

    private void degreeHours(Sheet sheet) {
        Speed speed = hatch.speed();
        Course course = hatch.course();
        int last = 0;
        while (last < course.size() - 1 && hatch.pointMs(last + 1) <= hatch.toMs()) {
            last++;
        }
        double most = Math.max(1.15 * speed.k90(), course.most(last));
        Frame f = sheet.panel("Degree-hours above 12 °C, °C·h", 412, 644, new Frame.Range(0, most));
        for (double share : SHARES) {
            double needed = speed.degreeHoursAt(share);
            sheet.across(f, needed, Ink.QUIET, Pen.Stroke.DASHED_HAIR);
            sheet.pen().text(Ink.QUIET, new Pen.Type(19), new Pen.Point(Sheet.LEFT + 8, f.y(needed) - 4),
                    Text.of("%.0f %% hatch by %.0f", 100 * share, needed));
        }
        sheet.band(f, Ink.DEGREE_HOURS_BAND, course::least, course::most);
        sheet.curve(f, Ink.DEGREE_HOURS, course::done);
        sheet.now(f);
    }

    /** One bar: when most of the food is there. */
    private void food(Sheet sheet) {
        Harvest h = hatch.harvest();
        double top = 704;
        Frame f = sheet.bare(top, top + 22, new Frame.Range(0, 1));
        Pen pen = sheet.pen();
        pen.text(Ink.TEXT, Sheet.HEAD, new Pen.Point(Sheet.LEFT, top - 16), foodHeading());
        pen.line(Ink.FRAME, Pen.Stroke.HAIR, List.of(f.at(f.fromMs(), 0.5), f.at(f.toMs(), 0.5)));
        if (Double.isInfinite(h.best().hours())) {
            return;
        }
        if (h.twice().isEmpty()) {
            pen.box(Ink.FOOD, new Pen.Point(edge(f, h.fromHours()), f.place().top()),
                    new Pen.Point(edge(f, h.untilHours()), f.place().bottom()));
        }
        DoubleStream marks = h.twice().map(t -> DoubleStream.of(t.firstHours(), t.secondHours()))
                .orElse(DoubleStream.of(h.best().hours()));
        marks.filter(m -> f.holds(hatch.ms(m))).forEach(m ->
                pen.mark(Ink.TEXT, f.at(hatch.ms(m), 0.5), 11));
    }

    private String foodHeading() {
        Harvest h = hatch.harvest();
        if (Double.isInfinite(h.best().hours())) {
            return "Food: none within the hours looked ahead";
        }
        return h.twice().map(t -> Text.of("Food: harvest twice, %s and %s", hatch.clock(t.firstHours()),
                hatch.clock(t.secondHours()))).orElseGet(() -> Text.of("Most food %s, 95 %% of it %s to %s",
                hatch.clock(h.best().hours()), hatch.clock(h.fromHours()),
                Double.isFinite(h.untilHours()) ? hatch.clock(h.untilHours()) : "later than shown"));
    }

    /** A time on the sheet, or the edge beyond which it lies. @param hours perhaps infinite */
    private double edge(Frame f, double hours) {
        return hours > 0 && !f.holds(hatch.ms(Math.min(hours, BEYOND_H))) ? f.place().right()
                : Math.max(f.place().left(), f.x(hatch.ms(hours)));
    }

    private void hatched(Sheet sheet) {
        Speed speed = hatch.speed();
        Frame f = sheet.panel("Hatched, % of what hatches", 776, 1006, new Frame.Range(0, 100));
        sheet.band(f, Ink.HATCHED_BAND, i -> 100 * share(i).low(), i -> 100 * share(i).high());
        sheet.curve(f, Ink.HATCHED, i -> 100 * share(i).median());
        sheet.now(f);
        double ready = hatch.forecast().ready().announced();
        if (hatch.forecast().reachable() && Double.isFinite(ready)) {
            sheet.down(f, hatch.ms(ready), Ink.TEXT, Pen.Stroke.HAIR);
            if (f.holds(hatch.ms(ready))) {
                sheet.beside(Ink.TEXT, new Pen.Point(f.x(hatch.ms(ready)), f.y(4)), Pen.Side.RIGHT_OF,
                        "ready " + hatch.clock(ready));
            }
        }
        for (double share : SHARES) {
            double at = hatch.course().hoursAt(speed.degreeHoursAt(share));
            if (Double.isFinite(at) && f.holds(hatch.ms(at))) {
                Pen.Point p = f.at(hatch.ms(at), 100 * share);
                sheet.pen().mark(Ink.TEXT, p, 9);
                sheet.beside(Ink.TEXT, new Pen.Point(p.x(), p.y() + 7), Pen.Side.LEFT_OF,
                        Text.of("T%.0f %s", 100 * share, hatch.clock(at)));
            }
        }
        sheet.timeAxis(f);
    }

    private Forecast.Hatched share(int i) {
        return hatch.replay().outlook().hatched(i);
    }
}

package org.conetender.app.plot;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.conetender.core.hatch.Course;
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
public record HatchPicture(Hatch hatch, String title, List<String> lines) implements Picture {

    private static final double MARK = 9;
    /** Beyond any picture, h. */
    private static final double BEYOND_H = 10_000;

    public HatchPicture {
        lines = List.copyOf(lines);
    }

    @Override
    public void draw(Pen pen) {
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
        Frame f = sheet.panel("Water, °C", 200, 360, Frame.Range.ofWater(low, high));
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
            sheet.beside(Ink.HATCHED, new Pen.Point(Sheet.LEFT - 7, f.y(c) - 6), Pen.Side.RIGHT_OF,
                    Text.of(words, c));
        }
    }

    private void degreeHours(Sheet sheet) {
        Course course = hatch.course();
        int last = 0;
        while (last < course.size() - 1 && hatch.pointMs(last + 1) <= hatch.toMs()) {
            last++;
        }
        Frame f = Panels.degreeHours(sheet, 412, 644, Math.max(1.15 * hatch.speed().k90(),
                course.most(last)));
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
        Frame f = Panels.hatched(sheet, 776);
        sheet.now(f);
        hatch.looks().forEach(l -> sheet.takes(mark(f.at(hatch.ms(l.hours()), 100 * l.share()))));
        for (double share : Panels.SHARES) {
            point(f, share).ifPresent(p -> sheet.takes(mark(p)));
        }
        double ready = hatch.forecast().ready().announced();
        if (hatch.forecast().reachable() && Double.isFinite(ready)) {
            sheet.down(f, hatch.ms(ready), Ink.TEXT, Pen.Stroke.HAIR);
            if (f.holds(hatch.ms(ready))) {
                sheet.beside(Ink.TEXT, new Pen.Point(f.x(hatch.ms(ready)), f.y(4)), Pen.Side.RIGHT_OF,
                        "ready " + hatch.clock(ready));
            }
        }
        for (double share : Panels.SHARES) {
            point(f, share).ifPresent(p -> {
                sheet.pen().mark(Ink.TEXT, p, MARK);
                sheet.beside(Ink.TEXT, new Pen.Point(p.x(), p.y() + 7), Pen.Side.LEFT_OF, Text.of("T%.0f %s",
                        100 * share, hatch.clock(hatch.course().hoursAt(speed.degreeHoursAt(share)))));
            });
        }
        hatch.looks().stream().filter(l -> f.holds(hatch.ms(l.hours()))).forEach(l -> look(sheet, f, l));
        TimeAxis.draw(sheet, f);
    }

    /** Where that share has hatched, if the picture reaches so far. */
    private Optional<Pen.Point> point(Frame f, double share) {
        double at = hatch.course().hoursAt(hatch.speed().degreeHoursAt(share));
        return Double.isFinite(at) && f.holds(hatch.ms(at)) ? Optional.of(f.at(hatch.ms(at), 100 * share))
                : Optional.empty();
    }

    private static Frame.Place mark(Pen.Point p) {
        return new Frame.Place(p.x() - MARK, p.y() - MARK, p.x() + MARK, p.y() + MARK);
    }

    /** A ring where somebody looked, at the share that swam. */
    private void look(Sheet sheet, Frame f, Hatch.Look l) {
        Pen.Point p = f.at(hatch.ms(l.hours()), 100 * l.share());
        sheet.pen().mark(Ink.TEXT, p, MARK);
        sheet.pen().mark(Ink.PAPER, p, 5);
        sheet.beside(Ink.QUIET, new Pen.Point(p.x(), p.y() - 7), Pen.Side.LEFT_OF, l.words());
    }
}

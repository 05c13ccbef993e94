package org.conetender.app.plot;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.conetender.core.hatch.Course;
import org.conetender.core.unit.Text;

/**
 * The picture of a batch that was, or is: its water, its stages, what was called, its degree-hours and the
 * hatched share, until its last reading.
 *
 * @param hatch what was measured and follows from it  @param title which batch  @param lines what else
 * @param stages one after another  @param marks alarms and doubts  @param told set-points that were told
 */
public record BatchPicture(Hatch hatch, String title, List<String> lines, List<Stretch> stages,
                           List<Mark> marks, List<Told> told) {

    /** @param word of a stage  @param fromMs from then, ms since 1970 UTC  @param toMs until then */
    public record Stretch(String word, long fromMs, long toMs) {}

    /** @param atMs when  @param word of an alarm or doubt */
    public record Mark(long atMs, String word) {}

    /** @param degreesC set-point  @param fromMs from then  @param toMs until then */
    public record Told(double degreesC, long fromMs, long toMs) {}

    public BatchPicture {
        lines = List.copyOf(lines);
        stages = List.copyOf(stages);
        marks = List.copyOf(marks);
        told = List.copyOf(told);
    }

    public void svg(OutputStream out) throws IOException {
        Output.svg(out, title, String.join(". ", lines), this::draw);
    }

    /** @throws IOException also where this Java has no letters to draw with */
    public void png(OutputStream out) throws IOException {
        Output.png(out, this::draw);
    }

    private void draw(Pen pen) {
        Sheet sheet = new Sheet(pen, hatch, hatch.ms(0));
        Output.heading(pen, title, lines);
        water(sheet);
        stages(sheet);
        Course course = hatch.course();
        Panels.degreeHours(sheet, 600, 786, Math.max(1.15 * hatch.speed().k90(),
                course.most(course.now())));
        sheet.timeAxis(Panels.hatched(sheet, 832));
    }

    private void water(Sheet sheet) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < hatch.log().size(); i++) {
            low = Math.min(low, hatch.log().waterC(i));
            high = Math.max(high, hatch.log().waterC(i));
        }
        for (Told t : told) {
            low = Math.min(low, t.degreesC());
            high = Math.max(high, t.degreesC());
        }
        Frame f = sheet.panel("Water, °C", 200, 400, Frame.Range.ofWater(low, high));
        Gaps.show(sheet, f);
        for (Told t : told) {
            Pen.Point from = f.at(Math.max(t.fromMs(), f.fromMs()), t.degreesC());
            sheet.drawn(Ink.HATCHED, Pen.Stroke.DASHED_HAIR, List.of(from,
                    f.at(Math.min(t.toMs(), f.toMs()), t.degreesC())));
            sheet.pen().text(Ink.HATCHED, Sheet.SCALE, new Pen.Point(from.x() + 8, from.y() - 8),
                    Text.of("told %.1f", t.degreesC()));
        }
        Trace.of(hatch.log(), f).forEach(l -> sheet.drawn(Ink.WATER, Pen.Stroke.BOLD, l));
    }

    /** A bar for each stage, with its word where there is room, and below it what was called. */
    private void stages(Sheet sheet) {
        Pen pen = sheet.pen();
        Frame f = sheet.bare(452, 484, new Frame.Range(0, 1));
        pen.text(Ink.TEXT, Sheet.HEAD, new Pen.Point(Sheet.LEFT, 440), marks.isEmpty() ? "Stages"
                : "Stages, and what was called");
        boolean dark = false;
        for (Stretch s : stages) {
            double from = f.x(Math.clamp(s.fromMs(), f.fromMs(), f.toMs()));
            double to = f.x(Math.clamp(s.toMs(), f.fromMs(), f.toMs()));
            pen.box(dark ? Ink.HATCHED_BAND : Ink.DEGREE_HOURS_BAND, new Pen.Point(from, 452),
                    new Pen.Point(to, 484));
            if (to - from > Sheet.SCALE.width(s.word()) + 4) {
                pen.text(Ink.TEXT, Sheet.SCALE.at(Pen.Side.AROUND), new Pen.Point((from + to) / 2, 476),
                        s.word());
            }
            dark = !dark;
        }
        called(pen, f);
    }

    /** Words in two rows, as far as there is room; the marks are all there. */
    private void called(Pen pen, Frame f) {
        double[] free = {0, 0};
        for (Mark m : marks) {
            if (!f.holds(m.atMs())) {
                continue;
            }
            double x = f.x(m.atMs());
            pen.mark(Ink.HATCHED, new Pen.Point(x, 500), 9);
            double width = Sheet.SCALE.width(m.word());
            double begin = Math.min(x + 12, Sheet.RIGHT - width);
            int row = begin > free[0] ? 0 : 1;
            if (begin > free[row]) {
                pen.text(Ink.HATCHED, Sheet.SCALE, new Pen.Point(begin, 522 + 24 * row), m.word());
                free[row] = begin + width + 12;
            }
        }
    }
}

package org.conetender.app.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.conetender.core.hatch.Course;
import org.conetender.core.unit.Text;

/**
 * The picture of a batch that was, or is: its water, what was switched, its stages, what was called, its
 * degree-hours and the hatched share, until its last reading.
 *
 * @param hatch what was measured and follows from it  @param title which batch  @param lines what else
 * @param did what was done and called
 */
public record BatchPicture(Hatch hatch, String title, List<String> lines, Did did)
        implements Picture {

    /** @param word of a stage  @param fromMs from then, ms since 1970 UTC  @param toMs until then */
    public record Stretch(String word, long fromMs, long toMs) {}

    /** @param atMs since when  @param toMs until when, or the same  @param word of an alarm or doubt */
    public record Mark(long atMs, long toMs, String word) {}

    /** @param degreesC set-point  @param fromMs from then  @param toMs until then */
    public record Told(double degreesC, long fromMs, long toMs) {}

    /**
     * What was switched, as shares of a stretch, 0..1.
     *
     * @param heat the heater had power  @param air it was not paused  @param lamp the harvest lamp burned
     * @param setC set-point that was followed, °C
     */
    public record Switched(Stretch when, double heat, double air, double lamp, OptionalDouble setC) {}

    /**
     * @param stages one after another  @param marks alarms and doubts in their order
     * @param told set-points that were told  @param switched in order; empty where it is not on record
     */
    public record Did(List<Stretch> stages, List<Mark> marks, List<Told> told, List<Switched> switched) {

        public Did {
            stages = List.copyOf(stages);
            marks = List.copyOf(marks);
            told = List.copyOf(told);
            switched = List.copyOf(switched);
        }
    }

    /** Where the strips of what was switched begin and end. */
    private static final double STRIPS = 378;
    private static final double STRIPS_END = 448;
    private static final double BAR_TOP = 494;
    private static final double BAR_BOTTOM = 526;
    private static final double MARKS = 542;
    private static final double MARK = 8;
    /** Half of the height of the line that says how long an alarm stood. */
    private static final double HALF_LINE = 2.5;
    /** A set-point that moved by more is named anew, K. */
    private static final double NAMED_K = 0.45;

    public BatchPicture {
        lines = List.copyOf(lines);
    }

    @Override
    public void draw(Pen pen) {
        Sheet sheet = new Sheet(pen, hatch, hatch.ms(0));
        Output.heading(pen, title, lines);
        water(sheet);
        Strips.draw(sheet, STRIPS, did.switched());
        TimeAxis.breaks(sheet, sheet.bare(STRIPS, STRIPS_END, new Frame.Range(0, 1)), false);
        stages(sheet);
        Course course = hatch.course();
        TimeAxis.breaks(sheet, Panels.degreeHours(sheet, 636, 804, Math.max(1.15 * hatch.speed().k90(),
                course.most(course.now()))), false);
        Frame lowest = Panels.hatched(sheet, 850);
        TimeAxis.breaks(sheet, lowest, false);
        TimeAxis.draw(sheet, lowest);
    }

    private void water(Sheet sheet) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < hatch.log().size(); i++) {
            low = Math.min(low, hatch.log().waterC(i));
            high = Math.max(high, hatch.log().waterC(i));
        }
        for (Told t : setPoints()) {
            low = Math.min(low, t.degreesC());
            high = Math.max(high, t.degreesC());
        }
        Frame f = sheet.panel("Water, °C", 200, 368, Frame.Range.ofWater(low, high));
        Gaps.show(sheet, f);
        setPoints(sheet, f);
        Trace.of(hatch.log(), f).forEach(l -> sheet.drawn(Ink.WATER, Pen.Stroke.BOLD, l));
        TimeAxis.breaks(sheet, f, true);
    }

    /** Those that were followed, or where that is not on record those that were told. */
    private List<Told> setPoints() {
        List<Told> out = new ArrayList<>();
        for (Switched s : did.switched()) {
            if (s.setC().isEmpty()) {
                continue;
            }
            Told last = out.isEmpty() ? null : out.getLast();
            double c = s.setC().getAsDouble();
            if (last != null && last.toMs() == s.when().fromMs() && last.degreesC() == c) {
                out.set(out.size() - 1, new Told(c, last.fromMs(), s.when().toMs()));
            } else {
                out.add(new Told(c, s.when().fromMs(), s.when().toMs()));
            }
        }
        return did.switched().isEmpty() ? did.told() : out;
    }

    /** As a line in steps, with its figure where it begins and where it has moved. */
    private void setPoints(Sheet sheet, Frame f) {
        List<Pen.Point> line = new ArrayList<>();
        List<Pen.Point> words = new ArrayList<>();
        double named = Double.NaN;
        long end = Long.MIN_VALUE;
        for (Told t : setPoints()) {
            if (t.toMs() <= f.fromMs() || t.fromMs() >= f.toMs()) {
                continue;
            }
            if (t.fromMs() != end) {
                sheet.drawn(Ink.HATCHED, Pen.Stroke.DASHED_HAIR, line);
                line = new ArrayList<>();
            }
            Pen.Point from = f.at(Math.max(t.fromMs(), f.fromMs()), t.degreesC());
            Pen.Point to = f.at(Math.min(t.toMs(), f.toMs()), t.degreesC());
            line.add(from);
            line.add(to);
            end = t.toMs();
            boolean moved = !(Math.abs(t.degreesC() - named) < NAMED_K);
            if (moved && named(sheet, words, List.of(from, to), Text.of("set %.1f", t.degreesC()))) {
                named = t.degreesC();
            }
        }
        sheet.drawn(Ink.HATCHED, Pen.Stroke.DASHED_HAIR, line);
    }

    /**
     * Whether there was room for its figure: above the line, beside others that stand there, or before it;
     * else below it.
     *
     * @param words where others stand, in order  @param line its two ends
     */
    private static boolean named(Sheet sheet, List<Pen.Point> words, List<Pen.Point> line, String word) {
        double width = Sheet.SCALE.width(word);
        double y = line.getFirst().y() - 8;
        double x = line.getFirst().x() + 8;
        double free = Sheet.LEFT;
        for (Pen.Point w : words) {
            free = Math.abs(w.y() - y) < Sheet.SCALE.size() ? Math.max(free, w.x() + width + 8) : free;
        }
        x = Math.max(x, free);
        if (x + width > Sheet.RIGHT) {
            x = line.getFirst().x() - 8 - width;
        }
        if (x < free || x > line.getLast().x()) {
            return false;
        }
        for (double base : new double[] {y, y + 32}) {
            Pen.Point at = new Pen.Point(x, base);
            if (sheet.takes(Sheet.SCALE.place(at, word))) {
                sheet.pen().text(Ink.HATCHED, Sheet.SCALE, at, word);
                words.add(at);
                return true;
            }
        }
        return false;
    }

    /** A bar for each stage, with its word where there is room, and below it what was called. */
    private void stages(Sheet sheet) {
        Pen pen = sheet.pen();
        Frame f = sheet.bare(BAR_TOP, BAR_BOTTOM, new Frame.Range(0, 1));
        pen.text(Ink.TEXT, Sheet.HEAD, new Pen.Point(Sheet.LEFT, BAR_TOP - 12), did.marks().isEmpty()
                ? "Stages" : "Stages, and what was called");
        boolean dark = false;
        for (Stretch s : did.stages()) {
            double from = f.x(Math.clamp(s.fromMs(), f.fromMs(), f.toMs()));
            double to = f.x(Math.clamp(s.toMs(), f.fromMs(), f.toMs()));
            pen.box(dark ? Ink.HATCHED_BAND : Ink.DEGREE_HOURS_BAND, new Pen.Point(from, BAR_TOP),
                    new Pen.Point(to, BAR_BOTTOM));
            if (to - from > Sheet.SCALE.width(s.word()) + 4) {
                pen.text(Ink.TEXT, Sheet.SCALE.at(Pen.Side.AROUND), new Pen.Point((from + to) / 2,
                        BAR_BOTTOM - 8), s.word());
            }
            dark = !dark;
        }
        TimeAxis.breaks(sheet, f, false);
        called(pen, f);
    }

    /** Words in two rows, as far as there is room; the marks are all there, with how long they stood. */
    private void called(Pen pen, Frame f) {
        double[] free = {0, 0};
        for (Mark m : did.marks()) {
            if (m.atMs() > f.toMs() || Math.max(m.atMs(), m.toMs()) < f.fromMs()) {
                continue;
            }
            double x = f.x(Math.max(m.atMs(), f.fromMs()));
            double to = f.x(Math.clamp(m.toMs(), f.fromMs(), f.toMs()));
            pen.mark(Ink.HATCHED, new Pen.Point(x, MARKS), MARK);
            pen.box(Ink.HATCHED, new Pen.Point(x, MARKS - HALF_LINE), new Pen.Point(Math.max(x, to),
                    MARKS + HALF_LINE));
            double width = Sheet.SCALE.width(m.word());
            double begin = Math.min(x + 12, Sheet.RIGHT - width);
            int row = begin > free[0] ? 0 : 1;
            if (begin > free[row]) {
                pen.text(Ink.HATCHED, Sheet.SCALE, new Pen.Point(begin, MARKS + 24 + 24 * row), m.word());
                free[row] = begin + width + 12;
            }
        }
    }
}

package org.conetender.app.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.conetender.core.unit.Text;

/**
 * The sheet: frames, scales, and curves over the course. A portrait, so that it fills a
 * page as well as a telephone, with letters that stay legible on both.
 */
final class Sheet {

    static final int WIDTH = 720;
    static final int HEIGHT = 1108;

    static final double LEFT = 74;
    static final double RIGHT = 696;

    static final Pen.Type SCALE = new Pen.Type(21);
    static final Pen.Type HEAD = new Pen.Type(22, true, Pen.Side.RIGHT_OF);

    private static final int MOST_VALUES = 5;

    /** Words move by so many lines at most; those that find no room are left out. */
    private static final int MOST_LINES = 6;

    /** Points of a curve stand no closer. */
    private static final double APART = 2.5;

    private final Pen pen;
    private final Hatch hatch;
    private final long fromMs;
    private final long toMs;
    private final List<Frame.Place> taken = new ArrayList<>();
    private Frame.Place inside = new Frame.Place(0, 0, WIDTH, HEIGHT);

    Sheet(Pen pen, Hatch hatch) {
        this(pen, hatch, hatch.toMs());
    }

    /** @param toMs where it ends instead */
    Sheet(Pen pen, Hatch hatch, long toMs) {
        this.pen = pen;
        this.hatch = hatch;
        this.fromMs = hatch.fromMs();
        this.toMs = toMs;
    }

    Pen pen() {
        return pen;
    }

    Hatch hatch() {
        return hatch;
    }

    /** An empty panel with its heading and scales. */
    Frame panel(String heading, double top, double bottom, Frame.Range range) {
        Frame f = bare(top, bottom, range);
        inside = f.place();
        pen.text(Ink.TEXT, HEAD, new Pen.Point(LEFT, top - 12), heading);
        pen.box(Ink.PAPER, new Pen.Point(LEFT, top), new Pen.Point(RIGHT, bottom));
        long now = hatch.ms(0);
        if (f.holds(now)) {
            pen.box(Ink.AHEAD, new Pen.Point(f.x(now), top), new Pen.Point(RIGHT, bottom));
        }
        for (long ms : TimeAxis.ticks(hatch, fromMs, toMs)) {
            double x = f.x(ms);
            pen.line(Ink.GRID, Pen.Stroke.HAIR, List.of(new Pen.Point(x, top), new Pen.Point(x, bottom)));
        }
        for (double v : Ticks.between(range.low(), range.high(),
                Ticks.step(range.high() - range.low(), MOST_VALUES))) {
            across(f, v, Ink.GRID, Pen.Stroke.HAIR);
            pen.text(Ink.TEXT, SCALE.at(Pen.Side.LEFT_OF), new Pen.Point(LEFT - 8, f.y(v) + 7),
                    plain(v));
        }
        pen.line(Ink.FRAME, Pen.Stroke.HAIR, List.of(new Pen.Point(LEFT, top), new Pen.Point(RIGHT, top),
                new Pen.Point(RIGHT, bottom), new Pen.Point(LEFT, bottom), new Pen.Point(LEFT, top)));
        return f;
    }

    Frame bare(double top, double bottom, Frame.Range range) {
        return new Frame(new Frame.Place(LEFT, top, RIGHT, bottom), fromMs, toMs, range);
    }

    private static String plain(double v) {
        return v == Math.rint(v) ? Text.of("%.0f", v) : Text.of("%.1f", v);
    }

    void across(Frame f, double value, Ink ink, Pen.Stroke stroke) {
        pen.line(ink, stroke, List.of(f.at(fromMs, value), f.at(toMs, value)));
    }

    void down(Frame f, long atMs, Ink ink, Pen.Stroke stroke) {
        if (f.holds(atMs)) {
            pen.line(ink, stroke, List.of(new Pen.Point(f.x(atMs), f.place().top()),
                    new Pen.Point(f.x(atMs), f.place().bottom())));
        }
    }

    /** Where the last reading is, if the picture reaches that far. */
    void now(Frame f) {
        down(f, hatch.ms(0), Ink.QUIET, Pen.Stroke.DASHED_HAIR);
    }

    /** A quantity along the course: in one line until the last reading, in dashes after it. */
    void curve(Frame f, Ink ink, IntToDoubleFunction value) {
        drawn(ink, Pen.Stroke.BOLD, points(f, value, 0, hatch.course().now()));
        drawn(ink, Pen.Stroke.DASHED_BOLD,
                points(f, value, hatch.course().now(), hatch.course().size() - 1));
    }

    /** A line; a mark where it is no longer than a point. */
    void drawn(Ink ink, Pen.Stroke stroke, List<Pen.Point> points) {
        if (points.size() > 1) {
            pen.line(ink, stroke, points);
        } else if (points.size() == 1) {
            pen.mark(ink, points.getFirst(), stroke.width());
        }
    }

    /** What lies between two quantities along the course. */
    void band(Frame f, Ink ink, IntToDoubleFunction low, IntToDoubleFunction high) {
        int last = hatch.course().size() - 1;
        List<Pen.Point> around = new ArrayList<>(points(f, low, 0, last));
        around.addAll(points(f, high, 0, last).reversed());
        pen.area(ink, around);
    }

    /** Those that lie apart on the sheet: of a long log more would be drawn than can be seen. */
    List<Pen.Point> points(Frame f, IntToDoubleFunction value, int from, int to) {
        List<Pen.Point> points = new ArrayList<>();
        double drawnTo = Double.NEGATIVE_INFINITY;
        for (int i = from; i <= to; i++) {
            double x = f.x(hatch.pointMs(i));
            if (f.holds(hatch.pointMs(i)) && (x >= drawnTo + APART || i == to)) {
                points.add(f.at(hatch.pointMs(i), value.applyAsDouble(i)));
                drawnTo = x;
            }
        }
        return points;
    }

    /** Whether no word and no mark is there: then it is taken. */
    boolean takes(Frame.Place p) {
        boolean free = taken.stream().noneMatch(p::overlaps);
        if (free) {
            taken.add(p);
        }
        return free;
    }

    /**
     * A text beside a place: on the other side, or a line or two higher or lower, where it would leave the
     * panel or lie over others.
     */
    void beside(Ink ink, Pen.Point at, Pen.Side side, String text) {
        Pen.Side other = side == Pen.Side.LEFT_OF ? Pen.Side.RIGHT_OF : Pen.Side.LEFT_OF;
        for (int i = 0; i <= 2 * MOST_LINES; i++) {
            double y = at.y() + (i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * (SCALE.size() - 1);
            for (Pen.Side s : List.of(side, other)) {
                Pen.Point base = new Pen.Point(at.x() + (s == Pen.Side.LEFT_OF ? -15 : 15), y);
                Frame.Place p = SCALE.at(s).place(base, text);
                if (inside.holds(p) && takes(p)) {
                    pen.box(Ink.HALO, new Pen.Point(p.left() - 3, y - SCALE.size() + 2),
                            new Pen.Point(p.right() + 3, y + 5));
                    pen.text(ink, SCALE.at(s), base, text);
                    return;
                }
            }
        }
    }
}

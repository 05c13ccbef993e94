package org.conetender.app.plot;

import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * The time axis: hours and days of the clock, or where no clock tells them hours since the left edge. And
 * what no axis can show: cuts of which nobody knows how long they were.
 */
final class TimeAxis {

    private static final int MOST_HOURS = 8;

    /** Half of the width of a break, points of the sheet. */
    private static final double HALF = 5;
    private static final String BREAK = "cut, length unknown";

    private TimeAxis() {}

    /** Where lines stand, ms. */
    static List<Long> ticks(Hatch hatch, long fromMs, long toMs) {
        if (hatch.axis().clock()) {
            return Ticks.hours(fromMs, toMs, hatch.axis().zone(), MOST_HOURS).stream()
                    .map(t -> t.toInstant().toEpochMilli()).toList();
        }
        List<Long> out = new ArrayList<>();
        long step = Ticks.hours(Units.hours(toMs - fromMs), MOST_HOURS) * Units.HOUR_MS;
        for (long ms = fromMs; ms <= toMs; ms += step) {
            out.add(ms);
        }
        return out;
    }

    /** Below the lowest panel. */
    static void draw(Sheet sheet, Frame f) {
        Hatch hatch = sheet.hatch();
        if (hatch.axis().clock()) {
            clock(sheet, f);
        } else {
            for (long ms : ticks(hatch, f.fromMs(), f.toMs())) {
                sheet.pen().text(Ink.TEXT, Sheet.SCALE.at(Pen.Side.AROUND),
                        new Pen.Point(f.x(ms), f.place().bottom() + 28),
                        Text.of("%.0f", Units.hours(ms - f.fromMs())));
            }
        }
        String what = hatch.axis().clock() ? "time in " + hatch.zoneName()
                : "hours since the start, as no clock was set" + (hatch.axis().breaks().isEmpty() ? ""
                        : "; without cuts");
        sheet.pen().text(Ink.QUIET, Sheet.SCALE.at(Pen.Side.AROUND),
                new Pen.Point((Sheet.LEFT + Sheet.RIGHT) / 2, f.place().bottom() + 86), what);
    }

    private static void clock(Sheet sheet, Frame f) {
        Hatch hatch = sheet.hatch();
        Pen pen = sheet.pen();
        double y = f.place().bottom();
        double half = Sheet.SCALE.width("00:00") / 2;
        String day = hatch.day(f.fromMs());
        pen.text(Ink.TEXT, Sheet.SCALE, new Pen.Point(Sheet.LEFT - half, y + 55), day);
        double free = Sheet.LEFT - half + Sheet.SCALE.width(day) + 10;
        double freeBelow = 0;
        for (long ms : ticks(hatch, f.fromMs(), f.toMs())) {
            if (f.x(ms) - half > freeBelow && f.x(ms) + half <= Sheet.WIDTH) {
                ZonedDateTime t = Instant.ofEpochMilli(ms).atZone(hatch.axis().zone());
                pen.text(Ink.TEXT, Sheet.SCALE.at(Pen.Side.AROUND), new Pen.Point(f.x(ms), y + 28),
                        Text.of("%02d:%02d", t.getHour(), t.getMinute()));
                freeBelow = f.x(ms) + half + 8;
            }
            String today = hatch.day(ms);
            double begin = Math.min(f.x(ms) - half, Sheet.WIDTH - Sheet.SCALE.width(today));
            if (!today.equals(day) && begin > free) {
                pen.text(Ink.TEXT, Sheet.SCALE, new Pen.Point(begin, y + 55), today);
                free = begin + Sheet.SCALE.width(today) + 10;
                day = today;
            }
        }
    }

    /** Over what was drawn in that panel, as if the paper were torn. @param told whether in words too */
    static void breaks(Sheet sheet, Frame f, boolean told) {
        Pen pen = sheet.pen();
        double free = Sheet.LEFT;
        for (long ms : sheet.hatch().axis().breaks()) {
            if (!f.holds(ms)) {
                continue;
            }
            double x = f.x(ms);
            // Through the halo words below it can still be read.
            pen.box(told ? Ink.PAPER : Ink.HALO, new Pen.Point(x - HALF, f.place().top()),
                    new Pen.Point(x + HALF, f.place().bottom()));
            for (double side : new double[] {x - HALF, x + HALF}) {
                pen.line(Ink.TEXT, Pen.Stroke.DASHED_HAIR, List.of(new Pen.Point(side, f.place().top()),
                        new Pen.Point(side, f.place().bottom())));
            }
            free = told ? told(sheet, x, f.place().bottom() - 10, free) : free;
        }
    }

    /** In words beside it, where there is room. @return to where the line is taken then */
    private static double told(Sheet sheet, double x, double y, double free) {
        double width = Sheet.SCALE.width(BREAK);
        boolean after = x + HALF + 6 + width < Sheet.RIGHT;
        double begin = after ? x + HALF + 6 : x - HALF - 6 - width;
        Pen.Point at = new Pen.Point(begin, y);
        if (begin < free || !sheet.takes(Sheet.SCALE.place(at, BREAK))) {
            return free;
        }
        sheet.pen().text(Ink.TEXT, Sheet.SCALE, at, BREAK);
        return begin + width + 6;
    }
}

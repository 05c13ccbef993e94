package org.conetender.app.plot;

import org.conetender.core.hatch.Course;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Speed;
import org.conetender.core.unit.Text;

/** The panels that the pictures share, each over the whole width of the sheet. */
final class Panels {

    static final double[] SHARES = {0.1, 0.5, 0.9};

    private static final Pen.Type LETTERS = new Pen.Type(19);

    private Panels() {}

    /** What was done and may have been, with what the lot needs. @param most upper edge, °C·h */
    static Frame degreeHours(Sheet sheet, double top, double bottom, double most) {
        Speed speed = sheet.hatch().speed();
        Course course = sheet.hatch().course();
        Frame f = sheet.panel("Degree-hours above 12 °C, °C·h", top, bottom, new Frame.Range(0, most));
        double above = Double.POSITIVE_INFINITY;
        double left = Sheet.LEFT + 8;
        for (double share : SHARES) {
            double needed = speed.degreeHoursAt(share);
            String words = Text.of("%.0f %% hatch by %.0f", 100 * share, needed);
            sheet.across(f, needed, Ink.QUIET, Pen.Stroke.DASHED_HAIR);
            // Where the lines are close the words stand beside those of the line below.
            left = above - f.y(needed) < LETTERS.size() + 2 ? left + LETTERS.width(words) + 8
                    : Sheet.LEFT + 8;
            above = f.y(needed);
            sheet.pen().text(Ink.QUIET, LETTERS, new Pen.Point(left, f.y(needed) - 4), words);
        }
        sheet.band(f, Ink.DEGREE_HOURS_BAND, course::least, course::most);
        sheet.curve(f, Ink.DEGREE_HOURS, course::done);
        return f;
    }

    /** The share that has hatched, with eight in ten batches around it. It is the lowest panel. */
    static Frame hatched(Sheet sheet, double top) {
        Frame f = sheet.panel("Hatched, % of what hatches", top, 1006, new Frame.Range(0, 100));
        sheet.band(f, Ink.HATCHED_BAND, i -> 100 * share(sheet, i).low(), i -> 100 * share(sheet, i).high());
        sheet.curve(f, Ink.HATCHED, i -> 100 * share(sheet, i).median());
        return f;
    }

    private static Forecast.Hatched share(Sheet sheet, int i) {
        return sheet.hatch().replay().outlook().hatched(i);
    }
}

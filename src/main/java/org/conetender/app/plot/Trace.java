package org.conetender.app.plot;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.hatch.ThermometerLog;

/**
 * The readings of a log as lines in a frame. Where many fall on one point of the sheet, the first, the
 * last, the coldest and the warmest of them are drawn: a million readings look as they should, and no
 * spike is lost.
 */
final class Trace {

    private final ThermometerLog log;
    private final Frame frame;
    private final List<List<Pen.Point>> lines = new ArrayList<>();
    private List<Pen.Point> line = new ArrayList<>();

    // The readings gathered on one point of the sheet.
    private int first = -1;
    private int last;
    private int coldest;
    private int warmest;

    private Trace(ThermometerLog log, Frame frame) {
        this.log = log;
        this.frame = frame;
    }

    /** One line for each time without a gap. */
    static List<List<Pen.Point>> of(ThermometerLog log, Frame frame) {
        Trace t = new Trace(log, frame);
        for (int i = 0; i < log.size(); i++) {
            if (frame.holds(log.timeMs(i))) {
                t.take(i);
            }
        }
        t.end();
        return t.lines;
    }

    private void take(int i) {
        if (log.gapBefore(i)) {
            end();
        }
        boolean samePlace = first >= 0
                && Math.floor(frame.x(log.timeMs(i))) == Math.floor(frame.x(log.timeMs(first)));
        if (!samePlace) {
            flush();
            first = i;
            coldest = i;
            warmest = i;
        }
        last = i;
        coldest = log.waterC(i) < log.waterC(coldest) ? i : coldest;
        warmest = log.waterC(i) > log.waterC(warmest) ? i : warmest;
    }

    private void flush() {
        if (first < 0) {
            return;
        }
        int before = -1;
        int[] order = {first, Math.min(coldest, warmest), Math.max(coldest, warmest), last};
        for (int i : order) {
            if (i != before) {
                line.add(frame.at(log.timeMs(i), log.waterC(i)));
            }
            before = i;
        }
    }

    private void end() {
        flush();
        first = -1;
        if (!line.isEmpty()) {
            lines.add(line);
            line = new ArrayList<>();
        }
    }
}

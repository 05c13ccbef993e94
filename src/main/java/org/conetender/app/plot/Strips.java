package org.conetender.app.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Slim strips that say what was switched: full where an output was on, empty where it was off, in between by
 * the share of the time; grey where nothing is on record. Of heat each point of the sheet shows the mean, of
 * air the least and of the lamp the most, so that no pause is lost.
 */
final class Strips {

    /** How a point of the sheet stands for the minutes that fall on it. */
    private enum Of { MEAN, LEAST, MOST }

    private static final double HEAT_HIGH = 28;
    private static final double HIGH = 16;
    private static final double APART = 5;

    private final Sheet sheet;
    private final Frame frame;
    private final double[] value;
    private final double[] weight;

    private Strips(Sheet sheet, Frame frame) {
        this.sheet = sheet;
        this.frame = frame;
        int points = (int) (frame.place().right() - frame.place().left());
        this.value = new double[points];
        this.weight = new double[points];
    }

    /** Heat, air and lamp below each other; nothing where nothing is on record. */
    static void draw(Sheet sheet, double top, List<BatchPicture.Switched> all) {
        if (all.isEmpty()) {
            sheet.pen().text(Ink.QUIET, Sheet.SCALE, new Pen.Point(Sheet.LEFT, top + HEAT_HIGH),
                    "what was switched is not on record");
            return;
        }
        double air = top + HEAT_HIGH + APART;
        double lamp = air + HIGH + APART;
        strip(sheet, "heat", top, top + HEAT_HIGH).show(Ink.HATCHED, all, Of.MEAN,
                BatchPicture.Switched::heat);
        strip(sheet, "air", air, air + HIGH).show(Ink.FOOD, all, Of.LEAST, BatchPicture.Switched::air);
        strip(sheet, "lamp", lamp, lamp + HIGH).show(Ink.LAMP, all, Of.MOST, BatchPicture.Switched::lamp);
    }

    private static Strips strip(Sheet sheet, String name, double top, double bottom) {
        sheet.pen().text(Ink.TEXT, Sheet.SCALE.at(Pen.Side.LEFT_OF),
                new Pen.Point(Sheet.LEFT - 8, (top + bottom) / 2 + 7), name);
        return new Strips(sheet, sheet.bare(top, bottom, new Frame.Range(0, 1)));
    }

    private void show(Ink ink, List<BatchPicture.Switched> all, Of of,
                      ToDoubleFunction<BatchPicture.Switched> share) {
        for (BatchPicture.Switched s : all) {
            double from = frame.x(s.when().fromMs()) - frame.place().left();
            double to = frame.x(s.when().toMs()) - frame.place().left();
            for (int i = (int) Math.max(0, from); i < Math.min(value.length, to); i++) {
                add(i, share.applyAsDouble(s), Math.min(to, i + 1) - Math.max(from, i), of);
            }
        }
        outline();
        for (int i = 0; i < value.length;) {
            int j = i;
            while (j < value.length && weight[j] > 0 == weight[i] > 0) {
                j++;
            }
            if (weight[i] > 0) {
                sheet.pen().area(ink, steps(i, j));
            } else {
                sheet.pen().box(Ink.UNKNOWN, new Pen.Point(frame.place().left() + i, frame.place().top()),
                        new Pen.Point(frame.place().left() + j, frame.place().bottom()));
            }
            i = j;
        }
    }

    private void add(int i, double share, double part, Of of) {
        boolean first = weight[i] == 0;
        value[i] = switch (of) {
            case MEAN -> (value[i] * weight[i] + share * part) / (weight[i] + part);
            case LEAST -> first ? share : Math.min(value[i], share);
            case MOST -> first ? share : Math.max(value[i], share);
        };
        weight[i] += part;
    }

    private void outline() {
        Frame.Place p = frame.place();
        sheet.pen().line(Ink.FRAME, Pen.Stroke.HAIR, List.of(new Pen.Point(p.left(), p.bottom()),
                new Pen.Point(p.right(), p.bottom())));
    }

    /** What lies under the steps from one point to another. */
    private List<Pen.Point> steps(int from, int to) {
        double left = frame.place().left();
        List<Pen.Point> out = new ArrayList<>();
        out.add(new Pen.Point(left + from, frame.place().bottom()));
        for (int i = from; i < to; i++) {
            if (i == from || value[i] != value[i - 1]) {
                if (i > from) {
                    out.add(new Pen.Point(left + i, frame.y(value[i - 1])));
                }
                out.add(new Pen.Point(left + i, frame.y(value[i])));
            }
        }
        out.add(new Pen.Point(left + to, frame.y(value[to - 1])));
        out.add(new Pen.Point(left + to, frame.place().bottom()));
        return out;
    }
}

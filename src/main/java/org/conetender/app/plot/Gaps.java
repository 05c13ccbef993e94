package org.conetender.app.plot;

/** Where nothing was measured, told on the panel of the water. */
final class Gaps {

    private static final String WORDS = "no reading";

    private Gaps() {}

    static void show(Sheet sheet, Frame f) {
        Hatch hatch = sheet.hatch();
        long before = f.fromMs();
        for (int i = 0; i < hatch.log().size(); i++) {
            long at = hatch.log().timeMs(i);
            boolean gap = i == 0 ? at > before : hatch.log().gapBefore(i);
            if (gap && at > f.fromMs() && before < f.toMs()) {
                double x = f.x(Math.max(before, f.fromMs()));
                double to = f.x(Math.min(at, f.toMs()));
                sheet.pen().box(Ink.UNKNOWN, new Pen.Point(x, f.place().top()),
                        new Pen.Point(to, f.place().bottom()));
                Pen.Type type = Sheet.SCALE.at(Pen.Side.AROUND);
                Pen.Point base = new Pen.Point((x + to) / 2, f.place().top() + 26);
                if (to - x > type.width(WORDS) && sheet.takes(type.place(base, WORDS))) {
                    sheet.pen().text(Ink.TEXT, type, base, WORDS);
                }
            }
            before = at;
        }
    }
}

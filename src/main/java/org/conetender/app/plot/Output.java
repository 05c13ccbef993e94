package org.conetender.app.plot;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** What all pictures share: their forms, and their heading. */
final class Output {

    private static final double EDGE = 24;
    private static final double ROOM = Sheet.WIDTH - EDGE;
    private static final Pen.Type LINE = new Pen.Type(20);
    /** Lines of a heading that have room above the first panel, and as many closer together. */
    private static final int ROOMY = 4;
    private static final int MOST_LINES = 5;

    private Output() {}

    /** @param told the same as the picture for who cannot see */
    static void svg(OutputStream out, String title, String told, Consumer<Pen> draw) throws IOException {
        SvgPen pen = new SvgPen(Sheet.WIDTH, Sheet.HEIGHT);
        draw.accept(pen);
        out.write(pen.document(title, told).getBytes(StandardCharsets.UTF_8));
    }

    /** @throws IOException also where this Java has no letters to draw with */
    static void png(OutputStream out, Consumer<Pen> draw) throws IOException {
        System.setProperty("java.awt.headless", "true");
        try {
            PngPen pen = new PngPen(Sheet.WIDTH, Sheet.HEIGHT);
            draw.accept(pen);
            pen.write(out);
        } catch (InternalError | LinkageError e) {
            throw new IOException("this Java has no letters to draw with; apt install fontconfig "
                    + "fonts-dejavu-core, or ask for a file that ends in .svg, which needs none", e);
        }
    }

    static void heading(Pen pen, String title, List<String> lines) {
        pen.text(Ink.TEXT, fitting(title), new Pen.Point(EDGE, 46), whole(title, fitting(title)));
        List<String> all = lines.stream().flatMap(l -> wrapped(l).stream()).toList();
        double y = 82;
        double step = all.size() <= ROOMY ? 28 : 22;
        for (String line : all.subList(0, Math.min(MOST_LINES, all.size()))) {
            pen.text(Ink.QUIET, LINE, new Pen.Point(EDGE, y), line);
            y += step;
        }
    }

    /** As large as the sheet has room for, down to what is still legible on a telephone. */
    private static Pen.Type fitting(String title) {
        Pen.Type large = new Pen.Type(30, true, Pen.Side.RIGHT_OF);
        return new Pen.Type(Math.max(20, large.size() * Math.min(1, ROOM / large.width(title))), true,
                Pen.Side.RIGHT_OF);
    }

    private static String whole(String title, Pen.Type type) {
        String shown = title;
        while (type.width(shown) > ROOM) {
            shown = shown.substring(0, shown.length() - 2).stripTrailing() + "…";
        }
        return shown;
    }

    /** Broken at spaces where it would leave the sheet. */
    private static List<String> wrapped(String line) {
        List<String> out = new ArrayList<>();
        String now = "";
        for (String word : line.split(" ")) {
            if (!now.isEmpty() && LINE.width(now + " " + word) > ROOM) {
                out.add(now);
                now = "";
            }
            now = now.isEmpty() ? word : now + " " + word;
        }
        out.add(now);
        return out;
    }
}

package org.conetender.app.plot;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Consumer;

/** What all pictures share: their forms, and their heading. */
final class Output {

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
        pen.text(Ink.TEXT, new Pen.Type(30, true, Pen.Side.RIGHT_OF), new Pen.Point(24, 46), title);
        double y = 82;
        for (String line : lines) {
            pen.text(Ink.QUIET, new Pen.Type(20), new Pen.Point(24, y), line);
            y += 28;
        }
    }
}

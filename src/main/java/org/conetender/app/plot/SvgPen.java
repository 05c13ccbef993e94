package org.conetender.app.plot;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.conetender.core.unit.Text;

/**
 * Writes Scalable Vector Graphics 1.1. Letters stay letters, so that they can be read aloud and looked for,
 * and no font is needed where the picture is made.
 */
final class SvgPen implements Pen {

    private final StringBuilder body = new StringBuilder();
    private final int width;
    private final int height;

    /** @param width of the sheet, points  @param height likewise */
    SvgPen(int width, int height) {
        this.width = width;
        this.height = height;
        box(Ink.PAPER, new Point(0, 0), new Point(width, height));
    }

    @Override
    public void area(Ink ink, List<Point> corners) {
        body.append(Text.of("<polygon fill=\"%s\"%s points=\"%s\"/>%n", colour(ink),
                opacity("fill", ink), points(corners)));
    }

    @Override
    public void line(Ink ink, Stroke stroke, List<Point> points) {
        String dash = stroke.dash() == 0 ? ""
                : Text.of(" stroke-dasharray=\"%.1f\"", stroke.dash());
        body.append(Text.of("<polyline fill=\"none\" stroke=\"%s\"%s stroke-width=\"%.1f\"%s "
                + "stroke-linejoin=\"round\" points=\"%s\"/>%n", colour(ink), opacity("stroke", ink),
                stroke.width(), dash, points(points)));
    }

    @Override
    public void text(Ink ink, Type type, Point base, String text) {
        String anchor = switch (type.side()) {
            case RIGHT_OF -> "start";
            case AROUND -> "middle";
            case LEFT_OF -> "end";
        };
        body.append(Text.of("<text fill=\"%s\" font-size=\"%.0f\"%s text-anchor=\"%s\" x=\"%.1f\" y=\"%.1f\">"
                + "%s</text>%n", colour(ink), type.size(), type.bold() ? " font-weight=\"bold\"" : "", anchor,
                base.x(), base.y(), plain(text)));
    }

    /** The whole document. @param title what it shows  @param told the same for who cannot see */
    String document(String title, String told) {
        return Text.of("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\" "
                + "aria-labelledby=\"title told\" font-family=\"sans-serif\">%n"
                + "<title id=\"title\">%s</title>%n"
                + "<desc id=\"told\">%s</desc>%n%s</svg>%n", width, height, plain(title), plain(told), body);
    }

    private static String colour(Ink ink) {
        return String.format(Locale.ROOT, "#%06x", ink.rgb());
    }

    private static String opacity(String of, Ink ink) {
        return ink.opacity() == 1 ? "" : Text.of(" %s-opacity=\"%.2f\"", of, ink.opacity());
    }

    private static String points(List<Point> points) {
        return points.stream().map(p -> tenth(p.x()) + ',' + tenth(p.y())).collect(Collectors.joining(" "));
    }

    /** Finer than a tenth of a point nobody sees. */
    private static String tenth(double d) {
        long tenths = Math.round(d * 10);
        return tenths % 10 == 0 ? String.valueOf(tenths / 10) : String.valueOf(tenths / 10.0);
    }

    private static String plain(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}

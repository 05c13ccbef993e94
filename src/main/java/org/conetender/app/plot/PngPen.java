package org.conetender.app.plot;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import javax.imageio.ImageIO;

/** Paints pixels, twice as fine as points, without a screen. */
final class PngPen implements Pen {

    private static final int FINE = 2;

    private final BufferedImage image;
    private final Graphics2D g;

    /** @param width of the sheet, points  @param height likewise */
    PngPen(int width, int height) {
        image = new BufferedImage(FINE * width, FINE * height, BufferedImage.TYPE_INT_RGB);
        g = image.createGraphics();
        g.scale(FINE, FINE);
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        box(Ink.PAPER, new Point(0, 0), new Point(width, height));
    }

    @Override
    public void area(Ink ink, List<Point> corners) {
        use(ink);
        Path2D path = path(corners);
        path.closePath();
        g.fill(path);
    }

    @Override
    public void line(Ink ink, Stroke stroke, List<Point> points) {
        use(ink);
        float[] dash = stroke.dash() == 0 ? null : new float[] {(float) stroke.dash()};
        g.setStroke(new BasicStroke((float) stroke.width(), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1,
                dash, 0));
        g.draw(path(points));
    }

    @Override
    public void text(Ink ink, Type type, Point base, String text) {
        use(ink);
        g.setFont(new Font(Font.SANS_SERIF, type.bold() ? Font.BOLD : Font.PLAIN, 1)
                .deriveFont((float) type.size()));
        double width = g.getFontMetrics().getStringBounds(text, g).getWidth();
        double x = switch (type.side()) {
            case RIGHT_OF -> base.x();
            case AROUND -> base.x() - width / 2;
            case LEFT_OF -> base.x() - width;
        };
        g.drawString(text, (float) x, (float) base.y());
    }

    void write(OutputStream out) throws IOException {
        g.dispose();
        ImageIO.setUseCache(false);
        ImageIO.write(image, "png", out);
    }

    private void use(Ink ink) {
        g.setColor(new Color((int) Math.round(255 * ink.opacity()) << 24 | ink.rgb(), true));
    }

    private static Path2D path(List<Point> points) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < points.size(); i++) {
            Point p = points.get(i);
            if (i == 0) {
                path.moveTo(p.x(), p.y());
            } else {
                path.lineTo(p.x(), p.y());
            }
        }
        return path;
    }
}

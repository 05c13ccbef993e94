package org.conetender.app.plot;

import java.util.List;

/** Draws on a sheet. Places in points from its upper left corner; later things cover earlier ones. */
interface Pen {

    /** A place on the sheet. */
    record Point(double x, double y) {}

    /** How a line runs: what is measured without a break, what is reckoned in dashes. */
    enum Stroke {
        HAIR(1, false),
        DASHED_HAIR(1.5, true),
        BOLD(3.5, false),
        DASHED_BOLD(3.5, true);

        private final double width;
        private final boolean dashed;

        Stroke(double width, boolean dashed) {
            this.width = width;
            this.dashed = dashed;
        }

        double width() {
            return width;
        }

        /** Length of a dash, in points; as long a gap follows. 0 for a line without. */
        double dash() {
            return dashed ? 3 + 1.5 * width : 0;
        }
    }

    /** Where a text stands beside its place. */
    enum Side {
        RIGHT_OF, AROUND, LEFT_OF
    }

    /**
     * @param size height of a line, points  @param bold for what is read first
     * @param side where it stands
     */
    record Type(double size, boolean bold, Side side) {

        Type(double size) {
            this(size, false, Side.RIGHT_OF);
        }

        Type at(Side other) {
            return new Type(size, bold, other);
        }

        /** Where a text will stand: capitals are three quarters of a line high, little hangs below. */
        Frame.Place place(Point base, String text) {
            double wide = width(text);
            double left = base.x - switch (side) {
                case RIGHT_OF -> 0;
                case AROUND -> wide / 2;
                case LEFT_OF -> wide;
            };
            return new Frame.Place(left, base.y - 0.75 * size, left + wide, base.y + 0.1 * size);
        }

        /** How wide a text will be, in points: a guess that holds for the usual fonts without serifs. */
        double width(String text) {
            return text.length() * size * (bold ? 0.62 : 0.57);
        }
    }

    /** A filled shape. */
    void area(Ink ink, List<Point> corners);

    void line(Ink ink, Stroke stroke, List<Point> points);

    /** @param base where its letters stand */
    void text(Ink ink, Type type, Point base, String text);

    default void box(Ink ink, Point upperLeft, Point lowerRight) {
        area(ink, List.of(upperLeft, new Point(lowerRight.x, upperLeft.y), lowerRight,
                new Point(upperLeft.x, lowerRight.y)));
    }

    /** A mark around a place: a square on its corner. */
    default void mark(Ink ink, Point at, double radius) {
        area(ink, List.of(new Point(at.x, at.y - radius), new Point(at.x + radius, at.y),
                new Point(at.x, at.y + radius), new Point(at.x - radius, at.y)));
    }
}

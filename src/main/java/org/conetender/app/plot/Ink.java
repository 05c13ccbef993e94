package org.conetender.app.plot;

/**
 * What things are drawn with. Hues that people with any of the usual colour blindnesses tell apart, and
 * that differ in lightness too; nothing is told by its hue alone.
 */
enum Ink {
    PAPER(0xffffff, 1),
    /** Behind letters that stand on something else. */
    HALO(0xffffff, 0.7),
    TEXT(0x1a1a1a, 1),
    QUIET(0x595959, 1),
    FRAME(0x8c8c8c, 1),
    GRID(0xdedede, 1),
    /** The time after the last reading. */
    AHEAD(0xf3f3f3, 1),
    /** What is not measured: a gap. */
    UNKNOWN(0x8c8c8c, 0.25),
    WATER(0x0072b2, 1),
    DEGREE_HOURS(0x00664a, 1),
    DEGREE_HOURS_BAND(0x00664a, 0.25),
    HATCHED(0xb34700, 1),
    HATCHED_BAND(0xe69f00, 0.35),
    FOOD(0x56b4e9, 1),
    LAMP(0xe69f00, 1);

    private final int rgb;
    private final double opacity;

    Ink(int rgb, double opacity) {
        this.rgb = rgb;
        this.opacity = opacity;
    }

    /** Red, green and blue in one number. */
    int rgb() {
        return rgb;
    }

    /** 0..1. */
    double opacity() {
        return opacity;
    }
}

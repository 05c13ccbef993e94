package org.conetender.sim;

/**
 * The wetted surfaces of a cone that holds some water, after the shape of science.md §9: height 1.2 times
 * the diameter, so that volume = 0.1·π·D³.
 *
 * @param wallM2 wall against the room, m²
 * @param topM2 water surface, m²
 */
record Vessel(double wallM2, double topM2) {

    static Vessel holding(double litres) {
        double diameter = Math.cbrt(litres / 1_000 / (0.1 * Math.PI));
        double height = 1.2 * diameter;
        double slant = Math.hypot(diameter / 2, height);
        return new Vessel(Math.PI * diameter / 2 * slant, Math.PI * diameter * diameter / 4);
    }
}

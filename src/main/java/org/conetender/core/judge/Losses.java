package org.conetender.core.judge;

import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/**
 * Nominal heat losses of a cone by its volume, until the cone's own are learnt: the worked cones of
 * science.md §9 (height 1.2 diameters, wall 9.5 W/m²K), interpolated on a log-log line, along which
 * surface follows volume. Outside 2 to 20 L the end slopes go on.
 */
public final class Losses {

    /** Worked cones of science.md §9: litres, W/K under a lid, W/K open. */
    private static final double[] LITRES = {2, 10, 20};
    private static final double[] LID = {0.94, 2.7, 4.4};
    private static final double[] OPEN = {1.34, 3.9, 6.2};

    /** Their walls, m². */
    private static final double[] WALL = {0.070, 0.205, 0.326};
    /**
     * What insulation takes from a wall's loss, W/(m²·K): science.md §9 has 9.5 for a bare one and 2.3, 0.95
     * and 0.76 for insulated ones. The least insulation of the three is taken (guess).
     */
    private static final double INSULATION = 9.5 - 2.3;

    private Losses() {}

    /** Loss to the room in W/K. @param litres water, above 0  @param vessel what covers it */
    public static double wattsPerK(double litres, Cone.Vessel vessel) {
        double bare = wattsPerK(litres, vessel.lid());
        return vessel.insulated() ? bare - INSULATION * alongSurface(WALL, litres) : bare;
    }

    /** Loss to the room in W/K. @param litres water, above 0  @param lid whether the cone is covered */
    public static double wattsPerK(double litres, boolean lid) {
        if (!(litres > 0)) {
            throw new IllegalArgumentException("a cone holds more than 0 L, got " + litres);
        }
        return alongSurface(lid ? LID : OPEN, litres);
    }

    private static double alongSurface(double[] ua, double litres) {
        int i = litres < LITRES[1] ? 0 : 1;
        double slope = Math.log(ua[i + 1] / ua[i]) / Math.log(LITRES[i + 1] / LITRES[i]);
        return ua[i] * Math.pow(litres / LITRES[i], slope);
    }

    /** Time constant C/UA in hours. @param wattsPerK loss to the room, W/K, above 0 */
    public static double timeConstantH(double litres, double wattsPerK) {
        return litres * Units.BRINE_J_PER_L_K / wattsPerK / 3600;
    }
}

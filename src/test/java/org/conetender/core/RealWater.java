package org.conetender.core;

/** Water of cone a in a room of 20 °C that really warms while its heater is on, and cools else. */
public final class RealWater {

    /** 25 W in 2 L of brine; such a cone follows its room in some hours, its heater in less than a minute. */
    private static final double RISE_K_PER_S = 0.0031;
    private static final double COOLS_IN_S = 6_000;
    private static final double LAG_S = 45;
    private static final double ROOM_C = 20;

    private double degreesC;
    private double element;
    private long lastMs;

    private RealWater(double degreesC, long nowMs) {
        this.degreesC = degreesC;
        this.lastMs = nowMs;
    }

    /** From now on, whatever the story does. @param degreesC at first */
    public static RealWater in(Story s, double degreesC) {
        RealWater w = new RealWater(degreesC, s.now().monoMs());
        s.senses.water("a", degreesC);
        s.each(w::second);
        return w;
    }

    /** Somebody exchanged it. */
    public void becomes(double warmC) {
        degreesC = warmC;
    }

    private void second(Story s) {
        double dtS = Math.clamp((s.now().monoMs() - lastMs) / 1_000.0, 0, 5);
        lastMs = s.now().monoMs();
        element += ((s.on("a.heat") && s.on("a.cut-out") ? 1 : 0) - element) * dtS / LAG_S;
        degreesC += dtS * (RISE_K_PER_S * element - (degreesC - ROOM_C) / COOLS_IN_S);
        s.senses.water("a", degreesC);
    }
}

package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.heat.Hold;
import org.conetender.core.heat.Share;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.settings.Cone.HeatKind;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How hot a heater that hangs in air gets while it is tried: its pulses are why so little power is given. */
class DryTrialTest {

    private static final double ROOM_C = 20;
    private static final double WATTS = 25;
    private static final int HOUR_S = 3_600;

    /** Over the room at most in an hour, K. */
    private static double hottestK(double lagS, double share, long windowMs) {
        Element e = new Element(HeatKind.IMMERSED, WATTS, lagS);
        Share.Credit credit = Share.Credit.NONE;
        boolean on = false;
        double most = 0;
        for (int s = 0; s < HOUR_S; s++) {
            credit = Share.after(credit, share, on, new Share.Window(1_000, windowMs));
            on = credit.wants();
            e.step(on ? WATTS : 0, Double.NaN, ROOM_C, 1);
            most = Math.max(most, e.degreesC(ROOM_C) - ROOM_C);
        }
        return most;
    }

    /** Lags of heaters (control.md, head note); power over water from the least to the most that is taken. */
    @ParameterizedTest
    @CsvSource({"20,3", "20,6", "20,25", "45,3", "90,3", "90,25"})
    void pulsesLeaveItFarBelowWhatFullPowerMakesOfIt(double lagS, double wattsPerL) {
        long window = HeatTrack.trialMs(wattsPerL / 4_100);
        double full = hottestK(lagS, 1, window);
        assertThat(full).as("full power").isGreaterThan(140);
        assertThat(hottestK(lagS, Hold.LOW_POWER, window)).as("tried").isLessThan(0.6 * full);
        assertThat(hottestK(lagS, Hold.LOW_POWER, window))
                .as("against the pulses of a minute that a relay's window gives")
                .isLessThan(1.5 * hottestK(lagS, Hold.LOW_POWER, 240_000));
    }
}

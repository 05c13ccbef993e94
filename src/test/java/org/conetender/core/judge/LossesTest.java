package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.Larkmoor;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Cone.Vessel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a lid and an insulated wall save. */
class LossesTest {

    private static double loss(double litres, boolean lid, boolean insulated) {
        Cone c = Larkmoor.with().cones().getFirst();
        Cone.Fittings f = c.fittings();
        Cone with = new Cone(c.id(), new Cone.Fittings(f.probes(), f.heat(), f.air(), f.lights(), f.button(),
                new Vessel(lid, insulated, 0)), c.limits(), c.timing(), c.usual());
        return Judge.lossWPerK(with, litres);
    }

    /** Wall and top of science.md §9: 2.3 W/(m²·K) through an insulated wall, 10 under a lid, 25 open. */
    @ParameterizedTest(name = "{0} L")
    @CsvSource({"2, 0.070, 0.027", "10, 0.205, 0.079", "20, 0.326, 0.125"})
    void anInsulatedWallLosesWhatItsAreaSays(double litres, double wallM2, double topM2) {
        assertThat(loss(litres, true, true)).isCloseTo(wallM2 * 2.3 + topM2 * 10, within(0.06));
        assertThat(loss(litres, false, true)).isCloseTo(wallM2 * 2.3 + topM2 * 25, within(0.06));
    }

    @Test
    void itNeverLosesMoreThanABareOneAndNeverNothing() {
        for (double litres = 0.1; litres <= 60; litres += 0.1) {
            for (boolean lid : new boolean[] {false, true}) {
                assertThat(loss(litres, lid, true)).isPositive().isLessThan(loss(litres, lid, false));
            }
        }
    }
}

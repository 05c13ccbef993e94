package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.settings.Cone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SaltedTest {

    @ParameterizedTest
    @CsvSource({"30, 1", "42, 1.108", "14, 0.856", "25, 0.955", "5, 0.82", "10, 0.82", "45, 1.135",
        "80, 1.135"})
    void thermalConstantsGrowByNineThousandthsForEachPpt(double ppt, double slower) {
        Rate r = new Salted(Rate.USUAL, ppt);
        assertThat(Rate.USUAL.perHour(26) / r.perHour(26)).isCloseTo(slower, within(1e-9));
        assertThat(r.thresholdAtC(r.perHour(26))).as("the water is as warm as it is")
                .isCloseTo(26, within(1e-9));
    }

    /** T80 of 24, 28 and 31 h at 14, 28 and 42 ppt (science.md §2.4): within a twentieth of that. */
    @ParameterizedTest
    @CsvSource({"14, 24", "28, 28", "42, 31"})
    void theRowsItWasMadeOfAreMet(double ppt, double t80) {
        double at28 = 28 / new Salted(Rate.USUAL, 28).slower();
        assertThat(at28 * new Salted(Rate.USUAL, ppt).slower()).isCloseTo(t80, within(0.05 * t80));
    }

    @Test
    void zonesStayWhereTheyAre() {
        Zones z = Zones.of(new Cone.Limits(27, 31, 32, 37, 20)).in(40);
        assertThat(z.lossC()).isEqualTo(37);
        assertThat(z.rate().ceilingC()).isEqualTo(32);
        assertThat(z.rate().baseC()).isEqualTo(12);
        assertThat(z.rate().bestC()).isEqualTo(Zones.of(new Cone.Limits(27, 31, 32, 37, 20)).rate().bestC());
        assertThat(z.rate().perHour(33)).isZero();
        assertThatThrownBy(() -> Zones.USUAL.in(-1)).hasMessageContaining("salt");
        assertThatThrownBy(() -> Zones.USUAL.in(Double.NaN)).hasMessageContaining("salt");
    }
}

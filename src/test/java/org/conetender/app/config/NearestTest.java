package org.conetender.app.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A slip of the finger finds its word; a word of another kind finds none. */
class NearestTest {

    @ParameterizedTest
    @CsvSource({"probes, probes, 0", "probe, probes, 1", "porbes, probes, 1", "lid, '', 3", "watts, wats, 1",
        "guard-c, gaurd-f, 2"})
    void theDistanceCountsSlips(String a, String b, int slips) {
        assertThat(Nearest.distance(a, b)).isEqualTo(slips);
        assertThat(Nearest.distance(b, a)).isEqualTo(slips);
    }

    @Test
    void theNearestWordIsMeantAndAStrangerIsNot() {
        List<String> words = List.of("guard-c", "setpoint-c", "lid");
        assertThat(Nearest.of("gaurd-c", words)).contains("guard-c");
        assertThat(Nearest.of("lod", words)).contains("lid");
        assertThat(Nearest.of("colour", words)).isEmpty();
        assertThat(Nearest.hint("colour", words)).isEmpty();
    }
}

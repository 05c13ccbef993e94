package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

/** What each stage says of itself: whatever heats, aerates or calls goes by it. */
class StageTest {

    private static Set<String> where(Predicate<Stage> which) {
        Set<String> out = new TreeSet<>();
        for (String word : FitsTest.WAYS.keySet()) {
            Stage s = FitsTest.in(word).batch().stage();
            assertThat(s.word()).isEqualTo(word);
            if (which.test(s)) {
                out.add(word);
            }
        }
        return out;
    }

    @Test
    void waterStandsInAllButAnEmptyCone() {
        assertThat(where(s -> !s.hasWater())).containsExactlyInAnyOrder("clean", "drained");
    }

    @Test
    void animalsSwimFromTheFirstTenthUntilTheyAreDrawn() {
        assertThat(where(Stage::hasAnimals)).containsExactlyInAnyOrder("hatching", "ready", "settling",
                "settled", "drawing");
    }

    @Test
    void cystsDevelopFromTheWettingUntilTheWaterIsDrawnOff() {
        assertThat(where(Stage::develops)).containsExactlyInAnyOrder("hydrating", "incubating", "hatching",
                "ready", "settling", "settled", "drawing");
    }

    @Test
    void theHarvestPointLiesAheadOfThree() {
        assertThat(where(Stage::growing)).containsExactlyInAnyOrder("hydrating", "incubating", "hatching");
    }

    @Test
    void theAirIsOffWhileItSeparates() {
        assertThat(where(s -> s.airOff() != null)).containsExactlyInAnyOrder("settling", "settled",
                "drawing");
    }
}

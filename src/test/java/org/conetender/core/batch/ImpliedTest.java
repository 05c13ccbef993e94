package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.image.Step;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which steps a later report stands for. */
class ImpliedTest {

    @ParameterizedTest
    @CsvSource({"clean, FILLED, ''", "filled, DRAINED, stocked settle drawing",
        "hydrating, DRAINED, settle drawing", "incubating, CLEANED, settle drawing drained",
        "hatching, DRAINED, settle drawing", "ready, CLEANED, settle drawing drained",
        "settling, DRAINED, drawing", "settled, DRAINED, drawing", "drawing, DRAINED, ''",
        "drawing, CLEANED, drained", "drained, CLEANED, ''", "drained, FILLED, cleaned",
        "abandoned, DRAINED, ''", "abandoned, CLEANED, drained"})
    void theStepsBetween(String stage, Step step, String words) {
        assertThat(Implied.before(FitsTest.in(stage).batch().stage(), step))
                .isEqualTo(words.isEmpty() ? List.of() : List.of(words.split(" ")));
    }
}

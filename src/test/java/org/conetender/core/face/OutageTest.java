package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.unit.Span;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OutageTest {

    private static final long MINUTE = 60_000;

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "0 | 1 | ",
        "3 | 3 | for about 3 min",
        "603 | 604 | for about 10 h 04 min",
        "40 | 190 | for between 40 min and 3 h 10 min",
        "4000 | 4000 | for about 2 days 18 h",
        "1 | -1 | for 1 min or longer: no clock tells how long"})
    void howLongItWasIsSaidAsWellAsItIsKnown(long least, long most, String words) {
        Span away = new Span(least * MINUTE, most < 0 ? Long.MAX_VALUE : most * MINUTE);
        assertThat(Outage.words(away).orElse(null)).isEqualTo(words == null ? null
                : "nobody minded the cones " + words);
    }
}

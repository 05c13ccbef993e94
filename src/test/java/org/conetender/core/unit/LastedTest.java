package org.conetender.core.unit;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LastedTest {

    private static final double MINUTE_MS = 60_000;

    @ParameterizedTest
    @CsvSource({"0.4, less than a minute", "1, 1 min", "119, 119 min", "120, 2 h 00 min",
        "604.4, 10 h 04 min", "2879, 47 h 59 min", "2880, 2 days 0 h", "4000, 2 days 18 h"})
    void howLongIsSaidInTheUnitsThatPeopleCountIn(double minutes, String words) {
        assertThat(Lasted.words((long) (minutes * MINUTE_MS))).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({"30, 31.5, about 32 min", "30, 33, between 30 min and 33 min", "40, -1, 40 min or longer",
        "6001, 6010, about 4 days 4 h", "6001, 6070, between 4 days 4 h and 4 days 5 h"})
    void boundsThatLieNearAreOneLength(double least, double most, String words) {
        assertThat(Lasted.words(new Span((long) (least * MINUTE_MS), most < 0 ? Long.MAX_VALUE
                : (long) (most * MINUTE_MS)))).isEqualTo(words);
    }
}

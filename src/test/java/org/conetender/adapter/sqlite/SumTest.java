package org.conetender.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Sums lie in records that were written by earlier releases: what a row sums to is fixed for good. */
class SumTest {

    @Test
    void sumsAreWhatTheyAlwaysWere() {
        assertThat(Sum.of("a checkpoint of 27.0 °C")).isEqualTo(1_479_366_350L);
        assertThat(Sum.of(17L, "boot-1", 60_000L, -5L, 1, "a", "", "told\tdid\tstarted"))
                .isEqualTo(123_299_245L);
    }

    @Test
    void fieldsDoNotRunIntoEachOther() {
        assertThat(Sum.of("a", "")).isNotEqualTo(Sum.of("", "a")).isNotEqualTo(Sum.of("a"));
    }
}

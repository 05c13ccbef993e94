package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.image.ContactSample.Level;
import org.junit.jupiter.api.Test;

/** A contact that changes its mind: whoever heats takes it for low, whoever stops air takes it for full. */
class LevelTrackTest {

    private static LevelTrack reads(LevelTrack t, Level level, int seconds) {
        LevelTrack next = t;
        for (int i = 0; i < seconds; i++) {
            next = next.after(level, 1_000);
        }
        return next;
    }

    @Test
    void theFirstReadingCounts() {
        assertThat(LevelTrack.NONE.after(Level.CLOSED, 1_000).says()).isEqualTo(Level.CLOSED);
        assertThat(LevelTrack.NONE.after(Level.OPEN, 1_000).empty()).isTrue();
        assertThat(LevelTrack.NONE.empty()).isFalse();
    }

    @Test
    void openCountsAtOnceAndClosedAfterTenSecondsWithoutABreak() {
        LevelTrack low = reads(reads(LevelTrack.NONE, Level.CLOSED, 60), Level.OPEN, 1);
        assertThat(low.says()).isEqualTo(Level.OPEN);
        assertThat(reads(low, Level.CLOSED, 9).says()).isEqualTo(Level.OPEN);
        assertThat(reads(low, Level.CLOSED, 10).says()).isEqualTo(Level.CLOSED);
        LevelTrack broken = reads(reads(low, Level.CLOSED, 9), Level.UNKNOWN, 1);
        assertThat(broken.says()).isEqualTo(Level.UNKNOWN);
        assertThat(reads(broken, Level.CLOSED, 9).says()).isEqualTo(Level.UNKNOWN);
        assertThat(reads(broken, Level.CLOSED, 10).says()).isEqualTo(Level.CLOSED);
    }

    /** Somebody fills it unreported: the air must come on in that second. */
    @Test
    void aConeIsNotSurelyEmptyFromTheFirstClosedReadingOn() {
        LevelTrack low = reads(LevelTrack.NONE, Level.OPEN, 60);
        assertThat(low.empty()).isTrue();
        assertThat(reads(low, Level.CLOSED, 1).empty()).isFalse();
        assertThat(reads(low, Level.UNKNOWN, 1).empty()).isFalse();
        assertThat(reads(reads(low, Level.CLOSED, 1), Level.OPEN, 1).empty()).isTrue();
    }
}

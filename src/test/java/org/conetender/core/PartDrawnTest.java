package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Whoever drew a part and reports only that is told how to say it, and what is told then is taken. */
class PartDrawnTest {

    @Test
    void whoReportsItStraightAwayIsToldWhatToSayAndThatIsTaken() {
        Story s = Story.at().does(Step.STARTED, Step.FIRST_SEEN);
        Result.Reply r = s.did("a", Step.PART_DRAWN);
        assertThat(r.accepted()).isFalse();
        assertThat(r.sentence()).isEqualTo("Cone a: no separation was reported of which a part could be "
                + "drawn; report 'settle', 'drawing' and 'part-drawn' as you do them, or one after the other "
                + "if some is drawn already.");
        s.does(Step.SETTLE, Step.DRAWING, Step.PART_DRAWN);
        assertThat(s.stage()).isEqualTo("hatching");
        assertThat(s.batch("a").marks().harvests()).isEqualTo(1);
        s.tick();
        assertThat(s.on("a.air-pause")).isFalse();
    }
}

package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import org.conetender.core.RealWater;
import org.conetender.core.Story;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** A moved forecast is told where it matters: shortly before a feed that it was to be ready for. */
class MissedFeedTest {

    private static final String MISSED = "homie/5/larkmoor-a/hatch/feed-missed";

    private static Map<String, String> tree(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
    }

    /** At 27 °C from nine in the morning: to be ready before half past twelve of the next day. */
    private static Story started() {
        Story s = Story.at();
        s.does(Step.STARTED);
        return s;
    }

    private static Story cold(Story s, double degreesC) {
        s.senses.probe("a-water", new Reading.Value(degreesC));
        return s.minutes(30);
    }

    @Test
    void whatWasToBeReadyForTheNextFeedAndIsNotIsTold() {
        Story s = started();
        RealWater water = RealWater.in(s, 27);
        s.pass(Duration.ofHours(23));
        assertThat(tree(s)).doesNotContainKey(MISSED);
        assertThat(tree(s).get("homie/5/larkmoor/feed/digest")).contains("cone a at");
        water.becomes(7);
        s.does(Step.TOPPED_UP).pass(Duration.ofMinutes(210));
        assertThat(tree(s).get(MISSED))
                .startsWith("It was to be ready for the feed at 12:30 and will not be: now it is about 1");
        s.pass(Duration.ofMinutes(150));
        assertThat(tree(s)).as("that feed is over").doesNotContainKey(MISSED);
    }

    @Test
    void whatMovesButStillIsInTimeIsNotTold() {
        Story s = started();
        s.pass(Duration.ofHours(23));
        String was = tree(s).get("homie/5/larkmoor-a/hatch/ready-at");
        cold(s, 25);
        assertThat(tree(s).get("homie/5/larkmoor-a/hatch/ready-at")).isNotEqualTo(was);
        assertThat(tree(s)).doesNotContainKey(MISSED);
    }

    @Test
    void whatMovesEarlierThanSixHoursBeforeIsNotTold() {
        Story s = started();
        s.pass(Duration.ofHours(12));
        cold(s, 16);
        s.pass(Duration.ofHours(2));
        assertThat(tree(s)).doesNotContainKey(MISSED);
    }

    @Test
    void whatWasNeverToBeReadyForAFeedMissesNone() {
        Story s = started();
        for (int hour = 0; hour < 20; hour++) {
            s.pass(Duration.ofHours(1));
            assertThat(tree(s)).as("hour " + hour).doesNotContainKey(MISSED);
        }
    }
}

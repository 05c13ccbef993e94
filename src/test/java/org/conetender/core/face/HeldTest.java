package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** What is published of the heat tells what it is held at and why it is less than wanted. */
class HeldTest {

    private static final String A = "homie/5/larkmoor-a/";

    private static Map<String, String> tree(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
    }

    @Test
    void aReadyConeIsHeldAtItsFloorAndAHarvestedOneAtNothing() {
        Story s = Story.at();
        assertThat(tree(s)).doesNotContainKey(A + "water/held");
        s.does(Step.STARTED);
        s.minutes(1);
        assertThat(tree(s)).containsEntry(A + "water/held", "27").containsEntry(A + "water/setpoint", "27");
        s.does(Step.FIRST_SEEN);
        s.pass(Duration.ofHours(27));
        assertThat(tree(s)).containsEntry(A + "hatch/stage", "ready").containsEntry(A + "water/held", "20")
                .containsEntry(A + "water/setpoint", "27");
        s.does(Step.SETTLE);
        s.minutes(1);
        assertThat(tree(s)).doesNotContainKey(A + "water/held");
    }

    @Test
    void untilTheWaterAnswersItIsSaidThatHeatIsGivenGently() {
        Story s = Story.at();
        s.senses.water("a", 22);
        s.does(Step.STARTED);
        s.minutes(1);
        assertThat(tree(s)).containsEntry(A + "heat/duty", "25")
                .containsEntry(A + "heat/limited", "gently at first, until the water is seen to warm");

        Story level = Story.at(Fitting.LEVEL);
        level.senses.water("a", 22);
        level.does(Step.STARTED);
        level.minutes(1);
        assertThat(tree(level)).doesNotContainKey(A + "heat/limited");
    }

    @Test
    void aProbeThatJumpedIsSaidToNeedThreeGoodMinutes() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.minutes(5);
        s.senses.water("a", 22);
        s.minutes(1);
        assertThat(tree(s).get(A + "water/why")).matches("the reading jumped from 27\\.[01] to 22\\.0 °C, "
                + "as a probe does that left the water; it is believed again after three minutes of readings "
                + "that agree");
    }

    @Test
    void whyAProbeIsNotBelievedIsSaidPlainly() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.senses.probe("a-water", new Reading.Faulty("the probe's answer arrives garbled (the checksum)"));
        s.minutes(4);
        assertThat(tree(s).get(A + "water/why")).isEqualTo("the probe's answer arrives garbled");
        assertThat(tree(s).get(A + "$alert/probe")).doesNotContain("checksum", "nonsense");
    }
}

package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Whoever has no heater reads nothing of one. */
class NoHeaterWordsTest {

    private static final String HAND = "homie/5/larkmoor-a/hand/";

    private static Map<String, String> tree(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
    }

    private static void silentOfHeat(Story s) {
        tree(s).forEach((topic, said) -> {
            if (topic.startsWith("homie/5/larkmoor-a/")) {
                assertThat(topic).doesNotContain("/heat/", "setpoint");
                assertThat(said).as(topic).doesNotContainIgnoringCase("heat").doesNotContain("unplug");
            }
        });
    }

    @Test
    void noStepOfABatchSpeaksOfHeat() {
        Story s = Story.at(Fitting.NO_HEAT);
        silentOfHeat(s);
        for (Step step : new Step[] {Step.FILLED, Step.STOCKED, Step.HANDS_IN, Step.FIRST_SEEN}) {
            silentOfHeat(s.does(step).seconds(2));
        }
        s.minutes(16);
        for (Step step : new Step[] {Step.SETTLE, Step.DRAWING, Step.DRAINED, Step.HANDS_IN}) {
            silentOfHeat(s.does(step).seconds(2));
        }
        s.minutes(16);
        assertThat(tree(s).get(HAND + "next-step")).startsWith("rinse the nauplii; scrub and rinse the "
                + "cone;");
        s.does(Step.CLEANED, Step.STARTED, Step.ABANDONED);
        assertThat(tree(s).get(HAND + "next-step")).isEqualTo("drain and clean the cone; then report "
                + "'cleaned'.");
    }

    @Test
    void noAlarmSpeaksOfHeat() {
        Story s = Story.at(Fitting.NO_HEAT, Fitting.LEVEL);
        s.does(Step.STARTED).minutes(10);
        s.senses.contact("a.level", Level.OPEN);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(10);
        assertThat(tree(s).get(HAND + "alarms")).contains("Cone a, dry: ", "\n  Fill up to the mark, or");
        assertThat(s.standing("a")).contains("probe", "dry");
        silentOfHeat(s);
        Story warm = Story.at(Fitting.NO_HEAT);
        warm.does(Step.STARTED);
        warm.senses.water("a", 31.5);
        warm.minutes(5);
        assertThat(tree(warm).get(HAND + "alarms")).contains("room-too-warm: ",
                "\n  Cool the room or the cone.");
        silentOfHeat(warm);
    }

    /** It is locked in the book of every cone, and its words are those of a lock. */
    @Test
    void noLockSpeaksOfHeat() {
        Story s = Story.at(Fitting.NO_HEAT);
        s.does(Step.STARTED).minutes(10);
        for (int i = 0; i < 3; i++) {
            s.senses.water("a", 20);
            s.minutes(3);
            s.senses.water("a", 27);
            s.minutes(5);
        }
        assertThat(s.standing("a")).contains("probe-unsteady");
        silentOfHeat(s);
        s.minutes(30);
        assertThat(tree(s).get("homie/5/larkmoor-a/$alert/probe-unsteady"))
                .contains("within an hour; that is over now, since");
        silentOfHeat(s);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(10);
        s.ask("a", new Ask.Acknowledge("probe-unsteady"));
        s.senses.water("a", 27);
        s.minutes(10);
        assertThat(tree(s).get(HAND + "alarms")).contains("within an hour; that is over now, since");
        silentOfHeat(s);
        s.ask("a", new Ask.Acknowledge("probe-unsteady"));
        s.seconds(5);
        assertThat(s.standing("a")).doesNotContain("probe-unsteady");
    }
}

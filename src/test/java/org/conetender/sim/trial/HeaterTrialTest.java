package org.conetender.sim.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.LongStream;
import org.conetender.core.unit.Text;
import org.conetender.sim.trial.HeaterDrawn.Outcome;
import org.conetender.sim.trial.HeaterDrawn.When;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * A heater that has to answer anew, on cones at random: a sound one is never blamed, a dead one is told
 * within the hour of its alarm. Four cones, or as many as {@code -Dconetender.cones=100} says, from the seed
 * on that {@code -Dconetender.from} says.
 */
class HeaterTrialTest {

    private static final int BOUND_MIN = 60;

    private static List<Outcome> each(Function<HeaterDrawn, Outcome> play) {
        long from = Long.getLong("conetender.from", 1);
        return LongStream.range(from, from + Integer.getInteger("conetender.cones", 4)).parallel()
                .mapToObj(HeaterDrawn::new).map(play).toList();
    }

    private static String row(String what, List<Outcome> all) {
        List<Integer> minutes = new ArrayList<>(all.stream().filter(o -> !o.told().isEmpty())
                .map(Outcome::minutes).sorted().toList());
        return Text.of("%s: of %d cones %d told, %d of them no-effect, %d found to work; minutes %s", what,
                all.size(), minutes.size(), all.stream().filter(o -> o.told().contains("no-effect")).count(),
                all.stream().filter(Outcome::responded).count(), minutes);
    }

    @ParameterizedTest
    @EnumSource(When.class)
    void aSoundHeaterIsFoundToWork(When when) {
        List<Outcome> all = each(d -> d.play(when, false, 2 * BOUND_MIN));
        System.out.println(row(when + " sound", all));
        assertThat(all).allSatisfy(o -> {
            assertThat(o.told()).as(o.who()).isEmpty();
            assertThat(o.responded()).as(o.who()).isTrue();
        });
    }

    @ParameterizedTest
    @EnumSource(When.class)
    void aDeadHeaterIsTold(When when) {
        List<Outcome> all = each(d -> d.play(when, true, BOUND_MIN));
        System.out.println(row(when + " dead", all));
        assertThat(all).allSatisfy(o -> assertThat(o.told()).as(o.who()).containsAnyOf("no-effect",
                "probe-frozen"));
    }

    @Test
    void noLidThatNobodyTellsOfIsTakenForADeadHeater() {
        List<Outcome> all = each(d -> d.lids(14));
        System.out.println(row("lids", all));
        assertThat(all).allSatisfy(o -> assertThat(o.told()).as(o.who()).isEmpty());
    }
}

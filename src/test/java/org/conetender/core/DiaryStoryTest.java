package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.batch.Minute;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.junit.jupiter.api.Test;

/** Each minute says what was really switched in it, what was followed, and what became of alarms. */
class DiaryStoryTest {

    private final List<Minute> minutes = new ArrayList<>();

    /** Every minute of it is kept, and the outputs of cone a of every tick are compared with what it says. */
    private Story watched(Story s) {
        double[] sum = new double[4];
        return s.each(x -> {
            x.last().record().minute().ifPresent(m -> {
                minutes.add(m);
                Minute.Outputs o = outputs(m);
                if (sum[3] >= 60) {
                    assertThat(o.heat()).isCloseTo(sum[0] / sum[3], within(1e-9));
                    assertThat(o.air()).isCloseTo(sum[1] / sum[3], within(1e-9));
                    assertThat(o.lamp()).isCloseTo(sum[2] / sum[3], within(1e-9));
                }
                Arrays.fill(sum, 0);
            });
            sum[0] += x.on("a.heat") && x.on("a.cut-out") ? 1 : 0;
            sum[1] += x.on("a.air-pause") ? 0 : 1;
            sum[2] += x.on("a.lamp") ? 1 : 0;
            sum[3]++;
        });
    }

    private static Minute.Outputs outputs(Minute m) {
        return m.outputs().stream().filter(o -> o.cone().equals("a")).findFirst().orElseThrow();
    }

    private Minute.Outputs last() {
        return outputs(minutes.getLast());
    }

    private List<String> turns() {
        return minutes.stream().flatMap(m -> m.turns().stream()).map(t -> t.cone() + " " + t.alarm() + " "
                + t.turn()).toList();
    }

    @Test
    void theShareOfEachMinuteIsWhatTheOutputsShowed() {
        Basin basin = new Basin(Basin.Build.USUAL, 25, 1);
        Story s = Story.at(Fitting.ROOM_PROBE).trying();
        s.senses.room(20);
        watched(s);
        s.does(Step.STARTED);
        for (int i = 0; i < 3 * 3_600; i++) {
            s.senses.water("a", basin.second(s.on("a.heat") && s.on("a.cut-out")));
            s.senses.frozen("a-water");
            s.tick();
        }
        assertThat(minutes).hasSize(180);
        assertThat(minutes).extracting(m -> outputs(m).heat()).as("none, some and all of a minute")
                .contains(0.0, 1.0).anyMatch(h -> h > 0.05 && h < 0.95);
        assertThat(minutes).as("while the heater's own switch is tried alone it has no power")
                .anyMatch(m -> outputs(m).cutOut() < 1);
        assertThat(last().setC()).isEqualTo(OptionalDouble.of(27));
        assertThat(minutes.getLast().outputs()).as("cones that heat nothing follow nothing")
                .filteredOn(o -> o.cone().equals("b")).singleElement()
                .satisfies(o -> assertThat(o.setC()).isEmpty());
    }

    @Test
    void airAndLampOfASeparationAreThere() {
        Story s = Story.at();
        s.senses.water("a", 26);
        s.does(Step.STARTED, Step.FIRST_SEEN);
        watched(s).minutes(2);
        assertThat(last()).isEqualTo(new Minute.Outputs("a", last().heat(), 1, 1, 0, OptionalDouble.of(27)));
        s.does(Step.SETTLE).minutes(3);
        assertThat(last()).isEqualTo(new Minute.Outputs("a", 0, 0, 0, 1, OptionalDouble.empty()));
        s.does(Step.HANDS_IN).minutes(3);
        assertThat(last().air()).isEqualTo(1);
        assertThat(last().lamp()).isZero();
    }

    @Test
    void theSetPointIsTheOneThatIsFollowedForAnHour() {
        Story s = Story.at(Fitting.ROOM_PROBE);
        s.senses.room(20).water("a", 26);
        s.does(Step.STARTED).minutes(2);
        assertThat(s.ask("a", new Ask.ReadyBy(Optional.of(Hour.parse("tue 14:30")))).accepted()).isTrue();
        watched(s).minutes(4);
        double aim = s.state().live().cones().get("a").hold().aimC();
        assertThat(aim).isNotCloseTo(27, within(0.3));
        assertThat(last().setC().orElseThrow()).isCloseTo(aim, within(0.02));
    }

    @Test
    void anAlarmIsRaisedSeenAndOver() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED);
        watched(s);
        s.senses.contact("a.level", Level.OPEN);
        s.minutes(5);
        assertThat(turns()).containsExactly("a dry RAISED");
        assertThat(minutes.stream().flatMap(m -> m.turns().stream()).findFirst().orElseThrow().what())
                .isEqualTo("its level contact says the water is low");
        s.ask("a", new Ask.Acknowledge("dry"));
        s.minutes(2);
        s.ask("a", new Ask.Acknowledge("dry"));
        s.minutes(2);
        assertThat(turns()).containsExactly("a dry RAISED", "a dry SEEN");
        s.senses.contact("a.level", Level.CLOSED);
        s.minutes(4);
        assertThat(turns()).containsExactly("a dry RAISED", "a dry SEEN", "a dry OVER");
        s.senses.contact("a.level", Level.OPEN);
        s.minutes(4);
        assertThat(turns()).endsWith("a dry OVER", "a dry RAISED");
    }

    /** A life tells anew what stands, so that nobody has to know what the one before had written. */
    @Test
    void anotherLifeRaisesAnewWhatStands() {
        Story s = Story.at(Fitting.LEVEL);
        s.does(Step.STARTED);
        watched(s);
        s.senses.contact("a.level", Level.OPEN);
        s.minutes(5);
        s.ask("a", new Ask.Acknowledge("dry"));
        s.minutes(2);
        s.restart("boot-1", 20_000).pass(Duration.ofMinutes(7));
        assertThat(turns()).containsExactly("a dry RAISED", "a dry SEEN", "a dry RAISED", "a dry SEEN");
    }
}

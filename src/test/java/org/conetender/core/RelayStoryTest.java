package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.face.Names;
import org.conetender.core.face.Tree;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.junit.jupiter.api.Test;

/** A relay's closings are counted through kills and batches, foretold, told once, and begun anew. */
class RelayStoryTest {

    private final Basin basin = new Basin(Basin.Build.USUAL, 25, 1);
    private long closed;
    private boolean was;

    /** Larkmoor, whose relay of cone a is rated for so many closings. */
    private static Settings rated(double life, double cyclesPerDay) {
        Settings s = Larkmoor.with(Fitting.ROOM_PROBE);
        return new Settings(s.site(), s.cones().stream().map(c -> {
            Cone.Fittings f = c.fittings();
            Cone.Heat h = new Cone.Heat(f.heat().kind(), f.heat().watts(), f.heat().switchKind(),
                    f.heat().cutOut(), new Cone.Contacts(cyclesPerDay, life));
            return new Cone(c.id(), new Cone.Fittings(f.probes(), h, f.air(), f.lights(), f.button()),
                    c.limits(), c.timing(), c.usual());
        }).toList());
    }

    private Story story(double life, double cyclesPerDay) {
        Story s = new Story(rated(life, cyclesPerDay));
        s.senses.room(20);
        s.each(x -> {
            boolean on = x.on("a.heat");
            closed += on && !was ? 1 : 0;
            was = on;
            s.senses.water("a", basin.second(on && x.on("a.cut-out")));
            s.senses.frozen("a-water");
        });
        return s.does(Step.STARTED);
    }

    /** Ticks of a second until so many closings were seen, a day at most. */
    private void until(Story s, long closings) {
        for (int t = 0; closed < closings; t++) {
            assertThat(t).as("closings in a day: %d", closed).isLessThan(86_400);
            s.tick();
        }
        s.tick();
    }

    private static List<Fact> worn(Story s) {
        return s.paper.facts().stream().filter(f -> f.change() instanceof Change.Worn).toList();
    }

    private static RelayLife life(Story s, String cone) {
        return RelayLife.of(s.settings().cone(cone).orElseThrow(), s.state(), s.now()).orElseThrow();
    }

    private static String shown(Story s, String property) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now())
                .get("homie/5/larkmoor-a/heat/" + property);
    }

    @Test
    void everyClosingIsCountedAndEveryFiftiethWrittenDown() {
        Story s = story(100_000, 900);
        until(s, 120);
        assertThat(life(s, "a").closings()).isEqualTo(closed);
        assertThat(life(s, "b").closings()).as("its heater was never on").isZero();
        assertThat(worn(s)).hasSize(2).allSatisfy(f -> assertThat(f.cone()).isEqualTo("a"));
        assertThat(shown(s, "relay-closings")).isEqualTo("" + closed);
        assertThat(shown(s, "relay-used")).isEqualTo("0.1");
        assertThat(s.told()).isEmpty();
    }

    @Test
    void aKillLosesFewerThanFiftyForWhichHalfOfThemAreAddedOnce() {
        Story s = story(100_000, 900);
        until(s, 70);
        assertThat(life(s, "a").closings()).isEqualTo(closed);
        s.restart("boot-1", 3_000).tick();
        was = false;
        assertThat(life(s, "a").closings()).as("50 or so were written, and 25 is the mean of the rest")
                .isBetween(75L, 77L);
        assertThat(life(s, "b").closings()).as("it was never in use").isZero();
        s.restart("boot-2", 600_000).tick();
        assertThat(life(s, "a").closings()).as("not once more at each death").isBetween(75L, 78L);
    }

    @Test
    void anOrderlyStopLosesNone() {
        Story s = story(100_000, 900);
        until(s, 20);
        long before = life(s, "a").closings();
        for (int i = 0; i < 5; i++) {
            s.stopAndStart(3_000);
            assertThat(life(s, "a").closings()).isEqualTo(before);
        }
        assertThat(worn(s)).as("written once, for nothing closed since").hasSize(1);
        assertThat(s.paper.facts().get(s.paper.facts().indexOf(worn(s).getFirst()) + 1).change())
                .as("and then that it ended").isInstanceOf(Change.Left.class);
    }

    @Test
    void itIsForetoldByItsBudgetFirstAndByItsPaceOnceThatIsKnown() {
        Story s = story(100_000, 400);
        assertThat(life(s, "a").daysLeft()).as("all of it, at the budget").isCloseTo(250, within(0.01));
        assertThat(shown(s, "relay-days-left")).isEqualTo("250");
        until(s, 60);
        // It is drained and rests: from then on it lasts longer each day.
        s.does(Step.DRAINED);
        for (int h = 0; h < 60; h++) {
            s.minutes(60);
        }
        assertThat(life(s, "a").daysLeft()).isGreaterThan(1_000);
        assertThat(shown(s, "relay-days-left")).matches("[1-9][0-9]0*");
    }

    @Test
    void aWornRelayIsToldOnceAndAnotherEndsIt() {
        Story s = story(100, 900);
        until(s, 90);
        assertThat(s.standing("a")).isEmpty();
        until(s, 101);
        s.seconds(3);
        assertThat(s.standing("a")).containsExactly("relay-worn");
        assertThat(s.told().getLast().what()).isEqualTo("the relay of its heater has closed 100 times, "
                + "which is all that it is rated for");
        assertThat(s.ask("a", new Ask.Acknowledge("relay-worn")).accepted()).isTrue();
        for (int i = 0; i < 12; i++) {
            s.minutes(60);
        }
        s.restart("boot-1", 3_000).minutes(30);
        assertThat(s.told("relay-worn")).as("once, also over a restart").isEqualTo(1);
        assertThat(life(s, "a").daysLeft()).isZero();

        Batch batch = s.batch("a");
        assertThat(s.did("a", Step.RELAY_EXCHANGED).sentence()).contains("counted from the beginning");
        assertThat(s.batch("a")).isEqualTo(batch);
        assertThat(life(s, "a").closings()).isBetween(0L, 1L);
        assertThat(shown(s, "relay-used")).isIn("0.0", "1.0");
        s.minutes(2);
        assertThat(s.standing("a")).isEmpty();

        assertThat(s.ask("a", new Ask.Withdraw("relay-exchanged")).accepted()).isTrue();
        assertThat(life(s, "a").closings()).isGreaterThan(100);
        s.seconds(3);
        assertThat(s.standing("a")).containsExactly("relay-worn");
    }

    @Test
    void aNewRelayIsTriedBeforeItHeats() {
        Story s = story(100_000, 150).trying();
        s.minutes(60);
        assertThat(s.last().findings().get("a")).noneMatch(f -> f.guard().equals("switch"));
        s.does(Step.RELAY_EXCHANGED);
        s.tick();
        assertThat(s.last().findings().get("a")).anyMatch(f -> f.guard().equals("switch"));
        for (int i = 0; i < 3; i++) {
            s.minutes(30);
        }
        assertThat(s.last().findings().get("a")).noneMatch(f -> f.guard().equals("switch"));
        assertThat(s.told()).isEmpty();
    }

    @Test
    void whereNoRelaySwitchesAHeaterNoneIsCountedAndAnExchangeIsRefused() {
        for (Fitting f : List.of(Fitting.SOLID_STATE, Fitting.NO_HEAT)) {
            Story s = Story.at(f);
            assertThat(s.did("a", Step.RELAY_EXCHANGED).accepted()).isFalse();
            assertThat(s.replies().getLast().sentence()).contains("no relay switches a heater here");
            assertThat(shown(s, "relay-closings")).isNull();
            s.does(Step.STARTED).minutes(30);
            assertThat(worn(s)).isEmpty();
        }
    }

    @Test
    void whatAFailingRecordDoesNotTakeIsCountedOn() {
        Story s = story(100_000, 900);
        until(s, 10);
        s.paper.mood(Paper.Mood.REFUSING);
        until(s, 130);
        assertThat(worn(s)).isEmpty();
        assertThat(life(s, "a").closings()).isEqualTo(closed);
        s.paper.mood(Paper.Mood.KEEPING);
        s.minutes(3);
        assertThat(worn(s)).isNotEmpty();
        assertThat(((Change.Worn) worn(s).getLast().change()).closings()).isGreaterThanOrEqualTo(130);
    }
}

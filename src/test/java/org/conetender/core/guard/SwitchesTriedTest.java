package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.Larkmoor;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.batch.Change;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Proving;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Danger: one of two switches in series does not open any more, and the other hides it. */
@Tag("slow")
class SwitchesTriedTest {

    private Basin basin = new Basin(Basin.Build.USUAL, 22, 1);
    private boolean ownWelded;
    private boolean cutOutWelded;
    private int heated;

    /** Cone a over water of its own, heated where both switches really conduct. */
    private Story over(Story s) {
        s.trying().senses.room(basin.roomC);
        return s.each(x -> {
            boolean cutOut = s.last().outputs().getOrDefault("a.cut-out", true);
            boolean on = (x.on("a.heat") || ownWelded) && (cutOut || cutOutWelded);
            basin.power = on ? Basin.Power.WELDED : Basin.Power.DEAD;
            heated += on ? 1 : 0;
            s.senses.room(basin.roomC).water("a", basin.second(false));
            s.senses.frozen("a-water");
        });
    }

    private Story started(Fitting... fittings) {
        Story s = over(Story.at(fittings));
        s.minutes(1).does(Step.STARTED);
        return s;
    }

    private static Proving.Part part(Story s) {
        return s.state().live().cones().get("a").judged().proving().part();
    }

    private static Story until(Story s, int minutes) {
        for (int i = 0; i < minutes * 60 && !part(s).over() && !part(s).failed(); i++) {
            s.tick();
        }
        return s;
    }

    @Test
    void eachSwitchIsTriedAloneAndThenHeatComesAtLowPower() {
        Story s = started(Fitting.ROOM_PROBE);
        List<String> seen = new ArrayList<>();
        for (int i = 0; i < 1_800 && !part(s).over(); i++) {
            s.tick();
            String now = (s.on("a.heat") ? "heater " : "") + (s.on("a.cut-out") ? "cut-out" : "");
            if (seen.isEmpty() || !seen.getLast().equals(now)) {
                seen.add(now);
            }
        }
        assertThat(seen).containsExactly("", "heater ", "", "cut-out");
        assertThat(heated).as("seconds in which power flowed").isZero();
        assertThat(s.minutes(1).told()).isEmpty();
        assertThat(s.paper.facts().stream().filter(f -> f.cone().equals("a")).map(f -> f.change()))
                .contains(new Change.Tried("each switch opens alone"));
        assertThat(s.comesOn("a.heat", 900)).isTrue();
        assertThat(s.state().live().cones().get("a").hold().duty()).as("till the water has answered")
                .isLessThanOrEqualTo(0.25);
    }

    /** @param startC of the water, in a room of 20 °C */
    @ParameterizedTest
    @ValueSource(doubles = {16, 22, 27})
    void aCutOutThatDoesNotOpenIsNamed(double startC) {
        basin = new Basin(Basin.Build.USUAL, startC, 2);
        cutOutWelded = true;
        Story s = until(started(Fitting.ROOM_PROBE), 60).minutes(1);
        assertThat(s.standing("a")).containsExactly("switch-stuck");
        assertThat(s.told().getLast().what()).contains("the cut-out of cone a does not open");
        assertThat(s.on("a.heat") || s.on("a.cut-out")).isFalse();
        assertThat(heated).as("seconds of power in two rounds").isBetween(300, 400);
    }

    @ParameterizedTest
    @CsvSource({"16,45", "22,45", "27,45", "27,90"})
    void aHeatersOwnSwitchThatDoesNotOpenIsNamed(double startC, double elementS) {
        basin = new Basin(new Basin.Build(25, 2, 1.34, elementS, 15), startC, 3);
        ownWelded = true;
        Story s = until(started(Fitting.ROOM_PROBE), 60).minutes(1);
        assertThat(s.standing("a")).containsExactly("switch-stuck");
        assertThat(s.told().getLast().what()).contains("the heater's own switch of cone a does not open");
        assertThat(s.on("a.cut-out")).isFalse();
    }

    @Test
    void bothWeldedAreFoundByTheWaterThatWarmsWithEverythingOff() {
        ownWelded = true;
        cutOutWelded = true;
        Story s = until(started(Fitting.ROOM_PROBE), 60).minutes(1);
        for (int i = 0; i < 40 && s.standing("a").isEmpty(); i++) {
            s.minutes(1);
        }
        assertThat(s.standing("a")).contains("welded");
        assertThat(part(s).over()).as("no heat meanwhile").isFalse();
    }

    @Test
    void aLevelContactDoesNotSpareTheTrial() {
        cutOutWelded = true;
        Story s = until(started(Fitting.ROOM_PROBE, Fitting.LEVEL), 60).minutes(1);
        assertThat(s.standing("a")).containsExactly("switch-stuck");
    }

    @Test
    void withOneSwitchOffMeansOff() {
        Story s = started(Fitting.ROOM_PROBE, Fitting.NO_CUT_OUT);
        until(s, 10);
        assertThat(part(s)).isEqualTo(Proving.Part.PASSED);
        assertThat(heated).isZero();
        ownWelded = true;
        s.does(Step.DRAINED, Step.STARTED);
        until(s, 40).minutes(1);
        for (int i = 0; i < 40 && s.standing("a").isEmpty(); i++) {
            s.minutes(1);
        }
        assertThat(s.standing("a")).contains("welded");
        assertThat(part(s).over()).isFalse();
    }

    @Test
    void whoExchangedItAcknowledgesAndBothAreTriedAnew() {
        cutOutWelded = true;
        Story s = until(started(Fitting.ROOM_PROBE), 60).minutes(1);
        s.ask("a", new Ask.Acknowledge("switch-stuck"));
        until(s.seconds(2), 60).minutes(1);
        assertThat(s.told("switch-stuck")).as("it was not mended").isEqualTo(2);
        cutOutWelded = false;
        s.ask("a", new Ask.Acknowledge("switch-stuck"));
        until(s.seconds(2), 60);
        assertThat(part(s)).isEqualTo(Proving.Part.PASSED);
        assertThat(s.minutes(2).standing("a")).isEmpty();
        assertThat(s.comesOn("a.heat", 900)).isTrue();
    }

    @Test
    void aRestartBeforeItPassedTriesThemAgainAndOneAfterItDoesNot() {
        Story s = started(Fitting.ROOM_PROBE).minutes(6);
        s.restart("boot-1", 3_000).minutes(1);
        assertThat(part(s).over()).isFalse();
        until(s, 40).seconds(5);
        assertThat(part(s)).isEqualTo(Proving.Part.PASSED);
        s.restart("boot-1", 3_000).seconds(20);
        assertThat(part(s)).isEqualTo(Proving.Part.PASSED);
        assertThat(s.state().live().cones().get("a").judged().heat().responded()).as("but a pulse must show")
                .isFalse();
        s.minutes(2).does(Step.DRAINED, Step.STARTED);
        assertThat(part(s)).as("another batch").isEqualTo(Proving.Part.WAITING);
    }

    /** In the trial itself, while one switch is closed. */
    private enum Hands {
        WARM_WATER {
            @Override
            void at(Story s, Basin b) {
                b.topUp(0.1, 27);
            }
        },
        REPORTED {
            @Override
            void at(Story s, Basin b) {
                s.does(Step.TOPPED_UP);
                b.topUp(0.2, 32);
            }
        },
        LID {
            @Override
            void at(Story s, Basin b) {
                b.lossFactor = b.lossFactor == 1 ? 0.4 : 1;
            }
        },
        SUN {
            @Override
            void at(Story s, Basin b) {
                b.roomC = 32;
            }
        };

        abstract void at(Story s, Basin b);
    }

    @ParameterizedTest
    @EnumSource(Hands.class)
    void handsLidAndSunNameNoSwitch(Hands hands) {
        for (int minute = 4; minute < 14; minute += 2) {
            basin = new Basin(Basin.Build.USUAL, 22, minute);
            Story s = started(Fitting.ROOM_PROBE).minutes(minute);
            hands.at(s, basin);
            until(s, 120);
            assertThat(part(s)).as("after minute %d", minute).isEqualTo(Proving.Part.PASSED);
            assertThat(s.told()).noneMatch(a -> a.kind().id().equals("switch-stuck"));
        }
    }

    @Test
    void waterThatWarmsByItselfAsFastAsAHeaterTellsNothingAndGetsLittleHeat() {
        basin = new Basin(new Basin.Build(25, 2, 8, 45, 15), 12, 5);
        Story s = over(Story.at());
        s.minutes(1).does(Step.STARTED);
        s.each(x -> {
            basin.roomC = basin.waterC + 1.1; // nobody measures it: 0.2 K in the time of a trial
            s.senses.water("a", basin.second(false));
            s.senses.frozen("a-water");
        });
        until(s, 100);
        assertThat(part(s)).isEqualTo(Proving.Part.UNTESTABLE);
        s.minutes(2);
        assertThat(s.told()).isEmpty();
        assertThat(s.found("switch")).singleElement().asString().contains("could not be tried");
        assertThat(s.on("a.cut-out")).isTrue();
        assertThat(s.state().live().cones().get("a").hold().duty()).isLessThanOrEqualTo(0.25);
        s.minutes(60);
        assertThat(part(s)).as("taken up again").isNotEqualTo(Proving.Part.UNTESTABLE);
        assertThat(s.on("a.heat") && s.on("a.cut-out")).isFalse();
    }

    @Test
    void nothingIsTriedWhereNoHeatIsWanted() {
        basin = new Basin(Basin.Build.USUAL, 28, 6);
        basin.roomC = 29;
        Story s = started(Fitting.ROOM_PROBE).minutes(50);
        assertThat(part(s)).isEqualTo(Proving.Part.WAITING);
        assertThat(s.on("a.cut-out")).isFalse();
    }

    @Test
    void underAWattLimitEachConeGetsItsTrial() {
        Story s = new Story(Larkmoor.room(Fitting.ROOM_PROBE).limit(25).build());
        s.trying();
        s.senses.room(20).water("a", 22).water("b", 22).water("c", 22);
        for (String cone : List.of("a", "b", "c")) {
            s.did(cone, Step.STARTED);
        }
        s.minutes(40);
        for (String cone : List.of("a", "b", "c")) {
            assertThat(s.state().live().cones().get(cone).judged().proving().part()).as(cone)
                    .isEqualTo(Proving.Part.PASSED);
        }
    }

    @Test
    void withoutThisGuardHeatComesThoughTheCutOutWasNeverTried() {
        cutOutWelded = true;
        Story s = over(Story.without(SwitchesTried.class, Fitting.ROOM_PROBE));
        s.minutes(1).does(Step.STARTED);
        s.minutes(40);
        assertThat(s.standing("a")).isEmpty();
        assertThat(heated).isGreaterThan(60);
    }

    /** Found by the search: the heat went on for the tick in which it was said. */
    @Test
    void anExchangedRelayIsUntriedFromTheTickInWhichItIsSaid() {
        Story s = Story.at().trying();
        s.senses.water("a", 26);
        s.does(Step.STARTED);
        boolean heats = false;
        for (int i = 0; i < 3_600 && !heats; i++) {
            s.tick();
            heats = s.on("a.heat") && s.on("a.cut-out");
        }
        assertThat(heats).isTrue();
        s.send("a", new Ask.Did(Step.RELAY_EXCHANGED));
        s.tick();
        assertThat(s.on("a.heat")).isFalse();
        assertThat(s.on("a.cut-out")).isFalse();
    }
}

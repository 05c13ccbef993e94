package org.conetender.app.config;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.settings.Cone;
import org.junit.jupiter.api.Test;

/** A heater is whole, fits its water, and what is missing beside it is said. */
class HeaterRulesTest {

    private static Cone.Fittings fittings(Draft draft) {
        return draft.accepted().config().settings().cones().getFirst().fittings();
    }

    @Test
    void noHeaterWithWattsOrLinesIsRefusedAtEachOfThem() {
        Draft draft = Draft.good().with("kind", "kind = \"none\"");
        assertThat(draft.errors()).hasSize(3).allMatch(e -> e.contains("there is no heater"))
                .anyMatch(e -> e.startsWith("f:" + draft.line("watts") + ": cone[a].heat.watts = 25"));
    }

    private static Cone.Contacts contacts(Draft draft) {
        return fittings(draft).heat().contacts();
    }

    @Test
    void aRelayHasABudgetOfCyclesAndALife() {
        assertThat(contacts(Draft.good())).isEqualTo(new Cone.Contacts(150, 100_000));
        assertThat(contacts(Draft.good().after("watts", "cycles-per-day = 400\nlife-cycles = 300000")))
                .isEqualTo(new Cone.Contacts(400, 300_000));
        assertThat(Draft.good().after("watts", "cycles-per-day = 40").errors()).singleElement().asString()
                .contains("cone[a].heat.cycles-per-day = 40", "50 to 1000");
        assertThat(Draft.good().after("watts", "life-cycles = 10").errors()).singleElement().asString()
                .contains("cone[a].heat.life-cycles = 10", "1000 to 10000000");
    }

    @Test
    void aSolidStateSwitchHasNeither() {
        Draft solid = Draft.good().after("watts", "switch = \"solid-state\"");
        assertThat(contacts(solid)).isEqualTo(Cone.Contacts.NONE);
        assertThat(solid.after("watts", "cycles-per-day = 150\nlife-cycles = 100000").errors()).hasSize(2)
                .allMatch(e -> e.contains("no contacts that wear; remove this line"));
        assertThat(Draft.good().with("kind", "kind = \"none\"").after("watts", "life-cycles = 100000")
                .errors()).hasSize(4).allMatch(e -> e.contains("there is no heater"));
    }

    @Test
    void soFewCyclesThatTheWaterSwingsTowardsTheGuardAreRefusedWithTheFewestThatDo() {
        Draft strong = Draft.good().with("watts", "watts = 50").with("power-limit-w", "power-limit-w = 60");
        assertThat(strong.errors()).as("25 W/L at 150 a day").isEmpty();
        assertThat(strong.after("watts", "cycles-per-day = 100").errors()).singleElement().asString()
                .contains("swing by 0.7 °C to either side, and no more than half", "at least 13");
        assertThat(Draft.good().after("watts", "cycles-per-day = 100").errors()).as("a weaker one").isEmpty();
    }

    @Test
    void aRefusedRatingIsNotFollowedByTheCyclesItWouldNeed() {
        Draft strong = Draft.good().with("watts", "watts = 300").with("power-limit-w", "power-limit-w = 600");
        assertThat(strong.errors()).singleElement().asString().contains("watts = 300: 150 W for each of 2 L");
        assertThat(strong.after("watts", "life-cycles = 10").errors()).as("what else is wrong").hasSize(2)
                .noneMatch(e -> e.contains("swing"));
    }

    @Test
    void waterThatWouldBoilIsSaidToBoil() {
        // 300 W for an hour into 2 L: 132 K, from 27 °C.
        assertThat(without("watts = 300").warnings()).singleElement().asString()
                .contains("no cut-out fitted", "the water would boil.").doesNotContain("132");
        assertThat(without("watts = 165").warnings()).as("27 °C and 72 K").singleElement().asString()
                .contains("warm by 72 °C in the first hour");
        assertThat(without("watts = 167").warnings()).as("27 °C and 73 K").singleElement().asString()
                .contains("would boil");
    }

    private static Draft without(String watts) {
        return Draft.good().with("cut-out-line", "").with("watts", watts);
    }

    @Test
    void aHeaterWhoseKindIsNotSaidIsRefused() {
        assertThat(Draft.good().with("kind", "").errors()).isNotEmpty()
                .allMatch(e -> e.contains("say which kind is fitted"));
    }

    @Test
    void aMisspeltKindIsOneErrorNotFour() {
        assertThat(Draft.good().with("kind", "kind = \"imersed\"").errors()).hasSize(1);
    }

    @Test
    void aHeaterWithoutRatingOrLineIsRefused() {
        assertThat(Draft.good().with("watts", "").errors()).singleElement().asString()
                .contains("cone[a].heat.watts = (not given): a heater needs its rating");
        assertThat(Draft.good().with("line = 9", "").errors()).singleElement().asString()
                .contains("cone[a].heat.line = (not given): a heater needs the output that switches it");
    }

    @Test
    void aConeWithoutHeatTakesNoPower() {
        Draft draft = Draft.good().with("kind", "").with("watts", "").with("line = 9", "")
                .with("cut-out-line", "");
        assertThat(fittings(draft).heat())
                .isEqualTo(new Cone.Heat(Cone.HeatKind.NONE, 0, Cone.SwitchKind.RELAY, false));
    }

    @Test
    void aWeldedSwitchWithoutACutOutIsWarnedOfInDegrees() {
        // 25 W for an hour into 2 L: 90 kJ / 8.2 kJ per K.
        assertThat(Draft.good().with("cut-out-line", "").warnings()).singleElement().asString()
                .contains("no cut-out fitted", "warm by 11 °C in the first hour",
                        "independent thermal cut-out");
    }

    @Test
    void anImmersedHeaterWithoutALevelContactIsAllowedAndSaid() {
        assertThat(Draft.good().with("level-line", "").errors()).isEmpty();
        assertThat(Draft.good().with("level-line", "").warnings()).singleElement().asString()
                .contains("low-power response test");
        assertThat(Draft.good().with("level-line", "").with("kind", "kind = \"mat\"").warnings()).isEmpty();
    }

    @Test
    void aBathIsJudgedByTheWaterItWarms() {
        Draft bath = Draft.good().with("kind", "kind = \"bath\"").with("watts", "watts = 60\nbath-l = 12");
        assertThat(fittings(bath).vessel().bathLitres()).isEqualTo(12);
        assertThat(Draft.good().with("kind", "kind = \"bath\"").errors()).singleElement().asString()
                .contains("bath-l = (not given): a bath needs the water");
        assertThat(Draft.good().with("kind", "kind = \"bath\"").with("watts", "watts = 25\nbath-l = 1.5")
                .errors()).singleElement().asString().contains("less water than the cone alone holds (2 L)");
        assertThat(Draft.good().with("watts", "watts = 25\nbath-l = 12").errors()).singleElement().asString()
                .contains("only a bath");
    }

    @Test
    void outputsThatTheBoardEnergisesWhileStartingAreWarnedOf() {
        assertThat(Draft.good().with("line = 9", "line = 7").warnings()).singleElement().asString()
                .contains("pulls line 7 up", "which energises this output", "from 9 to 27");
        assertThat(Draft.good().with("line = 9", "line = { line = 9, active-low = true }").warnings())
                .singleElement().asString().contains("pulls line 9 down");
        assertThat(Draft.good().with("line = 9", "line = { line = 7, active-low = true }").warnings())
                .isEmpty();
    }

    @Test
    void linesThatTheMachineNeedsItselfAreWarnedOf() {
        assertThat(Draft.good().with("level-line", "level-line = 4").warnings()).singleElement().asString()
                .contains("1-wire bus");
        assertThat(Draft.good().with("level-line", "level-line = 1").warnings()).singleElement().asString()
                .contains("add-on board");
    }

    @Test
    void aButtonAndItsLampBelongTogether() {
        assertThat(Draft.good().end("[cone.button]\nline = 16").errors()).singleElement().asString()
                .contains("cone[a].button.lamp-line = (not given)", "belong together");
        assertThat(Draft.good().end("[cone.button]\nlamp-line = 16").errors()).hasSize(1);
        assertThat(fittings(Draft.good().end("[cone.button]\nline = 16\nlamp-line = 20")).button()).isTrue();
    }

    @Test
    void aTriggerLightThatNeverBurnsIsRefused() {
        String lamp = "[cone.lamp]\ntrigger-line = 20";
        assertThat(Draft.good().after("settle-min", "trigger-h = 2").end(lamp).errors()).singleElement()
                .asString().contains("the trigger light would never burn");
        assertThat(Draft.good().after("settle-min", "trigger-h = 2").errors()).isEmpty();
    }
}

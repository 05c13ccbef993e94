package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.Larkmoor;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: the batch is cooked (science.md §1). */
class CookedBatchTest {

    private static Story incubating(Story s) {
        s.does(Step.STARTED);
        return s.minutes(10);
    }

    /** Warms the water of cone a as its own heater could, not faster. */
    private static Story warm(Story s, double toC) {
        return ramp(s, 27, toC, 4);
    }

    /** A hundredth of a degree each so many seconds: no faster than water goes. */
    private static Story ramp(Story s, double fromC, double toC, int seconds) {
        double step = Math.copySign(0.01, toC - fromC);
        for (int i = 1; i <= Math.abs(toC - fromC) * 100 + 0.5; i++) {
            s.senses.water("a", fromC + i * step);
            s.seconds(seconds);
        }
        return s;
    }

    private static boolean heaterSeenIn(Story s, int seconds) {
        boolean seen = false;
        for (int i = 0; i < seconds; i++) {
            s.tick();
            seen |= s.on("a.heat");
        }
        return seen;
    }

    @Test
    void waterAtTheGuardTemperatureStopsEverythingThatWarms() {
        Story s = incubating(Story.at());
        s.pass(java.time.Duration.ofHours(3)).minutes(5);
        assertThat(s.on("a.trigger")).isTrue();
        assertThat(s.on("a.cut-out")).isTrue();
        warm(s, 31.1);
        assertThat(s.on("a.heat")).isFalse();
        assertThat(s.on("a.cut-out")).isFalse();
        assertThat(s.on("a.trigger")).isFalse();
        assertThat(s.on("b.heat") || s.last().findings().get("b").stream()
                .anyMatch(f -> f.guard().equals("too-hot"))).isFalse();
    }

    @Test
    void heatThatOursMadeIsLatchedUntilAPersonSaysItIsMended() {
        Story s = overheated();
        assertThat(s.standing("a")).contains("overheat").doesNotContain("room-too-warm");
        cool(s);
        assertThat(heaterSeenIn(s, 600)).as("cool again, but nobody has looked").isFalse();
        assertThat(s.ask("a", new Ask.Acknowledge("overheat")).accepted()).isTrue();
        assertThat(heaterSeenIn(s, 600)).isTrue();
        s.minutes(2);
        assertThat(s.standing("a")).doesNotContain("overheat");
    }

    @Test
    void anAcknowledgementWhileItIsStillHotReleasesNothing() {
        Story s = overheated();
        assertThat(s.ask("a", new Ask.Acknowledge("overheat")).accepted()).isTrue();
        assertThat(s.told("overheat")).isEqualTo(1);
        cool(s);
        assertThat(heaterSeenIn(s, 600)).isFalse();
        assertThat(s.standing("a")).contains("overheat");
        assertThat(s.told("overheat")).as("told again that it is over now").isEqualTo(2);
        assertThat(s.told().getLast().told().onceMore()).isTrue();
        s.ask("a", new Ask.Acknowledge("overheat"));
        assertThat(heaterSeenIn(s, 600)).isTrue();
    }

    /** A set-point of 30 °C: the heater works just above it still, and the water passes the guard. */
    private static Story overheated() {
        Story s = new Story(Larkmoor.room(Fitting.MAT).setpoint(30).build());
        s.senses.water("a", 30.2);
        s.does(Step.STARTED);
        for (int i = 0; i < 900 && !s.on("a.heat"); i++) {
            s.tick();
        }
        assertThat(s.on("a.heat")).isTrue();
        return ramp(s, 30.2, 31.1, 1);
    }

    private static void cool(Story s) {
        ramp(s, 31.1, 29.5, 2);
    }

    @Test
    void aRoomThatIsTooWarmIsNotTheHeatersFaultAndClearsByItself() {
        Story s = incubating(Story.at());
        s.does(Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        assertThat(s.stage()).isEqualTo("ready");
        s.minutes(16);
        double c = 27;
        for (; c < 31.2; c += 0.03) {
            s.senses.moves("a", 0.03);
            s.minutes(1);
        }
        assertThat(s.standing("a")).containsExactly("room-too-warm");
        assertThat(s.told().getFirst().what()).contains("over 31.0").contains("heater off");
        // No room cools water at once: a reading that falls so is a probe's.
        for (; c > 30.9; c -= 0.03) {
            s.senses.water("a", c);
            s.minutes(1);
        }
        s.minutes(3);
        assertThat(s.standing("a")).as("not yet by the deadband").containsExactly("room-too-warm");
        for (; c > 30.55; c -= 0.03) {
            s.senses.water("a", c);
            s.minutes(1);
        }
        s.minutes(3);
        assertThat(s.standing("a")).isEmpty();
        assertThat(s.state().book().cone("a").latches()).isEmpty();
    }

    /** A summer day at the limit: the room warms the water past it and lets it back, again and again. */
    @Test
    void waterThatHoversAtTheLimitIsOneIncident() {
        Story s = incubating(Story.at());
        s.does(Step.FIRST_SEEN, Step.SETTLE, Step.HANDS_IN);
        s.minutes(16);
        for (double c = s.senses.shownC("a"); c < 31.2; c += 0.1) {
            s.senses.water("a", c);
            s.minutes(3);
        }
        for (int i = 0; i < 5; i++) {
            for (int step = -10; step < 10; step++) {
                // As fast as a room moves water.
                s.senses.water("a", 30.9 + 0.02 * Math.abs(step));
                s.minutes(2);
            }
        }
        assertThat(s.told().stream().filter(a -> a.kind().id().equals("room-too-warm"))
                .map(a -> a.course().since()).distinct()).hasSize(1);
    }

    @Test
    void aboveArrestAPersonIsCalledAndAboveLossTheBatchIsInDoubt() {
        Story s = incubating(Story.at());
        warm(s, 33.1);
        assertThat(s.standing("a")).contains("arrest");
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        warm2(s, 38.1);
        assertThat(s.standing("a")).contains("cooked");
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("38.0");
        s.does(Step.HANDS_IN);
        s.senses.water("a", 27);
        s.minutes(20);
        assertThat(s.batch("a").marks().words().doubts()).as("cooling does not revive it").hasSize(1);
    }

    private static void warm2(Story s, double toC) {
        ramp(s, 33.1, toC, 4);
    }

    @Test
    void anEmptyConeThatIsWashedHotIsNoOverheating() {
        Story s = Story.at();
        s.senses.water("a", 22);
        s.does(Step.STARTED);
        for (int i = 0; i < 1_800 && !s.on("a.heat"); i++) {
            s.tick();
        }
        assertThat(s.on("a.heat")).isTrue();
        s.does(Step.DRAINED).seconds(20);
        s.senses.water("a", 42);
        s.minutes(2);
        assertThat(s.standing("a")).isEmpty();
    }

    /** A kettle against a cold cone, and nobody said so: the reading jumps, and is not believed. */
    private static Story poured(Story s, double toC) {
        incubating(s).senses.water("a", toC);
        return s.seconds(60);
    }

    @Test
    void hotWaterThatIsPouredInIsToldAlthoughTheReadingJumped() {
        Story s = poured(Story.at(), 35);
        assertThat(s.standing("a")).contains("arrest").doesNotContain("overheat", "room-too-warm", "cooked");
        assertThat(s.told().getFirst().what()).contains("a reading in doubt").contains("over 33.0 °C");
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
        assertThat(s.on("a.heat") || s.on("a.cut-out")).isFalse();
        s.minutes(30);
        assertThat(s.standing("a")).as("believed by now").contains("arrest");
        assertThat(s.told("arrest")).as("one message and its reminder").isEqualTo(2);
    }

    @Test
    void waterThatIsPouredInAboveTheLossTemperaturePutsTheBatchInDoubt() {
        Story s = poured(Story.at(), 39);
        assertThat(s.standing("a")).contains("arrest", "cooked");
        assertThat(s.batch("a").marks().words().doubts()).singleElement().asString().contains("in doubt");
    }

    @Test
    void twoProbesThatWarmUnequallyInHotWaterBothSaySo() {
        Story s = incubating(Story.at(Fitting.TWO_PROBES));
        s.senses.probe("a-water", new Reading.Value(38.2)).probe("a-second", new Reading.Value(36.9));
        s.seconds(60);
        assertThat(s.standing("a")).contains("arrest").doesNotContain("cooked");
    }

    /** One that says warm beside one that does not is a probe that lies, and nothing is known. */
    @Test
    void oneOfTwoProbesThatJumpsIsNoHotWater() {
        Story s = incubating(Story.at(Fitting.TWO_PROBES));
        s.senses.probe("a-water", new Reading.Value(38.2));
        s.minutes(5);
        assertThat(s.standing("a")).contains("probe").doesNotContain("arrest", "cooked");
    }

    @Test
    void aReadingThatJumpsBackAtOnceIsNoHotWater() {
        Story s = incubating(Story.at());
        for (int i = 0; i < 60; i++) {
            s.senses.water("a", i % 5 == 0 ? 27.2 : 39);
            s.seconds(5);
        }
        s.senses.probe("a-water", new Reading.Value(85));
        s.minutes(2);
        assertThat(s.told("arrest") + s.told("cooked")).isZero();
        assertThat(s.batch("a").marks().words().doubts()).isEmpty();
    }

    @Test
    void aReadingThatJumpedAboveTheGuardTurnsLampsOff() {
        Story s = incubating(Story.at());
        s.pass(java.time.Duration.ofHours(3)).minutes(5);
        assertThat(s.on("a.trigger")).isTrue();
        s.senses.water("a", 32);
        s.seconds(60);
        assertThat(s.on("a.trigger")).isFalse();
        assertThat(s.standing("a")).doesNotContain("arrest");
    }

    @Test
    void anEmptyConeInAWarmRoomCallsNobody() {
        Story s = Story.at();
        s.senses.water("a", 34);
        s.minutes(30);
        assertThat(s.told()).isEmpty();
    }

    @Test
    void withoutThisGuardTheHeaterWouldBeAllowedInWaterThatIsTooHot() {
        Story s = incubating(Story.without(CookedBatch.class, Fitting.MAT));
        s.ask("a", new Ask.SetSetpoint(30));
        warm(s, 31.1);
        assertThat(s.on("a.cut-out")).as("nothing opens the cut-out").isTrue();
        assertThat(s.standing("a")).isEmpty();
    }
}

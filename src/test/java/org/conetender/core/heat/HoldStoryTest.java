package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.conetender.core.Larkmoor;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.guard.Power;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Settings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The law in closed loop with water of its own: one heat capacity, one loss, an element and a probe that
 * lag.
 */
class HoldStoryTest {

    private static final double ELEMENT_S = 45;
    private static final double PROBE_S = 15;

    /** A cone of 2 L in this test's own words; not the daemon's model of it. */
    private static final class Tub {
        final String cone;
        final double roomC;
        double lossWPerK = 1.34;
        double waterC;
        double hottestC = -99;
        private double elementW;
        private double probeC;
        private long lastMs = -1;

        Tub(String cone, double waterC, double roomC) {
            this.cone = cone;
            this.waterC = waterC;
            this.probeC = waterC;
            this.roomC = roomC;
        }

        void tick(Story s) {
            long now = s.now().monoMs();
            double dt = lastMs < 0 ? 1 : (now - lastMs) / 1000.0;
            lastMs = now;
            double power = s.on(cone + ".heat") ? 25 : 0;
            for (double left = dt; left > 0; left -= 1) {
                elementW += (power - elementW) / ELEMENT_S;
                waterC += (elementW - lossWPerK * (waterC - roomC)) / (2 * 4100);
                probeC += (waterC - probeC) / PROBE_S;
            }
            hottestC = Math.max(hottestC, waterC);
            s.senses.water(cone, Math.round(probeC / 0.0625) * 0.0625);
        }
    }

    private static Story with(Settings settings, Tub... tubs) {
        Story s = new Story(settings);
        s.senses.room(tubs[0].roomC);
        for (Tub t : tubs) {
            s.senses.water(t.cone, t.waterC);
        }
        s.each(x -> {
            for (Tub t : tubs) {
                t.tick(x);
            }
        });
        return s;
    }

    /** In steps of one second whatever the length. */
    private static void hours(Story s, double h) {
        for (double left = h * 60; left > 0; left -= 30) {
            s.pass(Duration.ofMinutes((long) Math.min(30, left)));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.9, 1.34, 1.7})
    void itReachesTheSetPointAndHoldsItThoughTheLossesAreAThirdOff(double loss) {
        Tub t = new Tub("a", 21, 20);
        t.lossWPerK = loss;
        Story s = with(Larkmoor.with(Fitting.ROOM_PROBE), t);
        s.does(Step.STARTED);
        hours(s, 4);
        double low = 99;
        double high = -99;
        for (int i = 0; i < 120; i++) {
            s.minutes(1);
            low = Math.min(low, t.waterC);
            high = Math.max(high, t.waterC);
        }
        assertThat(low).isGreaterThan(26.6);
        assertThat(high).isLessThan(27.5);
        assertThat(t.hottestC).as("on the way there").isLessThan(28);
        assertThat(s.told()).isEmpty();
    }

    @Test
    void untilTheWaterHasAnsweredItIsHeatedWithAQuarterOfThePower() {
        Tub t = new Tub("a", 21, 20);
        Story s = with(Larkmoor.with(Fitting.ROOM_PROBE), t);
        s.does(Step.STARTED);
        while (!s.state().live().cones().get("a").judged().heat().responded()) {
            assertThat(s.state().live().cones().get("a").hold().duty()).isLessThanOrEqualTo(Hold.LOW_POWER);
            s.tick();
            assertThat(s.now().monoMs()).isLessThan(3_600_000);
        }
        s.seconds(5);
        assertThat(s.state().live().cones().get("a").hold().duty()).isEqualTo(1);
    }

    @Test
    void anotherSetPointIsReachedWithoutPassingIt() {
        Tub t = new Tub("a", 27, 20);
        Story s = with(Larkmoor.with(Fitting.ROOM_PROBE), t);
        s.does(Step.STARTED);
        hours(s, 3);
        s.ask("a", new Ask.SetSetpoint(29));
        t.hottestC = -99;
        hours(s, 3);
        assertThat(t.waterC).isCloseTo(29, within(0.3));
        assertThat(t.hottestC).isLessThan(29.7);
        s.ask("a", new Ask.SetSetpoint(25));
        hours(s, 4);
        assertThat(t.waterC).isCloseTo(25, within(0.3));
    }

    private static Hold hold(Story s) {
        return s.state().live().cones().get("a").hold();
    }

    /** A mat that the plain law drives, in a room that takes more than is configured. */
    private static Story matted(Tub t) {
        Story s = with(Larkmoor.with(Fitting.ROOM_PROBE, Fitting.MAT), t);
        t.lossWPerK = 1.7;
        s.does(Step.STARTED);
        hours(s, 4);
        return s;
    }

    @Test
    void handsInTheWaterTeachThePlainLawNothing() {
        Tub t = new Tub("a", 26, 20);
        Story s = matted(t);
        s.does(Step.HANDS_IN);
        s.tick();
        double found = hold(s).integral();
        int withheld = 0;
        while (s.last().findings().get("a").stream().anyMatch(f -> f.denies().contains(Power.HEAT))) {
            assertThat(hold(s).integral()).isEqualTo(found);
            s.tick();
            withheld++;
        }
        assertThat(withheld).isGreaterThan(100);
        hours(s, 2);
        assertThat(t.waterC).isCloseTo(27, within(0.3));
    }

    @Test
    void anotherSetPointKeepsWhatThePlainLawFoundOfTheLosses() {
        Tub t = new Tub("a", 26, 20);
        Story s = matted(t);
        double found = hold(s).integral();
        assertThat(Math.abs(found)).as("losses are other than configured").isGreaterThan(0.03);
        s.ask("a", new Ask.SetSetpoint(27.5));
        s.seconds(2);
        assertThat(hold(s).aimC()).isEqualTo(27.5);
        assertThat(hold(s).integral()).isCloseTo(found, within(0.01));
    }

    @Test
    void aWarmRoomNeedsNoHeatAndGetsNone() {
        Tub t = new Tub("a", 28, 29);
        Story s = with(Larkmoor.with(Fitting.ROOM_PROBE), t);
        s.does(Step.STARTED);
        hours(s, 1);
        assertThat(s.state().live().cones().get("a").hold().duty()).isZero();
        assertThat(s.told()).isEmpty();
    }

    @Test
    void underAWattLimitAllThreeConesGetWarmTogether() {
        Tub a = new Tub("a", 21, 20);
        Tub b = new Tub("b", 21, 20);
        Tub c = new Tub("c", 21, 20);
        Story s = with(Larkmoor.room(Fitting.ROOM_PROBE).limit(50).build(), a, b, c);
        for (String cone : new String[] {"a", "b", "c"}) {
            s.did(cone, Step.STARTED);
        }
        hours(s, 1.5);
        double spread = Math.max(a.waterC, Math.max(b.waterC, c.waterC)) - Math.min(a.waterC,
                Math.min(b.waterC, c.waterC));
        assertThat(spread).isLessThan(1.5);
        hours(s, 5);
        for (Tub t : new Tub[] {a, b, c}) {
            assertThat(t.waterC).isCloseTo(27, within(0.6));
        }
        assertThat(s.told()).isEmpty();
    }

    @Test
    void theLawNeverAsksForLessThanNothingOrMoreThanAll() {
        Hold.Plant plant = new Hold.Plant(0.003, 0.3, 240_000);
        for (double error = -10; error <= 10; error += 0.1) {
            Hold h = Hold.IDLE;
            for (int i = 0; i < 50; i++) {
                h = h.after(error, 27, 1_000, plant);
                assertThat(h.duty()).isBetween(0.0, 1.0);
                assertThat(h.integral()).isBetween(-1.0, 1.0);
            }
        }
    }

    @Test
    void itIsNotWoundUpByALongWarmUp() {
        Hold.Plant plant = new Hold.Plant(0.003, 0.3, 240_000);
        Hold h = Hold.IDLE;
        for (int i = 0; i < 20_000; i++) {
            h = h.after(6, 27, 1_000, plant);
        }
        assertThat(h.integral()).isZero();
    }
}

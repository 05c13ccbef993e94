package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.judge.Estimate.Step;
import org.conetender.core.judge.Watch.Proof;
import org.conetender.core.judge.Watch.Suspect;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The watch alone, with readings made up second by second. */
class WatchTest {

    private static final Traits TRAITS = new Traits(0.003, 1.6e-4, 45);
    private static final Proof PROVEN = new Proof(TRAITS, true);
    private static final Proof UNPROVEN = new Proof(TRAITS, false);
    private static final double ROOM_C = 20;

    /** Water that warms at a speed of the test's choice, read without noise. */
    private static final class Shown {
        Watch w = Watch.from(27);
        double readingC = 27;
        double roomC = ROOM_C;

        /** So many seconds, or until something has a name. @return how many there were */
        int go(int seconds, double kPerS, Heat heat) {
            int t = 0;
            for (; t < seconds && (w.suspect() == Suspect.NONE || w.suspect() == Suspect.ABOVE); t++) {
                readingC += kPerS;
                w = w.after(new Step(1, heat.on(), roomC, readingC, true), heat.proof(), 0);
            }
            return t;
        }
    }

    /** @param on share of full power that is switched, 0..1 */
    private record Heat(double on, Proof proof) {}

    private static final Heat OFF = new Heat(0, PROVEN);
    private static final Heat FULL = new Heat(1, PROVEN);
    private static final double COOLING = -TRAITS.lossPerS() * 7;

    @Test
    void waterThatCoolsAsItShouldIsNotSuspect() {
        Shown s = new Shown();
        s.go(1_200, COOLING, OFF);
        assertThat(s.w.suspect()).isEqualTo(Suspect.NONE);
        assertThat(s.w.suspicion()).isLessThan(0.2);
        assertThat(s.w.doubtful()).isFalse();
        assertThat(s.w.expectedC()).isCloseTo(s.readingC, within(0.01));
    }

    @Test
    void warmingWithoutHeatIsDoubtedBeforeItIsNamed() {
        Shown s = new Shown();
        int doubtedAt = 0;
        while (s.w.suspect() == Suspect.NONE && doubtedAt < 600) {
            doubtedAt += s.go(1, TRAITS.riseKPerS() + COOLING, OFF) * (s.w.doubtful() ? 0 : 1);
        }
        assertThat(doubtedAt).as("heat ends after seconds").isBetween(5, 40);
        assertThat(s.w.suspect()).isEqualTo(Suspect.WELDED);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.35})
    void aLidThatSavesAPartOfTheLossesIsNoHeat(double saved) {
        Shown s = new Shown();
        s.go(3_600, COOLING * (1 - saved), OFF);
        assertThat(s.w.suspect()).isEqualTo(Suspect.NONE);
    }

    @Test
    void heatThatDoesNotArriveIsCalledDead() {
        Shown s = new Shown();
        assertThat(s.go(3_600, COOLING, FULL)).isBetween(120, 1_200);
        assertThat(s.w.suspect()).isEqualTo(Suspect.DEAD);
    }

    @Test
    void twoThirdsOfTheHeatAreEnoughToCountAsHeat() {
        Shown s = new Shown();
        s.go(3_600, 0.65 * TRAITS.riseKPerS() + COOLING, FULL);
        assertThat(s.w.suspect()).as("an aged element, or more water than told").isEqualTo(Suspect.NONE);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.05, 0.05})
    void aSpeedThatNoHeaterMakesIsAProbeInAir(double kPerS) {
        Shown s = new Shown();
        assertThat(s.go(60, kPerS, OFF)).isLessThanOrEqualTo(15);
        assertThat(s.w.suspect()).isEqualTo(Suspect.IN_AIR);
    }

    @Test
    void aReadingThatStandsWhileMuchIsHeatedIsFrozen() {
        Shown s = new Shown();
        assertThat(s.go(3_600, 0, FULL)).isLessThan(400);
        assertThat(s.w.suspect()).isEqualTo(Suspect.FROZEN);
        Shown still = new Shown();
        still.w = Watch.from(20);
        still.readingC = 20;
        still.go(7_200, 0, OFF);
        assertThat(still.w.suspect()).as("water as warm as its room may stand").isEqualTo(Suspect.NONE);
    }

    @Test
    void beforeTheFirstProofLossesMayBeFarOff() {
        Shown s = new Shown();
        s.go(3_600, -1e-9, new Heat(0, UNPROVEN));
        assertThat(s.w.hot().sureK()).isZero();
        Shown proven = new Shown();
        proven.go(3_600, 0.6 * TRAITS.riseKPerS(), OFF);
        assertThat(proven.w.suspect()).isEqualTo(Suspect.WELDED);
    }

    @Test
    void whatDippedMayComeBack() {
        Shown s = new Shown();
        s.go(5, -0.02, OFF);
        for (int t = 0; t < 90; t++) {
            s.go(1, COOLING + 0.1 / 20 * Math.exp(-t / 20.0), OFF);
        }
        s.go(600, COOLING, OFF);
        assertThat(s.w.suspect()).as("a probe lifted out for a moment").isEqualTo(Suspect.NONE);
        Shown calm = new Shown();
        calm.go(120, TRAITS.riseKPerS() + COOLING, OFF);
        assertThat(calm.w.suspect()).as("water that is heated").isEqualTo(Suspect.WELDED);
    }

    @Test
    void aRiseThatNoHeaterCouldBringSoSoonIsNoHeater() {
        Shown s = new Shown();
        s.go(1_200, COOLING, OFF);
        s.go(10, 0.008, OFF);
        assertThat(s.w.hot().sureK()).as("a probe wiped in a warm room").isLessThan(0.02);
        s.go(30, COOLING, OFF);
        s.go(10, -0.008, OFF);
        s.go(600, COOLING, OFF);
        assertThat(s.w.suspect()).isEqualTo(Suspect.NONE);
    }

    @Test
    void aReadingThatStandsIsNeverCalledAWeldedSwitch() {
        Shown s = new Shown();
        s.go(3_600, 0, FULL);
        Shown off = new Shown();
        off.w = s.w.cleared();
        off.readingC = s.readingC;
        assertThat(off.go(3_600, 0, OFF)).as("seconds").isLessThan(400);
        assertThat(off.w.suspect()).as("although heat on its way was felt, and its end was not")
                .isEqualTo(Suspect.FROZEN);
        Shown cold = new Shown();
        cold.roomC = 12;
        cold.go(3_600, 0, OFF);
        assertThat(cold.w.suspect()).as("although it stands where it should fall fast")
                .isEqualTo(Suspect.FROZEN);
        assertThat(cold.w.hot().sureK()).as("K, more than names a welded switch").isGreaterThan(0.0406);
    }

    @Test
    void whatWarmsAtAThirdOfTheHeatersSpeedIsNotTheHeater() {
        Shown s = new Shown();
        int asked = 0;
        for (int t = 0; t < 3_600; t++) {
            s.go(1, COOLING + 0.36 * TRAITS.riseKPerS(), OFF);
            asked += s.w.doubtful() ? 1 : 0;
        }
        assertThat(s.w.suspect()).as("a lamp, a hot day").isEqualTo(Suspect.NONE);
        assertThat(asked).as("seconds in which the question stood: it was settled each time")
                .isBetween(1, 3_000);
    }

    @Test
    void sixTenthsOfWhatTheFaultWouldBringSettleTheQuestionHoweverLongTheyGoOn() {
        Cause asked = new Cause(0, 0, 0, 0.02, 0, 1);
        Cause lid = asked;
        Cause welded = asked;
        double mostK = 0;
        for (int t = 0; t < 3_600; t++) {
            lid = brought(lid, 0.6);
            welded = brought(welded, 1);
            mostK = Math.max(mostK, lid.sureK());
        }
        assertThat(mostK).as("K, of which 0.037 name a welded switch").isBetween(0.001, 0.03);
        assertThat(lid.doubted()).as("half of the fault would have to be exceeded by more").isFalse();
        assertThat(welded.sureK()).isGreaterThan(1);
        assertThat(welded.doubted()).isTrue();
    }

    /** A second with the heater off in which the reading rises by a share of what the fault would bring. */
    private static Cause brought(Cause c, double share) {
        double fullK = TRAITS.riseKPerS();
        return c.after(new Cause.Over(1, fullK, Watch.NOISE_K, TRAITS.lagS()),
                new Cause.Seen(share * fullK * c.felt(), 1), 0);
    }

    @Test
    void whereTheRoomMayBeWarmerAProbeLiftedOutIsGivenAMinute() {
        Shown s = new Shown();
        s.roomC = 27;
        s.readingC = 27;
        s.go(600, 0, OFF);
        int doubtedAt = 0;
        while (!s.w.doubtful() && doubtedAt < 600) {
            doubtedAt += s.go(1, 0.0025, OFF);
        }
        assertThat(s.go(58, 0.0025, OFF)).as("warms as fast as water would").isEqualTo(58);
        assertThat(s.w.suspect()).isEqualTo(Suspect.NONE);
        s.go(60, 0.0025, OFF);
        assertThat(s.w.suspect()).as("but no hand takes so long").isEqualTo(Suspect.WELDED);
    }

    @Test
    void nearTheRoomALidMaySaveFourFifthsOfTheLosses() {
        assertThat(savedInAnHour(2)).as("evaporation was nearly all").isEqualTo(Suspect.NONE);
    }

    /** Losses of so many K over the room, of which a lid saves four fifths; one third of full power. */
    private static Suspect savedInAnHour(double overK) {
        Traits weak = new Traits(TRAITS.lossPerS() * overK * 1.5, TRAITS.lossPerS(), 45);
        Shown s = new Shown();
        s.roomC = 27 - overK;
        s.go(3_600, -0.2 * TRAITS.lossPerS() * overK, new Heat(0, new Proof(weak, true)));
        return s.w.suspect();
    }

    @Test
    void oncePutTheQuestionStandsUntilItIsAnswered() {
        Shown s = new Shown();
        while (!s.w.doubtful()) {
            s.go(1, TRAITS.riseKPerS() + COOLING, OFF);
        }
        double began = s.w.hot().doubtK();
        int waited = 0;
        while (s.w.hot().doubtK() >= 0.7 * began && waited++ < 120) {
            s.go(1, COOLING, OFF);
        }
        assertThat(s.w.hot().doubtK()).as("K, less than what began it").isBetween(0.001, 0.7 * began);
        assertThat(s.w.doubtful()).as("and not yet settled").isTrue();
        s.go(120, COOLING, OFF);
        assertThat(s.w.doubtful()).as("it cools as it should").isFalse();
        assertThat(s.w.suspect()).isEqualTo(Suspect.NONE);
    }

    @Test
    void withoutAReadingNothingGathersAndTheExpectationGoesOn() {
        Watch w = Watch.from(27);
        for (int t = 0; t < 600; t++) {
            w = w.after(new Step(1, 1, ROOM_C, Double.NaN, true), PROVEN, 0);
        }
        double arrivedS = 600 - TRAITS.lagS() - Underway.PROBE_S;
        assertThat(w.expectedC()).isCloseTo(27 + arrivedS * TRAITS.riseKPerS() + 600 * COOLING, within(0.15));
        assertThat(w.hot()).isEqualTo(Cause.NONE);
        assertThat(w.cold()).isEqualTo(Cause.NONE);
        assertThat(w.suspicion()).isZero();
    }

    @Test
    void aLearnerThatDriftsCannotTakeTheWatchAlongInAnHour() {
        Watch w = Watch.from(27);
        double readingC = 27;
        double worst = 10 * TRAITS.riseKPerS();
        for (int t = 0; t < 3_600; t++) {
            readingC += COOLING;
            w = w.after(new Step(1, 0, ROOM_C, readingC, true), PROVEN, worst);
        }
        assertThat(w.driftKPerS()).as("K/s, three tenths of full power").isCloseTo(0.3 * TRAITS.riseKPerS(),
                within(1e-6));
        assertThat(Watch.from(27).after(new Step(1, 0, ROOM_C, 27, true), UNPROVEN, worst).driftKPerS())
                .as("before the first proof it may").isEqualTo(worst);
    }

    @Test
    void anotherBatchForgetsADoubtOfTheSwitchesAndNothingElse() {
        assertThat(Watch.from(26).above().another().suspect()).isEqualTo(Suspect.NONE);
        Shown s = new Shown();
        s.go(3_600, COOLING, FULL);
        assertThat(s.w.above()).as("what was found before stays").isEqualTo(s.w);
        assertThat(s.w.another().suspect()).isEqualTo(Suspect.DEAD);
    }

    @Test
    void whatRisesAboveItsSetPointMayStillBeNamedOtherwise() {
        Shown s = new Shown();
        s.w = s.w.above();
        s.go(3_600, COOLING, FULL);
        assertThat(s.w.suspect()).isEqualTo(Suspect.DEAD);
    }

    @Test
    void theNameStaysAndClearingForgetsTheSumsButNotTheHeatOnItsWay() {
        Shown s = new Shown();
        s.go(3_600, COOLING, FULL);
        Watch named = s.w;
        for (int t = 0; t < 120; t++) {
            s.readingC += TRAITS.riseKPerS() + COOLING;
            s.w = s.w.after(new Step(1, 1, ROOM_C, s.readingC, true), PROVEN, 0);
        }
        assertThat(s.w.suspect()).as("although heat arrives again").isEqualTo(Suspect.DEAD);
        Watch cleared = named.cleared();
        assertThat(cleared.suspect()).isEqualTo(Suspect.NONE);
        assertThat(cleared.suspicion()).isZero();
        assertThat(cleared.underway()).isEqualTo(named.underway());
        assertThat(cleared.expectedC()).isEqualTo(named.still().readingC());
    }
}

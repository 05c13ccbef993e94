package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Belief;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is believed of a probe, rung by rung (control.md §3.3). */
class JudgeLadderTest {

    private static final double PULSES_K = 0.25;

    private static Story holding(Fitting... f) {
        Story s = Story.at(f);
        s.does(Step.STARTED);
        return s.minutes(10);
    }

    private static Belief belief(Story s) {
        return s.state().live().cones().get("a").judged().belief();
    }

    /** It shows the pulses of its heater. */
    private static void trustedAt(double c, Story s) {
        assertThat(belief(s)).isInstanceOfSatisfying(Belief.Trusted.class,
                t -> assertThat(t.degreesC()).isCloseTo(c, within(PULSES_K)));
    }

    private static String why(Story s) {
        return ((Belief.Untrusted) belief(s)).why();
    }

    @Test
    void aFreshPlausibleReadingIsTrusted() {
        trustedAt(27, holding());
    }

    @ParameterizedTest
    @ValueSource(doubles = {85.0, 0.0, -62, 60, 45.1, 0.9})
    void whatHatchingWaterCannotBeIsNeverBelieved(double c) {
        Story s = holding();
        s.senses.water("a", c);
        s.minutes(40);
        assertThat(belief(s).known()).isFalse();
        assertThat(s.on("a.cut-out")).isFalse();
        Story first = Story.at();
        first.senses.water("a", c);
        first.does(Step.STARTED);
        first.minutes(5);
        assertThat(belief(first).known()).as("also not as the first reading").isFalse();
    }

    @Test
    void thePowerOnValueIsNamed() {
        Story s = holding();
        s.senses.water("a", 85.0).water("a", 85.0);
        s.tick();
        assertThat(why(s)).contains("85.0").contains("lost its power");
    }

    @Test
    void aReadingMayMoveAsFastAsTheHeaterCanAndNotFaster() {
        Story s = holding();
        for (double c = s.senses.shownC("a"); c < 28; c += 0.012) {
            s.senses.water("a", c);
            s.seconds(4);
            assertThat(belief(s).known()).isTrue();
        }
        s.senses.water("a", 28.5);
        s.tick();
        assertThat(belief(s).known()).isFalse();
    }

    @Test
    void aProbeDriftingOffInAirIsFoundWithinAMinute() {
        Story s = holding();
        for (double c = s.senses.shownC("a"); c > 26; c -= 0.1) {
            s.senses.water("a", c);
            s.seconds(5);
        }
        assertThat(belief(s).known()).isFalse();
    }

    @Test
    void silenceIsTrustedFifteenSecondsProjectedForAMinuteThenNothing() {
        Story s = holding();
        s.senses.silent("a-water", s.now().monoMs() - 1_000);
        s.seconds(14);
        assertThat(belief(s)).isInstanceOf(Belief.Trusted.class);
        s.seconds(2);
        assertThat(belief(s)).isInstanceOfSatisfying(Belief.Projected.class, p -> {
            assertThat(p.lastC()).isCloseTo(27, within(PULSES_K));
            assertThat(p.hottestC()).isGreaterThan(p.lastC() + 0.1);
            assertThat(p.coldestC()).isLessThan(p.lastC() - 0.1);
        });
        double early = belief(s).hottestC();
        s.seconds(43);
        assertThat(belief(s)).isInstanceOf(Belief.Projected.class);
        assertThat(belief(s).hottestC()).as("the longer, the wider").isGreaterThan(early);
        s.seconds(3);
        assertThat(why(s)).contains("silent");
        assertThat(belief(s).hottestC()).isInfinite();
    }

    @Test
    void anAbsentOrFaultyProbeKeepsItsLastFigureOnlyAsLong() {
        for (Reading r : new Reading[] {new Reading.Absent(), new Reading.Faulty("checksum")}) {
            Story s = holding();
            s.senses.probe("a-water", r);
            s.seconds(12);
            assertThat(belief(s).known()).isTrue();
            s.minutes(1);
            assertThat(belief(s).known()).isFalse();
        }
    }

    @Test
    void aGapInTheMiddleOfRecoveryBeginsTheThreeMinutesAnew() {
        Story s = holding();
        s.senses.water("a", 24);
        s.seconds(5);
        s.senses.water("a", 27);
        s.seconds(100);
        s.senses.probe("a-water", new Reading.Faulty("checksum"));
        s.seconds(5);
        s.senses.water("a", 27);
        s.seconds(150);
        assertThat(belief(s).known()).isFalse();
        s.seconds(40);
        assertThat(belief(s).known()).isTrue();
    }

    @Test
    void steadyButFarFromWhereTheWaterWasIsNotBelievedForTwentyMinutes() {
        Story s = holding();
        s.senses.water("a", 22);
        s.minutes(15);
        assertThat(belief(s).known()).as("a probe on the bench is steady too").isFalse();
        s.minutes(10);
        trustedAt(22, s);
    }

    @Test
    void twoProbesThatDisagreeAreNeitherBelieved() {
        Story s = holding(Fitting.TWO_PROBES);
        s.senses.water("a", 27).probe("a-second", new Reading.Value(27.7));
        s.tick();
        assertThat(belief(s).known()).isTrue();
        s.senses.probe("a-second", new Reading.Value(27.9));
        s.tick();
        assertThat(why(s)).contains("27.0 and 27.9");
        s.senses.probe("a-second", new Reading.Value(27.2));
        s.minutes(4);
        assertThat(belief(s).known()).isTrue();
    }

    @Test
    void whenTheMainProbeFallsSilentTheSecondCarriesOn() {
        Story s = holding(Fitting.TWO_PROBES);
        s.senses.probe("a-water", new Reading.Absent());
        s.minutes(5);
        trustedAt(27, s);
    }

    @Test
    void aChangeOfVoiceBetweenTwoProbesIsNoJumpOfTheWater() {
        Story s = holding(Fitting.TWO_PROBES);
        s.senses.probe("a-second", new Reading.Value(27.5));
        s.minutes(2);
        for (int i = 0; i < 6; i++) {
            s.senses.silent("a-water", s.now().monoMs());
            s.seconds(40);
            assertThat(belief(s)).isInstanceOf(Belief.Trusted.class);
            assertThat(belief(s).middleC()).isCloseTo(27, within(PULSES_K));
            s.senses.water("a", s.senses.shownC("a"));
            s.minutes(2);
            trustedAt(27, s);
        }
        assertThat(s.state().live().cones().get("a").judged().water().departures()).isEmpty();
        assertThat(s.told()).isEmpty();
        s.senses.silent("a-water", s.now().monoMs()).probe("a-second", new Reading.Value(22));
        s.seconds(40);
        assertThat(belief(s).known()).as("a real jump of the second one counts").isFalse();
    }

    @Test
    void aSecondProbeThatDiesIsToldCalmly() {
        for (String dead : new String[] {"a-second", "a-water"}) {
            Story s = holding(Fitting.TWO_PROBES);
            s.senses.probe(dead, new Reading.Absent());
            s.minutes(9);
            assertThat(s.told()).as("a plug that is looked at").isEmpty();
            s.minutes(3);
            assertThat(s.standing("a")).containsExactly("one-probe");
            assertThat(s.told().getFirst().what()).contains(dead).contains("the other one serves");
            assertThat(s.on("a.cut-out")).as("heat goes on").isTrue();
            s.senses.probe(dead, new Reading.Value(27));
            assertThat(s.minutes(2).standing("a")).isEmpty();
        }
        assertThat(holding().minutes(20).told()).as("who has one probe has no second").isEmpty();
    }

    @Test
    void handsInTheWaterMayMoveTheProbe() {
        Story s = holding();
        s.does(Step.HANDS_IN);
        s.senses.water("a", 21);
        s.minutes(1);
        assertThat(belief(s)).isEqualTo(new Belief.Trusted(21));
        assertThat(s.state().live().cones().get("a").judged().water().departures()).isEmpty();
    }

    @Test
    void heaterStaysOffUntilEveryProbeHasAnswered() {
        Story s = holding(Fitting.TWO_PROBES);
        s.restart("boot-1", 1_000);
        s.senses.probe("a-second", new Reading.NotYet());
        s.minutes(10);
        assertThat(s.on("a.cut-out") || s.on("a.heat")).isFalse();
        assertThat(why(s)).contains("a-second").contains("has not answered since the daemon started");
        s.senses.probe("a-second", new Reading.Absent());
        s.minutes(1);
        assertThat(s.on("a.cut-out")).as("found nowhere is not an answer").isFalse();
        s.senses.probe("a-second", new Reading.Value(27));
        s.tick();
        assertThat(s.on("a.cut-out")).isTrue();
    }

    @Test
    void nothingIsEnergisedInTheFirstTickWhateverTheRecordSays() {
        Story s = holding();
        s.senses.probe("a-water", new Reading.NotYet());
        s.restart("boot-2", 60_000).tick();
        assertThat(s.last().outputs()).as("and the air is on")
                .allSatisfy((id, level) -> assertThat(level).as(id)
                .isEqualTo(id.endsWith("air-pause") && !id.startsWith("a.")));
    }

    @Test
    void aRoomThatReadsNonsenseIsNotMeasured() {
        Story s = holding(Fitting.ROOM_PROBE);
        assertThat(s.state().live().cones().get("a").judged().roomC()).contains(20.0);
        for (double c : new double[] {0.0, 85, -40}) {
            s.senses.room(c);
            s.tick();
            assertThat(s.state().live().cones().get("a").judged().roomC()).isEmpty();
        }
        s.senses.room(23).silent("room", s.now().monoMs());
        s.minutes(9);
        assertThat(s.state().live().cones().get("a").judged().roomC()).hasValueSatisfying(
                c -> assertThat(c).isCloseTo(23, within(0.02)));
        s.minutes(2);
        assertThat(s.state().live().cones().get("a").judged().roomC()).isEmpty();
    }
}

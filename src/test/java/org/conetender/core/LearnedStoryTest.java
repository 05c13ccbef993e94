package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.HeaterBook.Learned;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Basin;
import org.conetender.core.judge.Cooling;
import org.conetender.core.judge.Thermal;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** What was learned of a heater outlives the process, as ratios, and is doubted again. */
class LearnedStoryTest {

    /** 18 W where 25 are written on it, under a better lid than is taken for granted. */
    private final Basin basin = new Basin(new Basin.Build(21, 2, 1.0, 70, 15), 23, 1);

    private Story started() {
        Story s = Story.at(Larkmoor.Fitting.ROOM_PROBE);
        s.senses.room(20);
        s.each(x -> {
            s.senses.water("a", basin.second(x.on("a.heat") && x.on("a.cut-out")));
            s.senses.frozen("a-water");
        });
        return s.does(Step.STARTED);
    }

    private static List<Fact> learned(Story s) {
        return s.paper.facts().stream().filter(f -> f.change() instanceof Change.Learned).toList();
    }

    private static Learned last(Story s) {
        return ((Change.Learned) learned(s).getLast().change()).what();
    }

    private static Thermal known(Story s) {
        return s.state().live().cones().get("a").judged().thermal().orElseThrow();
    }

    /** In steps of one second. */
    private static Story hours(Story s, int hours) {
        for (int i = 0; i < 2 * hours; i++) {
            s.minutes(30);
        }
        return s;
    }

    @Test
    void aPassedProofIsWrittenDownAsRatiosHourlyAtMostAndOnlyWhenItIsNews() {
        Story s = hours(started(), 9);
        List<Fact> facts = learned(s);
        assertThat(facts).as("in nine hours").hasSizeBetween(1, 8);
        for (int i = 1; i < facts.size(); i++) {
            assertThat(facts.get(i).at().since(facts.get(i - 1).at()).leastMs())
                    .isGreaterThanOrEqualTo(Units.HOUR_MS);
            Learned before = ((Change.Learned) facts.get(i - 1).change()).what();
            assertThat(((Change.Learned) facts.get(i).change()).what().differs(before, 0.02)).isTrue();
        }
        assertThat(last(s).watts()).isEqualTo(25);
        assertThat(last(s).litres()).isEqualTo(2);
        assertThat(last(s).rise()).isCloseTo(21.0 / 25, within(0.08));
        assertThat(last(s).lagS()).isCloseTo(70, within(20.0));
        assertThat(s.told()).isEmpty();
    }

    @Test
    void anotherLifeBeginsWithItButMustProveItAnew() {
        Story s = hours(started(), 4);
        Learned kept = last(s);
        double doubt = known(s).estimate().riseDoubt();
        s.restart("boot-1", 3_000).seconds(5);
        Thermal t = known(s);
        assertThat(t.watch().suspicion()).as("it watches from the first tick on").isBetween(0.0, 0.5);
        assertThat(t.estimate().traits().riseKPerS() / t.estimate().nominal().riseKPerS())
                .isCloseTo(kept.rise(), within(1e-9));
        assertThat(t.estimate().traits().lagS()).isCloseTo(kept.lagS(), within(1e-9));
        assertThat(t.proof().passed()).isFalse();
        assertThat(t.estimate().riseDoubt()).as("doubted as before it was learned").isGreaterThan(doubt)
                .isGreaterThan(0.04);
        hours(s, 3);
        assertThat(known(s).proof().passed()).isTrue();
        assertThat(s.told()).isEmpty();
    }

    private static Cooling bridged(Story s) {
        return s.state().book().cone("a").bridges().getLast().ends().cooling();
    }

    @Test
    void aPowerCutOfUnknownLengthIsReckonedByTheCoolingThatTheConeHasShown() {
        Story s = hours(started(), 6);
        double trueH = 1 / basin.build.lossPerS() / 3_600;
        assertThat(last(s).coolingKnown()).isTrue();
        s.wall(0, false).restart("boot-2", 60_000).minutes(1);
        Cooling c = bridged(s);
        assertThat(c.slowestH() / c.quickestH()).as("narrower than by the book").isLessThan(3.1);
        assertThat(trueH).isBetween(c.quickestH(), c.slowestH());
        assertThat(Math.sqrt(c.quickestH() * c.slowestH())).isCloseTo(trueH, within(0.3 * trueH));
    }

    @Test
    void inARoomThatNobodyMeasuresTheBookIsAskedForTheCooling() {
        Story s = hours(started(), 6);
        s.senses.probe("room", new Reading.Absent());
        s.minutes(20).wall(0, false).restart("boot-2", 60_000).minutes(1);
        assertThat(bridged(s).slowestH() / bridged(s).quickestH()).isCloseTo(1.6 * 3.5, within(0.01));
    }

    @Test
    void anotherAmountOfWaterKnowsNothingOfIt() {
        Story s = hours(started(), 4);
        s.does(Step.DRAINED, Step.CLEANED);
        s.ask("a", new Ask.DidFill(1.5, 25));
        s.minutes(2); // just filled, it is not learned from yet
        assertThat(known(s).estimate().nominal().riseKPerS()).isCloseTo(25 / (1.5 * Units.BRINE_J_PER_L_K),
                within(1e-9));
        assertThat(known(s).estimate().traits().lagS()).isEqualTo(50);
    }

    @Test
    void whatCannotBeTrueIsNotBelieved() {
        Learned good = new Learned(25, 2, 0.8, 1.2, 60, 0);
        assertThat(good.fits(25, 2)).isTrue();
        assertThat(good.fits(50, 2)).isFalse();
        assertThat(good.fits(25, 3)).isFalse();
        for (Learned bad : List.of(new Learned(25, 2, 0.1, 1, 60, 0), new Learned(25, 2, 1, 9, 60, 0),
                new Learned(25, 2, 1, 1, 1, 0), new Learned(25, 2, Double.NaN, 1, 60, 0))) {
            assertThat(bad.fits(25, 2)).as("%s", bad).isFalse();
        }
        assertThat(good.differs(new Learned(25, 2, 0.81, 1.19, 60.5, 0), 0.02)).isFalse();
        assertThat(good.differs(new Learned(25, 2, 0.82, 1.2, 60, 0), 0.02)).isTrue();
        assertThat(good.differs(new Learned(25, 1.5, 0.8, 1.2, 60, 0), 0.02)).isTrue();
    }

    @Test
    void aFailingRecordKeepsNothingAndNothingWaitsForIt() {
        Story s = started();
        s.minutes(10);
        s.paper.mood(Paper.Mood.REFUSING);
        hours(s, 4);
        assertThat(learned(s)).isEmpty();
        assertThat(Optional.of(s.standing("")).orElseThrow()).contains("record");
        s.paper.mood(Paper.Mood.KEEPING);
        hours(s, 2);
        assertThat(learned(s)).isNotEmpty();
    }
}

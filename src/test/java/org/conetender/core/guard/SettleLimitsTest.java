package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Lives;
import org.conetender.core.batch.Reconsidered;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.judge.AirTrack;
import org.conetender.core.judge.AirTrack.Proof;
import org.conetender.core.judge.Breath;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** Why the air may not be stopped, and what a person is told to do until it may. */
class SettleLimitsTest {

    private static final Change DAMAGED = new Change.Tripped(Lives.DAMAGED, "cut short");
    private static final Breath SPENT = new Breath(0.8, 0, 0);

    private final Shown shown = new Shown();

    private View hatching() {
        shown.story().does(Step.STARTED, Step.FIRST_SEEN).minutes(5);
        return shown.view();
    }

    private static View air(View v, Proof proof, Breath breath) {
        return Shown.air(v, new AirTrack(0, 300_000, 0, 0, proof, breath));
    }

    private static View shut(View v) {
        return Shown.noting(v, "a", new Change.Told(new Ask.Did(Step.VALVE_SHUT)));
    }

    private static String minutes(long ms) {
        return "report 'settle' in " + (long) Math.ceil(ms / 60_000.0) + " min.";
    }

    @Test
    void whatHasItsBreathMaySettle() {
        View v = hatching();
        assertThat(Suffocation.notYet(air(v, Proof.PROVEN, Breath.FULL))).isEmpty();
        assertThat(Suffocation.notYet(air(v, Proof.UNVERIFIED, Breath.FULL))).isEmpty();
        assertThat(Suffocation.notYet(air(shut(v), Proof.FAILED, Breath.FULL)))
                .as("no air is expected behind a shut valve").isEmpty();
    }

    @Test
    void waterThatWasShortOfAirIsGivenItFirst() {
        View v = hatching();
        assertThat(SPENT.restMs()).isGreaterThan(5 * Units.MINUTE_MS);
        assertThat(Suffocation.notYet(air(v, Proof.PROVEN, SPENT))).contains("its water has not had air for "
                + "long enough since it was last without; " + minutes(SPENT.restMs()));
        assertThat(Suffocation.notYet(air(shut(v), Proof.PROVEN, SPENT))).hasValueSatisfying(why ->
                assertThat(why).startsWith("its air valve has been shut for too long; open it")
                        .endsWith(minutes(SPENT.restMs())));
    }

    @Test
    void whereNoAirArrivesThatIsSeenToFirst() {
        View v = hatching();
        assertThat(Suffocation.notYet(air(v, Proof.FAILED, Breath.FULL))).hasValueSatisfying(why ->
                assertThat(why).startsWith("no air arrives").endsWith("report 'settle' in 1 min."));
        assertThat(Suffocation.notYet(air(v, Proof.FAILED, SPENT))).hasValueSatisfying(why ->
                assertThat(why).startsWith("no air arrives").endsWith(minutes(SPENT.restMs())));
    }

    @Test
    void handsKeepTheAirOnForTheirTime() {
        shown.story().does(Step.STARTED, Step.FIRST_SEEN, Step.HANDS_IN).minutes(5);
        assertThat(Suffocation.notYet(shown.view())).hasValueSatisfying(why -> assertThat(why)
                .startsWith("hands are in the water").endsWith("report 'settle' in 10 min."));
    }

    @Test
    void whatHasNoAnimalsOrNoAirIsNotAsked() {
        shown.story().does(Step.STARTED).minutes(2);
        assertThat(Suffocation.notYet(air(shown.view(), Proof.FAILED, SPENT))).isEmpty();
        shown.story().does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE).seconds(5);
        assertThat(Suffocation.notYet(air(shown.view(), Proof.FAILED, SPENT))).isEmpty();
    }

    private static Optional<String> keepsAir(View v) {
        View idle = Shown.wants(v, new View.Wants(false, true, false));
        return new Suffocation().look(idle).stream().peek(f -> assertThat(f.denies())
                .containsExactly(Power.AIR_OFF)).map(Finding::what).findFirst();
    }

    @Test
    void animalsAndCystsKeepTheirAir() {
        View v = hatching();
        assertThat(keepsAir(v)).contains("animals or cysts need air");
        shown.story().does(Step.STARTED).minutes(1);
        assertThat(keepsAir(shown.view())).contains("animals or cysts need air");
        shown.story().minutes(1);
        assertThat(keepsAir(shown.view())).as("nothing is in it").isEmpty();
        assertThat(new Suffocation().look(shown.view())).isEmpty();
    }

    @Test
    void anEmptiedConeKeepsItsAirUntilItsContactSaysSo() {
        shown.story(Fitting.LEVEL).minutes(1);
        assertThat(keepsAir(Shown.level(shown.view(), Level.OPEN))).isEmpty();
        for (Level l : new Level[] {Level.CLOSED, Level.UNKNOWN}) {
            assertThat(keepsAir(Shown.level(shown.view(), l))).hasValueSatisfying(why ->
                    assertThat(why).contains("its level contact does not say so"));
        }
    }

    @Test
    void withoutAContactItKeepsItsAirWhileTheReportCanBeWithdrawn() {
        Story s = shown.story();
        s.does(Step.STARTED, Step.DRAINED).seconds(10);
        View v = shown.view();
        long agoMs = v.since(v.stage().since()).leastMs();
        assertThat(keepsAir(Shown.later(v, 30 * Units.MINUTE_MS - agoMs - 1))).hasValueSatisfying(why ->
                assertThat(why).contains("can still be withdrawn"));
        assertThat(keepsAir(Shown.later(v, 30 * Units.MINUTE_MS - agoMs))).isEmpty();
    }

    /** What is left when a part was drawn may stand below its contact. */
    @Test
    void aContactThatIsDryDoesNotKnowThatAllIsDrawn() {
        Story s = shown.story(Fitting.LEVEL);
        s.does(Step.STARTED, Step.DRAINED).seconds(10);
        View v = Shown.level(shown.view(), Level.OPEN);
        long agoMs = v.since(v.stage().since()).leastMs();
        assertThat(keepsAir(v)).hasValueSatisfying(why -> assertThat(why).contains("can still be withdrawn"));
        assertThat(keepsAir(Shown.later(v, 30 * Units.MINUTE_MS - agoMs))).isEmpty();
        shown.story(Fitting.LEVEL).minutes(1);
        assertThat(keepsAir(Shown.noting(Shown.level(shown.view(), Level.OPEN), "", DAMAGED))).isPresent();
    }

    @Test
    void afterADamageItKeepsItsAirUntilSomebodySaysHowItStands() {
        shown.story().minutes(1);
        View damaged = Shown.noting(shown.view(), "", DAMAGED);
        assertThat(keepsAir(damaged)).hasValueSatisfying(why -> assertThat(why)
                .contains("nothing was reported of it since the record was damaged"));
        Change cleaned = new Change.Told(new Ask.Did(Step.CLEANED));
        assertThat(keepsAir(Shown.noting(damaged, "a", cleaned))).isEmpty();
        Change hands = new Change.Told(new Ask.Did(Step.VALVE_OPEN));
        assertThat(keepsAir(Shown.noting(damaged, "a", hands))).as("that says nothing of it").isPresent();
        View before = Shown.noting(shown.view(), "a", cleaned);
        assertThat(keepsAir(Shown.noting(before, "", DAMAGED)))
                .as("that was before").isPresent();
    }

    @Test
    void theFirstAnimalsAreThoseOfTheLastHatching() {
        View v = hatching();
        assertThat(v.animalsSince()).isPresent();
        View back = Shown.noting(v, "a", new Change.Moved(Reconsidered.INCUBATING, ""));
        assertThat(back.animalsSince()).isEmpty();
        View again = Shown.noting(back, "a", new Change.Moved("hatching", ""));
        assertThat(again.animalsSince()).contains(v.now());
        View later = Shown.noting(v, "a", new Change.Moved("hatching", ""));
        assertThat(later.animalsSince()).as("once is enough").isEqualTo(v.animalsSince());
        assertThat(Shown.noting(v, "a", new Change.Moved("ready", "")).animalsSince())
                .isEqualTo(v.animalsSince());
        shown.story().does(Step.STARTED);
        assertThat(shown.view().animalsSince()).isEmpty();
    }

    @Test
    void whoShutsAndOpensIsCountedFromTheFirstShuttingThatHolds() {
        View v = hatching();
        assertThat(v.valveShutForMs()).isZero();
        View shut = Shown.later(shut(v), 10_000);
        assertThat(shut.valveShutForMs()).isEqualTo(10_000);
        assertThat(shut(shut).valveShutForMs()).as("said twice").isEqualTo(10_000);
        View open = Shown.noting(shut, "a", new Change.Told(new Ask.Did(Step.VALVE_OPEN)));
        assertThat(open.valveShutForMs()).isZero();
        assertThat(Shown.later(shut(open), 3_000).valveShutForMs()).isEqualTo(3_000);
    }

    @Test
    void aSeparationShorterThanFourMinutesIsTooHurried() {
        assertThat(new View.Caps(1, 1, 239_999).tooHurried()).isTrue();
        assertThat(new View.Caps(1, 1, 240_000).tooHurried()).isFalse();
        assertThat(new AirFailed().takesBack(hatching())).isEmpty();
    }

    @Test
    void aLackThatWasMarkedIsToldOnAndTakenBackIfNothingSwam() {
        String lack = "no air was seen to arrive for more than 12 min with nauplii in the water";
        View v = Shown.noting(hatching(), "a", new Change.Doubted(lack));
        assertThat(new AirFailed().look(v)).singleElement().satisfies(f -> {
            assertThat(f.alarm()).contains(AlarmKind.DOUBTFUL);
            assertThat(f.doubt()).contains(lack);
        });
        assertThat(new AirFailed().takesBack(v)).as("they swam").isEmpty();
        shown.story().does(Step.STARTED);
        View cysts = Shown.noting(shown.view(), "a", new Change.Doubted(lack));
        assertThat(new AirFailed().takesBack(cysts)).containsExactly(lack);
        assertThat(new AirFailed().look(cysts)).isEmpty();
        View other = Shown.noting(shown.view(), "a", new Change.Doubted("too warm"));
        assertThat(new AirFailed().takesBack(other)).isEmpty();
        View gone = Shown.noting(cysts, "a", new Change.Told(new Ask.Did(Step.DRAINED)));
        assertThat(new AirFailed().takesBack(gone)).as("of what is gone it stays").isEmpty();
    }

    @Test
    void onlyWhoWouldStopTheAirIsRefused() {
        View v = air(hatching(), Proof.PROVEN, SPENT);
        for (Step step : Step.values()) {
            Request r = new Request("r", Request.Origin.fresh("test", ""), "a", new Ask.Did(step));
            assertThat(new Suffocation().refuses(r, v).isPresent()).as(step.word())
                    .isEqualTo(step == Step.SETTLE);
        }
        shown.story(Fitting.LEVEL).minutes(1);
        View runs = Shown.wants(Shown.level(shown.view(), Level.CLOSED), new View.Wants(false, false, false));
        assertThat(new Suffocation().look(runs)).as("nobody wants to stop it").isEmpty();
    }

    @Test
    void aLifeBeganAfterWhatWasBeforeIt() {
        View v = hatching();
        assertThat(v.airOffForMs()).isZero();
        assertThat(v.restartedSince(v.scene().begun())).isFalse();
        assertThat(v.restartedSince(v.scene().begun().plusMs(-1))).isTrue();
        assertThat(v.restartedSince(v.now())).isFalse();
        assertThat(v.restartedSince(new Moment("another", v.now().monoMs(), 0, false))).isTrue();
        View latched = Shown.noting(v, "a", new Change.Tripped("dry", "why"));
        assertThat(latched.latch("dry")).hasValueSatisfying(l -> assertThat(l.why()).isEqualTo("why"));
        assertThat(latched.latch("probe")).isEmpty();
        assertThat(v.handsIn()).isFalse();
        assertThat(Shown.noting(v, "a", new Change.Told(new Ask.Did(Step.HANDS_IN))).handsIn()).isTrue();
        assertThat(v.handled()).isFalse();
        assertThat(Shown.noting(v, "a", new Change.Told(new Ask.Did(Step.TOPPED_UP))).handled()).isTrue();
    }
}

package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** What all guards have in common, and the limits of single ones, to the tick. */
class GuardsTest {

    private final Shown shown = new Shown();

    /** They stand in records: under another name no latch of before would be known. */
    @Test
    void eachHasItsNameWhichNoReleaseChanges() {
        assertThat(Guards.ALL).extracting(Guard::id).containsExactly("too-hot", "welded", "switch",
                "wrong-cone", "no-effect", "probe", "frozen", "dry", "falling", "still-water", "hands-in",
                "air-failed", "suffocation", "siphon", "shut-valve", "air-while-drawing", "power-cut",
                "watts", "stale", "record", "unwritten", "clock", "late", "heater-stuck",
                "output-stuck", "crash-loop", "record-damaged");
    }

    @Test
    void ofAnEmptyConeInGoodOrderNobodyIsCalled() {
        shown.story().minutes(2);
        for (Guard g : Guards.ALL) {
            assertThat(g.look(shown.view())).as(g.id()).allMatch(f -> f.guard().equals(g.id()))
                    .allMatch(f -> f.alarm().isEmpty()).allMatch(f -> f.doubt().isEmpty());
            assertThat(g.takesBack(shown.view())).as(g.id()).isEmpty();
        }
    }

    @Test
    void aTickIsLateFromTwoSecondsOn() {
        shown.story();
        assertThat(new SilentFailure().look(Shown.late(shown.view(), 1_999))).isEmpty();
        assertThat(new SilentFailure().look(Shown.late(shown.view(), 2_000))).singleElement()
                .satisfies(f -> assertThat(f.alarm()).contains(AlarmKind.LATE));
    }

    @Test
    void aClockIsMissedAfterAnHour() {
        shown.story();
        assertThat(new WrongClock().look(Shown.site(shown.view(), 0, Units.HOUR_MS - 1))).isEmpty();
        assertThat(new WrongClock().look(Shown.site(shown.view(), 0, Units.HOUR_MS))).hasSize(1);
    }

    @Test
    void theLastWattMayBeUsed() {
        shown.story();
        View wanting = Shown.wants(shown.view(), new View.Wants(true, false, false));
        assertThat(new TooManyWatts().look(Shown.site(wanting, 50, 0))).as("with its 25 W 75").isEmpty();
        assertThat(new TooManyWatts().look(Shown.site(wanting, 50.1, 0))).singleElement()
                .satisfies(f -> assertThat(f.denies()).containsExactly(Power.HEAT));
        assertThat(new TooManyWatts().look(Shown.site(shown.view(), 50.1, 0)))
                .as("who wants none waits for none").isEmpty();
    }

    @Test
    void waterStandsStillAsSoonAsTheAirIsToBeStopped() {
        shown.story().does(Step.STARTED).minutes(2);
        assertThat(new StillWater().look(shown.view())).isEmpty();
        assertThat(new StillWater().look(Shown.wants(shown.view(), new View.Wants(true, true, false))))
                .singleElement().satisfies(f -> assertThat(f.denies()).containsExactly(Power.HEAT));
    }
}

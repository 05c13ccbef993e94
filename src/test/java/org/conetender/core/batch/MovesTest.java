package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Speed;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** When a batch moves on by itself: at its hour or its degree-hours, not a millisecond earlier. */
class MovesTest {

    private static final Cone.Timing TIMING = new Cone.Timing(2, 4, 6, 10, false);
    private static final long SETTLE_MS = 6 * Units.MINUTE_MS;
    private static final Boots BOOTS = Boots.NONE;
    private static final Speed SPEED = Speed.UNKNOWN_LOT;

    /** What is due for that batch, so long after its stage began, with so many degree-hours. */
    private static Optional<String> due(Batch b, long laterMs, double degreeHours) {
        Moment now = b.stage().since().plusMs(laterMs);
        Development d = new Development(degreeHours, degreeHours, 0, 0, 0);
        return Moves.due(b, TIMING, progress(d), new Moves.Clock(now, BOOTS, SETTLE_MS))
                .map(Change.Moved::stage);
    }

    private static Moves.Progress progress(Development d) {
        return new Moves.Progress(d, SPEED.k10(), SPEED.calledReadyAt());
    }

    private static Batch in(String stage) {
        return FitsTest.in(stage).batch();
    }

    @Test
    void hydrationEndsByTheClockHoweverWarmItWas() {
        assertThat(due(in("hydrating"), 2 * Units.HOUR_MS - 1, 999)).isEmpty();
        assertThat(due(in("hydrating"), 2 * Units.HOUR_MS, 0)).contains("incubating");
    }

    @Test
    void hatchingBeginsByDegreeHoursHoweverLongItTook() {
        assertThat(due(in("incubating"), 90 * Units.HOUR_MS, SPEED.k10() - 0.01)).isEmpty();
        assertThat(due(in("incubating"), 0, SPEED.k10())).contains("hatching");
    }

    @Test
    void theHarvestPointIsReachedByDegreeHours() {
        assertThat(due(in("hatching"), 90 * Units.HOUR_MS, SPEED.calledReadyAt() - 0.01)).isEmpty();
        assertThat(due(in("hatching"), 0, SPEED.calledReadyAt())).contains("ready");
        assertThat(SPEED.k10()).isLessThan(SPEED.calledReadyAt());
    }

    /** Right after a start nobody knows at how many degree-hours it is called ready. */
    @Test
    void nothingIsCalledReadyBeforeItsHourIsReckoned() {
        Batch b = in("hatching");
        assertThat(Moves.due(b, TIMING, new Moves.Progress(new Development(999, 999, 0, 0, 0), SPEED.k10(),
                Double.NaN), new Moves.Clock(b.stage().since(), BOOTS, SETTLE_MS))).isEmpty();
    }

    /** What is left in the cone after a first harvest has its degree-hours already, and needs its time. */
    @Test
    void aSecondHarvestIsNotCalledBeforeTheRestHadItsTwoHours() {
        ConeBook drawing = FitsTest.in("drawing");
        Batch rest = drawing.after(new Fact(50, drawing.batch().stage().since().plusMs(60_000), "a", "p",
                new Change.Told(new Ask.Did(Step.PART_DRAWN)))).batch();
        assertThat(rest.stage().word()).isEqualTo("hatching");
        assertThat(due(rest, 2 * Units.HOUR_MS - 1, 999)).isEmpty();
        assertThat(due(rest, 2 * Units.HOUR_MS, 999)).contains("ready");
        assertThat(due(rest, 9 * Units.HOUR_MS, SPEED.calledReadyAt() - 1)).isEmpty();
    }

    @Test
    void settlingEndsAfterItsWait() {
        assertThat(due(in("settling"), SETTLE_MS - 1, 999)).isEmpty();
        assertThat(due(in("settling"), SETTLE_MS, 0)).contains("settled");
    }

    /** Nothing but a person ends these, however late it gets. */
    @ParameterizedTest
    @ValueSource(strings = {"clean", "filled", "ready", "settled", "drawing", "drained", "abandoned"})
    void theseWaitForAPerson(String stage) {
        assertThat(due(in(stage), 900 * Units.HOUR_MS, 9_999)).isEmpty();
    }

    /** After a power cut with a clock that cannot be trusted only this boot's time is certain. */
    @Test
    void acrossAPowerCutOnlyTimeThatCertainlyPassedCounts() {
        Batch b = in("hydrating");
        for (boolean trusted : new boolean[] {false, true}) {
            Moment now = new Moment("boot-2", Units.MINUTE_MS, 5 * Units.HOUR_MS, trusted);
            var move = Moves.due(b, TIMING, progress(Development.NONE),
                    new Moves.Clock(now, BOOTS, SETTLE_MS));
            assertThat(move.isPresent()).isEqualTo(trusted);
        }
    }

    /** One move leads to the next in the order of a batch's life, and each folds to the stage it names. */
    @Test
    void everyMoveFoldsToTheStageItNames() {
        for (String from : List.of("hydrating", "incubating", "hatching", "settling")) {
            Batch b = in(from);
            String to = due(b, 900 * Units.HOUR_MS, 9_999).orElseThrow();
            Batch moved = Life.after(b, new Fact(60, b.stage().since(), "a", "", new Change.Moved(to, "x")));
            assertThat(moved.stage().word()).isEqualTo(to);
            assertThat(moved.marks()).isEqualTo(b.marks());
        }
    }
}

package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.conetender.core.hatch.Development;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Cooling;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** What was reached only by assumed hours is taken back, and nothing a person has said. */
class ReconsideredTest {

    private static final Moment AT = new Moment("boot-1", 900_000, 0, true);
    private static final Change BRIDGED = new Change.Bridged(new Bridge(AT, AT.plusMs(1),
            new Bridge.Ends(27, 23, 18, Cooling.nominal(2.4))));
    private static final Change HATCHING = new Change.Moved("hatching", "one in ten should have hatched");
    private static final Change READY = new Change.Moved("ready", Reconsidered.HARVEST_POINT);

    private static ConeBook then(ConeBook b, Change... changes) {
        long seq = 100;
        for (Change c : changes) {
            b = b.after(new Fact(seq, AT.plusMs(seq), "a", c instanceof Change.Told ? "s" + seq : "", c));
            seq++;
        }
        return b;
    }

    private static ConeBook hatching(Change... more) {
        return then(then(FitsTest.in("incubating"), BRIDGED, HATCHING), more);
    }

    private static Change did(Step s) {
        return new Change.Told(new Ask.Did(s));
    }

    /** The first tenth hatches at 400 °C·h, and it is called ready at 600. */
    private static Optional<String> due(ConeBook b, double mostDegreeHours) {
        return Reconsidered.due(b, new Moves.Progress(new Development(0, mostDegreeHours, 0, 0, 0), 400, 600))
                .map(Change.Moved::stage);
    }

    @Test
    void itStepsBackWhereItFallsShortByMoreThanAMinute() {
        assertThat(due(hatching(), 398.9)).contains("incubating-again");
        assertThat(due(hatching(), 399)).as("it may have been a minute more").isEmpty();
        assertThat(due(hatching(READY), 598.9)).contains("hatching-again");
        assertThat(due(hatching(READY), 599)).isEmpty();
    }

    @Test
    void oneStageAtATime() {
        assertThat(due(hatching(READY), 10)).contains("hatching-again");
        assertThat(due(hatching(READY, new Change.Moved("hatching-again", "")), 10))
                .contains("incubating-again");
    }

    @Test
    void onlyWhereHoursWereAssumed() {
        assertThat(due(then(FitsTest.in("incubating"), HATCHING), 10)).isEmpty();
    }

    @Test
    void neverPastWhatAPersonReported() {
        assertThat(due(hatching(did(Step.TOPPED_UP)), 10)).isEmpty();
        assertThat(due(then(FitsTest.in("incubating"), BRIDGED, did(Step.FIRST_SEEN)), 10)).isEmpty();
        assertThat(due(hatching(READY, did(Step.VALVE_SHUT)), 10)).isEmpty();
        assertThat(due(hatching(did(Step.NONE_SEEN)), 10)).as("that agrees with it").isPresent();
        assertThat(due(hatching(did(Step.RELAY_EXCHANGED)), 10)).as("that is no word of the batch")
                .isPresent();
        assertThat(due(hatching(new Change.Told(new Ask.SetSetpoint(26))), 10)).isPresent();
        assertThat(due(hatching(new Change.Doubted("too warm")), 10)).isPresent();
    }

    @Test
    void whatIsReadyBecauseItsAirCameBackStaysSo() {
        assertThat(due(hatching(new Change.Moved("ready", "its air came back")), 10)).isEmpty();
    }

    @Test
    void otherStagesStay() {
        assertThat(due(then(FitsTest.in("hydrating"), BRIDGED, new Change.Moved("incubating", "")), 10))
                .isEmpty();
        assertThat(due(then(FitsTest.in("settling"), BRIDGED, new Change.Moved("settled", "")), 10))
                .isEmpty();
    }

    @Test
    void itHasBeenRipeSinceItWasFirstCalledSoUnlessThatWasTakenBack() {
        assertThat(Reconsidered.ripeSince(hatching())).isEmpty();
        ConeBook ready = hatching(READY);
        Moment at = AT.plusMs(100);
        assertThat(Reconsidered.ripeSince(ready)).contains(at);
        ConeBook back = then(ready, did(Step.SETTLE), new Change.Moved("ready", "its air came back"));
        assertThat(Reconsidered.ripeSince(back)).as("that it separated changes nothing").contains(at);
        ConeBook taken = then(ready, new Change.Moved(Reconsidered.HATCHING, ""));
        assertThat(Reconsidered.ripeSince(taken)).isEmpty();
        ConeBook again = then(taken, BRIDGED, READY);
        assertThat(Reconsidered.ripeSince(again)).contains(AT.plusMs(101));
    }
}

package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.conetender.core.Larkmoor;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The fold of facts is total, and a move of our own never undoes what a person reported. */
class LifeTest {

    private static final Moment AT = new Moment("boot-1", 100_000, 0, true);

    private static Batch after(String stage, Change c) {
        return Life.after(FitsTest.in(stage).batch(), new Fact(99, AT, "a", "x", c));
    }

    @ParameterizedTest
    @EnumSource(Step.class)
    void everyStepFoldsInEveryStage(Step step) {
        for (String stage : FitsTest.WAYS.keySet()) {
            assertThat(after(stage, new Change.Told(new Ask.Did(step))).stage()).isNotNull();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"incubating", "hatching", "ready", "settling", "settled"})
    void aMoveOfOurOwnGoesOnOnlyFromItsOwnStage(String to) {
        for (String from : FitsTest.WAYS.keySet()) {
            Batch b = after(from, new Change.Moved(to, ""));
            boolean moves = switch (to) {
                case "incubating" -> from.equals("hydrating");
                case "hatching" -> from.equals("incubating");
                case "ready" -> List.of("hatching", "settling", "settled", "drawing").contains(from);
                case "settling" -> from.equals("ready");
                default -> from.equals("settling");
            };
            assertThat(b.stage().word()).as(from + " to " + to).isEqualTo(moves ? to : from);
        }
    }

    @Test
    void aWordNoReleaseWroteIsAnError() {
        assertThatThrownBy(() -> after("ready", new Change.Moved("drawing", "")))
                .hasMessageContaining("'drawing'");
    }

    @Test
    void theAirGoesOffOnceAndEveryStageOfTheSeparationRemembersWhen() {
        Moment off = FitsTest.in("settling").batch().stage().airOff();
        assertThat(FitsTest.in("settled").batch().stage().airOff()).isEqualTo(off);
        assertThat(FitsTest.in("drawing").batch().stage().airOff()).isEqualTo(off);
        assertThat(FitsTest.in("ready").batch().stage().airOff()).isNull();
    }

    @Test
    void aNewFillingForgetsWhatWasNotedOfTheOldBatch() {
        Batch b = after("drained", new Change.Told(new Ask.DidFill(2, 0)));
        assertThat(b.number()).isEqualTo(2);
        assertThat(b.stock()).isEmpty();
        assertThat(b.marks().valveShut() || b.marks().salted()).isFalse();
        assertThat(b.marks().words().assumed()).containsExactly("cleaned");
    }

    @Test
    void fillingAgainOnlyCorrectsTheFigures() {
        Batch b = after("filled", new Change.Told(new Ask.DidFill(1.7, 30)));
        assertThat(b.number()).isEqualTo(1);
        assertThat(b.fill().orElseThrow().litres()).isEqualTo(1.7);
    }

    @Test
    void aDoubtIsNotedOnce() {
        Batch b = after("ready", new Change.Doubted("too warm"));
        assertThat(Life.after(b, new Fact(100, AT, "a", "", new Change.Doubted("too warm")))).isEqualTo(b);
    }

    @Test
    void whatConcernsOnlyTheConeChangesNoBatch() {
        for (Change c : List.of(new Change.Tripped("dry", ""), new Change.Released("dry", ""),
                new Change.AlarmOver("dry"), new Change.Began(java.util.Optional.empty()), new Change.Left(),
                new Change.ClockSet(), new Change.SetAside("r-1", "a", "'salted'"),
                new Change.Described("larkmoor-a", 7, "0f"),
                new Change.Told(new Ask.Acknowledge("dry")), new Change.Told(new Ask.Away("neighbour")))) {
            assertThat(after("ready", c)).isEqualTo(FitsTest.in("ready").batch());
        }
    }

    /** Seeded: whatever happened before, withdrawing a request leaves the cone as if it had not been made. */
    @Test
    void withdrawingIsTheSameAsNeverHavingReported() {
        for (long seed = 1; seed <= 400; seed++) {
            Random random = new Random(seed);
            List<Fact> facts = history(random);
            ConeBook with = fold(facts);
            Fact last = with.lastReport().orElse(null);
            if (last == null || facts.getLast().seq() != last.seq()) {
                continue;
            }
            ConeBook withdrawn = with.after(new Fact(1000, AT, "a", "w",
                    new Change.Told(new Ask.Withdraw("last"))));
            ConeBook without = fold(facts.stream().filter(f -> !f.source().equals(last.source())).toList());
            assertThat(withdrawn.batch()).as("seed " + seed).isEqualTo(without.batch());
        }
    }

    private static List<Fact> history(Random random) {
        List<Fact> facts = new ArrayList<>();
        long seq = 1;
        for (int i = 0; i < 3 + random.nextInt(10); i++) {
            String source = "r" + i;
            for (Ask ask : request(random)) {
                facts.add(new Fact(seq, AT.plusMs(seq * 1000), "a", source, new Change.Told(ask)));
                seq++;
            }
        }
        return facts;
    }

    private static List<Ask> request(Random random) {
        Ask fill = new Ask.DidFill(1 + random.nextInt(3), random.nextInt(2) * 25);
        Ask stock = new Ask.DidStock("L-0417", 2);
        return switch (random.nextInt(6)) {
            case 0 -> List.of(new Ask.Did(Step.STARTED), fill, new Ask.Did(Step.SALTED), stock);
            case 1 -> List.of(fill);
            case 2 -> List.of(stock);
            case 3 -> List.of(new Ask.SetSetpoint(20 + random.nextInt(9)));
            case 4 -> List.of(new Ask.ReadyBy(random.nextBoolean() ? Optional.empty()
                    : Optional.of(Hour.parse("2026-11-27 07:3" + random.nextInt(10)))));
            default -> List.of(new Ask.Did(Step.values()[random.nextInt(Step.values().length)]));
        };
    }

    private static ConeBook fold(List<Fact> facts) {
        ConeBook b = Book.empty(Larkmoor.with(), AT).cone("a");
        for (Fact f : facts) {
            b = b.after(f);
        }
        return b;
    }

    private static Batch told(Batch b, Ask... asks) {
        for (Ask a : asks) {
            b = Life.after(b, new Fact(99, AT, "a", "x", new Change.Told(a)));
        }
        return b;
    }

    private static String stage(String from, Step step) {
        return told(FitsTest.in(from).batch(), new Ask.Did(step)).stage().word();
    }

    @Test
    void anHourAndASetPointTakeEachOthersPlace() {
        Ask hour = new Ask.ReadyBy(Optional.of(Hour.parse("2026-11-27 07:30")));
        Ask none = new Ask.ReadyBy(Optional.empty());
        Batch b = FitsTest.in("hydrating").batch();
        assertThat(told(b, hour).marks().readyBy()).contains(Hour.parse("2026-11-27 07:30"));
        assertThat(told(b, hour, none).marks().held()).isEqualTo(new Batch.Held.Usual());
        assertThat(told(b, new Ask.SetSetpoint(26), none).marks().setpointC()).as("that was told since")
                .hasValue(26);
        assertThat(told(b, new Ask.SetSetpoint(26), hour).marks().setpointC()).isEmpty();
        assertThat(told(b, none).marks().held()).isEqualTo(new Batch.Held.Usual());
    }

    @Test
    void aStartCleansWhatIsNotCleanAndLeavesACleanConeAlone() {
        Batch clean = FitsTest.in("clean").batch();
        assertThat(told(clean, new Ask.Did(Step.STARTED))).isEqualTo(clean);
        Batch b = told(FitsTest.in("drained").batch(), new Ask.Did(Step.STARTED));
        assertThat(b.stage()).isEqualTo(new Stage.Clean(AT));
        Batch ready = told(FitsTest.in("ready").batch(), new Ask.Did(Step.STARTED));
        assertThat(ready.marks().words().assumed()).containsExactly("settle", "drawing", "drained");
    }

    @Test
    void whatSwimsMovesOnlyWhatHasNotHatched() {
        assertThat(stage("hydrating", Step.FIRST_SEEN)).isEqualTo("hatching");
        assertThat(stage("incubating", Step.FIRST_SEEN)).isEqualTo("hatching");
        assertThat(stage("ready", Step.FIRST_SEEN)).isEqualTo("ready");
        assertThat(stage("filled", Step.FIRST_SEEN)).isEqualTo("filled");
    }

    @Test
    void nobodyDrawsWhatHasItsAirAndHandsBringItBack() {
        assertThat(stage("ready", Step.DRAWING)).isEqualTo("ready");
        assertThat(stage("settling", Step.DRAWING)).isEqualTo("drawing");
        assertThat(stage("settled", Step.HANDS_IN)).isEqualTo("ready");
        assertThat(stage("hatching", Step.HANDS_IN)).isEqualTo("hatching");
        assertThat(told(FitsTest.in("hatching").batch(), new Ask.Did(Step.HANDS_IN)).marks().handsIn())
                .contains(AT);
    }

    @Test
    void aFillingIsSaltedWhereItWasToldWithSalt() {
        for (String from : List.of("clean", "filled", "drained")) {
            Batch b = FitsTest.in(from).batch();
            assertThat(told(b, new Ask.DidFill(2, 0.5)).marks().salted()).as(from).isTrue();
            assertThat(told(b, new Ask.DidFill(2, 0)).marks().salted()).as(from).isFalse();
        }
        assertThat(told(FitsTest.in("drained").batch(), new Ask.DidFill(2, 25)).number()).isEqualTo(2);
    }

    @Test
    void whatWasOnlyAssumedGoesBackOneStage() {
        for (String from : FitsTest.WAYS.keySet()) {
            assertThat(after(from, new Change.Moved(Reconsidered.INCUBATING, "")).stage().word())
                    .isEqualTo(from.equals("hatching") ? "incubating" : from);
            assertThat(after(from, new Change.Moved(Reconsidered.HATCHING, "")).stage().word())
                    .isEqualTo(from.equals("ready") ? "hatching" : from);
        }
    }
}

package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** More of it. */
class Adversary19MoreTest {

    private static final long MINUTE = 60_000;

    private static Story hatched(Fitting... f) {
        return Story.at(f).does(Step.STARTED, Step.FIRST_SEEN).minutes(5);
    }

    private static List<String> doubts(Story s) {
        return s.batch("a").marks().words().doubts();
    }

    @Test
    void nobodyIsToldToWaitForALayerWhereTheAirCannotBeStopped() {
        Story s = hatched();
        s.unset.add("a.air-pause");
        s.minutes(1);
        s.ask("a", new Ask.Acknowledge("output-stuck"));
        Result.Reply r = s.did("a", Step.SETTLE);
        assertThat(r.accepted()).as(r.sentence()).isFalse();
    }

    @Test
    void aFillingByMistakeEndsNoAlarmThatNobodyHasSeen() {
        Story s = hatched();
        s.senses.water("a", 38.6);
        s.minutes(1);
        s.senses.water("a", 27);
        s.minutes(25);
        assertThat(s.standing("a")).contains("cooked");
        s.does(Step.STARTED).minutes(1);
        assertThat(s.ask("a", new Ask.Withdraw("started")).accepted()).isTrue();
        s.minutes(1);
        assertThat(doubts(s)).isNotEmpty();
        assertThat(s.standing("a")).contains("cooked");
    }

    @Test
    void anEmptyConeThatIsWashedHotIsNoOverheating() {
        Story s = Story.at();
        s.senses.water("a", 22);
        s.does(Step.STARTED).minutes(20);
        for (int i = 0; i < 600 && !s.on("a.heat"); i++) {
            s.tick();
        }
        assertThat(s.on("a.heat")).isTrue();
        s.does(Step.DRAINED).seconds(20);
        s.senses.water("a", 42);
        s.minutes(2);
        System.out.println("WASH " + s.told());
        assertThat(s.standing("a")).isEmpty();
    }

    /** A heater's other alarm while one of the same name is known: the lamp was known before the restart. */
    @Test
    void afterARestartAnotherOutputIsNotTakenForTheOneThatWasSeen() {
        Story s = hatched();
        s.unset.add("a.lamp");
        s.minutes(1);
        s.ask("a", new Ask.Acknowledge("output-stuck"));
        s.minutes(1).restart("boot-1", 3_000);
        s.unset.add("a.air-pause");
        s.minutes(20);
        assertThat(s.told("output-stuck")).isEqualTo(2);
    }

    /** The record fails from before the trip until after the restart. */
    @Test
    void aLockThatTheRecordCouldNotTakeIsFoundAgainOrKept() {
        Story s = Story.at(Fitting.ROOM_PROBE);
        s.senses.water("a", 27);
        s.does(Step.STARTED).minutes(10);
        s.paper.mood(Paper.Mood.REFUSING);
        s.minutes(2);
        s.senses.water("a", 31.5);
        s.minutes(1);
        System.out.println("LOCK " + s.standing("a"));
        s.senses.water("a", 27);
        s.minutes(30);
        s.paper.mood(Paper.Mood.KEEPING);
        s.restart("boot-1", 3_000).minutes(5);
        System.out.println("LOCK after " + s.standing("a") + " " + s.on("a.cut-out"));
    }

    /** Cysts that are shelved as without air, and hatch. */
    @Test
    void aShelfForCystsHidesNoNauplii() {
        Story s = Story.at(Fitting.AIR_PROOF).does(Step.STARTED);
        s.senses.contact("a.air-proof", org.conetender.core.image.ContactSample.Level.OPEN);
        s.minutes(2);
        assertThat(s.ask("a", new Ask.Shelve("air-failed", 8)).accepted()).isTrue();
        s.minutes(5).does(Step.FIRST_SEEN).minutes(2);
        assertThat(s.told("air-failed-animals")).isEqualTo(1);
    }

    /** A probe that dies and a second cut in one night. */
    @Test
    void ripeWithoutAProbe() {
        Story s = hatched();
        s.senses.probe("a-water", new Reading.Absent());
        s.pass(Duration.ofHours(3));
        s.restart("boot-2", 20 * MINUTE).minutes(5);
        System.out.println("NOPROBE " + s.stage() + " " + doubts(s) + " " + s.standing("a"));
        assertThat(doubts(s)).isNotEmpty();
    }

    /** Two of three in settling when the pump of all stops: each is told. */
    @Test
    void thePumpOfAllStopsWhileOneSettles() {
        Story s = Story.at(Fitting.AIR_PROOF);
        for (String c : List.of("a", "b", "c")) {
            s.did(c, Step.STARTED);
            s.did(c, Step.FIRST_SEEN);
        }
        s.minutes(5);
        s.did("c", Step.SETTLE);
        for (String c : List.of("a", "b", "c")) {
            s.senses.contact(c + ".air-proof", org.conetender.core.image.ContactSample.Level.OPEN);
        }
        s.minutes(2);
        s.ask("a", new Ask.Acknowledge("air-failed-animals"));
        s.minutes(12);
        System.out.println("PUMP " + s.standing("a") + s.standing("b") + s.standing("c") + " " + s.told().stream()
                .map(a -> a.key() + "@" + a.told().atMs() / 1000 + a.told().with()).toList());
        assertThat(s.told().stream().map(a -> a.key() + a.told().with()).toList().toString())
                .contains("c/air-failed-animals");
    }
}

package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.conetender.core.Damage;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Lives;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Danger: a damaged record. What it lost, nobody knows; heat waits until a person has looked. */
@Tag("slow")
class DamagedRecordTest {

    private static final long MOMENT = 3_000;

    private static Story started() {
        Story s = Story.at(Fitting.MAT);
        s.senses.water("a", 26.9);
        s.does(Step.STARTED);
        return s.minutes(15);
    }

    /** The next life finds the record damaged. */
    private static Story damaged(Story s, String... what) {
        s.damages.clear();
        s.damages.addAll(List.of(what));
        return s.restart("boot-1", MOMENT).seconds(10);
    }

    private static boolean heats(Story s) {
        return s.comesOn("a.heat", 600);
    }

    @Test
    void heatersAreLockedAirRunsAndAPersonIsToldWhatIsLost() {
        Story s = damaged(started(), "three facts are lost");
        assertThat(s.standing("")).containsExactly("record-damaged");
        assertThat(s.found("record-damaged")).singleElement().asString().contains("three facts are lost");
        assertThat(heats(s)).isFalse();
        assertThat(s.on("a.air-pause")).isFalse();
        assertThat(s.on("a.trigger")).isFalse();
    }

    /** Who is told to settle is not refused it then. */
    @Test
    void whatIsAskedOfAPersonNextIsToLookFirst() {
        Story s = started();
        s.pass(Duration.ofHours(40));
        damaged(s, "three facts are lost");
        assertThat(s.stage()).isEqualTo("ready");
        assertThat(s.did("a", Step.SALTED).sentence()).endsWith("Next: acknowledge 'record-damaged' first; "
                + "until then the air must run and nothing can settle.");
        assertThat(s.did("a", Step.SETTLE).accepted()).isFalse();
        assertThat(s.ask("a", new Ask.Acknowledge("record-damaged")).sentence())
                .contains("Next: to harvest, report 'settle'");
        assertThat(s.did("a", Step.SETTLE).accepted()).isTrue();
    }

    /** Nothing settles, so the air must get in. */
    @Test
    void aShutValveIsAskedForBeforeThatLook() {
        Story s = Story.at(Fitting.SIPHONING);
        s.senses.water("a", 26.9);
        s.does(Step.STARTED).pass(Duration.ofHours(40));
        s.does(Step.VALVE_SHUT);
        damaged(s, "three facts are lost");
        assertThat(s.did("a", Step.SALTED).sentence()).contains("Next: open the air valve and report "
                + "'valve-open'");
    }

    @Test
    void itHoldsThroughRestartsUntilAPersonConfirmsOnceForAllCones() {
        Story s = damaged(started(), "three facts are lost");
        s.stopAndStart(MOMENT).minutes(1);
        s.restart("boot-2", MOMENT).minutes(1);
        assertThat(heats(s)).isFalse();
        assertThat(s.ask("b", new Ask.Acknowledge("record-damaged")).sentence())
                .contains("acknowledged; heat is allowed again.");
        assertThat(heats(s)).isTrue();
        s.minutes(2);
        assertThat(s.standing("")).isEmpty();
        s.stopAndStart(MOMENT).minutes(1);
        assertThat(s.standing("")).as("one damage is told once").isEmpty();
        assertThat(heats(s)).isTrue();
    }

    /** By what is left of the record b is clean, and its air may rest there. */
    @Test
    void theAirRunsOnUntilSomethingIsReportedOfTheConeThoughTheAlarmWasSeen() {
        Story s = Story.at(Fitting.MAT);
        s.minutes(1);
        assertThat(s.on("b.air-pause")).as("it rests in an empty cone").isTrue();
        damaged(s, "three facts are lost");
        s.ask("a", new Ask.Acknowledge("record-damaged"));
        s.minutes(5);
        assertThat(s.on("b.air-pause")).isFalse();
        assertThat(s.found("suffocation")).anyMatch(f -> f.contains("it may hold a batch"));
        assertThat(s.did("b", Step.CLEANED).accepted()).isTrue();
        s.minutes(40);
        assertThat(s.on("b.air-pause")).isTrue();
        assertThat(s.on("a.air-pause")).isFalse();
    }

    /** Killed before the end of the first alarm was written down. */
    @Test
    void whoeverHadSeenOneDamageHasNotSeenTheNext() {
        Story s = damaged(started(), "three facts are lost");
        s.ask("a", new Ask.Acknowledge("record-damaged"));
        damaged(s, "three facts are lost", "nine facts are lost");
        assertThat(heats(s)).isFalse();
        assertThat(s.told("record-damaged")).isEqualTo(2);
        assertThat(s.found("record-damaged")).singleElement().asString().contains("nine facts are lost");
    }

    @Test
    void nobodySettlesMeanwhile() {
        Story s = started();
        s.does(Step.FIRST_SEEN);
        s.minutes(20);
        damaged(s, "three facts are lost");
        assertThat(s.did("a", Step.SETTLE).sentence()).contains("acknowledge 'record-damaged' first");
        assertThat(s.on("a.air-pause")).isFalse();
    }

    @Test
    void anotherLockIsNotReleasedWithIt() {
        Story s = started();
        for (int i = 0; i < 3; i++) {
            s.restart("boot-1", MOMENT).minutes(1);
        }
        damaged(s, "three facts are lost");
        assertThat(s.standing("")).containsExactlyInAnyOrder("crash-loop", "record-damaged");
        assertThat(s.ask("a", new Ask.Acknowledge("crash-loop")).sentence())
                .contains("until 'record-damaged' is acknowledged");
        assertThat(heats(s)).isFalse();
        s.ask("a", new Ask.Acknowledge("record-damaged"));
        assertThat(heats(s)).isTrue();
    }

    /** What is written is what the store says, once each, numbered on. */
    @Test
    void onlyADamageThatIsNotWrittenYetIsWritten() {
        Story s = damaged(started(), "three facts are lost");
        List<Fact> kept = s.paper.facts();
        assertThat(Damage.facts(kept, List.of("three facts are lost"), s.now())).isEmpty();
        assertThat(Damage.facts(kept, List.of("three facts are lost", "nine"), s.now())).containsExactly(
                new Fact(kept.getLast().seq() + 1, s.now(), "", "",
                        new Change.Tripped(Lives.DAMAGED, "nine")));
        assertThat(Damage.facts(List.of(), List.of("all is lost"), s.now())).singleElement()
                .satisfies(f -> assertThat(f.seq()).isEqualTo(1));
    }
}

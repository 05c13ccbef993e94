package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.conetender.core.face.Names;
import org.conetender.core.face.Sentences;
import org.conetender.core.face.Tree;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Units;
import org.junit.jupiter.api.Test;

/** Whoever drew a part and reports only that is told how to say it, and what is told then is taken. */
class PartDrawnTest {

    /** The nauplii that are left have just been without air. */
    @Test
    void whatIsLeftIsGivenAirFirst() {
        Story s = Story.at(Larkmoor.Fitting.SIPHONING).does(Step.STARTED, Step.FIRST_SEEN,
                Step.VALVE_SHUT, Step.SETTLE);
        s.minutes(7);
        s.does(Step.DRAWING).minutes(1);
        assertThat(s.did("a", Step.PART_DRAWN).sentence()).contains(" Next: open the air valve and report "
                + "'valve-open'; no air gets in through a shut one.");
    }

    @Test
    void whoReportsItStraightAwayIsToldWhatToSayAndThatIsTaken() {
        Story s = Story.at().does(Step.STARTED, Step.FIRST_SEEN);
        Result.Reply r = s.did("a", Step.PART_DRAWN);
        assertThat(r.accepted()).isFalse();
        assertThat(r.sentence()).isEqualTo("Cone a: no separation was reported of which a part could be "
                + "drawn; report 'settle', 'drawing' and 'part-drawn' as you do them, or one after the other "
                + "if some is drawn already.");
        s.does(Step.SETTLE, Step.DRAWING, Step.PART_DRAWN);
        assertThat(s.stage()).isEqualTo("hatching");
        assertThat(s.batch("a").marks().harvests()).isEqualTo(1);
        s.tick();
        assertThat(s.on("a.air-pause")).isFalse();
    }

    /** Its harvest point is passed: what is told is when the rest is offered, not an hour of yesterday. */
    @Test
    void whatIsLeftOfARipeBatchIsForetoldForTheHourAtWhichItIsOffered() {
        Story s = Story.at().does(Step.STARTED).pass(Duration.ofHours(30));
        assertThat(s.stage()).isEqualTo("ready");
        s.minutes(90).does(Step.SETTLE, Step.DRAWING, Step.PART_DRAWN);
        long offeredMs = s.now().wallMs() + 2 * Units.HOUR_MS;
        for (int i = 0; i < 7; i++) {
            s.minutes(16);
            assertThat(tree(s, "hatch/stage")).isEqualTo("hatching");
            assertThat(OffsetDateTime.parse(tree(s, "hatch/ready-at")).toInstant().toEpochMilli())
                    .isBetween(offeredMs - Units.MINUTE_MS, offeredMs);
            assertThat(tree(s, "hatch/ready-from")).as("there is no doubt about it").isNull();
        }
        assertThat(s.did("a", Step.STARTED).sentence()).contains("hatched, ready about "
                + Sentences.clock(offeredMs, Larkmoor.ZONE, s.now().wallMs()));
        assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        s.minutes(9);
        assertThat(s.stage()).isEqualTo("ready");
    }

    /** One that was drawn before it was ripe has the hour of its cysts, with its margin. */
    @Test
    void whatIsLeftOfAnUnripeBatchKeepsItsHour() {
        Story s = Story.at().does(Step.STARTED).pass(Duration.ofHours(20));
        assertThat(s.stage()).isEqualTo("hatching");
        String before = tree(s, "hatch/ready-at");
        s.does(Step.SETTLE, Step.DRAWING, Step.PART_DRAWN).minutes(2);
        Duration moved = Duration.between(OffsetDateTime.parse(before),
                OffsetDateTime.parse(tree(s, "hatch/ready-at")));
        assertThat(moved.abs()).isLessThan(Duration.ofMinutes(30));
        assertThat(tree(s, "hatch/ready-from")).isNotNull();
    }

    /** Nothing would be made of it: better said than noted. */
    @Test
    void whatIsLeftIsPromisedForNoHour() {
        Story s = Story.at().does(Step.STARTED).pass(Duration.ofHours(20));
        Ask hour = new Ask.ReadyBy(Optional.of(Hour.parse(OffsetDateTime.parse(tree(s, "hatch/ready-at"))
                .toLocalTime().toString())));
        assertThat(s.ask("a", hour).accepted()).isTrue();
        assertThat(s.ask("a", new Ask.Withdraw("last")).accepted()).isTrue();
        s.does(Step.SETTLE, Step.DRAWING, Step.PART_DRAWN);
        assertThat(s.ask("a", hour).sentence()).isEqualTo("Cone a: a part of it is drawn already, and "
                + "what is left is held for no hour; go by the forecast.");
        assertThat(s.ask("a", new Ask.ReadyBy(Optional.empty())).accepted()).isTrue();
    }

    private static String tree(Story s, String property) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now())
                .get("homie/5/larkmoor-a/" + property);
    }
}

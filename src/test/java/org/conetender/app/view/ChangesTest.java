package org.conetender.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What is told aloud where no terminal is: each thing once. */
class ChangesTest {

    private static final long MINUTE_MS = 60_000;

    private final Published p = new Published().incubating("a");
    private final Changes changes = new Changes();
    private long nowMs = 7;

    private java.util.List<String> look() {
        return changes.since(p.view("a"), nowMs);
    }

    @Test
    void aStageIsToldOnceWithItsHourAndWhatIsNext() {
        assertThat(look()).containsExactly("Larkmoor Fry Room: the daemon is there.",
                "Cone a: incubating, ready about Tue 10:40, water 26.9 °C; next: nothing; it is growing.");
        assertThat(look()).isEmpty();
        p.says("-a/water/temperature", "27.0").says("-a/hatch/ready-at", "2026-03-03T10:50:00+00:00");
        assertThat(look()).as("figures are not news").isEmpty();
        p.says("-a/hatch/stage", "hatching");
        assertThat(look()).singleElement().asString().startsWith("Cone a: hatching, ready about Tue 10:50");
    }

    @Test
    void anAlertIsToldWhenItComesAndWhenItIsOver() {
        look();
        p.says("-a/$alert/probe", "Cone a: no probe answers.").says("/$alert/record", "The disk is full.");
        assertThat(look()).containsExactlyInAnyOrder("! Cone a: no probe answers.", "! The disk is full.");
        assertThat(look()).isEmpty();
        p.says("-a/$alert/probe", null);
        assertThat(look()).containsExactly("Cone a: 'probe' is over.");
        p.says("/$alert/record", null);
        assertThat(look()).containsExactly("'record' is over.");
    }

    @Test
    void aMissedFeedIsToldOnceThoughItsHourMoves() {
        look();
        String missed = "It was to be ready for the feed at 12:30 and will not be: now it is about ";
        p.says("-a/hatch/feed-missed", missed + "13:10.");
        assertThat(look()).containsExactly("! Cone a: " + missed + "13:10.");
        p.says("-a/hatch/feed-missed", missed + "13:40.");
        assertThat(look()).isEmpty();
        p.says("-a/hatch/feed-missed", missed.replace("12:30", "18:00") + "19:00.");
        assertThat(look()).hasSize(1);
    }

    @Test
    void aDaemonThatIsAwayForLessThanFiveMinutesIsNotToldOf() {
        look();
        p.says("/$state", "lost");
        assertThat(look()).isEmpty();
        nowMs += 4 * MINUTE_MS;
        assertThat(look()).isEmpty();
        p.says("/$state", "init");
        assertThat(look()).isEmpty();
        p.says("/$state", "ready");
        assertThat(look()).isEmpty();

        p.says("/$state", "lost");
        assertThat(look()).as("counted anew").isEmpty();
        nowMs += 5 * MINUTE_MS;
        assertThat(look()).containsExactly("Larkmoor Fry Room: the daemon is lost.");
        p.says("/$state", "ready");
        assertThat(look()).containsExactly("Larkmoor Fry Room: the daemon is there.");
        p.says("/$state", "disconnected");
        assertThat(look()).as("a goodbye is told at once")
                .containsExactly("Larkmoor Fry Room: the daemon is disconnected.");
    }

    @Test
    void whoBeginsToLookIsToldAtOnceThatItIsLost() {
        p.says("/$state", "lost");
        assertThat(look()).contains("Larkmoor Fry Room: the daemon is lost.");
    }
}

package org.conetender.agent;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.conetender.port.Transport.Incoming;
import org.conetender.sim.SimStore;
import org.junit.jupiter.api.Test;

/** A disk on which a write neither ends nor fails, seen from outside. */
class HangingDiskTest {

    private static final String ANSWER = "larkmoor-a/hand/answer";

    @Test
    void whoReportsAStepReadsAtOnceThatItIsBeingWrittenAndLaterThatItIsRecorded() {
        HandBench b = new HandBench().rounds(2);
        b.hangs = true;
        b.broker.inject(new Incoming("homie/5/larkmoor-a/hand/step/set", "started", false,
                Map.of("response-topic", "answers/here", "correlation", "7")));
        b.rounds(4);
        assertThat(b.shown(ANSWER)).isEqualTo(
                "Cone a: 'started' was heard and is being written down; it is not done yet.");
        assertThat(b.heard).as("no answer yet").noneMatch(o -> o.topic().equals("answers/here"));
        assertThat(b.shown("larkmoor-a/hatch/stage")).isEqualTo("clean");
        b.hangs = false;
        b.rounds(3);
        assertThat(b.shown(ANSWER)).startsWith("Cone a: 'started' is recorded.");
        assertThat(b.heard.stream().filter(o -> o.topic().equals("answers/here"))).hasSize(1);
    }

    @Test
    void theAlarmComesThoughOnlyTheMinutesAreWritten() {
        HandBench b = new HandBench().rounds(70);
        b.hangs = true;
        b.rounds(160);
        assertThat(b.shown("larkmoor/$alert/record")).contains("has not answered for half a minute");
        b.hangs = false;
        b.rounds(120);
        assertThat(b.shown("larkmoor/$alert/record")).isNullOrEmpty();
    }

    @Test
    void aCrashWhileItHangsLeavesTheConeAsItStood() {
        HandBench b = new HandBench().rounds(2);
        b.hangs = true;
        b.set("larkmoor-a/hand/step", "started");
        b.rounds(10);
        b.hangs = false;
        b.begin();
        b.rounds(3);
        assertThat(b.shown("larkmoor-a/hatch/stage")).isEqualTo("clean");
        assertThat(b.sent(ANSWER)).noneMatch(s -> s.contains("recorded"));
    }

    /** Within seconds, and not with the next minute: whoever made room reports again at once. */
    @Test
    void aReportIsTakenSoonAfterRoomWasMade() {
        HandBench b = new HandBench().rounds(70);
        b.disk.mood(SimStore.Mood.FULL);
        b.set("larkmoor-a/hand/step", "started");
        b.rounds(3);
        b.set("larkmoor-b/hand/step", "started");
        b.rounds(2);
        assertThat(b.shown("larkmoor-b/hand/answer")).contains("not recorded");
        b.disk.mood(SimStore.Mood.HEALTHY);
        b.rounds(RecordAgent.AGAIN_TICKS + 1);
        b.set("larkmoor-b/hand/step", "started");
        b.rounds(3);
        assertThat(b.shown("larkmoor-b/hand/answer")).contains("is recorded");
    }
}

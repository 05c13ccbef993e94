package org.conetender.agent;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.homie.Homie5Checker;
import org.conetender.port.Transport.Incoming;
import org.conetender.sim.SimStore;
import org.junit.jupiter.api.Test;

/** The shell around the core, run by hand: what goes out, what comes in, what is kept. */
class AgentsTest {

    /** Seconds after which both switches of a cone have been tried (core.judge.Proving). */
    private static final int TRIED = 720;

    private static final String STEP = "larkmoor-a/hand/step";

    @Test
    void theFirstRoundShowsAWholeTreeChildrenFirst() {
        HandBench b = new HandBench().rounds(1);
        assertThat(b.sent("larkmoor/$state")).containsExactly("init", "ready");
        assertThat(b.sent("larkmoor-a/$state")).containsExactly("init", "ready");
        int root = b.heard.indexOf(b.heard.getLast());
        assertThat(b.heard.stream().filter(o -> o.topic().endsWith("/$state")).reduce((x, y) -> y)
                .orElseThrow().topic())
                .isEqualTo("homie/5/larkmoor/$state");
        assertThat(root).isPositive();
        assertThat(Homie5Checker.check(b.broker.under("homie/")))
                .filteredOn(v -> !v.endsWith("has no value")).isEmpty();
        assertThat(b.supervisor.isReady()).isTrue();
        assertThat(b.supervisor.lastStatus()).isEqualTo("a clean, b clean, c clean; 0 alarms");
    }

    @Test
    void onItsReturnItTellsHowLongItWasWithoutItsBroker() {
        HandBench b = new HandBench().rounds(3);
        b.broker.link(false);
        b.rounds(240);
        b.broker.link(true);
        b.rounds(3);
        assertThat(b.sent("larkmoor/$log/warn")).as("four minutes are not worth it").isEmpty();
        b.broker.link(false);
        b.rounds(420);
        b.broker.link(true);
        b.rounds(3);
        assertThat(b.sent("larkmoor/$log/warn")).singleElement().asString()
                .startsWith("The daemon was without its broker for 7 min, since ");
        b.rounds(5);
        assertThat(b.sent("larkmoor/$log/warn")).hasSize(1);
    }

    /** First as well as it is known, then from hour to hour. */
    @Test
    void aPowerCutIsToldAtTheStartAndAgainWhenTheClockTellsItsHours() {
        HandBench b = new HandBench().rounds(65);
        b.clock.advance(210 * 60_000);
        b.clock.reboot();
        b.clock.trust(false);
        b.begin();
        b.rounds(3);
        assertThat(b.sent("larkmoor/$log/info")).containsExactly("The power was away; no clock tells yet how "
                + "long. You will be told when one does.");
        b.rounds(30);
        b.clock.trust(true);
        b.rounds(5);
        assertThat(b.sent("larkmoor/$log/info")).hasSize(2).last().asString()
                .matches("The power was away from (\\w+ )?\\d\\d:\\d\\d to \\d\\d:\\d\\d, "
                        + "about 3 h 30 min\\.");
        b.rounds(70);
        b.begin();
        b.rounds(3);
        assertThat(b.sent("larkmoor/$log/info")).as("a restart is nobody's business").hasSize(2);
    }

    @Test
    void nothingIsSentTwiceWhileNothingChanges() {
        HandBench b = new HandBench().rounds(3);
        b.heard.clear();
        b.rounds(20);
        assertThat(b.heard).isEmpty();
    }

    @Test
    void anAcceptedStepIsReflectedInTargetThenInItsValueAndAnswered() {
        HandBench b = new HandBench().rounds(2);
        b.heard.clear();
        b.broker.inject(new Incoming("homie/5/" + STEP + "/set", "started", false,
                Map.of("response-topic", "noor/answers", "correlation", "beef")));
        b.rounds(4);
        assertThat(b.heard.stream().map(o -> o.topic()).filter(t -> t.startsWith("homie/5/" + STEP)))
                .containsExactly("homie/5/" + STEP + "/$target", "homie/5/" + STEP);
        assertThat(b.shown(STEP)).isEqualTo("started");
        assertThat(b.shown("larkmoor-a/hatch/stage")).isEqualTo("hydrating");
        assertThat(b.shown("larkmoor-a/hand/answer")).startsWith("Cone a: 'started' is recorded.");
        assertThat(b.heard).anySatisfy(o -> {
            assertThat(o.topic()).isEqualTo("noor/answers");
            assertThat(o.correlation()).isEqualTo("beef");
            assertThat(o.retained()).isFalse();
            assertThat(o.payload()).startsWith("ok Cone a: 'started' is recorded.");
        });
        assertThat(b.sent("larkmoor-a/$log/info")).hasSize(1);
    }

    @Test
    void aRefusedStepIsAnsweredAndReflectedNowhere() {
        HandBench b = new HandBench().rounds(2);
        b.set(STEP, "drawing");
        b.rounds(4);
        assertThat(b.shown(STEP)).isNull();
        assertThat(b.shown(STEP + "/$target")).isNull();
        assertThat(b.shown("larkmoor-a/hand/answer")).contains("report 'settle'");
        b.set(STEP, "jump");
        b.rounds(1);
        assertThat(b.shown("larkmoor-a/hand/answer")).startsWith("Not understood: there is no step 'jump'");
    }

    @Test
    void retainedAndExpiredCommandsAreRefusedAlsoAtEveryReconnection() {
        HandBench b = new HandBench().rounds(2);
        b.broker.inject(new Incoming("homie/5/" + STEP + "/set", "started", true, Map.of()));
        b.rounds(3);
        assertThat(b.shown("larkmoor-a/hatch/stage")).isEqualTo("clean");
        assertThat(b.shown("larkmoor-a/hand/answer")).contains("lying at the broker");
        b.broker.link(false);
        b.rounds(2);
        b.broker.link(true);
        b.rounds(3);
        assertThat(b.shown("larkmoor-a/hatch/stage")).isEqualTo("clean");
        b.broker.inject(new Incoming("homie/5/larkmoor-b/hand/step/set", "started", false,
                Map.of("expires-in-s", "-4")));
        b.rounds(3);
        assertThat(b.shown("larkmoor-b/hatch/stage")).isEqualTo("clean");
        assertThat(b.shown("larkmoor-b/hand/answer")).contains("time had run out");
    }

    @Test
    void aRequestIdIsCarriedOutOnce() {
        HandBench b = new HandBench().rounds(2);
        for (int i = 0; i < 3; i++) {
            b.broker.inject(new Incoming("homie/5/larkmoor-a/hand/step/set", "hands-in", false,
                    Map.of("request-id", "x1")));
            b.rounds(i == 0 ? 0 : 3);
        }
        assertThat(b.sent("larkmoor-a/$log/info")).hasSize(3)
                .satisfiesOnlyOnce(a -> assertThat(a).contains("is recorded"));
    }

    @Test
    void aReconnectionShowsTheWholeTreeAgainAndTakesBackWhatEndedMeanwhile() {
        HandBench b = new HandBench().rounds(2);
        b.set(STEP, "started");
        b.rounds(3);
        assertThat(b.shown("larkmoor-a/hatch/degree-hours")).isNotNull();
        b.broker.link(false);
        assertThat(b.shown("larkmoor/$state")).isEqualTo("lost");
        b.socket.waiting.add(new Request("s1", Request.Origin.fresh("socket", ""), "a",
                new Ask.Did(Step.DRAINED)));
        b.rounds(5);
        b.heard.clear();
        b.broker.link(true);
        b.rounds(2);
        assertThat(b.shown("larkmoor/$state")).isEqualTo("ready");
        assertThat(b.shown("larkmoor-a/hatch/stage")).isEqualTo("drained");
        assertThat(b.shown("larkmoor-a/hatch/degree-hours")).as("no longer true").isNull();
        assertThat(b.sent("larkmoor-c/water/temperature")).containsExactly("27.0");
        assertThat(b.shown(STEP)).as("what was reported stays").isEqualTo("started");
    }

    @Test
    void aNewLifeTakesBackAlertsThatAnEarlierOneLeft() {
        HandBench b = new HandBench().rounds(2);
        b.broker.inject(new Incoming("homie/5/larkmoor-a/$alert/dry", "Cone a: old.", true, Map.of()));
        b.begin();
        b.rounds(2);
        assertThat(b.shown("larkmoor-a/$alert/dry")).isNull();
        assertThat(b.shown("larkmoor-a/hatch/stage")).isEqualTo("clean");
    }

    @Test
    void tooManyRequestsAtOnceAreRefusedAndTheOthersServed() {
        HandBench b = new HandBench().rounds(2);
        for (int i = 0; i < 300; i++) {
            b.set("larkmoor-a/usual/ppt", "" + (10 + i % 50));
        }
        b.rounds(400);
        long refused = b.sent("larkmoor-a/$log/info").stream().filter(s -> s.contains("Too many")).count();
        assertThat(b.sent("larkmoor-a/$log/info")).as("every one is answered").hasSize(300);
        assertThat(refused).isBetween(1L, 299L);
    }

    @Test
    void theSocketIsAnsweredWhenItIsDurable() {
        HandBench b = new HandBench().rounds(2);
        b.socket.waiting.add(new Request("s1", Request.Origin.fresh("socket", ""), "a",
                new Ask.Did(Step.STARTED)));
        b.rounds(1);
        assertThat(b.socket.answers).isEmpty();
        b.rounds(2);
        assertThat(b.socket.answers).singleElement().asString()
                .startsWith("s1 true Cone a: 'started' is recorded.");
        assertThat(b.shown("larkmoor-a/hand/answer")).as("everybody hears of it").contains("'started'");
    }

    @Test
    void whatWasAcknowledgedSurvivesACrashAndWhatWasNotIsNotDone() {
        HandBench b = new HandBench().rounds(2);
        b.set(STEP, "started");
        b.rounds(3);
        b.disk.mood(SimStore.Mood.FULL);
        b.set("larkmoor-b/hand/step", "started");
        b.rounds(3);
        assertThat(b.shown("larkmoor-b/hand/answer")).contains("ot recorded, so not done");
        b.disk.mood(SimStore.Mood.HEALTHY);
        b.begin();
        b.rounds(2);
        assertThat(b.shown("larkmoor-a/hatch/stage")).isEqualTo("hydrating");
        assertThat(b.shown("larkmoor-b/hatch/stage")).isEqualTo("clean");
    }

    @Test
    void offComesBeforeOnAndTheDogIsFedAfterATickOnTime() {
        HandBench b = new HandBench().rounds(1);
        b.set(STEP, "started");
        b.rounds(5);
        assertThat(b.order).hasSize(15);
        int lastOff = b.order.lastIndexOf(b.order.stream().filter(o -> o.startsWith("off"))
                .reduce((x, y) -> y).orElseThrow());
        int firstOn = b.order.indexOf(b.order.stream().filter(o -> o.startsWith("on")).findFirst()
                .orElseThrow());
        assertThat(lastOff).isLessThan(firstOn);
        assertThat(b.supervisor.fed()).isEqualTo(6);
    }

    @Test
    void aSwitchThatCannotBeSetStopsNothingElse() {
        HandBench b = new HandBench().rounds(1);
        b.stuck.add("a.lamp");
        b.set(STEP, "started");
        b.rounds(5);
        assertThat(b.shown("larkmoor-a/hatch/stage")).isEqualTo("hydrating");
        b.rounds(TRIED);
        assertThat(b.levels.get("a.cut-out")).isTrue();
        assertThat(b.shown("larkmoor-a/$alert/output-stuck")).contains("a.lamp cannot be set");
    }

    @Test
    void aHeaterThatCannotBeSetIsAFactOfTheNextTickAndOnlyWhileItLasts() {
        HandBench b = new HandBench().rounds(1);
        b.set(STEP, "started");
        b.rounds(TRIED);
        b.stuck.add("a.heat");
        b.rounds(1);
        assertThat(b.levels.get("a.cut-out")).as("nobody knows yet").isTrue();
        b.rounds(1);
        assertThat(b.levels.get("a.cut-out")).isFalse();
        assertThat(b.shown("larkmoor-a/$alert/heater-stuck")).contains("the heater's output cannot be set")
                .contains("Unplug the heater now");
        b.stuck.clear();
        b.rounds(2);
        assertThat(b.levels.get("a.cut-out")).isTrue();
        b.rounds(70);
        assertThat(b.shown("larkmoor-a/$alert/heater-stuck")).isNull();
    }
}

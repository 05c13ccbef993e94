package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.unit.Moment;
import org.conetender.port.Transport.Incoming;
import org.conetender.port.Transport.Outgoing;
import org.junit.jupiter.api.Test;

class DevicesTest {

    private final SimClock clock = new SimClock(1, 1_000_000);

    private SimProbe probe(double tauS, double noiseC) {
        return new SimProbe("p", clock, new SimProbe.Build(0.1, tauS, 120, noiseC), Seeds.of(1, "p"));
    }

    private void pass(SimProbe p, double waterC, int seconds) {
        for (int s = 0; s < seconds; s++) {
            clock.advance(1_000);
            p.step(waterC, 20, true, 1);
        }
    }

    private ProbeSample ask(SimProbe p) {
        return p.latest(clock.now().monoMs());
    }

    private static double value(ProbeSample s) {
        return ((Reading.Value) s.reading()).degreesC();
    }

    @Test
    void aProbeIsNotHeardBeforeItsFirstConversion() {
        SimProbe p = probe(10, 0);
        assertThat(ask(p).reading()).isEqualTo(new Reading.NotYet());
        pass(p, 25, 1);
        assertThat(ask(p).reading()).isInstanceOf(Reading.Value.class);
        p.forget();
        assertThat(ask(p).reading()).isEqualTo(new Reading.NotYet());
    }

    @Test
    void readingsComeInSixteenthsWithTheProbesOwnOffset() {
        SimProbe p = probe(10, 0.02);
        pass(p, 25, 200);
        double sum = 0;
        for (int i = 0; i < 400; i++) {
            pass(p, 25, 1);
            double v = value(ask(p));
            assertThat(v * 16).isEqualTo(Math.rint(v * 16));
            sum += v;
        }
        assertThat(sum / 400).isCloseTo(25.1, within(0.03));
    }

    @Test
    void aProbeCoversTwoThirdsOfAJumpInItsTimeConstant() {
        SimProbe p = probe(10, 0);
        pass(p, 20, 60);
        pass(p, 30, 10);
        assertThat(value(ask(p))).isCloseTo(20.1 + 6.32, within(0.05));
    }

    @Test
    void everyFaultOfAProbeShowsAsItWouldOnTheBus() {
        SimProbe p = probe(10, 0);
        pass(p, 25, 60);
        double good = value(ask(p));
        p.fail(SimProbe.Fault.FROZEN);
        pass(p, 30, 60);
        assertThat(value(ask(p))).isEqualTo(good);
        assertThat(ask(p).ageMs()).isLessThan(1_000);
        p.fail(SimProbe.Fault.POWER_ON);
        assertThat(ask(p).reading()).isInstanceOf(Reading.Faulty.class);
        p.fail(SimProbe.Fault.CHECKSUM);
        assertThat(ask(p).reading()).isInstanceOf(Reading.Faulty.class);
        p.fail(SimProbe.Fault.ABSENT);
        assertThat(ask(p).reading()).isEqualTo(new Reading.Absent());
        p.fail(SimProbe.Fault.SLOW);
        pass(p, 30, 39);
        assertThat(ask(p).ageMs()).isGreaterThan(30_000);
        p.fail(SimProbe.Fault.IN_AIR);
        pass(p, 30, 900);
        assertThat(value(ask(p))).isCloseTo(20.1, within(0.1));
    }

    @Test
    void aDriftingProbeGoesWrongByItsRateAndIsWellAfterRepair() {
        SimProbe p = probe(10, 0);
        p.fail(SimProbe.Fault.DRIFTING);
        pass(p, 25, 7_200);
        assertThat(value(ask(p))).isCloseTo(25.1 + 2 * SimProbe.DRIFT_C_PER_HOUR, within(0.07));
        p.fail(SimProbe.Fault.NONE);
        pass(p, 25, 1);
        assertThat(value(ask(p))).isCloseTo(25.1, within(0.07));
    }

    @Test
    void anAgeIsCountedAcrossNothingButTheMonotonicClock() {
        SimProbe p = probe(10, 0);
        pass(p, 25, 5);
        clock.stepWall(-3_600_000);
        clock.advance(2_500);
        assertThat(ask(p).ageMs()).isEqualTo(2_500);
    }

    @Test
    void aRebootGivesANewIdAndMonotonicZeroWhileTheWatchGoesOn() {
        Moment before = clock.now();
        clock.advance(5_000);
        clock.reboot();
        clock.stepWall(60_000);
        clock.trust(false);
        Moment after = clock.now();
        assertThat(after.sameBoot(before)).isFalse();
        assertThat(after.monoMs()).isZero();
        assertThat(after.wallMs()).isEqualTo(1_000_000 + 5_000 + 60_000);
        assertThat(after.wallTrusted()).isFalse();
        assertThat(clock.trueWallMs()).isEqualTo(1_005_000);
        assertThatThrownBy(() -> clock.advance(-1)).hasMessageContaining("cannot go back");
    }

    @Test
    void faultySwitchesDoWhatFaultySwitchesDo() {
        SimSwitch s = new SimSwitch("a.heat", clock);
        s.fail(SimSwitch.Fault.OPEN);
        assertThat(s.hold(true, 4_000)).isTrue();
        assertThat(s.conducting()).isFalse();
        s.fail(SimSwitch.Fault.INVERTED);
        assertThat(s.conducting()).isFalse();
        s.hold(false, 4_000);
        assertThat(s.conducting()).isTrue();
        s.fail(SimSwitch.Fault.REFUSING);
        assertThat(s.hold(true, 4_000)).isFalse();
        assertThat(s.commanded()).isFalse();
        s.fail(SimSwitch.Fault.NONE);
        assertThat(s.hold(true, 4_000)).isTrue();
        assertThatThrownBy(() -> s.hold(true, 0)).hasMessageContaining("lease");
    }

    @Test
    void aDeafOutputKeepsItsLevelWhateverIsAskedAndWhoeverLetsGo() {
        SimSwitch s = new SimSwitch("a.heat", clock);
        s.hold(true, 4_000);
        s.fail(SimSwitch.Fault.DEAF);
        assertThat(s.hold(false, 4_000)).isFalse();
        assertThat(s.conducting()).isTrue();
        assertThat(s.commanded()).as("what was asked").isFalse();
        clock.advance(5_000);
        s.expire();
        assertThat(s.conducting()).as("its lease is nobody's to end").isTrue();
        s.power(false);
        assertThat(s.conducting()).as("without supply no coil holds").isFalse();
        s.power(true);
        s.fail(SimSwitch.Fault.NONE);
        assertThat(s.hold(true, 4_000)).isTrue();
        assertThat(s.conducting()).isTrue();
    }

    @Test
    void contactsStickAndButtonsAreReleasedAgain() {
        SimContact c = new SimContact("a.button", clock);
        c.press(2_000);
        assertThat(c.read()).isEqualTo(Level.CLOSED);
        clock.advance(2_000);
        assertThat(c.read()).isEqualTo(Level.OPEN);
        c.fail(SimContact.Fault.STUCK_CLOSED);
        assertThat(c.read()).isEqualTo(Level.CLOSED);
        c.fail(SimContact.Fault.UNREADABLE);
        assertThat(c.read()).isEqualTo(Level.UNKNOWN);
    }

    @Test
    void aBrokenLinkLeavesTheWillAndLosesCommandsThatWereOnTheirWay() {
        SimBroker broker = new SimBroker();
        SimTransport t = broker.connect("homie/5/larkmoor/$state");
        long first = t.link().generation();
        assertThat(broker.set("homie/5/larkmoor-a/hand/step/set", "started")).isTrue();
        broker.link(false);
        assertThat(broker.payload("homie/5/larkmoor/$state")).isEqualTo("lost");
        assertThat(t.link().up()).isFalse();
        assertThat(t.offer(new Outgoing("homie/5/larkmoor-a/hatch/stage", "clean", true, ""))).isTrue();
        assertThat(broker.payload("homie/5/larkmoor-a/hatch/stage")).isNull();
        assertThat(broker.set("homie/5/larkmoor-a/hand/step/set", "cleaned")).isFalse();
        broker.link(true);
        assertThat(broker.payload("homie/5/larkmoor-a/hatch/stage")).isEqualTo("clean");
        assertThat(t.poll(10)).isEmpty();
        assertThat(t.link().generation()).isGreaterThan(first);
    }

    @Test
    void overASlowLinkEverythingArrivesLateAndInOrder() {
        SimBroker broker = new SimBroker();
        SimTransport t = broker.connect("x/$state");
        broker.slow(true);
        t.offer(new Outgoing("x/y", "1", true, ""));
        broker.set("s/a/set", "started");
        broker.slow(false);
        t.offer(new Outgoing("x/y", "2", true, ""));
        broker.set("s/a/set", "cleaned");
        broker.step(Road.SLOW_MS - 1);
        assertThat(broker.payload("x/y")).isNull();
        assertThat(t.poll(10)).isEmpty();
        broker.step(Road.SLOW_MS);
        assertThat(broker.payload("x/y")).isEqualTo("2");
        assertThat(t.poll(10)).extracting(Incoming::payload).containsExactly("started", "cleaned");
    }

    @Test
    void aFullOutboxTakesNoMore() {
        SimBroker broker = new SimBroker();
        broker.link(false);
        SimTransport t = broker.connect("x/$state");
        Outgoing m = new Outgoing("x/y", "1", true, "");
        for (int i = 0; i < SimTransport.OUTBOX_MOST; i++) {
            assertThat(t.offer(m)).isTrue();
        }
        assertThat(t.offer(m)).isFalse();
    }

    @Test
    void retainedCommandsComeBackAtEveryConnectionMarkedAsSuch() {
        SimBroker broker = new SimBroker();
        broker.inject(new Incoming("s/a/set", "drained", true, Map.of("expires-in-s", "0")));
        assertThat(broker.connect("s/$state").poll(9)).singleElement().matches(Incoming::retained);
        broker.daemonDied();
        SimTransport next = broker.connect("s/$state");
        assertThat(next.poll(9)).singleElement().matches(Incoming::retained);
        List<String> heard = new ArrayList<>();
        broker.listen(o -> heard.add(o.topic()));
        next.offer(new Outgoing("s/$log/info", "hello", false, ""));
        next.close();
        assertThat(heard).containsExactly("s/$log/info", "s/$state");
        assertThat(broker.under("s/")).containsOnlyKeys("s/$state", "s/a/set");
        assertThat(next.offer(new Outgoing("s/x", "1", true, ""))).isFalse();
    }

    @Test
    void theSupervisorCountsWhatItIsTold() {
        SimSupervisor s = new SimSupervisor();
        s.ready();
        s.alive();
        s.alive();
        s.status("all is well");
        s.stopping();
        assertThat(s.isReady() && s.isStopping()).isTrue();
        assertThat(s.fed()).isEqualTo(2);
        assertThat(s.lastStatus()).isEqualTo("all is well");
    }
}

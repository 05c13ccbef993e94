package org.conetender.adapter.gpio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.conetender.adapter.gpio.Lines.Bias;
import org.conetender.adapter.gpio.Lines.Line;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** One output and its lease, without the keeper's thread: the test looks when it says so. */
class LeasedSwitchTest {

    private final HandClock clock = new HandClock();
    private final CountDownLatch slowWire = new CountDownLatch(1);
    private final CountDownLatch reached = new CountDownLatch(1);
    private final RecordingProvider wires = new RecordingProvider(() -> clock.now().monoMs(), this::slow);
    private final GpioContext context = new GpioContext(wires.layer());
    private final Leases leases = new Leases();
    private final AtomicBoolean watched = new AtomicBoolean(true);
    private final LeasedSwitch heat = fitted("a.heat", 17);
    private final LeasedSwitch lamp = fitted("a.lamp", 27);

    @AfterEach
    void end() {
        slowWire.countDown();
        context.shutdown();
    }

    @Test
    void anExpiredHoldIsLetGoOnce() {
        heat.hold(true, 4_000);
        assertThat(heat.lapse(4_999)).isFalse();
        assertThat(heat.lapse(5_000)).isTrue();
        assertThat(heat.lapse(5_001)).isFalse();
        assertThat(wires.energised("a.heat")).containsExactly(false, true, false);
    }

    @Test
    void anOutputThatWasTurnedOffInTimeHasNothingToLetGo() {
        heat.hold(true, 4_000);
        heat.hold(false, 4_000);
        assertThat(heat.lapse(5_000)).isFalse();
    }

    @Test
    void aRenewalBetweenTheLookAndTheLettingGoIsKept() {
        heat.hold(true, 4_000);
        clock.passMs(4_000);
        assertThat(leases.due(5_000)).containsExactly("a.heat");
        heat.hold(true, 4_000);
        assertThat(heat.lapse(5_000)).isFalse();
        assertThat(wires.energised("a.heat")).containsExactly(false, true);
    }

    @Test
    void nothingIsEnergisedWhileNobodyWatchesTheLeases() {
        heat.hold(true, 4_000);
        watched.set(false);
        assertThat(heat.hold(true, 4_000)).isFalse();
        assertThat(wires.energised("a.heat")).containsExactly(false, true, false);
    }

    @Test
    void anOutputThatWouldNotGoStaysDueUntilItDoes() {
        heat.hold(true, 4_000);
        wires.breakOutput("a.heat");
        assertThat(heat.lapse(5_000)).isTrue();
        assertThat(leases.due("a.heat", 5_000)).isTrue();
        wires.repair("a.heat");
        assertThat(heat.lapse(5_050)).isTrue();
        assertThat(leases.due("a.heat", 5_050)).isFalse();
        assertThat(wires.energised("a.heat")).containsExactly(false, true, false);
    }

    @Test
    void aHoldThatCouldNotBeSetStillRunsOut() {
        wires.breakOutput("a.heat");
        assertThat(heat.hold(true, 4_000)).isFalse();
        assertThat(leases.due("a.heat", 5_000)).isTrue();
    }

    @Test
    void aRetiredOutputTakesNoLevel() {
        heat.hold(true, 4_000);
        assertThat(heat.retire()).isEmpty();
        assertThat(heat.hold(true, 4_000)).isFalse();
        assertThat(heat.hold(false, 4_000)).isFalse();
        assertThat(heat.lapse(Long.MAX_VALUE)).isFalse();
        assertThat(wires.energised("a.heat")).containsExactly(false, true, false);
    }

    @Test
    void turningOneOffDoesNotWaitForAnotherWhoseWireIsSlow() throws InterruptedException {
        lamp.hold(true, 4_000);
        Thread stuck = Thread.ofPlatform().daemon(true).start(() -> heat.hold(true, 4_000));
        assertThat(reached.await(10, TimeUnit.SECONDS)).isTrue();
        assertThat(lamp.hold(false, 4_000)).isTrue();
        assertThat(stuck.isAlive()).isTrue();
        slowWire.countDown();
        stuck.join(10_000);
    }

    @Test
    void aKeeperThatDiesLeavesEverythingSafe() throws InterruptedException {
        CountDownLatch safe = new CountDownLatch(1);
        LeaseKeeper keeper = new LeaseKeeper(() -> {
            throw new IllegalStateException("a bug in the sweep, on purpose");
        }, safe::countDown);
        keeper.start();
        assertThat(safe.await(10, TimeUnit.SECONDS)).isTrue();
        assertThat(keeper.alive()).isFalse();
    }

    private LeasedSwitch fitted(String id, int offset) {
        return new LeasedSwitch(context.output(new Line(id, offset, false, Bias.AS_IS)), leases, clock,
            watched::get);
    }

    /** Only the thread that is no test thread finds the wire slow. */
    private void slow(RecordingProvider.Change change) {
        if (!Thread.currentThread().isDaemon() || !change.energised()) {
            return;
        }
        reached.countDown();
        try {
            slowWire.await(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}

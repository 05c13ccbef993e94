package org.conetender.adapter.gpio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.pi4j.context.Context;
import com.pi4j.exception.InitializeException;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalOutputProvider;
import com.pi4j.io.gpio.digital.DigitalOutputProviderBase;
import com.pi4j.io.gpio.digital.DigitalState;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.conetender.adapter.gpio.Lines.Bias;
import org.conetender.adapter.gpio.Lines.Line;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.port.Contact;
import org.conetender.port.Switch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The board above a layer that records. The clock is moved by hand, and the keeper's thread is real. */
class GpioBoardTest {

    private static final Line HEAT = new Line("a.heat", 17, true, Bias.AS_IS);
    private static final Line LAMP = new Line("a.lamp", 27, false, Bias.AS_IS);
    private static final Line LEVEL = new Line("a.level", 22, true, Bias.PULL_UP);
    private static final Lines LINES = new Lines("none", List.of(HEAT, LAMP), List.of(LEVEL));

    private final HandClock clock = new HandClock();
    private final BlockingQueue<RecordingProvider.Change> heard = new LinkedBlockingQueue<>();
    private final RecordingProvider wires = new RecordingProvider(() -> clock.now().monoMs(), heard::add);
    private final GpioBoard board = GpioBoard.open(LINES, wires.layer(), clock);
    private final Switch heat = board.switches().get(0);

    @AfterEach
    void close() {
        wires.repair("a.heat");
        board.close();
    }

    @Test
    void everyOutputStartsDeEnergisedWhateverItsActiveLevel() {
        assertThat(wires.changes()).extracting(c -> c.output() + " " + c.level() + " " + c.energised())
            .containsExactly("a.heat HIGH false", "a.lamp LOW false");
    }

    @Test
    void anActiveLowRelayIsEnergisedByTheLowLevel() {
        assertThat(heat.hold(true, 4_000)).isTrue();
        assertThat(wires.changes().getLast().level()).isEqualTo(DigitalState.LOW);
        assertThat(heat.hold(false, 4_000)).isTrue();
        assertThat(wires.energised("a.heat")).containsExactly(false, true, false);
    }

    @Test
    void theKeeperLetsGoWhenNobodyRenews() throws InterruptedException {
        heat.hold(true, 4_000);
        heard.clear();
        clock.passMs(4_000);
        RecordingProvider.Change change = heard.poll(10, TimeUnit.SECONDS);
        assertThat(change).isNotNull();
        assertThat(change.output()).isEqualTo("a.heat");
        assertThat(change.energised()).isFalse();
    }

    @Test
    void aRenewedHoldStaysThroughItsFirstEnd() {
        heat.hold(true, 4_000);
        clock.passMs(3_000);
        heat.hold(true, 4_000);
        clock.passMs(3_000);
        board.sweep();
        assertThat(wires.energised("a.heat")).containsExactly(false, true);
        assertThat(board.lapses()).isZero();
    }

    @Test
    void anOutputThatTakesNoLevelIsToldAndLetGoAsSoonAsItObeys() throws InterruptedException {
        heat.hold(true, 4_000);
        heard.clear();
        wires.breakOutput("a.heat");
        assertThat(heat.hold(false, 4_000)).isFalse();
        wires.repair("a.heat");
        RecordingProvider.Change change = heard.poll(10, TimeUnit.SECONDS);
        assertThat(change).isNotNull();
        assertThat(change.energised()).isFalse();
    }

    @Test
    void closingLeavesEveryOutputDeEnergised() {
        board.switches().forEach(each -> each.hold(true, 4_000));
        board.close();
        assertThat(wires.energised("a.heat")).endsWith(false);
        assertThat(wires.energised("a.lamp")).endsWith(false);
    }

    @Test
    void nothingIsWrittenAfterTheEnd() {
        board.close();
        int written = wires.changes().size();
        assertThat(heat.hold(true, 4_000)).isFalse();
        assertThat(heat.hold(false, 4_000)).isFalse();
        board.sweep();
        assertThat(wires.changes()).hasSize(written);
    }

    @Test
    void closingTurnsTheOthersOffWhenOneWillNotGoAndSaysWhich() {
        board.switches().forEach(each -> each.hold(true, 4_000));
        wires.breakOutput("a.heat");
        assertThatThrownBy(board::close).isInstanceOf(GpioException.class)
            .hasMessageContaining("a.heat").hasMessageContaining("cut the power");
        assertThat(wires.energised("a.lamp")).endsWith(false);
    }

    @Test
    void anErrorThatIsNoneOfTheLayersOwnKeepsNoOtherOutputOn() {
        AtomicBoolean ill = new AtomicBoolean();
        RecordingProvider odd = new RecordingProvider(() -> clock.now().monoMs(), change -> {
            if (ill.get() && change.output().equals("a.heat")) {
                throw new IllegalStateException();
            }
        });
        GpioBoard other = GpioBoard.open(LINES, odd.layer(), clock);
        other.switches().forEach(each -> each.hold(true, 4_000));
        ill.set(true);
        assertThat(other.switches().getFirst().hold(false, 4_000)).isFalse();
        assertThatThrownBy(other::close).isInstanceOf(GpioException.class)
            .hasMessageContaining("cut the power").hasMessageContaining("a.heat");
        assertThat(odd.energised("a.lamp")).endsWith(false);
    }

    @Test
    void aLeaseOfNothingIsRefused() {
        assertThatThrownBy(() -> heat.hold(true, 0)).hasMessageContaining("above 0");
    }

    @Test
    void aContactIsClosedOpenOrUnknownAsItsWireSays() {
        Contact level = board.contacts().getFirst();
        assertThat(level.id()).isEqualTo("a.level");
        assertThat(level.read()).isEqualTo(Level.OPEN);
        wires.move("a.level", Level.CLOSED);
        assertThat(level.read()).isEqualTo(Level.CLOSED);
        wires.move("a.level", Level.UNKNOWN);
        assertThat(level.read()).isEqualTo(Level.UNKNOWN);
    }

    @Test
    void aProviderThatDidNotStartIsNotDoneWithout() {
        GpioLayer half = new GpioLayer(new Sulking(), wires.layer().inputs());
        assertThatThrownBy(() -> GpioBoard.open(LINES, half, clock)).isInstanceOf(GpioException.class)
            .hasMessageContaining("sulking").hasMessageContaining("should be");
    }

    @Test
    void anOutputFromAnotherProviderIsRefused() {
        GpioLayer recording = new RecordingProvider(() -> 0).layer();
        GpioLayer swapped = new GpioLayer(new Swapping(recording.outputs()), recording.inputs());
        assertThatThrownBy(() -> GpioBoard.open(LINES, swapped, clock)).isInstanceOf(GpioException.class)
            .hasMessageContaining("came from provider recording-output");
    }

    /** A provider that fails to start; Pi4J logs it and goes on. */
    private static final class Sulking extends DigitalOutputProviderBase {
        Sulking() {
            super("sulking");
        }

        @Override
        public DigitalOutputProvider initialize(Context context) throws InitializeException {
            throw new InitializeException("not today");
        }

        @Override
        public DigitalOutput create(DigitalOutputConfig config) {
            throw new AssertionError("never started");
        }
    }

    /** A provider whose outputs are really another's. */
    private static final class Swapping extends DigitalOutputProviderBase {
        private final DigitalOutputProvider other;

        Swapping(DigitalOutputProvider other) {
            super("swapping");
            this.other = other;
        }

        @Override
        public DigitalOutputProvider initialize(Context context) throws InitializeException {
            other.initialize(context);
            return super.initialize(context);
        }

        @Override
        public DigitalOutput create(DigitalOutputConfig config) {
            return other.create(config);
        }
    }
}

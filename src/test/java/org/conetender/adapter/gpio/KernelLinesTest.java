package org.conetender.adapter.gpio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.conetender.adapter.gpio.Lines.Bias;
import org.conetender.adapter.gpio.Lines.Line;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.port.Contact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Our provider against a kernel that reads its requests byte by byte. */
class KernelLinesTest {

    private static final Line HEAT = new Line("a.heat", 17, true, Bias.PULL_UP);
    private static final Line LAMP = new Line("a.lamp", 27, false, Bias.DISABLED);
    private static final Line LEVEL = new Line("a.level", 22, true, Bias.PULL_DOWN);
    private static final Lines LINES = new Lines(FakeKernel.CHIP, List.of(HEAT, LAMP), List.of(LEVEL));

    private final FakeKernel kernel = new FakeKernel(58);
    private final HandClock clock = new HandClock();

    @Test
    void theFirstLevelTravelsInsideTheRequestAndIsNotWrittenAgain() {
        try (GpioBoard board = open(LINES)) {
            assertThat(board.switches()).hasSize(2);
            assertThat(kernel.requests).hasSize(3);
            assertThat(kernel.requests.get(0)).isEqualTo(
                new FakeKernel.Request(17, "conetender", 0b1_0000_1010, 1, 2, 0, 1));
            assertThat(kernel.log).containsExactly("high 17", "low 27");
        }
    }

    @Test
    void anOutputThatIsAskedToStartEnergisedDoesSoInTheRequest() {
        GpioLayer layer = GpioLayer.on(kernel, LINES);
        Context context = Pi4J.newContextBuilder().add(layer.outputs()).build();
        context.create(DigitalOutput.newConfigBuilder(context).id("a.lamp").bcm(27)
            .initial(DigitalState.HIGH).shutdown(DigitalState.LOW).build());
        context.shutdown();
        assertThat(kernel.requests.getFirst().values()).isEqualTo(1);
        assertThat(kernel.log).containsExactly("high 27", "low 27", "release 27");
    }

    @Test
    void anOutputWithoutAnInitialLevelIsRefused() {
        GpioLayer layer = GpioLayer.on(kernel, LINES);
        Context context = Pi4J.newContextBuilder().add(layer.outputs()).build();
        assertThatThrownBy(() -> context.create(DigitalOutput.newConfigBuilder(context).id("a.lamp").bcm(27)
            .shutdown(DigitalState.LOW).build())).hasMessageContaining("no initial or no shutdown level");
        context.shutdown();
        assertThat(kernel.log).isEmpty();
    }

    @Test
    void biasAndDirectionAreTheOnesConfigured() {
        try (GpioBoard board = open(LINES)) {
            assertThat(board.contacts()).hasSize(1);
            // BIAS_DISABLED | OUTPUT, then BIAS_PULL_DOWN | INPUT | ACTIVE_LOW, after linux/gpio.h
            assertThat(kernel.requests.get(1).flags()).isEqualTo(1 << 10 | 1 << 3);
            assertThat(kernel.requests.get(2).flags()).isEqualTo(1 << 9 | 1 << 2 | 1 << 1);
        }
    }

    @Test
    void holdingAndClosingMovesTheWireAndGivesItBackSafe() {
        try (GpioBoard board = open(LINES)) {
            assertThat(board.switches().getFirst().hold(true, 4_000)).isTrue();
            assertThat(kernel.wire.get(17)).isFalse();
        }
        assertThat(kernel.wire).containsEntry(17, true).containsEntry(27, false);
        // Safe before released, in whatever order Pi4J goes through its lines.
        assertThat(kernel.log).containsSubsequence("low 17", "high 17", "release 17")
            .containsSubsequence("low 27", "release 27").doesNotContain("high 27");
        assertThat(kernel.stillOpen()).isZero();
    }

    @Test
    void anActiveLowContactIsClosedByTheLowLevelAndUnknownWhenItCannotBeRead() {
        GpioBoard board = open(LINES);
        Contact level = board.contacts().getFirst();
        kernel.wire.put(22, true);
        assertThat(level.read()).isEqualTo(Level.OPEN);
        kernel.wire.put(22, false);
        assertThat(level.read()).isEqualTo(Level.CLOSED);
        kernel.failing.put(22, Errno.ENODEV);
        assertThat(level.read()).isEqualTo(Level.UNKNOWN);
        board.close();
        kernel.failing.clear();
        assertThat(level.read()).isEqualTo(Level.UNKNOWN);
    }

    @Test
    void aChipThatGoesAwayShowsAtTheNextHold() {
        try (GpioBoard board = open(LINES)) {
            kernel.failing.put(17, Errno.ENODEV);
            assertThat(board.switches().getFirst().hold(false, 4_000)).isFalse();
            kernel.failing.clear();
        }
    }

    @Test
    void aBusyLineEndsTheStartNamesItsHolderAndLeavesTheOthersSafe() {
        kernel.busy.put(27, "fan");
        assertThatThrownBy(() -> open(LINES)).isInstanceOf(GpioException.class)
            .hasMessageContaining("/dev/gpiochip0, line 27 (a.lamp): 'fan' has it")
            .hasMessageContaining("gpioinfo");
        assertThat(kernel.log).endsWith("release 17").contains("high 17").doesNotContain("low 17");
    }

    @Test
    void aLineTheChipDoesNotHaveEndsTheStart() {
        Line heat = new Line("a.heat", 58, true, Bias.AS_IS);
        Lines beyond = new Lines(FakeKernel.CHIP, List.of(heat), List.of());
        assertThatThrownBy(() -> open(beyond)).isInstanceOf(GpioException.class)
            .hasMessageContaining("'pinctrl-bcm2711' has lines 0 to 57 only");
    }

    @Test
    void aUserWhoMayNotIsToldWhichGroupMay() {
        kernel.openError = Errno.EACCES;
        assertThatThrownBy(() -> open(LINES)).isInstanceOf(GpioException.class)
            .hasMessageContaining("add the daemon's user to the group");
    }

    @Test
    void aMachineWithoutGpioIsToldSoByTheRealKernel() {
        Lines lines = new Lines("/dev/null", List.of(HEAT), List.of());
        assertThatThrownBy(() -> GpioBoard.open(lines, GpioLayer.kernel(lines), clock))
            .isInstanceOf(GpioException.class).hasMessageContaining("not a GPIO chip");
    }

    @Test
    void theOneShotMakesEveryOutputSafeAndReportsTheBusyOne() {
        kernel.wire.put(17, false);
        kernel.busy.put(27, "fan");
        List<SafeOutputs.Outcome> outcomes = SafeOutputs.drive(kernel, LINES);
        assertThat(outcomes).extracting(SafeOutputs.Outcome::safe).containsExactly(true, false);
        assertThat(outcomes.get(1).sentence()).contains("a.lamp", "NOT made safe", "'fan' has it");
        assertThat(kernel.log).containsExactly("high 17", "release 17");
        assertThat(kernel.requests).noneMatch(r -> r.offset() == 22);
    }

    @Test
    void theOneShotReportsEveryOutputOfAChipThatIsGone() {
        kernel.openError = Errno.ENOENT;
        assertThat(SafeOutputs.drive(kernel, LINES)).hasSize(2).noneMatch(SafeOutputs.Outcome::safe);
    }

    @Test
    void aChipThatIsNotThereIsNamedWithThoseThatAre(@TempDir Path dev) throws IOException {
        Files.createFile(dev.resolve("gpiochip0"));
        Files.createFile(dev.resolve("gpiochip4"));
        Lines wrong = new Lines(dev.resolve("gpiochip7").toString(), List.of(HEAT), List.of());
        assertThatThrownBy(() -> open(wrong)).isInstanceOf(GpioException.class)
            .hasMessage("there is no GPIO chip "
            + dev + "/gpiochip7, which 'chip' in [gpio] of the configuration asks for; this machine has "
            + dev + "/gpiochip0, " + dev + "/gpiochip4: give the one that the relays are wired to.");
    }

    private GpioBoard open(Lines lines) {
        return GpioBoard.open(lines, GpioLayer.on(kernel, lines), clock);
    }
}

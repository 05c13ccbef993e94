package org.conetender.adapter.gpio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import org.conetender.adapter.gpio.Lines.Bias;
import org.conetender.adapter.gpio.Lines.Line;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The list of lines that outlives the daemon and every edit of its configuration. */
class DrivenLinesTest {

    private static final Line HEAT = new Line("a.heat", 17, true, Bias.PULL_UP);
    private static final Line LAMP = new Line("a.lamp", 27, false, Bias.AS_IS);
    private static final Line BEAT = new Line("site.heartbeat", 26, false, Bias.DISABLED);
    private static final Line LEVEL = new Line("a.level", 22, true, Bias.PULL_DOWN);
    private static final Lines LINES = new Lines("/dev/gpio chip0", List.of(HEAT, LAMP, BEAT),
        List.of(LEVEL));

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("driven-lines");
    }

    @Test
    void whatWasKeptIsReadBackWithoutTheContacts() throws IOException {
        assertThat(DrivenLines.load(folder)).isEmpty();
        DrivenLines.keep(folder, LINES);
        assertThat(DrivenLines.load(folder)).contains(
            new Lines("/dev/gpio chip0", List.of(HEAT, LAMP, BEAT), List.of()));
        assertThat(Files.list(folder)).as("nothing else is left behind").containsExactly(file());
    }

    @Test
    void aPersonCanReadWhichLevelIsSafe() throws IOException {
        DrivenLines.keep(folder, LINES);
        assertThat(Files.readAllLines(file()))
            .contains("a.heat line=17 active-low=true safe=high bias=pull-up",
                "a.lamp line=27 active-low=false safe=low bias=as-is");
    }

    @Test
    void aNewListTakesThePlaceOfTheOldAlsoOverTheRestOfAnInterruptedOne() throws IOException {
        DrivenLines.keep(folder, LINES);
        Files.writeString(folder.resolve("driven-lines.new"), "half a list that a power cut left, longer than"
            + " the whole of the new one by a good deal, so that it must be cut off and not written over");
        Lines moved = new Lines("/dev/gpiochip0", List.of(new Line("a.heat", 5, false, Bias.AS_IS)),
            List.of());
        DrivenLines.keep(folder, moved);
        assertThat(DrivenLines.load(folder)).contains(moved);
    }

    @Test
    void aListThatStandsAlreadyIsNotWrittenAgainSoAFullDiskStopsNoRestart() throws IOException {
        DrivenLines.keep(folder, LINES);
        FileTime longAgo = FileTime.fromMillis(1_000_000);
        Files.setLastModifiedTime(file(), longAgo);
        Files.createDirectory(folder.resolve("driven-lines.new")); // nothing can be written now
        DrivenLines.keep(folder, LINES);
        assertThat(Files.getLastModifiedTime(file())).isEqualTo(longAgo);
        Lines other = new Lines("/dev/gpiochip1", List.of(HEAT), List.of());
        assertThatThrownBy(() -> DrivenLines.keep(folder, other))
            .isInstanceOf(IOException.class).hasMessageContaining("cannot be written")
            .hasMessageContaining("is the disk full");
        assertThat(DrivenLines.load(folder).orElseThrow().outputs()).as("the old one stands")
            .containsExactly(HEAT, LAMP, BEAT);
    }

    @Test
    void oneChangedByteAnywhereIsDamage() throws IOException {
        DrivenLines.keep(folder, LINES);
        byte[] good = Files.readAllBytes(file());
        for (int i = 0; i < good.length; i++) {
            byte[] bad = good.clone();
            bad[i] ^= 1;
            Files.write(file(), bad);
            assertThatThrownBy(() -> DrivenLines.load(folder)).as("byte %d", i)
                .isInstanceOf(IOException.class).hasMessageContaining("is damaged");
        }
    }

    @Test
    void everyShorterFileIsDamage() throws IOException {
        DrivenLines.keep(folder, LINES);
        byte[] good = Files.readAllBytes(file());
        for (int length = 0; length < good.length; length++) {
            Files.write(file(), java.util.Arrays.copyOf(good, length));
            assertThatThrownBy(() -> DrivenLines.load(folder)).as("%d bytes", length)
                .isInstanceOf(IOException.class).hasMessageContaining("is damaged");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\n\n\n", "conetender driven lines 1\nchip /dev/x\nsum 00000000\n",
        "conetender driven lines 2\nchip /dev/x\n", "\u0000\u0000\u0000\u0000"})
    void whatWeNeverWroteIsDamage(String text) throws IOException {
        Files.write(file(), text.getBytes(StandardCharsets.UTF_8));
        assertThatThrownBy(() -> DrivenLines.load(folder)).hasMessageContaining("is damaged");
    }

    @Test
    void aFileThatCannotBeReadSaysSo() throws IOException {
        Files.createDirectory(file());
        assertThatThrownBy(() -> DrivenLines.load(folder)).isInstanceOf(IOException.class)
            .hasMessageContaining("cannot be read");
    }

    @Test
    void aChipWhosePathCouldNotBeReadBackIsRefusedBeforeAnythingIsWritten() throws IOException {
        Lines odd = new Lines("/dev/gpio\nchip", List.of(HEAT), List.of());
        assertThatThrownBy(() -> DrivenLines.keep(folder, odd)).isInstanceOf(IOException.class)
            .hasMessageContaining("odd character");
        assertThat(file()).doesNotExist();
    }
}

package org.conetender.adapter.gpio;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.conetender.adapter.gpio.Lines.Bias;
import org.conetender.adapter.gpio.Lines.Line;
import org.junit.jupiter.api.Test;

class LinesTest {

    @Test
    void twoOutputsOnOneLineAreRefusedByName() {
        assertThatThrownBy(() -> lines(line("a.heat", 17), line("b.heat", 17)))
            .hasMessageContaining("line 17 serves both a.heat and b.heat");
    }

    @Test
    void anOutputAndAContactOnOneLineAreRefused() {
        assertThatThrownBy(() -> new Lines("chip", List.of(line("a.heat", 17)), List.of(line("a.level", 17))))
            .hasMessageContaining("line 17 serves both a.heat and a.level");
    }

    @Test
    void oneOutputOnTwoLinesIsRefused() {
        assertThatThrownBy(() -> lines(line("a.heat", 17), line("a.heat", 18)))
            .hasMessageContaining("a.heat is wired twice");
    }

    @Test
    void aLineBelowZeroAndALineWithoutANameAreRefused() {
        assertThatThrownBy(() -> line("a.heat", -1)).hasMessageContaining("counted from 0");
        assertThatThrownBy(() -> line(" ", 4)).hasMessageContaining("line 4 has no id");
    }

    private static Lines lines(Line... outputs) {
        return new Lines("chip", List.of(outputs), List.of());
    }

    private static Line line(String id, int offset) {
        return new Line(id, offset, false, Bias.AS_IS);
    }
}

package org.conetender.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is written to a terminal: the other screen, drawn over from the top, and back at the end. */
class TerminalTest {

    private static final String ESC = "\u001b[";

    private final StringWriter written = new StringWriter();
    private final Terminal terminal = new Terminal(new PrintWriter(written));

    @Test
    void itDrawsOnTheOtherScreenAndGivesTheFirstOneBackOnce() {
        terminal.draw(List.of("one", "two"));
        assertThat(written.toString()).isEqualTo(ESC + "?1049h" + ESC + "?25l" + ESC + "H" + ESC
                + "Kone\r\n" + ESC + "Ktwo\r\n" + ESC + "J");
        written.getBuffer().setLength(0);
        terminal.draw(List.of("three"));
        assertThat(written.toString()).doesNotContain("?1049h").startsWith(ESC + "H").contains("three");
        written.getBuffer().setLength(0);
        terminal.close();
        terminal.close();
        assertThat(written.toString()).isEqualTo(ESC + "?25h" + ESC + "?1049l");
    }

    @Test
    void whatWasNeverDrawnNeedsNoGivingBack() {
        terminal.close();
        assertThat(written.toString()).isEmpty();
    }

    @Test
    void aPageThatIsTooLongIsCutAndDoesNotScroll() {
        int rows = Terminal.size().rows();
        terminal.draw(Collections.nCopies(rows + 50, "line"));
        assertThat(written.toString().split("line", -1)).hasSize(rows + 1);
        assertThat(written.toString()).doesNotEndWith("\r\n");
    }
}

package org.conetender.app.view;

import java.io.Console;
import java.io.PrintWriter;
import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.ValueLayout;
import java.lang.invoke.MethodHandle;
import java.util.List;

/**
 * A terminal that is redrawn in place, on its other screen, so that what stood there before comes back.
 * Plain ANSI. One thread draws; {@link #close} may come from another.
 */
public final class Terminal implements AutoCloseable {

    /** Where nothing can be asked: the size of old. */
    private static final int USUAL_COLUMNS = 80;
    private static final int USUAL_ROWS = 24;
    /** Linux's TIOCGWINSZ, on amd64 and arm64 alike (asm-generic/ioctls.h). */
    private static final long WINDOW_SIZE = 0x5413;

    private static final String OTHER_SCREEN = "\u001b[?1049h\u001b[?25l";
    private static final String BACK = "\u001b[?25h\u001b[?1049l";

    /** @param columns at least 1  @param rows at least 1 */
    public record Size(int columns, int rows) {}

    private final PrintWriter out;
    private boolean open;

    public Terminal(PrintWriter out) {
        this.out = out;
    }

    /** Whether a person looks on: a terminal on both ends that understands ANSI. */
    public static boolean there() {
        Console console = System.console();
        String kind = System.getenv("TERM");
        return console != null && console.isTerminal() && kind != null && !kind.equals("dumb");
    }

    /** Draws these lines from the top; what does not fit below is left out. */
    public synchronized void draw(List<String> lines) {
        if (!open) {
            open = true;
            out.print(OTHER_SCREEN);
        }
        int rows = size().rows();
        StringBuilder page = new StringBuilder("\u001b[H");
        for (int i = 0; i < Math.min(lines.size(), rows); i++) {
            // Wiped before it is written: wiping behind a full line takes its last character with it.
            page.append("\u001b[K").append(lines.get(i)).append(i < rows - 1 ? "\r\n" : "");
        }
        out.print(page.append(lines.size() < rows ? "\u001b[J" : ""));
        out.flush();
    }

    /** The terminal as it was before. More than once. */
    @Override
    public synchronized void close() {
        if (open) {
            open = false;
            out.print(BACK);
            out.flush();
        }
    }

    /** How large it is now: people drag windows. */
    public static Size size() {
        try (Arena arena = Arena.ofConfined()) {
            MethodHandle ioctl = Linker.nativeLinker().downcallHandle(
                    Linker.nativeLinker().defaultLookup().find("ioctl").orElseThrow(),
                    FunctionDescriptor.of(ValueLayout.JAVA_INT, ValueLayout.JAVA_INT, ValueLayout.JAVA_LONG,
                            ValueLayout.ADDRESS), Linker.Option.firstVariadicArg(2));
            MemorySegment size = arena.allocate(ValueLayout.JAVA_SHORT, 4);
            int failed = (int) ioctl.invokeExact(1, WINDOW_SIZE, size);
            int rows = size.getAtIndex(ValueLayout.JAVA_SHORT, 0);
            int columns = size.getAtIndex(ValueLayout.JAVA_SHORT, 1);
            return failed == 0 && rows > 0 && columns > 0 ? new Size(columns, rows) : usual();
        } catch (Throwable noSuchCall) {
            return usual(); // another system than Linux: the view is only less wide
        }
    }

    private static Size usual() {
        return new Size(USUAL_COLUMNS, USUAL_ROWS);
    }
}

package org.conetender.app.cli;

import java.io.PrintWriter;
import java.util.function.IntConsumer;

/** How much of a long file was read: one line on a terminal, rewritten in place and wiped at the end. */
final class Progress implements IntConsumer {

    private final PrintWriter out;
    private final String what;
    private int shown = -1;

    /** @param what is being done, such as "reading cone-a.csv" */
    Progress(PrintWriter out, String what) {
        this.out = out;
        this.what = what;
    }

    @Override
    public void accept(int percent) {
        if (percent != shown) {
            shown = percent;
            out.print("\r" + what + ": " + percent + " %");
            out.flush();
        }
    }

    /** The line is as it was before. */
    void wipe() {
        if (shown >= 0) {
            out.print("\r\u001b[K");
            out.flush();
        }
    }
}

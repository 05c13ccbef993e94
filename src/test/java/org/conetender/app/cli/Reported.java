package org.conetender.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.conetender.app.Main;
import org.conetender.app.report.LarkmoorRecord;

/** What the report prints of a record. */
final class Reported {

    private Reported() {}

    /** Of the record in that folder; it must go well. */
    static String of(Path folder, String... options) throws Exception {
        List<String> all = new ArrayList<>(List.of("report", "--config",
                LarkmoorRecord.config(folder).toString()));
        all.addAll(List.of(options));
        StringWriter out = new StringWriter();
        StringWriter wrong = new StringWriter();
        assertThat(Main.commandLine(new RunCommand()).setOut(new PrintWriter(out))
                .setErr(new PrintWriter(wrong)).execute(all.toArray(String[]::new))).as("" + wrong).isZero();
        return out.toString();
    }
}

package org.conetender.app.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.conetender.app.config.Effective;
import org.conetender.app.config.Outcome;
import org.conetender.app.config.Problem;
import org.conetender.app.config.SettingDoc;
import org.conetender.app.report.Lines;
import org.conetender.core.unit.Text;

/** What {@code check} prints, and what {@code run} prints when it refuses to start. */
public final class CheckReport {

    private static final JsonFactory JSON = new JsonFactory();
    /** Of what is said below a key. */
    private static final int INDENT = 4;

    private CheckReport() {}

    /** For people: all errors and warnings, or every setting as it counts. Ends with a line end. */
    public static String text(String file, Outcome outcome) {
        StringBuilder out = new StringBuilder();
        switch (outcome) {
            case Outcome.Refused refused -> {
                refused.errors().forEach(p -> line(out, p.text(file)));
                warnings(out, file, refused.warnings());
                line(out, "");
                line(out, count(refused.errors().size(), "error") + ": " + file
                        + " is refused as a whole. Mend what is listed, then run check again: "
                        + "it may then find more.");
            }
            case Outcome.Accepted accepted -> {
                accepted.effective().forEach(e -> line(out, row(e)));
                warnings(out, file, accepted.warnings());
                line(out, "");
                line(out, file + " is good: " + count(accepted.config().settings().cones().size(), "cone")
                        + ", " + count(accepted.warnings().size(), "warning")
                        + ". It counts from the next start of the daemon.");
                if (accepted.config().settings().cones().stream()
                        .anyMatch(c -> c.fittings().heat().fitted())) {
                    line(out, "No real heater belongs on this release: leave heaters unplugged.");
                }
            }
        }
        return out.toString();
    }

    /** For programs: {@code file, accepted, settings, errors, warnings}. */
    public static String json(String file, Outcome outcome) {
        return write(g -> {
            g.writeStartObject();
            g.writeStringField("file", file);
            switch (outcome) {
                case Outcome.Refused refused -> {
                    g.writeBooleanField("accepted", false);
                    problems(g, "errors", refused.errors());
                }
                case Outcome.Accepted accepted -> {
                    g.writeBooleanField("accepted", true);
                    g.writeArrayFieldStart("settings");
                    for (Effective e : accepted.effective()) {
                        setting(g, e);
                    }
                    g.writeEndArray();
                }
            }
            problems(g, "warnings", outcome.warnings());
            g.writeEndObject();
        });
    }

    /** All that is to be said about these settings. Ends with a line end. */
    static String explain(List<SettingDoc> docs, boolean json) {
        if (json) {
            return write(g -> {
                g.writeStartArray();
                for (SettingDoc d : docs) {
                    doc(g, d);
                }
                g.writeEndArray();
            }) + System.lineSeparator();
        }
        StringBuilder out = new StringBuilder();
        for (SettingDoc d : docs) {
            line(out, d.key());
            Lines.wrapped(INDENT, d.purpose()).forEach(l -> line(out, l));
            line(out, "    allowed: " + d.range());
            line(out, "    default: " + d.fallbackText() + unit(d));
            line(out, "    example: " + d.name() + " = " + d.example());
            line(out, "");
        }
        return out.toString();
    }

    /** The default's unit, where the default is a figure. */
    private static String unit(SettingDoc d) {
        return d.fallback() instanceof SettingDoc.Fallback.Value && !d.unit().isEmpty() ? " " + d.unit() : "";
    }

    /** One row as it would stand in the file, so that it can be copied there. */
    private static String row(Effective e) {
        boolean figure = !e.unit().isEmpty() && !e.value().equals("none");
        String remark = (figure ? e.unit() : "") + (figure && e.isDefault() ? ", " : "")
                + (e.isDefault() ? "default" : "");
        return Text.of("%-40s = %s", e.key(), e.value()) + (remark.isEmpty() ? "" : "   # " + remark);
    }

    private static void warnings(StringBuilder out, String file, List<Problem> warnings) {
        warnings.forEach(p -> line(out, "warning: " + p.text(file)));
    }

    private static String count(int n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }

    private static void line(StringBuilder out, String text) {
        out.append(text).append(System.lineSeparator());
    }

    private static void setting(JsonGenerator g, Effective e) throws IOException {
        g.writeStartObject();
        g.writeStringField("key", e.key());
        g.writeStringField("value", e.value());
        g.writeStringField("unit", e.unit());
        g.writeBooleanField("default", e.isDefault());
        g.writeEndObject();
    }

    private static void doc(JsonGenerator g, SettingDoc d) throws IOException {
        g.writeStartObject();
        g.writeStringField("key", d.key());
        g.writeStringField("purpose", d.purpose());
        g.writeStringField("unit", d.unit());
        g.writeStringField("default", d.fallbackText());
        g.writeStringField("range", d.range());
        g.writeStringField("example", d.example());
        g.writeEndObject();
    }

    private static void problems(JsonGenerator g, String name, List<Problem> problems) throws IOException {
        g.writeArrayFieldStart(name);
        for (Problem p : problems) {
            g.writeStartObject();
            g.writeNumberField("line", p.line());
            g.writeNumberField("column", p.column());
            g.writeStringField("key", p.key());
            g.writeStringField("value", p.value());
            g.writeStringField("what", p.what());
            g.writeEndObject();
        }
        g.writeEndArray();
    }

    private interface Body {
        void write(JsonGenerator g) throws IOException;
    }

    private static String write(Body body) {
        StringWriter out = new StringWriter();
        try (JsonGenerator g = JSON.createGenerator(out)) {
            body.write(g);
        } catch (IOException e) {
            throw new UncheckedIOException("a string could not be written to", e);
        }
        return out.toString();
    }
}

package org.conetender.app.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import org.conetender.sim.trial.Target;

/** What a soak came to, for programs: its targets, each with what was got and whether that is enough. */
final class SoakJson {

    private SoakJson() {}

    static void write(List<Target> targets, List<String> lines, double hoursPerCpuHour, Writer to)
            throws IOException {
        try (JsonGenerator g = new JsonFactory().createGenerator(to)) {
            g.useDefaultPrettyPrinter();
            g.writeStartObject();
            g.writeArrayFieldStart("targets");
            for (Target t : targets) {
                g.writeStartObject();
                g.writeStringField("what", t.what());
                if (Double.isNaN(t.got())) {
                    g.writeNullField("got");
                } else {
                    g.writeNumberField("got", t.got());
                }
                g.writeNumberField("most", t.most());
                g.writeBooleanField("enough", t.enough());
                g.writeBooleanField("met", t.met());
                g.writeEndObject();
            }
            g.writeEndArray();
            g.writeNumberField("hoursPerCpuHour", hoursPerCpuHour);
            g.writeArrayFieldStart("lines");
            for (String line : lines) {
                g.writeString(line);
            }
            g.writeEndArray();
            g.writeEndObject();
        }
    }
}

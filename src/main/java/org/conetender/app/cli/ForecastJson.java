package org.conetender.app.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Onward;
import org.conetender.core.hatch.Replay;

/**
 * A {@link ForecastReport} for programs: one JSON object. What MQTT tells as well has the name of its topic,
 * but for two harvests, which are one list of hours here; shares and chances are 0..1, and percent there.
 */
record ForecastJson(ForecastReport report) {

    void print(PrintWriter out) throws IOException {
        // The writer belongs to the caller: flushed here, not closed.
        try (JsonGenerator g = new JsonFactory().createGenerator(out)) {
            g.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            g.useDefaultPrettyPrinter();
            g.writeStartObject();
            g.writeStringField("stocked-at", report.iso(report.stockedMs()));
            writeAnswer(g, report.replay().forecast());
            g.writeArrayFieldStart("hours");
            for (Replay.Hour h : report.replay().hours()) {
                writeHour(g, h);
            }
            g.writeEndArray();
            g.writeArrayFieldStart("notes");
            for (String remark : report.notes()) {
                g.writeString(remark);
            }
            g.writeEndArray();
            g.writeEndObject();
        }
        out.println();
    }

    private void writeAnswer(JsonGenerator g, Forecast f) throws IOException {
        g.writeStringField("last-reading-at", report.iso(report.read().log().lastMs()));
        number(g, "degree-hours", f.doneDegreeHours());
        number(g, "degree-hours-least", report.replay().development().leastDegreeHours());
        number(g, "degree-hours-most", report.replay().development().mostDegreeHours());
        number(g, "degree-hours-needed", f.neededDegreeHours());
        number(g, "hatched", f.hatched().median());
        number(g, "hatched-low", f.hatched().low());
        number(g, "hatched-high", f.hatched().high());
        moment(g, "ready-at", f.ready().announced());
        moment(g, "ready-from", f.ready().earliest());
        moment(g, "ready-until", f.ready().latest());
        moment(g, "ready-half-from", f.ready().earlierQuartile());
        moment(g, "ready-half-until", f.ready().laterQuartile());
        moment(g, "ready-median", f.ready().median());
        if (report.byMs().isPresent()) {
            g.writeStringField("by", report.iso(report.byMs().getAsLong()));
            number(g, "ready-by-chance", report.chance());
        }
        g.writeStringField("rate", report.asked().form().toString());
        writeHarvest(g);
        g.writeStringField("course", f.sentence());
        Onward onward = report.replay().outlook().onward();
        number(g, "held-at-c", onward.daily() ? Double.NaN : onward.meanC());
        g.writeBooleanField("repeats-last-day", onward.daily());
        number(g, "hours-warm", report.replay().development().hoursWarm());
        number(g, "hours-cold", report.replay().development().hoursCold());
        number(g, "hours-above-loss", report.replay().development().hoursAboveLoss());
    }

    /** For the lot's median. */
    private void writeHarvest(JsonGenerator g) throws IOException {
        Replay.Outlook o = report.replay().outlook();
        moment(g, "t0", o.course().hoursAt(report.speed().k0()));
        moment(g, "t10", o.course().hoursAt(report.speed().k10()));
        moment(g, "t50", o.course().hoursAt(report.speed().k50DegreeHours()));
        moment(g, "t90", o.course().hoursAt(report.speed().k90()));
        moment(g, "food-most-at", o.harvest().best().hours());
        moment(g, "food-from", o.harvest().fromHours());
        moment(g, "food-until", o.harvest().untilHours());
        g.writeArrayFieldStart("harvest-twice");
        if (o.harvest().twice().isPresent()) {
            g.writeString(report.iso(report.aheadMs(o.harvest().twice().get().firstHours())));
            g.writeString(report.iso(report.aheadMs(o.harvest().twice().get().secondHours())));
        }
        g.writeEndArray();
    }

    private void writeHour(JsonGenerator g, Replay.Hour h) throws IOException {
        g.writeStartObject();
        g.writeStringField("until", report.iso(h.untilMs()));
        number(g, "mean-c", h.water().meanC());
        number(g, "gained", h.gainedDegreeHours());
        number(g, "done", h.done().degreeHours());
        number(g, "hatched", h.hatched());
        g.writeEndObject();
    }

    /** Four places are more than any thermometer gives; what is no number is null. */
    private static void number(JsonGenerator g, String name, double value) throws IOException {
        if (Double.isFinite(value)) {
            g.writeNumberField(name, Math.round(value * 10_000) / 10_000.0);
        } else {
            g.writeNullField(name);
        }
    }

    private void moment(JsonGenerator g, String name, double hoursAhead) throws IOException {
        if (Double.isFinite(hoursAhead)) {
            g.writeStringField(name, report.iso(report.aheadMs(hoursAhead)));
        } else {
            g.writeNullField(name);
        }
    }
}

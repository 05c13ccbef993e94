package org.conetender.app.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.conetender.core.batch.Batch;
import org.conetender.core.face.Json;
import org.conetender.core.hatch.Development;
import org.conetender.core.unit.Text;

/**
 * Batches, a row each: for people in eighty columns, with what has to be said in words below each row; for
 * spreadsheets; for programs.
 */
public record BatchTable(Measured measured, List<Story> stories) {

    private static final int LOT = 10;
    private static final int INDENT = 8;

    private static final List<String> COLUMNS = List.of("cone", "batch", "lot", "cysts_g", "litres", "ppt",
            "stocked", "hatched", "ready", "harvest", "degree_hours", "degree_hours_least",
            "degree_hours_most", "heat_hours", "alarms", "ended", "doubts", "assumed", "wet_g",
            "wet_g_per_g");

    public BatchTable {
        stories = List.copyOf(stories);
    }

    public void print(PrintWriter out) {
        Hours hours = new Hours(measured.past().ruler());
        if (stories.isEmpty()) {
            out.println("no batches");
            return;
        }
        out.println("times in " + measured.past().ruler().zone() + ", °C·h above 12 °C until the harvest");
        out.println("batch   lot           g  stocked      hatched      ready        harvest     °C·h");
        String year = "";
        for (Story s : stories) {
            String now = hours.year(s.began());
            if (!now.isEmpty() && !now.equals(year)) {
                out.println(now);
                year = now;
            }
            String lot = s.stock().map(Batch.Stock::lot).orElse("-");
            out.println(Text.of("%-7s %-10s %4s  %-11s  %-11s  %-11s  %-11s %4s", s.name(),
                    Lines.cut(lot, LOT), s.stock().map(k -> grams(k.cystsG())).orElse("-"),
                    hours.brief(s.began()), hours.brief(s.hatched()), hours.brief(s.ready()),
                    hours.brief(s.harvest()), degreeHours(s)).stripTrailing());
            words(s, lot).forEach(w -> Lines.wrapped(INDENT, w).forEach(out::println));
        }
        measured.past().damages().forEach(d -> Lines.wrapped(0, "note: " + d + ".").forEach(out::println));
    }

    /** Four letters. */
    private static String grams(double g) {
        return g < 100 ? Text.of("%.1f", g) : Text.of("%.0f", g);
    }

    private String degreeHours(Story s) {
        return measured.done(s).map(d -> Text.of("%s%.0f", d.exact() ? "" : "≥",
                d.exact() ? d.development().degreeHours() : d.development().leastDegreeHours())).orElse("-");
    }

    private static List<String> words(Story s, String lot) {
        List<String> out = new ArrayList<>();
        out.add(s.ended() + (s.stock().isEmpty() ? "; no cysts were told of, the first time is the water's"
                : "")
                + s.weight().map(y -> Text.of("; %.1f g wet, %.1f g of each gram", y.wetG(), y.perGram()))
                .orElse("")
                + (s.assumed().isEmpty() ? "" : "; assumed from later reports: "
                + String.join(", ", s.assumed())));
        if (lot.codePointCount(0, lot.length()) > LOT) {
            out.add("lot " + lot);
        }
        s.batch().marks().words().doubts().forEach(d -> out.add("in doubt: " + d));
        return out;
    }

    /** As RFC 4180 has it, with a header; times with their offset. */
    public void printCsv(PrintWriter out) {
        row(out, COLUMNS);
        for (Story s : stories) {
            Map<String, Object> m = fields(s);
            row(out, COLUMNS.stream().map(c -> m.get(c) instanceof List<?> l
                    ? String.join("; ", l.stream().map(Object::toString).toList())
                    : m.getOrDefault(c, "").toString()).toList());
        }
    }

    private static void row(PrintWriter out, List<String> fields) {
        out.print(String.join(",", fields.stream().map(BatchTable::quoted).toList()) + "\r\n");
    }

    private static String quoted(String field) {
        return field.matches("(?s).*[\",\r\n].*") ? '"' + field.replace("\"", "\"\"") + '"' : field;
    }

    public void printJson(PrintWriter out) {
        out.println(Json.write(Map.of("batches", list())));
    }

    /** What is not known is left out. */
    List<Map<String, Object>> list() {
        return stories.stream().map(this::fields).toList();
    }

    Map<String, Object> fields(Story s) {
        Hours hours = new Hours(measured.past().ruler());
        Map<String, Object> m = new LinkedHashMap<>();
        m.put("cone", s.cone());
        m.put("batch", s.batch().number());
        s.stock().ifPresent(k -> {
            m.put("lot", k.lot());
            m.put("cysts_g", k.cystsG());
        });
        s.batch().fill().ifPresent(f -> {
            m.put("litres", f.litres());
            m.put("ppt", f.ppt());
        });
        hours.iso(s.stock().map(Batch.Stock::at)).ifPresent(t -> m.put("stocked", t));
        hours.iso(s.hatched()).ifPresent(t -> m.put("hatched", t));
        hours.iso(s.ready()).ifPresent(t -> m.put("ready", t));
        hours.iso(s.harvest()).ifPresent(t -> m.put("harvest", t));
        measured.done(s).ifPresent(d -> figures(m, d));
        measured.heatHours(s).ifPresent(h -> {
            m.put("heat_hours", tenths(h));
            m.put("alarms", measured.called(s).size());
        });
        m.put("ended", s.ended());
        m.put("doubts", s.batch().marks().words().doubts());
        m.put("assumed", s.assumed());
        s.weight().ifPresent(y -> {
            m.put("wet_g", tenths(y.wetG()));
            m.put("wet_g_per_g", tenths(y.perGram()));
        });
        return m;
    }

    /** Where the length of a cut is not known, only the least is. */
    private static void figures(Map<String, Object> m, Measured.Done d) {
        Development of = d.development();
        m.put("degree_hours_least", tenths(of.leastDegreeHours()));
        if (d.exact()) {
            m.put("degree_hours", tenths(of.degreeHours()));
            m.put("degree_hours_most", tenths(of.mostDegreeHours()));
        }
    }

    static double tenths(double figure) {
        return rounded(figure, 10);
    }

    /** @param parts of one that are kept */
    static double rounded(double figure, int parts) {
        return Math.round(figure * parts) / (double) parts;
    }
}

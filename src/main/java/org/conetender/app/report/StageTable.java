package org.conetender.app.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.app.plot.BatchPicture.Stretch;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** The stages of a batch: how long each was, how warm, and what was switched in it. */
record StageTable(Measured measured, Story story) {

    /** Least, mean over time, most, °C. */
    private record Warm(double least, double mean, double most) {}

    void print(PrintWriter out) {
        out.println("stage          hours   least °C    mean    most  set °C  heat %   air %  lamp %");
        for (Stretch s : stretches()) {
            out.println(Text.of("%-12s %7s %10s %31s", s.word(), (exact() ? "" : "≥")
                    + Text.of("%.1f", Units.hours(s.toMs() - s.fromMs())),
                    water(s).map(w -> Text.of("%.1f %7.1f %7.1f", w.least(), w.mean(), w.most())).orElse("-"),
                    switched(s).map(StageTable::row).orElse("")).stripTrailing());
        }
    }

    /** Where no clock tells how long a cut was, only the hours on record are counted. */
    private boolean exact() {
        return story.stock().isEmpty() || measured.exact(story);
    }

    private static String row(Doings.Means m) {
        String set = m.setC().isPresent() ? Text.of("%.1f", m.setC().getAsDouble()) : "-";
        return Text.of("%7s %7.0f %7.0f %7.0f", set, 100 * m.heat(), 100 * m.air(), 100 * m.lamp());
    }

    /** For programs; what is not known is left out. */
    List<Map<String, Object>> list() {
        List<Map<String, Object>> out = new ArrayList<>();
        for (Stretch s : stretches()) {
            Map<String, Object> m = new LinkedHashMap<>();
            m.put("stage", s.word());
            m.put(exact() ? "hours" : "hours_least", thousandths(Units.hours(s.toMs() - s.fromMs())));
            water(s).ifPresent(w -> {
                m.put("least_c", thousandths(w.least()));
                m.put("mean_c", thousandths(w.mean()));
                m.put("most_c", thousandths(w.most()));
            });
            switched(s).ifPresent(d -> {
                d.setC().ifPresent(c -> m.put("set_c", thousandths(c)));
                m.put("heat", thousandths(d.heat()));
                m.put("cut_out", thousandths(d.cutOut()));
                m.put("air", thousandths(d.air()));
                m.put("lamp", thousandths(d.lamp()));
            });
            out.add(m);
        }
        return out;
    }

    private static double thousandths(double figure) {
        return Math.round(figure * 1_000) / 1_000.0;
    }

    private Optional<Doings.Means> switched(Stretch s) {
        return measured.doings().means(story.cone(), s.fromMs(), s.toMs());
    }

    /** Until it was emptied. */
    List<Stretch> stretches() {
        Ruler ruler = measured.past().ruler();
        List<Stretch> out = new ArrayList<>();
        List<Story.Entered> all = story.stages();
        for (int i = 0; i < all.size(); i++) {
            long from = ruler.lineMs(all.get(i).at());
            Optional<Long> to = i + 1 < all.size() ? Optional.of(ruler.lineMs(all.get(i + 1).at()))
                    : all.get(i).stage().equals("clean") ? Optional.empty()
                    : measured.lastMs(story).filter(l -> l > from);
            to.ifPresent(t -> out.add(new Stretch(all.get(out.size()).stage(), from, t)));
        }
        return out;
    }

    private Optional<Warm> water(Stretch s) {
        return measured.between(story, s.fromMs(), s.toMs()).map(l -> {
            double least = l.waterC(0);
            double most = least;
            double sum = 0;
            for (int i = 1; i < l.size(); i++) {
                least = Math.min(least, l.waterC(i));
                most = Math.max(most, l.waterC(i));
                sum += (l.waterC(i) + l.waterC(i - 1)) / 2 * (l.timeMs(i) - l.timeMs(i - 1));
            }
            return new Warm(least, sum / (l.lastMs() - l.firstMs()), most);
        });
    }
}

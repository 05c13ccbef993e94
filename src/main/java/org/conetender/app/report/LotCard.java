package org.conetender.app.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Lots;
import org.conetender.core.face.Json;
import org.conetender.core.hatch.Learnt;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Speed;
import org.conetender.core.unit.Text;

/**
 * What is known of one lot: how fast it hatches, how much of it, and whether that changes with its age.
 *
 * @param measured of its batches  @param lot its label  @param stories its batches
 */
public record LotCard(Measured measured, String lot, List<Story> stories) {

    private static final double[] SHARES = {0.1, 0.5, 0.9};

    public LotCard {
        stories = List.copyOf(stories);
    }

    private Lots lots() {
        return measured.past().book().lots();
    }

    /** By all that its batches taught, at the anchor of the rate. */
    Speed speed() {
        List<Speed> kin = lots().relatives(lot).stream().map(Learnt::alone).toList();
        return Learnt.of(Learnt.Prior.of(kin), lots().others(lot, "", 0), List.of());
    }

    private LotWeights weights(Speed speed) {
        return new LotWeights(measured, stories, speed);
    }

    private Optional<Tin> tin() {
        return Tin.of(measured.past(), lot);
    }

    /** Whether the record knows of it. */
    public boolean known() {
        return !stories.isEmpty() || tin().isPresent();
    }

    double grams() {
        return stories.stream().flatMap(s -> s.stock().stream()).mapToDouble(Batch.Stock::cystsG).sum();
    }

    public void print(PrintWriter out) {
        Speed speed = speed();
        Hours hours = new Hours(measured.past().ruler());
        out.println("lot " + lot);
        out.println(stories.isEmpty() ? "  no batch yet" : Text.of("  %d %s, %.1f g used; first opened for %s"
                + " on %s", stories.size(), stories.size() == 1 ? "batch" : "batches", grams(),
                stories.getFirst().name(),
                stories.getFirst().began().map(hours::day).orElse("an unknown day")));
        tin().ifPresent(t -> out.println("  " + t.words(hours)));
        out.println(speed.timesSeen() == 0 ? lots().others(lot, "", 0).isEmpty()
                ? "  nobody has seen it hatch: what follows is what any lot does"
                : "  looked at in vain, not yet seen to hatch: it is none of the quickest"
                : "  learnt from " + speed.timesSeen() + (speed.timesSeen() == 1 ? " batch" : " batches"));
        for (double share : SHARES) {
            out.println(Text.of("  K%.0f  %4.0f °C·h above 12 °C, in 8 of 10 batches %.0f to %.0f",
                    100 * share, speed.degreeHoursAt(share), speed.within(share, false),
                    speed.within(share, true)));
        }
        printCounts(out, speed);
        weights(speed).print(out);
        trend(this::slowness).ifPresent(t -> out.println(t.words(
                "K50 changes by %+.1f %% a month (± %.1f)")));
        trend((s, days) -> hatching(s, days, speed)).ifPresent(t -> out.println(t.words(
                "H%% changes by %+.1f points a month (± %.1f)")));
    }

    private void printCounts(PrintWriter out, Speed speed) {
        boolean any = false;
        boolean early = false;
        for (Story s : stories) {
            Optional<Count> c = Count.last(s, lots()).filter(Count::usable);
            if (c.isPresent()) {
                any = true;
                early |= c.get().early(speed);
                out.println(Text.of("  counted in %s%s: H%% %s, HE %,.0f ± %,.0f nauplii/g%s",
                        s.name(),
                        c.get().degreeHours().map(d -> Text.of(" at %.0f °C·h", d)).orElse(""),
                        c.get().percentWords(), thousands(c.get().perGram()),
                        thousands(c.get().perGramSd()),
                        c.get().early(speed) ? " (early)" : ""));
            }
        }
        if (any) {
            out.println("  ± is one standard deviation of counting alone; taking the sample adds to it.");
        }
        if (early) {
            out.println("  (early): surely before 9 in 10 of what hatches had hatched.");
        }
    }

    static double thousands(double nauplii) {
        return Math.round(nauplii / 1_000) * 1_000;
    }

    private Optional<Trend> trend(Trend.Figure figure) {
        return Trend.of(Trend.points(measured, stories, figure));
    }

    /** Percent of K50, by what that batch alone taught. */
    private Optional<Trend.Point> slowness(Story s, double days) {
        List<Lesson> own = lots().own(lot, s.cone(), s.batch().number());
        Speed alone = Learnt.of(Learnt.Prior.UNKNOWN, List.of(own), List.of());
        return own.isEmpty() || alone.timesSeen() == 0 ? Optional.empty() : Optional.of(new Trend.Point(days,
                100 * Math.log(alone.k50DegreeHours()), 100 * alone.doubt().lot()));
    }

    private Optional<Trend.Point> hatching(Story s, double days, Speed speed) {
        return Count.ripe(s, lots(), speed).map(c -> new Trend.Point(days, c.percent(), c.percentSd()));
    }

    /** With its batches as {@link BatchTable} has them. */
    public void printJson(PrintWriter out) {
        Speed speed = speed();
        Map<String, Object> m = new LinkedHashMap<>();
        m.put("lot", lot);
        m.put("grams_used", BatchTable.tenths(grams()));
        m.put("batches_seen", speed.timesSeen());
        for (double share : SHARES) {
            m.put(Text.of("k%.0f", 100 * share), List.of(BatchTable.tenths(speed.within(share, false)),
                    BatchTable.tenths(speed.degreeHoursAt(share)),
                    BatchTable.tenths(speed.within(share, true))));
        }
        List<Map<String, Object>> counts = new ArrayList<>();
        for (Story s : stories) {
            Count.last(s, lots()).filter(Count::usable).ifPresent(c -> counts.add(Map.of("batch", s.name(),
                    "h_percent", BatchTable.tenths(c.percent()), "h_percent_sd",
                    BatchTable.tenths(c.percentSd()), "he_per_g", Math.round(c.perGram()), "he_per_g_sd",
                    Math.round(c.perGramSd()), "early", c.early(speed))));
        }
        m.put("counts", counts);
        tin().ifPresent(t -> m.put("grams_left", BatchTable.tenths(t.leftG())));
        weights(speed).put(m);
        trend(this::slowness).ifPresent(t -> m.put("k50_percent_per_month", List.of(
                BatchTable.tenths(t.perMonth()), BatchTable.tenths(t.sd()))));
        trend((s, days) -> hatching(s, days, speed)).ifPresent(t -> m.put("h_points_per_month", List.of(
                BatchTable.tenths(t.perMonth()), BatchTable.tenths(t.sd()))));
        m.put("batches", new BatchTable(measured, stories).list());
        out.println(Json.write(m));
    }
}

package org.conetender.app.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Stage;
import org.conetender.core.face.Json;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;

/** When each cone was cleaned and disinfected, and how many batches were over in it since. */
public record Cleaning(Past past, List<Story> stories) {

    private static final int INDENT = 8;

    public Cleaning {
        stories = List.copyOf(stories);
    }

    private List<String> cones() {
        return stories.stream().map(Story::cone).distinct().toList();
    }

    private static boolean is(Fact f, Step step) {
        return f.change() instanceof Change.Told(Ask.Did(Step s)) && s == step;
    }

    private static List<Moment> of(Story s, Step step) {
        return s.facts().stream().filter(f -> is(f, step)).map(Fact::at).toList();
    }

    /** The next batch, or its beginning, said that it must have been. */
    private static boolean implied(Story s) {
        return of(s, Step.CLEANED).isEmpty() && (!s.newest() || s.batch().stage() instanceof Stage.Clean);
    }

    private List<Story> of(String cone) {
        return stories.stream().filter(s -> s.cone().equals(cone)).toList();
    }

    /** Whether it is in the cone yet, where nothing can be cleaned. */
    private static boolean in(Story s) {
        return s.newest() && s.batch().stage().hasWater();
    }

    /** Batches that were over since that was last done; of all that are shown where it never was. */
    private static int since(List<Story> batches, Step step) {
        int since = 0;
        for (Story s : batches) {
            since = of(s, step).isEmpty() ? since + 1 : 0;
        }
        return since;
    }

    private static Optional<Moment> last(List<Story> batches, Step step) {
        return batches.stream().flatMap(s -> of(s, step).stream()).reduce((a, b) -> b);
    }

    public void print(PrintWriter out) {
        Hours hours = new Hours(past.ruler());
        if (stories.isEmpty()) {
            out.println("no batches");
        }
        for (String cone : cones()) {
            List<Story> batches = of(cone).stream().filter(s -> !in(s)).toList();
            out.println("cone " + cone);
            for (Step step : List.of(Step.CLEANED, Step.DISINFECTED)) {
                int since = since(batches, step);
                out.println("  last " + step.word() + ": " + last(batches, step).map(hours::full)
                        .map(t -> t + (since == 0 ? "" : ", " + batches(since) + " since"))
                        .orElse(batches.isEmpty() ? "no batch is over yet"
                                : "not once in " + batches(batches.size())));
            }
            for (Story s : batches) {
                List<String> done = new ArrayList<>();
                for (Step step : List.of(Step.RINSED, Step.CLEANED, Step.DISINFECTED)) {
                    of(s, step).forEach(m -> done.add(step.word() + " " + hours.full(m)));
                }
                if (implied(s)) {
                    done.add("cleaned as the next batch implies, nobody said when");
                }
                String words = "after " + s.name() + ": " + (done.isEmpty() ? "nothing was told"
                        : String.join("; ", done));
                List<String> lines = Lines.wrapped(INDENT, words);
                out.println("  " + lines.getFirst().strip());
                lines.subList(1, lines.size()).forEach(out::println);
            }
            of(cone).stream().filter(Cleaning::in).forEach(s -> out.println("  " + s.name() + ": "
                    + s.ended()));
        }
    }

    public void printJson(PrintWriter out) {
        Hours hours = new Hours(past.ruler());
        List<Map<String, Object>> all = new ArrayList<>();
        for (Story s : stories) {
            Map<String, Object> m = new LinkedHashMap<>();
            m.put("cone", s.cone());
            m.put("batch", s.batch().number());
            for (Step step : List.of(Step.RINSED, Step.CLEANED, Step.DISINFECTED)) {
                m.put(step.word(), of(s, step).stream().map(a -> hours.iso(Optional.of(a)).orElse(""))
                        .toList());
            }
            m.put("assumed-cleaned", implied(s));
            m.put("in-the-cone", in(s));
            all.add(m);
        }
        out.println(Json.write(Map.of("cleaning", all)));
    }

    private static String batches(int n) {
        return n == 1 ? "1 batch" : n + " batches";
    }
}

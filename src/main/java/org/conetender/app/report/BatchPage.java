package org.conetender.app.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.app.plot.BatchPicture;
import org.conetender.app.plot.Hatch;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.face.Json;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Known;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.ThermometerLog;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;

/**
 * One batch: what happened to it, how warm it was and what was switched in each stage, and how far its cysts
 * came.
 */
public record BatchPage(Measured measured, Story story) {

    private Past past() {
        return measured.past();
    }

    public void print(PrintWriter out) {
        title().forEach(out::println);
        out.println("times in " + past().ruler().zone());
        new Timeline(measured, story).print(out);
        out.println();
        new StageTable(measured, story).print(out);
        measured.log(story).map(l -> lines(replay(l))).orElse(List.of("no temperatures of it are on record"))
                .forEach(l -> Lines.wrapped(0, l).forEach(out::println));
        hours().forEach(l -> Lines.wrapped(0, l).forEach(out::println));
        story.weight().ifPresent(y -> out.println(Text.of("yield: %.1f g wet, %.1f g of each gram of cysts",
                y.wetG(), y.perGram())));
    }

    /** What happened, and how it ended. */
    private List<String> title() {
        return Lines.wrapped(0, "batch " + story.name() + story.stock().map(k -> Text.of(
                ", lot %s, %.1f g", k.lot(), k.cystsG())).orElse("") + story.batch().fill().map(f -> Text.of(
                " in %.1f L at %.0f g/kg", f.litres(), f.ppt())).orElse("") + "; " + story.ended());
    }

    private Replay replay(ThermometerLog log) {
        return log.replay(measured.question(story, Known.NONE.begun(past().book().lots(), story.cone(),
                story.batch()).speed()));
    }

    /** What its cysts did. */
    private List<String> lines(Replay r) {
        boolean exact = measured.exact(story);
        Forecast.Hatched h = r.outlook().hatched(r.outlook().course().now());
        String done = exact ? between(r.development())
                : Text.of("at least %.0f °C·h", r.development().leastDegreeHours());
        List<String> out = new ArrayList<>();
        out.add(done + (story.harvest().isEmpty() ? " so far" : new Drawings(story.stages()).inParts()
                ? " until the first harvest" : " until the harvest"));
        out.add("hatched: " + (exact ? "about" : "at least about") + Text.of(" %.0f %% (8 in 10 such batches:"
                + " %.0f to %.0f %%)", 100 * h.median(), 100 * h.low(), 100 * h.high()));
        return out;
    }

    /** What the page has to say of its hours; a picture shows it. */
    private List<String> hours() {
        return measured.exact(story) ? List.of() : List.of("the clock was not set over a cut: how long that "
                + "was nobody knows, and hours after it are too early by as much");
    }

    private static String between(Development d) {
        return Text.of("%.0f °C·h", d.degreeHours()) + (d.mostDegreeHours() - d.leastDegreeHours() < 1 ? ""
                : Text.of(" (%.0f to %.0f)", d.leastDegreeHours(), d.mostDegreeHours()));
    }

    /** Its water until the last of it was drawn: of what a part was drawn the rest is shown as well. */
    private Optional<ThermometerLog> whole() {
        Drawings drawn = new Drawings(story.stages());
        if (story.stock().isEmpty() || !drawn.inParts()) {
            return measured.log(story);
        }
        long fromMs = past().ruler().lineMs(story.stock().get().at());
        return drawn.last().or(story::over).map(past().ruler()::lineMs).or(() -> measured.lastMs(story))
                .flatMap(toMs -> measured.between(story, fromMs, toMs)).filter(l -> l.lastMs() > fromMs);
    }

    /** Empty where nothing was measured. */
    public Optional<BatchPicture> picture() {
        return whole().map(log -> {
            Hatch hatch = new Hatch(log, replay(log), past().ruler().axis(log.firstMs(), log.lastMs()),
                    List.of());
            List<String> under = new ArrayList<>();
            under.add(story.stock().map(Batch.Stock::lot).map(l -> "lot " + l + ", ").orElse("")
                    + story.ended());
            measured.log(story).ifPresent(l -> under.addAll(lines(replay(l))));
            BatchPicture.Did did = new BatchPicture.Did(new StageTable(measured, story).stretches(),
                    new Timeline(measured, story).marks(), told(),
                    measured.doings().pieces(story.cone(), log.firstMs(), log.lastMs()));
            return new BatchPicture(hatch, "Batch " + story.name(), under, did);
        });
    }

    private List<BatchPicture.Told> told() {
        List<BatchPicture.Told> out = new ArrayList<>();
        Optional<Ask.SetSetpoint> held = Optional.empty();
        Moment since = story.facts().getFirst().at();
        for (Fact f : story.facts()) {
            boolean other = f.change() instanceof Change.Told(Ask.SetSetpoint _)
                    || f.change() instanceof Change.Told(Ask.ReadyBy _);
            if (other) {
                add(out, held, since, past().ruler().lineMs(f.at()));
                held = f.change() instanceof Change.Told(Ask.SetSetpoint s) ? Optional.of(s)
                        : Optional.empty();
                since = f.at();
            }
        }
        add(out, held, since, Long.MAX_VALUE);
        return out;
    }

    private void add(List<BatchPicture.Told> out, Optional<Ask.SetSetpoint> held, Moment since, long toMs) {
        held.ifPresent(s -> out.add(new BatchPicture.Told(s.degreesC(), past().ruler().lineMs(since), toMs)));
    }

    public void printJson(PrintWriter out) {
        Map<String, Object> all = new BatchTable(measured, List.of(story)).fields(story);
        all.put("stages", new StageTable(measured, story).list());
        all.put("called", new Timeline(measured, story).alarms());
        out.println(Json.write(all));
    }
}

package org.conetender.app.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.conetender.app.plot.BatchPicture;
import org.conetender.app.plot.Hatch;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.face.Json;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Known;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.ThermometerLog;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** One batch: what happened to it, how warm it was in each stage, and how far its cysts came. */
public record BatchPage(Measured measured, Story story) {

    private static final int INDENT = 22;

    private Past past() {
        return measured.past();
    }

    public void print(PrintWriter out) {
        title().forEach(out::println);
        out.println("times in " + past().ruler().zone());
        Hours hours = new Hours(past().ruler());
        for (Fact f : happened()) {
            List<String> lines = Lines.wrapped(INDENT, words(f));
            out.println(Text.of("%-20s  ", hours.full(f.at())) + lines.getFirst().strip());
            lines.subList(1, lines.size()).forEach(out::println);
        }
        out.println();
        out.println("stage          hours   least °C    mean    most");
        for (BatchPicture.Stretch s : stages()) {
            out.println(Text.of("%-12s %7.1f %10s", s.word(), Units.hours(s.toMs() - s.fromMs()),
                    water(s).map(w -> Text.of("%.1f %7.1f %7.1f", w[0], w[1], w[2])).orElse("-"))
                    .stripTrailing());
        }
        measured.log(story).map(l -> lines(replay(l))).orElse(List.of("no temperatures of it are on record"))
                .forEach(l -> Lines.wrapped(0, l).forEach(out::println));
        story.weight().ifPresent(y -> out.println(Text.of("yield: %.1f g wet, %.1f g of each gram of cysts",
                y.wetG(), y.perGram())));
    }

    /** What happened, and how it ended. */
    private List<String> title() {
        return Lines.wrapped(0, "batch " + story.name() + story.stock().map(k -> Text.of(
                ", lot %s, %.1f g", k.lot(), k.cystsG())).orElse("") + story.batch().fill().map(f -> Text.of(
                " in %.1f L at %.0f g/kg", f.litres(), f.ppt())).orElse("") + "; " + story.ended());
    }

    /** Its own facts, and what was called and acknowledged meanwhile. */
    private List<Fact> happened() {
        long first = story.facts().getFirst().seq();
        long next = past().stories().stream().filter(s -> s.cone().equals(story.cone())
                && s.batch().number() == story.batch().number() + 1)
                .map(s -> s.facts().getFirst().seq()).findFirst().orElse(Long.MAX_VALUE);
        List<Long> own = story.facts().stream().map(Fact::seq).collect(Collectors.toList());
        return past().facts().stream().filter(f -> f.seq() >= first && f.seq() < next)
                .filter(f -> own.contains(f.seq()) || (f.cone().equals(story.cone()) || f.cone().isEmpty())
                        && called(f.change())).toList();
    }

    private static boolean called(Change c) {
        return switch (c) {
            case Change.Tripped _, Change.Released _, Change.AlarmRaised _, Change.Told(Ask.Acknowledge _),
                 Change.Told(Ask.Shelve _) -> true;
            default -> false;
        };
    }

    private static String words(Fact f) {
        return switch (f.change()) {
            case Change.Told(Ask.DidFill d) -> Text.of("filled: %.1f L at %.0f g/kg", d.litres(), d.ppt());
            case Change.Told(Ask.DidStock d) -> Text.of("stocked: %.1f g of lot %s", d.cystsG(), d.lot());
            case Change.Told(Ask.DidCount d) -> Text.of("counted in %.2f mL: %d nauplii, %d under their "
                    + "shells, %d unhatched", d.sampleMl(), d.nauplii(), d.umbrella(), d.unhatched());
            case Change.Told(Ask.DidWeigh w) -> Text.of("weighed: %.1f g wet", w.wetG());
            case Change.Told(Ask.SetSetpoint s) -> Text.of("set-point %.1f °C", s.degreesC());
            case Change.Told(Ask.ReadyBy r) -> r.hour().map(h -> "wanted by " + h.text())
                    .orElse("no longer wanted at an hour");
            case Change.Told(Ask.Acknowledge a) -> "acknowledged: " + a.alarm();
            case Change.Told(Ask.Shelve s) -> Text.of("shelved for %.1f h: %s", s.hours(), s.alarm());
            case Change.Told(Ask ask) -> ask.word();
            case Change.Drawn(long _, Lesson.At at) -> Text.of("- drawn after %.0f °C·h, %.1f h from their "
                    + "wetting", at.degreeHours(), at.hours());
            case Change.Moved(String stage, String why) -> "- " + stage + ": " + why;
            case Change.Doubted(String why) -> "IN DOUBT: " + why;
            case Change.Undoubted(String why) -> "no longer in doubt: " + why;
            case Change.Tripped(String guard, String why) -> "ALARM " + guard + ": " + why;
            case Change.Released(String guard, String why) -> "released " + guard + ": " + why;
            case Change.AlarmRaised(String alarm, String what) -> "ALARM " + alarm + ": " + what;
            default -> f.change().getClass().getSimpleName();
        };
    }

    /** Until it was emptied. */
    private List<BatchPicture.Stretch> stages() {
        List<BatchPicture.Stretch> out = new ArrayList<>();
        List<Story.Entered> all = story.stages();
        for (int i = 0; i < all.size(); i++) {
            long from = past().ruler().lineMs(all.get(i).at());
            Optional<Long> to = i + 1 < all.size() ? Optional.of(past().ruler().lineMs(all.get(i + 1).at()))
                    : all.get(i).stage().equals("clean") ? Optional.empty()
                    : measured.lastMs(story).filter(l -> l > from);
            to.ifPresent(t -> out.add(new BatchPicture.Stretch(all.get(out.size()).stage(), from, t)));
        }
        return out;
    }

    /** Least, mean over time, most, °C. */
    private Optional<double[]> water(BatchPicture.Stretch s) {
        return measured.between(story, s.fromMs(), s.toMs()).map(l -> {
            double least = l.waterC(0);
            double most = least;
            double sum = 0;
            for (int i = 1; i < l.size(); i++) {
                least = Math.min(least, l.waterC(i));
                most = Math.max(most, l.waterC(i));
                sum += (l.waterC(i) + l.waterC(i - 1)) / 2 * (l.timeMs(i) - l.timeMs(i - 1));
            }
            return new double[] {least, sum / (l.lastMs() - l.firstMs()), most};
        });
    }

    private Replay replay(ThermometerLog log) {
        return log.replay(measured.question(story, Known.NONE.begun(past().book().lots(), story.cone(),
                story.batch()).speed()));
    }

    /** What its cysts did. */
    private List<String> lines(Replay r) {
        boolean exact = measured.exact(story);
        Forecast.Hatched h = r.outlook().hatched(r.outlook().course().now());
        String done = exact ? Text.of("%.0f °C·h (%.0f to %.0f)", r.development().degreeHours(),
                r.development().leastDegreeHours(), r.development().mostDegreeHours())
                : Text.of("at least %.0f °C·h: the clock was not set over a cut", r.development()
                .leastDegreeHours());
        return List.of(done + (story.harvest().isPresent() ? " until the harvest" : " so far"),
                Text.of("hatched: about %.0f %% (8 in 10 such batches: %.0f to %.0f %%)",
                        100 * h.median(), 100 * h.low(), 100 * h.high()));
    }

    /** Empty where nothing was measured. */
    public Optional<BatchPicture> picture() {
        return measured.log(story).map(log -> {
            Replay replay = replay(log);
            Hatch hatch = new Hatch(log, replay, past().ruler().zone());
            List<String> under = new ArrayList<>();
            under.add(story.stock().map(Batch.Stock::lot).map(l -> "lot " + l + ", ").orElse("")
                    + story.ended());
            under.addAll(lines(replay));
            return new BatchPicture(hatch, "Batch " + story.name(), under, stages(), marks(), told());
        });
    }

    private List<BatchPicture.Mark> marks() {
        List<BatchPicture.Mark> out = new ArrayList<>();
        for (Fact f : happened()) {
            long at = past().ruler().lineMs(f.at());
            switch (f.change()) {
                case Change.Tripped(String guard, String _) -> out.add(new BatchPicture.Mark(at, guard));
                case Change.AlarmRaised(String alarm, String _) -> out.add(new BatchPicture.Mark(at, alarm));
                case Change.Doubted _ -> out.add(new BatchPicture.Mark(at, "in doubt"));
                default -> { }
            }
        }
        return out;
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
        out.println(Json.write(new BatchTable(measured, List.of(story)).fields(story)));
    }
}

package org.conetender.app.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.conetender.app.plot.BatchPicture;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.face.Outage;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** What happened to a batch, in its order: steps, doubts, and what was called meanwhile. */
record Timeline(Measured measured, Story story) {

    private static final int INDENT = 22;

    private record Line(Moment at, String words) {}

    private Ruler ruler() {
        return measured.past().ruler();
    }

    void print(PrintWriter out) {
        Hours hours = new Hours(ruler());
        List<Line> all = new ArrayList<>();
        facts().forEach(f -> all.add(new Line(f.at(), words(f))));
        outages(all);
        measured.called(story).forEach(c -> all.add(new Line(c.rise().at(), "ALARM " + c.rise().alarm() + ": "
                + c.rise().what() + "; " + c.stood(ruler()))));
        all.sort(Comparator.comparingLong(l -> ruler().lineMs(l.at())));
        for (Line l : all) {
            List<String> lines = Lines.wrapped(INDENT, l.words());
            out.println(Text.of("%-20s  ", hours.full(l.at())) + lines.getFirst().strip());
            lines.subList(1, lines.size()).forEach(out::println);
        }
    }

    /** Starts after which it was known that nobody had minded it for a while. */
    private void outages(List<Line> all) {
        List<Fact> own = story.facts();
        for (Fact f : measured.past().facts()) {
            boolean meanwhile = f.seq() > own.getFirst().seq()
                    && (story.over().isEmpty() || f.seq() < own.getLast().seq());
            if (meanwhile && f.change() instanceof Change.Began(Optional<Moment> last) && last.isPresent()) {
                Outage.words(measured.past().book().since(last.get(), f.at()))
                        .ifPresent(w -> all.add(new Line(f.at(), "- " + w)));
            }
        }
    }

    /** Its own facts, and what locked or was acknowledged meanwhile, but what an alarm tells better. */
    private List<Fact> facts() {
        long first = story.facts().getFirst().seq();
        long next = measured.past().next(story).map(s -> s.facts().getFirst().seq()).orElse(Long.MAX_VALUE);
        List<Long> own = story.facts().stream().map(Fact::seq).collect(Collectors.toList());
        List<Called> called = measured.called(story);
        List<Fact> all = measured.past().facts().stream().filter(f -> f.seq() >= first && f.seq() < next)
                .filter(f -> own.contains(f.seq()) || (f.cone().equals(story.cone()) || f.cone().isEmpty())
                        && calls(f.change())).toList();
        return all.stream().filter(f -> called.stream().noneMatch(c -> c.is(f)))
                .filter(f -> !again(f, all, called)).toList();
    }

    /** Whether that only acknowledges once more what was acknowledged since it was raised last. */
    private boolean again(Fact f, List<Fact> all, List<Called> called) {
        if (!(f.change() instanceof Change.Told(Ask.Acknowledge a))) {
            return false;
        }
        long at = ruler().lineMs(f.at());
        Optional<Fact> before = all.stream().filter(o -> o.seq() < f.seq() && o.cone().equals(f.cone())
                && o.change() instanceof Change.Told(Ask.Acknowledge b) && b.alarm().equals(a.alarm()))
                .reduce((x, y) -> y);
        return before.isPresent() && called.stream().noneMatch(c -> c.rise().alarm().equals(a.alarm())
                && ruler().lineMs(c.rise().at()) > ruler().lineMs(before.get().at())
                && ruler().lineMs(c.rise().at()) <= at) && all.stream().noneMatch(o ->
                o.seq() > before.get().seq() && o.seq() < f.seq() && raises(o.change(), a.alarm()));
    }

    private static boolean raises(Change c, String alarm) {
        return switch (c) {
            case Change.Tripped(String guard, String _) -> guard.equals(alarm);
            case Change.AlarmRaised(String id, String _) -> id.equals(alarm);
            default -> false;
        };
    }

    private static boolean calls(Change c) {
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

    /** Alarms with the time in which they stood, and doubts, in their order. */
    List<BatchPicture.Mark> marks() {
        List<BatchPicture.Mark> out = new ArrayList<>();
        for (Fact f : facts()) {
            switch (f.change()) {
                case Change.Tripped(String guard, String _) -> out.add(mark(f.at(), f.at(), guard));
                case Change.AlarmRaised(String alarm, String _) -> out.add(mark(f.at(), f.at(), alarm));
                case Change.Doubted _ -> out.add(mark(f.at(), f.at(), "in doubt"));
                default -> { }
            }
        }
        for (Called c : measured.called(story)) {
            Moment at = c.rise().at();
            BatchPicture.Mark m = mark(at, c.over().orElse(at), c.rise().alarm());
            out.add(c.over().isPresent() || c.lost().isPresent() ? m
                    : new BatchPicture.Mark(m.atMs(), Long.MAX_VALUE, m.word()));
        }
        out.sort(Comparator.comparingLong(BatchPicture.Mark::atMs));
        return out;
    }

    private BatchPicture.Mark mark(Moment at, Moment to, String word) {
        return new BatchPicture.Mark(ruler().lineMs(at), ruler().lineMs(to), word);
    }

    /** Alarms for programs; what is not known is left out. */
    List<Map<String, Object>> alarms() {
        Hours hours = new Hours(ruler());
        List<Map<String, Object>> out = new ArrayList<>();
        for (Called c : measured.called(story)) {
            Map<String, Object> m = new LinkedHashMap<>();
            m.put("cone", c.rise().cone());
            m.put("alarm", c.rise().alarm());
            m.put("what", c.rise().what());
            hours.iso(Optional.of(c.rise().at())).ifPresent(t -> m.put("raised", t));
            hours.iso(c.seen()).ifPresent(t -> m.put("acknowledged", t));
            hours.iso(c.over()).ifPresent(t -> m.put("ended", t));
            c.over().ifPresent(o -> m.put("stood_minutes", BatchTable.tenths(Units.minutes(
                    ruler().lineMs(o) - ruler().lineMs(c.rise().at())))));
            m.put("stands", c.over().isEmpty() && c.lost().isEmpty());
            out.add(m);
        }
        return out;
    }
}

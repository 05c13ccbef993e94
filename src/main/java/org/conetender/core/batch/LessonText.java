package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Lesson.Sight;

/** The written form of what a report teaches, or a harvest would; part of {@link FactText}. */
final class LessonText {

    private LessonText() {}

    static List<String> fields(Change.Taught t) {
        List<String> out = new ArrayList<>(List.of(t.lot(), "" + t.batch()));
        out.addAll(at(t.lesson().at()));
        out.addAll(switch (t.lesson().sight()) {
            case Sight.NoneYet _ -> List.of("none");
            case Sight.First _ -> List.of("first");
            case Sight.Counted c -> List.of("count", "" + c.nauplii(), "" + c.umbrella(), "" + c.unhatched());
            case Sight.Judged j -> List.of("judged", j.word().name());
        });
        return out;
    }

    static List<String> fields(Change.Drawn d) {
        List<String> out = new ArrayList<>(List.of("" + d.batch()));
        out.addAll(at(d.at()));
        return out;
    }

    private static List<String> at(Lesson.At at) {
        return List.of("" + at.leastDegreeHours(), "" + at.mostDegreeHours(), "" + at.hours());
    }

    private static Lesson.At at(List<String> f, int from) {
        return new Lesson.At(FactText.figure(f, from), FactText.figure(f, from + 1),
                FactText.figure(f, from + 2));
    }

    /** @throws IllegalArgumentException for what {@link #fields} never wrote */
    static Change.Drawn drawn(List<String> f, int from) {
        return new Change.Drawn(Long.parseLong(FactText.at(f, from)), at(f, from + 1));
    }

    /** @throws IllegalArgumentException for what {@link #fields} never wrote */
    static Change.Taught taught(List<String> f, int from) {
        int more = from + 6;
        Sight sight = switch (FactText.at(f, from + 5)) {
            case "none" -> new Sight.NoneYet();
            case "first" -> new Sight.First();
            case "count" -> new Sight.Counted(whole(f, more), whole(f, more + 1), whole(f, more + 2));
            case "judged" -> new Sight.Judged(Lesson.Word.valueOf(FactText.at(f, more)));
            default -> throw new IllegalArgumentException("unknown kind of lesson: " + f.get(from + 5));
        };
        return new Change.Taught(FactText.at(f, from), Long.parseLong(FactText.at(f, from + 1)),
                new Lesson(at(f, from + 2), sight));
    }

    private static int whole(List<String> f, int i) {
        return Integer.parseInt(FactText.at(f, i));
    }
}

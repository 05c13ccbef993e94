package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Lesson.Sight;

/** The written form of what a report teaches; part of {@link FactText}. */
final class LessonText {

    private LessonText() {}

    static List<String> fields(Change.Taught t) {
        Lesson.At at = t.lesson().at();
        List<String> out = new ArrayList<>(List.of(t.lot(), "" + t.batch(), "" + at.leastDegreeHours(),
                "" + at.mostDegreeHours(), "" + at.hours()));
        out.addAll(switch (t.lesson().sight()) {
            case Sight.NoneYet _ -> List.of("none");
            case Sight.First _ -> List.of("first");
            case Sight.Counted c -> List.of("count", "" + c.nauplii(), "" + c.umbrella(), "" + c.unhatched());
            case Sight.Judged j -> List.of("judged", j.word().name());
        });
        return out;
    }

    /** @throws IllegalArgumentException for what {@link #fields} never wrote */
    static Change.Taught taught(List<String> f, int from) {
        Lesson.At at = new Lesson.At(FactText.figure(f, from + 2), FactText.figure(f, from + 3),
                FactText.figure(f, from + 4));
        int more = from + 6;
        Sight sight = switch (FactText.at(f, from + 5)) {
            case "none" -> new Sight.NoneYet();
            case "first" -> new Sight.First();
            case "count" -> new Sight.Counted(whole(f, more), whole(f, more + 1), whole(f, more + 2));
            case "judged" -> new Sight.Judged(Lesson.Word.valueOf(FactText.at(f, more)));
            default -> throw new IllegalArgumentException("unknown kind of lesson: " + f.get(from + 5));
        };
        return new Change.Taught(FactText.at(f, from), Long.parseLong(FactText.at(f, from + 1)),
                new Lesson(at, sight));
    }

    private static int whole(List<String> f, int i) {
        return Integer.parseInt(FactText.at(f, i));
    }
}

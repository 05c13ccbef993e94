package org.conetender.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.ThermometerLog;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Units;
import picocli.CommandLine.Option;

/** What people saw of this batch, as options. */
final class ForecastReports {

    /** A count, such as {@code 2026-03-02 07:30=120/14/20}. */
    private static final Pattern COUNT = Pattern.compile("(.*)=(\\d{1,6})/(\\d{1,6})/(\\d{1,6})");

    private static final Map<String, Lesson.Word> WORDS = new TreeMap<>(Map.of(
            Step.TOO_EARLY.word(), Lesson.Word.TOO_EARLY, Step.RIGHT.word(), Lesson.Word.RIGHT,
            Step.LATE.word(), Lesson.Word.LATE));

    /** A verdict, such as {@code 2026-03-02 21:30=right}. */
    private static final Pattern VERDICT = Pattern.compile("(.*)=(" + String.join("|", WORDS.keySet()) + ")");

    @Option(names = "--first-seen", paramLabel = "TIME",
            description = "when the first nauplii of this batch were seen to swim")
    private String firstSeen;

    @Option(names = "--none-yet", paramLabel = "TIME",
            description = "somebody looked, and nothing swam yet; more than once where it was so")
    private List<String> noneYet = List.of();

    @Option(names = "--count", paramLabel = "TIME=N/U/E",
            description = "counted in a sub-sample: nauplii, umbrella stages and unhatched full cysts")
    private List<String> counts = List.of();

    @Option(names = "--verdict", paramLabel = "TIME=WORD",
            description = "how the hour of its harvest was: too-early, right or late, judged by what was "
                + "drawn then")
    private String verdict;

    boolean isEmpty() {
        return firstSeen == null && noneYet.isEmpty() && counts.isEmpty() && verdict == null;
    }

    /**
     * As lessons of this batch.
     *
     * @param times reads them as the log's  @param log of this batch
     * @param course what the cysts did under it
     * @throws BadLog with a sentence, if one of them cannot be
     */
    List<Lesson> lessons(LogTimes times, ThermometerLog log, Replay course) throws BadLog {
        Looks looks = new Looks(times, log, course);
        List<Lesson> lessons = new ArrayList<>();
        for (String t : noneYet) {
            lessons.add(new Lesson(looks.at("--none-yet", t), new Lesson.Sight.NoneYet()));
        }
        if (firstSeen != null) {
            lessons.add(new Lesson(looks.at("--first-seen", firstSeen), new Lesson.Sight.First()));
        }
        Optional<Lesson> vain = lessons.stream().filter(l -> l.sight() instanceof Lesson.Sight.NoneYet)
                .filter(l -> lessons.stream().anyMatch(f -> f.sight() instanceof Lesson.Sight.First
                        && f.at().hours() <= l.at().hours())).findFirst();
        if (vain.isPresent()) {
            throw new BadLog("--none-yet lies after --first-seen: one of the two is a slip, or they are of "
                    + "two batches; leave that one out");
        }
        for (String c : counts) {
            Matcher m = COUNT.matcher(c);
            if (!m.matches()) {
                throw new BadLog("--count " + c + " is no count; write it like "
                        + "2026-03-02T07:30+01:00=120/14/20: nauplii, umbrella stages, unhatched");
            }
            lessons.add(new Lesson(looks.at("--count", m.group(1)), new Lesson.Sight.Counted(number(m, 2),
                    number(m, 3), number(m, 4))));
        }
        if (verdict != null) {
            lessons.add(verdict(looks));
        }
        return lessons;
    }

    /** In the words in which a harvest is reported to the daemon. */
    private Lesson verdict(Looks looks) throws BadLog {
        Matcher m = VERDICT.matcher(verdict);
        if (!m.matches()) {
            throw new BadLog("--verdict " + verdict + " is none; write it like 2026-03-02T21:30+01:00=right; "
                    + "the words are " + String.join(", ", WORDS.keySet()));
        }
        return new Lesson(looks.at("--verdict", m.group(1)), new Lesson.Sight.Judged(WORDS.get(m.group(2))));
    }

    private static int number(Matcher m, int group) {
        return Integer.parseInt(m.group(group));
    }

    /** Finds out how far the cysts were when somebody looked. */
    private record Looks(LogTimes times, ThermometerLog log, Replay replay) {

        Lesson.At at(String option, String text) throws BadLog {
            long ms;
            try {
                ms = times.read(text, Long.MIN_VALUE).ms();
            } catch (BadLog e) {
                throw new BadLog(option + " " + e.getMessage());
            }
            double hours = Units.hours(ms - log.lastMs());
            double sinceStocked = hours - replay.outlook().course().hours(0);
            Development done = replay.outlook().course().doneAt(hours);
            if (hours > 0 || sinceStocked <= 0 || done.leastDegreeHours() <= 0) {
                throw new BadLog(option + " " + text + (hours > 0
                        ? " is after the last reading; a look counts only where the water is known"
                        : " is before the cysts can have begun; check the time, its zone and --stocked"));
            }
            return new Lesson.At(done.leastDegreeHours(), done.mostDegreeHours(), sinceStocked);
        }
    }
}

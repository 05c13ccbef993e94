package org.conetender.core;

import java.util.Optional;
import java.util.stream.Stream;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Stage;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Growth;
import org.conetender.core.hatch.Known;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Lesson.Sight;
import org.conetender.core.hatch.Plausible;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/** What a report teaches of the lot, fixed when it is made: later nobody knows how far the cysts were. */
final class Teaching {

    /** Less than this is no development that anybody can have looked at, °C·h (guess). */
    private static final double LEAST_DEGREE_HOURS = 1;

    /** Nor is less than a tick of their course, h. */
    private static final double LEAST_HOURS = Units.hours(Units.SECOND_MS);

    /** Where the last reading is older, the cysts may be further than is known, ms (control.md §3.3). */
    private static final long READ_MS = Units.MINUTE_MS;

    private Teaching() {}

    /**
     * What is known of the cysts in that cone, with all lots that it takes learnt in this tick: somebody
     * waits for the answer.
     */
    static Known known(Work work, Cone cone) {
        Known k = work.known(cone.id()).begun(work.ledger.book().lots(), cone.id(), work.batch(cone.id()));
        work.known.put(cone.id(), k);
        return k;
    }

    /**
     * What that report says of the cone's lot; empty where it says nothing, or their course is not known, and
     * of first nauplii that hardly can be.
     */
    static Optional<Change.Taught> of(Work work, Cone cone, Ask ask) {
        Optional<Sight> sight = sight(ask);
        Batch b = work.batch(cone.id());
        boolean slip = sight.filter(Sight.First.class::isInstance).isPresent()
                && tooEarly(work, cone, ask).isPresent();
        if (sight.isEmpty() || b.stock().isEmpty() || slip) {
            return Optional.empty();
        }
        Optional<Lesson.At> at = sight.get() instanceof Sight.Judged
                ? harvest(work.ledger.book().cone(cone.id())).or(() -> now(work, cone)) : now(work, cone);
        return at.map(a -> new Change.Taught(b.stock().get().lot(), b.number(), new Lesson(a, sight.get())));
    }

    /** How far the cysts are, where that report tells of more nauplii than can swim by then. */
    static Optional<Lesson.At> tooEarly(Work work, Cone cone, Ask ask) {
        Growth growth = work.live(cone.id()).growth();
        boolean measured = work.since(growth.lastAt()).mostMs() <= READ_MS;
        return sight(ask).filter(_ -> measured).flatMap(s -> reached(work, cone).filter(at -> Plausible.of(
                work.live(cone.id()).known().at(growth.lastC()), at).tooEarly(s)));
    }

    /**
     * How far the cysts are that this report says are drawn: a verdict on their harvest may come hours and
     * restarts later.
     */
    static Optional<Change.Drawn> drawn(Work work, Cone cone, Ask ask) {
        Batch b = work.batch(cone.id());
        // What is left after a part was drawn, and thrown away without 'drawing', is no harvest.
        boolean untold = !(b.stage() instanceof Stage.Drawing) && b.marks().harvests() == 0;
        boolean drawn = ask instanceof Ask.Did(Step s) && (s == Step.DRAWING
                || untold && (s == Step.DRAINED || s == Step.CLEANED));
        return drawn && b.stage().develops() ? now(work, cone).map(at -> new Change.Drawn(b.number(), at))
                : Optional.empty();
    }

    /** At the last harvest of the present batch; empty where the record does not tell. */
    private static Optional<Lesson.At> harvest(ConeBook book) {
        return book.facts().stream().flatMap(f -> f.change() instanceof Change.Drawn(long batch, Lesson.At at)
                && batch == book.batch().number() ? Stream.of(at) : Stream.empty()).reduce((a, b) -> b);
    }

    /** As far as is known now; empty while that is too little to look at. */
    private static Optional<Lesson.At> now(Work work, Cone cone) {
        return reached(work, cone).filter(at -> at.mostDegreeHours() >= LEAST_DEGREE_HOURS
                && at.hours() > LEAST_HOURS);
    }

    /** As far as is known now, be it ever so little. */
    private static Optional<Lesson.At> reached(Work work, Cone cone) {
        Batch b = work.batch(cone.id());
        Growth growth = work.live(cone.id()).growth();
        if (b.stock().isEmpty() || !growth.stock().equals(b.stock())) {
            return Optional.empty();
        }
        Development done = growth.done();
        // After a harvest the hours stand still with the degree-hours.
        Span lasted = work.ledger.book().boots().between(b.stock().get().at(), growth.lastAt());
        double hours = Units.hours(lasted.bounded() ? (lasted.leastMs() + lasted.mostMs()) / 2
                : lasted.leastMs());
        double least = Math.max(LEAST_DEGREE_HOURS / 2, done.leastDegreeHours());
        return Optional.of(new Lesson.At(least, Math.max(least, done.mostDegreeHours()),
                Math.max(LEAST_HOURS, hours)));
    }

    /** Whether that reports a look at the cysts or what was drawn of them. */
    static boolean looks(Ask ask) {
        return sight(ask).isPresent();
    }

    /** Whether that step judges a harvest. */
    static boolean verdict(Step s) {
        return sight(new Ask.Did(s)).filter(Sight.Judged.class::isInstance).isPresent();
    }

    private static Optional<Sight> sight(Ask ask) {
        return Optional.ofNullable(switch (ask) {
            case Ask.Did(Step s) -> switch (s) {
                case NONE_SEEN -> new Sight.NoneYet();
                case FIRST_SEEN -> new Sight.First();
                case TOO_EARLY -> new Sight.Judged(Lesson.Word.TOO_EARLY);
                case RIGHT -> new Sight.Judged(Lesson.Word.RIGHT);
                case LATE -> new Sight.Judged(Lesson.Word.LATE);
                case STARTED, FILLED, SALTED, STOCKED, VALVE_SHUT, VALVE_OPEN, SETTLE, DRAWING, PART_DRAWN,
                     DRAINED, RINSED, CLEANED, DISINFECTED, TOPPED_UP, HANDS_IN, ABANDONED,
                     RELAY_EXCHANGED -> null;
            };
            case Ask.DidCount c -> new Sight.Counted(c.nauplii(), c.umbrella(), c.unhatched());
            // A weight says nothing of an hour; beside a count it says what a lot gives (hatch.Efficiency).
            case Ask.DidWeigh _, Ask.TinHolds _, Ask.DidFill _, Ask.DidStock _, Ask.DidStockAsUsual _,
                 Ask.SetUsual _,
                 Ask.SetSetpoint _, Ask.ReadyBy _, Ask.Withdraw _, Ask.Acknowledge _, Ask.Shelve _,
                 Ask.Alarms _, Ask.Away _ -> null;
        });
    }
}

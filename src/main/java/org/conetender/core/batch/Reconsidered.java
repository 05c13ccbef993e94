package org.conetender.core.batch;

import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;

/**
 * A stage that was reached only because of degree-hours assumed for a time of unknown length. When the
 * true course is known and falls short of it, the batch steps back: one stage at a time, and never past
 * anything a person has reported.
 */
public final class Reconsidered {

    /** Words of moves that go back; they stand in the record, so they stay. */
    public static final String INCUBATING = "incubating-again";
    public static final String HATCHING = "hatching-again";

    static final String HARVEST_POINT = "the harvest point is reached";

    private static final String WHY = "the true length of a time without measurements is known now";

    /** It must fall short by more than a checkpoint can be behind, °C·h (a minute gives 0.3; guess). */
    private static final double MARGIN = 1;

    private Reconsidered() {}

    /**
     * The step back that is due, if any.
     *
     * @param done the development, which must be as well known as it will ever be
     */
    public static Optional<Change.Moved> due(ConeBook book, Moves.Progress done) {
        double most = done.development().mostDegreeHours() + MARGIN;
        if (book.bridges().isEmpty() || !ourOwn(book)) {
            return Optional.empty();
        }
        Stage stage = book.batch().stage();
        return stage instanceof Stage.Hatching && most < done.k10()
                ? Optional.of(new Change.Moved(INCUBATING, WHY))
                : stage instanceof Stage.Ready && most < done.needed()
                ? Optional.of(new Change.Moved(HATCHING, WHY)) : Optional.empty();
    }

    /** When the batch was called ready by our own reckoning, as far as that stands. */
    public static Optional<Moment> ripeSince(ConeBook book) {
        Optional<Moment> since = Optional.empty();
        for (Fact f : book.facts()) {
            if (f.change() instanceof Change.Moved(String stage, String why)) {
                since = stage.equals(HATCHING) ? Optional.empty()
                        : why.equals(HARVEST_POINT) ? since.or(() -> Optional.of(f.at())) : since;
            }
        }
        return since;
    }

    /** Whether the stage was entered by our own reckoning and no person's report has touched it since. */
    private static boolean ourOwn(ConeBook book) {
        for (int i = book.facts().size() - 1; i >= 0; i--) {
            switch (book.facts().get(i).change()) {
                case Change.Moved(String stage, String why) -> {
                    return !stage.equals("ready") || why.equals(HARVEST_POINT);
                }
                case Change.Told(Ask.Did(Step step)) when step != Step.RELAY_EXCHANGED
                        && step != Step.NONE_SEEN -> {
                    return false;
                }
                case Change.Told _ -> { }
                case Change.Tripped _ -> { }
                case Change.Released _ -> { }
                case Change.Doubted _ -> { }
                case Change.Undoubted _ -> { }
                case Change.AlarmRaised _ -> { }
                case Change.AlarmOver _ -> { }
                case Change.Bridged _ -> { }
                case Change.Tried _ -> { }
                case Change.Learned _ -> { }
                case Change.Worn _ -> { }
                case Change.Taught _ -> { }
                case Change.Drawn _ -> { }
                case Change.ClockSet _ -> { }
                case Change.Began _ -> { }
                case Change.Left _ -> { }
                case Change.SetAside _ -> { }
                case Change.Described _ -> { }
            }
        }
        return false;
    }
}

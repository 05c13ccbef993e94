package org.conetender.core.batch;

import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;

/** What kind of report a request is: which take permission away, and which can be withdrawn. */
public final class Reports {

    private Reports() {}

    /**
     * Whether it takes permission away (heat, or air off), so that it counts at once and is done even
     * where the record fails (style.md, commit order). What such a report gives besides is withheld
     * until it is durable ({@link org.conetender.core.guard.Unwritten}).
     */
    public static boolean takesAway(Change change) {
        return switch (change) {
            case Change.Told t -> takesAway(t.ask());
            // Toward air, forward, or back where hours were only assumed; what heat that gives is withheld
            // until it is durable. A move into settling is a grant.
            case Change.Moved m -> !m.stage().equals("settling");
            case Change.Tripped _ -> true;
            case Change.Doubted _ -> true;
            case Change.AlarmRaised _ -> true;
            case Change.AlarmOver _ -> true;
            case Change.Began _ -> true;
            case Change.Left _ -> true;
            case Change.Bridged _ -> true;
            case Change.Tried _ -> true;
            case Change.Learned _ -> true;
            case Change.Worn _ -> true;
            case Change.Drawn _ -> true;
            case Change.ClockSet _ -> true;
            case Change.SetAside _ -> true;
            case Change.Described _ -> true;
            case Change.Released _ -> false;
            case Change.Undoubted _ -> false;
            case Change.Taught _ -> false;
        };
    }

    private static boolean takesAway(Ask ask) {
        return switch (ask) {
            case Ask.Did d -> switch (d.step()) {
                // No heat for water that may be gone, was touched, or stands still, nor through a switch that
                // is new; air for what needs it.
                case DRAINED, CLEANED, ABANDONED, VALVE_OPEN, VALVE_SHUT, HANDS_IN, TOPPED_UP,
                     PART_DRAWN, RELAY_EXCHANGED -> true;
                case STARTED, FILLED, SALTED, STOCKED, FIRST_SEEN, SETTLE, DRAWING, RINSED, DISINFECTED,
                     TOO_EARLY, RIGHT, LATE, NONE_SEEN -> false;
            };
            case Ask.Withdraw _ -> true;
            case Ask.DidFill _ -> false;
            case Ask.DidStock _ -> false;
            case Ask.DidStockAsUsual _ -> false;
            case Ask.DidCount _ -> false;
            case Ask.DidWeigh _ -> false;
            case Ask.TinHolds _ -> false;
            case Ask.SetUsual _ -> false;
            case Ask.SetSetpoint _ -> false;
            case Ask.ReadyBy _ -> false;
            case Ask.Acknowledge _ -> false;
            case Ask.Shelve _ -> false;
            case Ask.Alarms _ -> false;
            case Ask.Away _ -> false;
        };
    }

    /** Whether that fact is a person's report about the batch, which can be taken back. */
    public static boolean withdrawable(Fact f) {
        return f.change() instanceof Change.Told(Ask ask) && withdrawable(ask);
    }

    /** Whether that is a report about a batch, which can be taken back once it is recorded. */
    public static boolean withdrawable(Ask ask) {
        return switch (ask) {
            case Ask.Did d -> d.step() != Step.HANDS_IN;
            case Ask.DidFill _ -> true;
            case Ask.DidStock _ -> true;
            case Ask.DidStockAsUsual _ -> true;
            case Ask.DidCount _ -> true;
            case Ask.DidWeigh _ -> true;
            case Ask.SetSetpoint _ -> true;
            case Ask.ReadyBy _ -> true;
            case Ask.TinHolds _ -> false;
            case Ask.SetUsual _ -> false;
            case Ask.Withdraw _ -> false;
            case Ask.Acknowledge _ -> false;
            case Ask.Shelve _ -> false;
            case Ask.Alarms _ -> false;
            case Ask.Away _ -> false;
        };
    }

    /** Whether that fact is that the heater has another relay. */
    static boolean exchange(Fact f) {
        return f.change() instanceof Change.Told(Ask.Did(Step step)) && step == Step.RELAY_EXCHANGED;
    }

    /** Whether that step was reported of the present batch. */
    public static boolean told(ConeBook book, Step step) {
        return book.facts().stream()
                .anyMatch(f -> f.change() instanceof Change.Told(Ask.Did(Step s)) && s == step);
    }

    /** The word of the newest report of the present batch, also of one that cannot be withdrawn. */
    public static Optional<String> newest(ConeBook book) {
        return book.facts().stream().filter(f -> f.change() instanceof Change.Told)
                .reduce((a, b) -> b).map(f -> ((Change.Told) f.change()).ask().word());
    }
}

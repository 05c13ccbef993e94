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
            case Change.Tripped _, Change.Doubted _, Change.AlarmRaised _, Change.AlarmOver _,
                 Change.Began _, Change.Left _, Change.Bridged _, Change.Tried _, Change.Learned _,
                 Change.Worn _, Change.Drawn _, Change.ClockSet _,
                 Change.SetAside _, Change.Described _ -> true;
            case Change.Released _, Change.Undoubted _, Change.Taught _ -> false;
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
            case Ask.DidFill _, Ask.DidStock _, Ask.DidCount _, Ask.DidWeigh _, Ask.TinHolds _,
                 Ask.SetUsual _, Ask.SetSetpoint _, Ask.ReadyBy _, Ask.Acknowledge _, Ask.Shelve _,
                 Ask.Alarms _, Ask.Away _ -> false;
        };
    }

    /** Whether that fact is a person's report about the batch, which can be taken back. */
    public static boolean withdrawable(Fact f) {
        return f.change() instanceof Change.Told(Ask ask) && switch (ask) {
            case Ask.Did d -> d.step() != Step.HANDS_IN;
            case Ask.DidFill _, Ask.DidStock _, Ask.DidCount _, Ask.DidWeigh _, Ask.SetSetpoint _,
                 Ask.ReadyBy _ -> true;
            case Ask.TinHolds _, Ask.SetUsual _, Ask.Withdraw _, Ask.Acknowledge _, Ask.Shelve _,
                 Ask.Alarms _, Ask.Away _ -> false;
        };
    }

    /** Whether that fact is that the heater has another relay. */
    static boolean exchange(Fact f) {
        return f.change() instanceof Change.Told(Ask.Did(Step step)) && step == Step.RELAY_EXCHANGED;
    }

    /** The word of the newest report of the present batch, also of one that cannot be withdrawn. */
    public static Optional<String> newest(ConeBook book) {
        return book.facts().stream().filter(f -> f.change() instanceof Change.Told)
                .reduce((a, b) -> b).map(f -> ((Change.Told) f.change()).ask().word());
    }
}

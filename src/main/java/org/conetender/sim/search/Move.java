package org.conetender.sim.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;

/** What may happen next. */
public sealed interface Move {

    /** A person says something. */
    record Says(Ask ask) implements Move {}

    /** A person says everything at once that does not fit where the batch stands. */
    record Misfits() implements Move {}

    /** A fault begins or ends. */
    record Turns(Trouble trouble, boolean wrong) implements Move {}

    /** Time passes. @param second one second; else until something changes */
    record Waits(boolean second) implements Move {}

    /**
     * The process dies and another begins.
     *
     * @param cut whether the power was off, for longer than any animals bear
     * @param arrived whether what was on its way still reached the disk
     */
    record Dies(boolean cut, boolean arrived) implements Move {}

    /** What may be wrong. */
    enum Trouble {
        PROBE_GONE, PROBE_LATE, PROBE_FROZEN, HOT_ROOM, KILLING_ROOM, COLD_WATER, LEVEL_LIES, NO_AIR,
        HEAT_UNSET, AIR_UNSET, RECORD_SILENT, RECORD_REFUSES,
        /** The process ends, and the newer half of its record is lost. */
        RECORD_DAMAGED, CLOCK_LOST;

        String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /** All there are; their place in the list is how a course of events is remembered. */
    List<Move> ALL = all();

    /** A batch in which nothing goes wrong, each word recorded before the next. */
    List<Move> CALM = calm();

    private static List<Move> calm() {
        List<Move> out = new ArrayList<>();
        for (Step s : List.of(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT, Step.SETTLE)) {
            out.addAll(List.of(new Says(new Ask.Did(s)), new Waits(true)));
        }
        out.addAll(List.of(new Waits(false), new Waits(true)));
        for (Step s : List.of(Step.DRAWING, Step.DRAINED, Step.CLEANED)) {
            out.addAll(List.of(new Says(new Ask.Did(s)), new Waits(true)));
        }
        return List.copyOf(out);
    }

    private static List<Move> all() {
        List<Move> all = new ArrayList<>(List.of(new Waits(true), new Waits(false), new Misfits()));
        for (Step s : Step.values()) {
            all.add(new Says(new Ask.Did(s)));
        }
        all.add(new Says(new Ask.Withdraw("last")));
        for (AlarmKind k : AlarmKind.values()) {
            all.add(new Says(new Ask.Acknowledge(k.id())));
        }
        for (Trouble t : Trouble.values()) {
            all.add(new Turns(t, true));
            all.add(new Turns(t, false));
        }
        all.addAll(List.of(new Dies(false, false), new Dies(false, true), new Dies(true, false)));
        return List.copyOf(all);
    }

    /** For the reader of a course of events. */
    default String words() {
        return switch (this) {
            case Says(Ask.Acknowledge(String id)) -> "acknowledge '" + id + "'";
            case Says(Ask ask) -> "say '" + ask.word() + "'";
            case Misfits _ -> "say all that does not fit";
            case Turns(Trouble t, boolean wrong) -> (wrong ? "begins: " : "ends: ")
                    + t.word();
            case Waits(boolean second) -> second ? "a second passes" : "time passes until something changes";
            case Dies(boolean cut, boolean arrived) -> cut ? "the power is cut for a quarter of an hour"
                    : "the process is killed" + (arrived ? "; what was on its way still arrived" : "");
        };
    }
}

package org.conetender.core.alarm;

import java.util.Locale;
import org.conetender.core.unit.Units;

/**
 * Every alarm: how urgent, how long its cause must last before anybody is called, and what the
 * person does. Whatever asks nothing of a person is not here. Delays are guesses unless said.
 */
public enum AlarmKind {
    OVERHEAT(Priority.NOW, 0,
            "Heat is locked off. Unplug the heater, let the water cool, find the cause, then "
            + "acknowledge."),
    ROOM_TOO_WARM(Priority.SOON, 60, "The heater is off already; cool the room or the cone."),
    ARREST(Priority.NOW, 0, "Cool the cone now, gently."),
    COOKED(Priority.NOW, 0, "Look before feeding: this batch may be lost."),
    WELDED(Priority.NOW, 0,
            "Unplug the heater now: its switch does not open. Mend it before you acknowledge."),
    WRONG_CONE(Priority.NOW, 0,
            "Heat is locked off in both cones. Unplug both heaters now. See whether their plugs, switches or "
            + "probes are exchanged, a heater hangs in the wrong cone, or two outputs touch. Put it right, "
            + "then acknowledge."),
    SWITCH_STUCK(Priority.NOW, 0,
            "Heat is locked off. Unplug the heater now: one of its two switches does not open, and only the "
            + "other one holds it. Exchange it, then acknowledge; both are tried again."),
    HEATER_STUCK(Priority.NOW, 0,
            "Unplug the heater now: its output does not obey, so it may stay on. Find out why before "
            + "you plug it in again."),
    OUTPUT_STUCK(Priority.NOW, 0,
            "See that the air runs and that the lamps are as they should be. Then look at the board, its "
            + "wires and the daemon's log."),
    NO_EFFECT(Priority.SOON, 0,
            "Heat is locked off. See that heater and probe are under water in their own cone, the heater is "
            + "whole and its plug is its own, then acknowledge."),
    PROBE(Priority.SOON, 60,
            "Heat is off meanwhile. See that the probe is in the water and its plug is dry and firm."),
    PROBE_UNSTEADY(Priority.SOON, 0, "Heat is locked off. Fix the probe in its place, then acknowledge."),
    PROBE_FROZEN(Priority.SOON, 0,
            "Heat is locked off. Hold another thermometer into the water. Pull the probe's plug and push "
            + "it in again, or exchange the probe; acknowledge when its reading moves."),
    ONE_PROBE(Priority.LATER, 600,
            "Nothing is lost yet. See that its plug is dry and firm, or exchange it, before the other "
            + "fails."),
    DRY(Priority.SOON, 60, "Heat is off. Fill up to the mark, or check the level contact."),
    WATER_FALLING(Priority.LATER, 600,
            "Look at its mark: see that the drain is shut and nothing drips, fill up, then report "
            + "'topped-up'."),
    WET_CONTACT(Priority.LATER, 600,
            "The cone was reported drained but its level contact says wet: empty it, or "
            + "check the contact."),
    AIR_FAILED(Priority.SOON, 30, "See that the pump runs, its hose is on and the air valve is open."),
    AIR_FAILED_ANIMALS(Priority.NOW, 30,
            "The nauplii suffocate within minutes: start the pump, put the hose on, "
            + "open the air valve."),
    AIR_DUE(Priority.NOW, 0, "Finish drawing or open the air valve: the air comes back by itself."),
    AIR_SHUT_IN(Priority.NOW, 0, "Open the air valve now: the pump runs but no air gets in."),
    AIR_BACK(Priority.LATER, 0, "The separation is over; report 'settle' again when you are there to draw."),
    SIPHON(Priority.SOON, 0, "Shut the air valve while the pump runs, then report 'valve-shut'."),
    DOUBTFUL(Priority.SOON, 0, "Look before feeding."),
    RECORD(Priority.SOON, 60,
            "Control goes on, but nothing new is started. Check the disk: is it full, or read-only?"),
    CLOCK(Priority.LATER, 0, "Control is not affected; times shown may be wrong. Check the network."),
    CRASH_LOOP(Priority.SOON, 0,
            "Heat is locked off, the air runs. Look how each cone stands, report again what was set "
            + "aside, then acknowledge 'crash-loop'; if it comes back, keep the log and ask for help."),
    HOUR_MISSED(Priority.LATER, 600,
            "Plan without it for that hour, or say 'ready-by' with another; 'ready-by none' gives it up."),
    RELAY_WORN(Priority.LATER, 0,
            "Have the relay exchanged by somebody who may do so, with the mains unplugged; then report "
            + "'relay-exchanged'. Heat goes on meanwhile, but worn contacts weld more easily."),
    LATE(Priority.SOON, 10,
            "The computer is overloaded or its clock stalls; outputs fall to their safe level when "
            + "it hangs. Restart it if this stays.");

    /** How soon a person has to act. */
    public enum Priority { NOW, SOON, LATER }

    private final Priority priority;
    private final long onDelayMs;
    private final String todo;

    AlarmKind(Priority priority, long onDelayS, String todo) {
        this.priority = priority;
        this.onDelayMs = onDelayS * Units.SECOND_MS;
        this.todo = todo;
    }

    /** The id in {@code $alert/<id>}. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether it concerns the whole site rather than one cone. */
    public boolean siteWide() {
        return this == RECORD || this == CLOCK || this == LATE || this == CRASH_LOOP;
    }

    /**
     * Whether it stands, once told, until a person has seen it, also when its cause is over: where the cause
     * lasts a moment but what it tells stays true, that a separation came to nothing or that nobody should
     * feed without looking (control.md §7: returned to normal, unacknowledged). All others watch something
     * that lasts, and end with it. A new filling ends these too: they spoke of a batch that is gone.
     */
    public boolean standsUntilSeen() {
        return this == AIR_BACK || this == SIPHON || this == COOKED;
    }

    /** How long after a start its cause needs to be one, ms: a clock counts as unset after an hour of it. */
    long matureMs() {
        return this == CLOCK ? Units.HOUR_MS : 0;
    }

    public Priority priority() {
        return priority;
    }

    /** How long the cause must last before it is told, ms. */
    public long onDelayMs() {
        return onDelayMs;
    }

    /** What the person does, as whole sentences. */
    public String todo() {
        return todo;
    }

    /** Told again this long after the {@code times}-th telling, while nobody acknowledges, ms. */
    public long repeatAfterMs(int times) {
        if (this == AIR_FAILED_ANIMALS || this == AIR_SHUT_IN) {
            return 3 * Units.MINUTE_MS;
        }
        return switch (times) {
            case 0, 1 -> 15 * Units.MINUTE_MS;
            case 2 -> Units.HOUR_MS;
            default -> 4 * Units.HOUR_MS;
        };
    }

    /** How long an acknowledgement keeps it quiet while its cause lasts, ms. */
    public long quietMs() {
        return this == AIR_FAILED_ANIMALS || this == AIR_SHUT_IN ? 10 * Units.MINUTE_MS : Long.MAX_VALUE;
    }
}

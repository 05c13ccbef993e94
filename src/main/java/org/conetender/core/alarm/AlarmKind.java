package org.conetender.core.alarm;

import static org.conetender.core.alarm.Stakes.animals;
import static org.conetender.core.alarm.Stakes.batch;
import static org.conetender.core.alarm.Stakes.people;
import static org.conetender.core.alarm.Stakes.work;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.conetender.core.unit.Units;

/**
 * Every alarm: what is at stake and for how many minutes, how long its cause must last before anybody is
 * called (s), and its words. Whatever asks nothing of a person is not here. Delays are guesses unless said.
 * Its row in the documents is held against these words by a test.
 */
public enum AlarmKind {
    OVERHEAT(people(15), 0, says(
            "the water passed the guard temperature with the heater at work",
            "heater, cut-out and lamps are locked off",
            "Heat is locked off. Unplug the heater, let the water cool, find the cause, then "
            + "acknowledge.")),
    ROOM_TOO_WARM(batch(60), 60, says(
            "the water passed the guard temperature with the heater already off",
            "no heat, no lamps until it is cooler",
            "The heater is switched off already; where the room is not as warm as that, unplug it. Cool "
            + "the room or the cone.")),
    ARREST(batch(15), 0, says(
            "the water is above arrest, or a reading in doubt says so",
            "the hatch stops; warmer water kills it",
            "Cool the cone now, gently; first see that its probe is in the water.")),
    COOKED(batch(15), 0, says(
            "the water was at the loss temperature or above, or a reading in doubt says so",
            "the batch is marked doubtful",
            "Look before feeding: this batch may be lost.")),
    WELDED(people(15), 0, says(
            "the water warms although the heater is switched off",
            "the cut-out opens, if one is fitted; without one the water goes on heating",
            "Unplug the heater now: its switch does not open. Mend it before you acknowledge. Where the "
            + "heater of another cone does nothing meanwhile, see whether their wires are exchanged.")),
    WRONG_CONE(people(15), 0, says(
            "a cone warmed when the heater of another was on, and stopped when it was off: plugs, "
            + "switches or probes are exchanged, a heater hangs in the wrong cone, or two outputs touch",
            "heat is locked off in both cones",
            "Heat is locked off in both cones. Unplug both heaters now. See whether their plugs, switches or "
            + "probes are exchanged, a heater hangs in the wrong cone, or two outputs touch. Put it right, "
            + "then acknowledge.")),
    SWITCH_STUCK(people(60), 0, says(
            "before the first heat of a batch each of the heater's two switches was tried alone, and "
            + "the water warmed although one was open",
            "heat is locked off; the switch that still opens is all that holds the heater",
            "Heat is locked off. Unplug the heater now: one of its two switches does not open, and "
            + "only the other one holds it. Exchange it, then acknowledge; both are tried again.")),
    HEATER_STUCK(people(15), 0, says(
            "the heater's own output cannot be set: a line, a chip or the board does not answer",
            "the cut-out opens, if it can; the heartbeat stops, so that a relay outside can cut the "
            + "supply; without either the water may go on heating",
            "Unplug the heater now: its output does not obey, so it may stay on. Find out why before "
            + "you plug it in again.")),
    CUT_OUT_STUCK(people(15), 0, says(
            "the output of the heater's cut-out cannot be set",
            "the heater is switched off by its own switch, if that can be set; the heartbeat stops, so "
            + "that a relay outside can cut the supply",
            "Unplug the heater now: its cut-out does not obey, so it may not hold the heater. Find out why "
            + "before you plug it in again.")),
    AIR_STUCK(animals(15), 0, says(
            "the output that stops the air cannot be set",
            "the air is no longer stopped through it, and may stand still; no new 'settle' is taken",
            "See that the air runs. Then look at the board, its wires and the daemon's log.")),
    OUTPUT_STUCK(batch(60), 0, says(
            "another output cannot be set: a lamp, the heartbeat",
            "a lamp may burn; without its heartbeat a relay outside cuts the heaters' supply",
            "See that the lamps are as they should be. Then look at the board, its wires and the daemon's "
            + "log.")),
    NO_EFFECT(batch(60), 0, says(
            "the heater was on but the water did not warm as it should: heater or probe out of the "
            + "water, or a dead heater",
            "heat is locked off; the hatch slows",
            "Heat is locked off. See that heater and probe are under water in their own cone, the heater is "
            + "whole and its plug is its own, then acknowledge.")),
    PROBE(batch(60), 60, says(
            "no trusted temperature: a probe is silent, faulty or contradicted",
            "no heat; the forecast widens",
            "Without it there is no heat. See that the probe is in the water and its plug is dry and firm.")),
    PROBE_UNSTEADY(batch(60), 0, says(
            "the probe left the water three times within an hour",
            "heat is locked off",
            "Heat is locked off. Fix the probe in its place, then acknowledge.")),
    PROBE_FROZEN(batch(60), 0, says(
            "the reading stood still although the water must have moved: heat came or ended, the water "
            + "cooled, or a mat or a bath heated it for 90 min",
            "heat is locked off; how warm the water is, nobody knows",
            "Heat is locked off. Hold another thermometer into the water. Pull the probe's plug and "
            + "push it in again, or exchange the probe; acknowledge when its reading moves.")),
    ONE_PROBE(batch(Stakes.DAY), 600, says(
            "one of two probes has been silent for ten minutes; the other serves",
            "the water is still known; heat goes on",
            "Nothing is lost yet. See that its plug is dry and firm, or exchange it, before the other "
            + "fails.")),
    DRY(batch(60), 60, says(
            "the level contact says that the water is low",
            "no heat",
            "Heat is off. Fill up to the mark, or check the level contact.")),
    WATER_FALLING(batch(Stakes.DAY), 600, says(
            "the water warms and cools faster than after it was filled, as less of it does; told late, when "
            + "a quarter to a half is gone, and not always",
            "heat goes on; in the end the heater stands bare",
            "Look at its mark: see that the drain is shut and nothing drips, fill up, then report "
            + "'topped-up'.")),
    WET_CONTACT(work(Stakes.DAY), 600, says(
            "the cone was reported drained but the level contact says wet",
            "no heat; the contact cannot be trusted",
            "The cone was reported drained but its level contact says wet: empty it, or check the "
            + "contact.")),
    AIR_FAILED(batch(60), 30, says(
            "the air is switched on but none arrives; no nauplii yet",
            "the hatch stands still; cysts bear it for hours",
            "See that the pump runs, its hose is on and the air valve is open.")),
    AIR_FAILED_ANIMALS(animals(5), 30, says(
            "the air is switched on but none arrives; nauplii swim",
            "they suffocate",
            "The nauplii suffocate within minutes: start the pump, put the hose on, open the air "
            + "valve.")),
    AIR_DUE(animals(2), 0, says(
            "the air returns in two minutes, while you draw or with the valve reported shut",
            "the layer is stirred up, or no air gets in",
            "Finish drawing: the air comes back by itself. Open a shut air valve once the pump runs: sooner, "
            + "water could run back into the pump.")),
    AIR_SHUT_IN(animals(5), 0, says(
            "the pump runs against a valve that was reported shut, or may be: that report was set aside",
            "no air gets in; the nauplii suffocate",
            "Open the air valve now, or report 'valve-open' if it is open: no air gets in through a shut "
            + "one.")),
    AIR_BACK(work(Stakes.DAY), 0, says(
            "the air was off as long as the nauplii bear it, or the daemon restarted meanwhile",
            "the air is on again; the layer is mixed",
            "The separation is over; report 'settle' again when you are there to draw.")),
    SIPHON(work(60), 0, says(
            "water could run back into the air pump",
            "the pump is kept running; the harvest waits",
            "Shut the air valve while the pump runs, then report 'valve-shut'.")),
    DOUBTFUL(batch(60), 0, says(
            "the power was off, or no air was seen to arrive, too long with nauplii in the water",
            "the batch is marked doubtful",
            "Look before feeding.")),
    RECORD(work(60), 60, says(
            "the record cannot be written, or has not answered for half a minute",
            "control and alarms go on; steps that allow something are refused",
            "Control goes on, but nothing new is started. Check the disk: is it full, or read-only?")),
    HISTORY(work(Stakes.DAY), 600, says(
            "temperatures are not kept for reports: the disk is nearly full, or their file cannot be written",
            "all else goes on and what you report is recorded; charts have a gap",
            "Nothing that you reported is lost. Free some space on the disk, or see in the daemon's log why; "
            + "charts have a gap until then.")),
    CLOCK(work(Stakes.DAY), 0, says(
            "the clock was not set by the network for over an hour",
            "hours shown may be wrong; control does not use them",
            "Control is not affected; times shown may be wrong. Check the network.")),
    CRASH_LOOP(batch(60), 0, says(
            "the daemon ended unexpectedly three times within ten minutes",
            "heat is locked off everywhere, the air runs, the last report of those minutes is set "
            + "aside",
            "Heat is locked off, the air runs. Look how each cone stands, report again what was set "
            + "aside, then acknowledge 'crash-loop'; if it comes back, keep the log and ask for help.")),
    RECORD_DAMAGED(batch(60), 0, says(
            "the record could not be read to its end, or is that of a backup, so that reports may be missing",
            "heat is locked off everywhere, the air runs; the record of before is kept beside the new one",
            "Heat is locked off, the air runs. Look how each cone stands, report what is not shown as it is, "
            + "then acknowledge 'record-damaged'. Change the card if it comes back by itself.")),
    HOUR_MISSED(work(360), 600, says(
            "a batch is not likely enough to be ready by the hour it is wanted at, which is less than six "
            + "hours off",
            "it is held as warm as is safe, where it is measured and may be heated, and comes later",
            "Plan without it for that hour, or say 'ready-by' with another; 'ready-by none' gives it "
            + "up.")),
    OUT_OF_REACH(batch(Stakes.DAY), 600, says(
            "the heater is too weak to bring the water to its set-point in this room",
            "the water stays cooler, and the batch is ready later",
            "Cover the cone, warm the room or have a stronger heater fitted; or tell a 'setpoint' that can "
            + "be reached. The forecast goes by the water as it is.")),
    RELAY_WORN(work(Stakes.DAY), 0, says(
            "the relay of the heater has closed as often as it is rated for",
            "none yet; heat goes on",
            "Have the relay exchanged by somebody who may do so, with the mains unplugged; then report "
            + "'relay-exchanged'. Heat goes on meanwhile, but worn contacts weld more easily.")),
    LATE(batch(60), 10, says(
            "the control loop runs late",
            "outputs let go when it hangs; the heartbeat stops",
            "The computer is overloaded or its clock stalls; outputs fall to their safe level when it "
            + "hangs. Restart it if this stays."));

    /** How soon a person has to act. */
    public enum Priority { NOW, SOON, LATER }

    /** @param cause and consequence, clauses without a full stop  @param todo what the person does */
    private record Says(String cause, String consequence, String todo) {}

    private final String id = name().toLowerCase(Locale.ROOT).replace('_', '-');
    private final Stakes stakes;
    private final long onDelayMs;
    private final Says words;

    AlarmKind(Stakes stakes, long onDelayS, Says words) {
        this.stakes = stakes;
        this.onDelayMs = onDelayS * Units.SECOND_MS;
        this.words = words;
    }

    private static Says says(String cause, String consequence, String todo) {
        return new Says(cause, consequence, todo);
    }

    /** The one of that id, if there is one. */
    public static Optional<AlarmKind> of(String id) {
        return Arrays.stream(values()).filter(k -> k.id().equals(id)).findFirst();
    }

    /** The id in {@code $alert/<id>}. */
    public String id() {
        return id;
    }

    /** Whether it concerns the whole site rather than one cone. */
    public boolean siteWide() {
        return this == RECORD || this == CLOCK || this == LATE || this == CRASH_LOOP
                || this == RECORD_DAMAGED || this == HISTORY;
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

    /** Whether it locks and its cause is seen to be over; others show that by heat only, or ask the same. */
    public boolean mends() {
        return this == OVERHEAT || this == PROBE_UNSTEADY || this == PROBE_FROZEN;
    }

    /** How long after a start its cause needs to be one, ms: a clock counts as unset after an hour of it. */
    long matureMs() {
        return this == CLOCK ? Units.HOUR_MS : 0;
    }

    /** What may come of it, and how long a person has. */
    public Stakes stakes() {
        return stakes;
    }

    public Priority priority() {
        return stakes.priority();
    }

    /** Why it is raised, a clause. */
    public String cause() {
        return words.cause();
    }

    /** What follows while nobody comes, a clause. */
    public String consequence() {
        return words.consequence();
    }

    /** By what the same is told from then on, if it is: then it has another name, and nothing is over. */
    public Optional<AlarmKind> renamed() {
        return this == AIR_FAILED || this == AIR_FAILED_ANIMALS ? Optional.of(AIR_SHUT_IN) : Optional.empty();
    }

    /** How long the cause must last before it is told, ms. */
    public long onDelayMs() {
        return onDelayMs;
    }

    /** What the person does, as whole sentences. */
    public String todo() {
        return words.todo();
    }

    /** Whether people or animals come to harm soon: it is never shelved, and never told late. */
    public boolean dangerous() {
        return stakes.dangerous();
    }
}

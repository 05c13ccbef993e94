package org.conetender.sim.search;

import java.util.Set;
import org.conetender.core.batch.Batch;
import org.conetender.core.guard.Handled;
import org.conetender.core.unit.Units;

/** What a person must be told of, and how soon at the latest, judged by the truth of the search. */
enum Hazard {
    /** What was read a minute ago still serves (control.md §3.3); up to a minute until a tick; the delay. */
    PROBE_SILENT(182, "probe", "probe-unsteady"),
    DRY(60, "dry"),
    NO_AIR(32, "air-failed", "air-failed-animals"),
    /** What is urgent is told as that. */
    NO_AIR_FOR_ANIMALS(32, "air-failed-animals"),
    NO_RECORD(60, "record"),
    HEATER_STUCK(0, "heater-stuck"),
    AIR_STUCK(0, "air-stuck"),
    SHUT_IN(1, "air-shut-in"),
    AIR_DUE(0, "air-due"),
    /** No alarm tells it: what was read a minute ago still serves. */
    BLIND(Long.MAX_VALUE / Units.SECOND_MS);

    /** A pump may run against a valve that was reported shut for this long (design.md, dangers). */
    private static final long OPEN_WITHIN_MS = Units.MINUTE_MS;
    /** A record that owes an answer for so long is failing. */
    private static final long HANGS_MS = 30 * Units.SECOND_MS;

    private final long withinMs;
    private final Set<String> alarms;

    /** @param withinS s from the first tick that could have seen it  @param alarms any of which tells it */
    Hazard(long withinS, String... alarms) {
        this.withinMs = withinS * Units.SECOND_MS;
        this.alarms = Set.of(alarms);
    }

    long withinMs() {
        return withinMs;
    }

    Set<String> alarms() {
        return alarms;
    }

    /** Whether it is there after that tick. */
    boolean there(Event e) {
        Batch b = e.next().batch();
        boolean wet = b.stage().hasWater();
        boolean animals = b.stage().hasAnimals();
        return switch (this) {
            case PROBE_SILENT -> wet && e.senses().gone() && !handled(e);
            case DRY -> wet && e.fitted().probes().level() && e.senses().levelLies() && !handled(e);
            case NO_AIR_FOR_ANIMALS -> animals && NO_AIR.there(e);
            case NO_AIR -> wet && e.fitted().air().proof() && e.senses().noAir() && !e.out().airPause()
                    && !b.marks().valveShut();
            case NO_RECORD -> e.image().pipes().store().isPresent()
                    || e.before().world().paper().waitsForMs(e.nowMs()) >= HANGS_MS;
            case HEATER_STUCK -> e.senses().unset().contains("a.heat");
            case AIR_STUCK -> e.senses().unset().contains("a.air-pause");
            case BLIND -> e.senses().gone();
            case SHUT_IN -> b.marks().valveShut() && b.stage().develops() && !e.out().airPause()
                    && b.stage().airOff() == null && Math.min(e.live().judged().air().onForMs(),
                    e.memory().valveShutForMs(e.nowMs())) >= OPEN_WITHIN_MS;
            case AIR_DUE -> animals && e.out().airPause() && b.marks().valveShut() && e.airOffForMs()
                    >= e.capMs() - 2 * Units.MINUTE_MS;
        };
    }

    private static boolean handled(Event e) {
        return Handled.lately(e.next().batch(), m ->
                e.next().state().book().since(m, e.next().world().now()));
    }
}

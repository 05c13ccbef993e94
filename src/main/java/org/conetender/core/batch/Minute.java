package org.conetender.core.batch;

import java.util.List;
import java.util.OptionalDouble;
import org.conetender.core.unit.Moment;

/**
 * What a minute leaves behind besides its facts. The checkpoint brings a restart back to where things stood;
 * all of it is kept for reports, and nothing that is decided depends on that.
 *
 * @param checkpoint where things stood at its end  @param outputs what was switched in it, cone by cone
 * @param turns what became of alarms in it, in their order
 */
public record Minute(Checkpoint checkpoint, List<Outputs> outputs, List<AlarmTurn> turns) {

    public Minute {
        outputs = List.copyOf(outputs);
        turns = List.copyOf(turns);
    }

    /** One in which nothing was switched and no alarm turned. */
    public static Minute of(Checkpoint checkpoint) {
        return new Minute(checkpoint, List.of(), List.of());
    }

    /**
     * The share of a minute, 0..1, in which each output of a cone was on, as it was commanded.
     *
     * @param cone its id
     * @param heat its heater had power: its own switch was closed, and the cut-out where one is fitted
     * @param cutOut the second switch in series was closed; 0 where none is fitted
     * @param air it was not paused  @param lamp the harvest lamp burned
     * @param setC the set-point that was followed at its end, °C; empty while no heat was wanted
     */
    public record Outputs(String cone, double heat, double cutOut, double air, double lamp,
                          OptionalDouble setC) {}

    /**
     * An alarm was raised, acknowledged, or ended.
     *
     * @param at when  @param cone its cone; empty for the site  @param alarm its id
     * @param what the cause in words, when it is raised; else empty
     */
    public record AlarmTurn(Moment at, String cone, String alarm, Turn turn, String what) {}

    /** What became of an alarm. */
    public enum Turn {
        /** It stands from now on. */
        RAISED,
        /** A person has acknowledged it. */
        SEEN,
        /** It ended. */
        OVER,
        /** No alarm of its own: the record had no room for what turned then and for some time after. */
        UNKEPT
    }
}

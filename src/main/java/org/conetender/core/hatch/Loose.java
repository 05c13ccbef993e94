package org.conetender.core.hatch;

import java.util.Optional;
import org.conetender.core.hatch.Projection.Plant;
import org.conetender.core.judge.Losses;

/**
 * Water that is not held: it follows a room that is known more or less well, and stands below it where
 * nobody heats, since it evaporates. What is not known of it goes along as a doubt.
 */
public final class Loose {

    /**
     * So far stands bubbling water below its room, K: means of the simulated cones, which evaporate as in
     * science.md §9's check at 35 to 65 % humidity. Under a lid, and open.
     */
    private static final double LID_K = 0.8;
    private static final double OPEN_K = 2.1;

    /** A room without a probe is taken to be this warm before its water tells, °C (*guess*: heated). */
    private static final double USUAL_ROOM_C = 20;

    /** By so much the room to come is mistaken, one standard deviation, K, measured or not (*guesses*). */
    private static final double MEASURED_K = 0.8;
    private static final double FELT_K = 2.2;
    /** The same of a room of which the water has not told yet (*guess*). */
    private static final double UNKNOWN_K = 2.5;

    private Loose() {}

    /** @param litres L  @param lid whether one lies on it  @param waterC now, °C  @param stoodH there, h */
    public record Standing(double litres, boolean lid, double waterC, double stoodH) {}

    /**
     * A cone without heater. Where no probe measures the room, the water tells more of it the longer it has
     * stood there.
     *
     * @param wattsPerK losses to the room, W/K  @param room where it is measured
     */
    public static Plant unheated(Standing s, double wattsPerK, Optional<Room> room) {
        double belowK = belowK(s.lid);
        if (room.isPresent()) {
            return new Plant(s.litres, 0, wattsPerK, room.get().plus(-belowK), MEASURED_K);
        }
        double told = 1 - Math.exp(-s.stoodH / Losses.timeConstantH(s.litres, wattsPerK));
        return new Plant(s.litres, 0, wattsPerK, Room.constant(USUAL_ROOM_C - belowK
                + told * (s.waterC - USUAL_ROOM_C + belowK)), UNKNOWN_K + told * (FELT_K - UNKNOWN_K));
    }

    /**
     * One whose heater is locked off: it evaporates like one without. What was learnt of its water counts as
     * a warmer or colder room, and holds what evaporates; all of it where no probe tells the room itself.
     *
     * @param p as its cone has shown itself, or as it was configured
     * @param room that it stands in  @param lid whether one lies on it  @param measured whether a probe tells
     */
    public static Plant idle(Plant p, Room room, boolean lid, boolean measured) {
        double learntK = p.room().aheadC(0) - room.aheadC(0);
        double besidesK = measured || learntK == 0 ? Math.min(0, -belowK(lid) - learntK) : 0;
        return new Plant(p.litres(), 0, p.wattsPerK(), p.room().plus(besidesK),
                measured ? MEASURED_K : FELT_K);
    }

    private static double belowK(boolean lid) {
        return lid ? LID_K : OPEN_K;
    }

    /** One with a heater: where it does not hold the set-point, an unmeasured room is a doubt. */
    public static Plant heated(Plant p, double setC, boolean measured) {
        return measured || p.reachC() >= setC ? p
                : new Plant(p.litres(), p.watts(), p.wattsPerK(), p.room(), FELT_K);
    }
}

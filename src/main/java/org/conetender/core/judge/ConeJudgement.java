package org.conetender.core.judge;

import java.util.Optional;

/**
 * What we believe of one cone this tick. Wants nothing.
 *
 * @param water the memory and belief of its temperature
 * @param roomC the room's temperature where a probe tells it, °C
 * @param level what the level contact is taken to say
 * @param heat whether heat does what heat must
 * @param thermal what was learned of the water and its heater; empty before the first reading, and where
 *     heat comes through a wall or a bath, whose lags it does not describe
 * @param air what is known of its air
 * @param motion whether its reading moves
 * @param tried what was tried with its switches
 */
public record ConeJudgement(Water water, Optional<Double> roomC, LevelTrack level, HeatTrack heat,
                            Optional<Thermal> thermal, AirTrack air, Motion motion, Tried tried) {

    /** A room this much cooler than the water cannot be what warms it, K (guess: two probes at ±0.5 °C). */
    static final double COLD_ROOM_K = 1.0;

    /** A room without a probe is taken to be this warm, °C (guess: a heated room). */
    public static final double UNMEASURED_ROOM_C = 20;

    /** The same, its switches so far tried. */
    public ConeJudgement proven(Proving p) {
        return new ConeJudgement(water, roomC, level, heat, thermal, air, motion,
                tried.with(p));
    }

    /** The same while it is asked whose heater warms it: nothing else that is tried then is concluded. */
    public ConeJudgement asked() {
        return new ConeJudgement(water, roomC, level, heat, thermal, air, motion,
                tried.cutShort().answer().isPresent() ? tried.with(proving().interrupted())
                        : Tried.of(proving().interrupted()));
    }

    /** What its watch suspects. */
    public Watch.Suspect suspect() {
        return thermal.map(t -> t.watch().suspect()).orElse(Watch.Suspect.NONE);
    }

    /** How far its switches have been tried. */
    public Proving proving() {
        return tried.proving();
    }

    /** Whether the room is measured and so much cooler than the water that it cannot be what warms it. */
    public boolean coldRoom() {
        return roomC.isPresent() && belief().middleC() - roomC.get() > COLD_ROOM_K;
    }

    /** Whether the room is not measured, or it is little cooler than the water: it may be warmer there. */
    boolean nearRoom() {
        return !coldRoom() && !(roomC.isPresent() && roomC.get() > belief().middleC());
    }

    /** The same, its watch cleared: what it found has another cause. */
    public ConeJudgement cleared() {
        return new ConeJudgement(water, roomC, level, heat,
                thermal.map(t -> t.watched(Watch::cleared)), air, motion, Tried.of(proving()));
    }

    /** The same, but nothing was learned of it. */
    ConeJudgement unknown() {
        return new ConeJudgement(water, roomC, level, heat, Optional.empty(), air, motion,
                Tried.of(proving()));
    }

    public Belief belief() {
        return water.belief();
    }

    /**
     * A room that nobody measures, as its water feels it: what warms or cools it unexplained, beside a room
     * as it is usually taken for, °C. Only once a proof was passed. It holds what evaporates too, so only its
     * course says something of the room.
     */
    public Optional<Double> feltRoomC() {
        return roomC.isPresent() ? Optional.empty()
                : thermal.filter(t -> t.following() && t.fits() && t.proof().passed()).map(t ->
                UNMEASURED_ROOM_C + t.estimate().driftKPerS() / t.estimate().traits().lossPerS());
    }

    /** The room as control should take it, °C. */
    public double roomOrUsualC() {
        return roomC.orElse(UNMEASURED_ROOM_C);
    }
}

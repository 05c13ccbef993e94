package org.conetender.sim;

import java.time.Instant;
import java.util.Optional;

/**
 * What the settings of the daemon do not say about the place it is tried in.
 *
 * @param climate of the room; empty: drawn from the seed
 * @param airOwnSupply whether the pumps run on when the house's power is cut
 * @param sharedPump whether one pump serves all cones through a solenoid each, open when de-energised
 * @param exact whether probes are without error and plants as in the book, for checks against figures
 * @param touchingWPerK heat that passes between neighbours that touch, in the order of the settings, W/K
 * @param startWallMs true wall time at the beginning, milliseconds since 1970-01-01 UTC
 */
public record Bench(Optional<Room.Climate> climate, boolean airOwnSupply, boolean sharedPump, boolean exact,
                    double touchingWPerK, long startWallMs) {

    /** A working day in March, just after breakfast. */
    private static final long MORNING_MS = Instant.parse("2026-03-02T07:00:00Z").toEpochMilli();

    /** As Larkmoor has it: a pump for each cone, on the same supply as all else. */
    public static Bench larkmoor() {
        return new Bench(Optional.empty(), false, false, false, 0, MORNING_MS);
    }

    /** Nothing drawn, the room steady: for examples and checks. @param roomC °C */
    public static Bench byTheBook(double roomC) {
        return new Bench(Optional.of(Room.Climate.steady(roomC)), false, false, true, 0, MORNING_MS);
    }

    public Bench withAirOwnSupply(boolean own) {
        return new Bench(climate, own, sharedPump, exact, touchingWPerK, startWallMs);
    }

    public Bench withSharedPump(boolean isShared) {
        return new Bench(climate, airOwnSupply, isShared, exact, touchingWPerK, startWallMs);
    }

    public Bench withStart(Instant at) {
        return new Bench(climate, airOwnSupply, sharedPump, exact, touchingWPerK, at.toEpochMilli());
    }

    /** In a room of that climate. */
    public Bench withClimate(Room.Climate c) {
        return new Bench(Optional.of(c), airOwnSupply, sharedPump, exact, touchingWPerK, startWallMs);
    }

    /** Neighbours touch and exchange heat. @param wPerK W/K, 0 or more */
    public Bench withTouching(double wPerK) {
        return new Bench(climate, airOwnSupply, sharedPump, exact, wPerK, startWallMs);
    }
}

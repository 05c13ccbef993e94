package org.conetender.sim;

/**
 * What really happened to one batch, for comparison with what was forecast. Times are the world's count
 * in milliseconds, -1 when it never came to that.
 *
 * @param cone its id
 * @param lot the tin
 * @param stockedAtMs when the cysts went in
 * @param moments when 10, 50 and 90 % had hatched
 * @param endedAtMs when the cone was drained; -1 while it goes on
 * @param harvest how it ended, or stands now
 */
public record BatchTruth(String cone, Lot lot, long stockedAtMs, Moments moments, long endedAtMs,
                         Harvest harvest) {

    /** World times of 10, 50 and 90 % hatched, ms. */
    public record Moments(long t10Ms, long t50Ms, long t90Ms) {}

    /**
     * @param hatched share of the hatchable that hatched
     * @param drawn live nauplii taken
     * @param dead share of the hatched that died in the cone
     * @param energy mean energy of a nauplius, 1 when just hatched
     */
    public record Harvest(double hatched, double drawn, double dead, double energy) {}

    static BatchTruth of(String cone, Cysts cysts, long stockedAtMs, long endedAtMs) {
        return new BatchTruth(cone, cysts.lot(), stockedAtMs,
                new Moments(cysts.momentMs(10), cysts.momentMs(50), cysts.momentMs(90)), endedAtMs,
                new Harvest(cysts.hatchedFraction(), cysts.drawn(), cysts.deadFraction(), cysts.energy()));
    }
}

package org.conetender.core.judge;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.unit.Units;

/**
 * Readings of the last minute, one every ten seconds, oldest first: the next is held against all of them, for
 * a probe in air drifts off in small steps.
 */
record Trail(List<Seen> seen) {

    static final Trail NONE = new Trail(List.of());

    private static final long KEPT_MS = Units.MINUTE_MS;
    /** A reading stands where it is once it has not been lower for so long (guess: a probe's lag). */
    private static final long STOOD_MS = KEPT_MS / 3;

    /** One reading. @param degreesC °C  @param atMs monotonic */
    record Seen(double degreesC, long atMs) {}

    static Trail of(double c, long atMs) {
        return NONE.with(c, atMs);
    }

    Trail with(double c, long atMs) {
        List<Seen> next = new ArrayList<>();
        for (Seen t : seen) {
            if (atMs - t.atMs() <= KEPT_MS) {
                next.add(t);
            }
        }
        if (next.isEmpty() || atMs - next.getLast().atMs() >= KEPT_MS / 6) {
            next.add(new Seen(c, atMs));
        }
        return new Trail(List.copyOf(next));
    }

    /** The same after a jump, without what came before a reading that fell faster than water cools. */
    Trail upward(double c, long atMs) {
        boolean fell = seen.isEmpty() || c < seen.getLast().degreesC() - Water.STEP_ALLOWANCE_K
                - Water.LEAST_SLEW_K_S * (atMs - seen.getLast().atMs()) / 1000.0;
        return fell ? of(c, atMs) : with(c, atMs);
    }

    /** Whether water can have come here from each of them. @param slewKPerS how fast it warms at most, K/s */
    boolean leadsTo(double c, long atMs, double slewKPerS) {
        for (Seen t : seen) {
            double seconds = Math.max(0, atMs - t.atMs()) / 1000.0;
            double rise = c - t.degreesC();
            boolean can = rise <= Water.STEP_ALLOWANCE_K + slewKPerS * seconds
                    && -rise <= Water.STEP_ALLOWANCE_K + Water.LEAST_SLEW_K_S * seconds;
            if (!can) {
                return false;
            }
        }
        return true;
    }

    /** The least of late, °C; negative infinity where that is not long enough to say that it stands there. */
    double stoodAtC() {
        if (seen.isEmpty() || seen.getLast().atMs() - seen.getFirst().atMs() < STOOD_MS) {
            return Double.NEGATIVE_INFINITY;
        }
        return seen.stream().filter(t -> seen.getLast().atMs() - t.atMs() <= STOOD_MS)
                .mapToDouble(Seen::degreesC).min().orElseThrow();
    }
}

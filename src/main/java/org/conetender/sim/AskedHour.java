package org.conetender.sim;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.conetender.sim.Fault.When;

/** Somebody wants batches at an hour: when it cannot be known, when it cannot be kept, and when it can. */
final class AskedHour {

    private static final long HOUR_MS = 3_600_000;
    private static final long FAULT_MS = 30 * 60_000;
    /** Hours that even the slowest hatch, and no hatch, keeps; and one that an unknown lot keeps. */
    private static final int TOO_LATE_H = 90;
    private static final int TOO_SOON_H = 3;
    private static final int GOOD_H = 27;
    /** The clock turns out to be so slow, h: what could be kept comes near too soon. */
    private static final int SLOW_H = 22;

    private AskedHour() {}

    /** What happens in that second of the theme. */
    static void second(Rig r, long s) {
        if (s == 10) { // Nothing is in the cones yet.
            ask(r, "a", "fri 07:30");
        }
        Scripts.nursed(r, s);
        Scripts.hatchedAndSettled(r, s, "c");
        switch ((int) s) {
            case 60 -> ask(r, "a", "in the morning");
            case 70 -> ask(r, "a", "2001-01-01 07:30");
            case 80 -> ask(r, "a", ahead(r, TOO_SOON_H));
            case 90 -> ask(r, "a", ahead(r, TOO_LATE_H));
            case 100, 3_000 -> ask(r, "a", ahead(r, GOOD_H));
            case 200 -> unknown(r);
            case 300 -> ask(r, "b", ahead(r, GOOD_H));
            case 400 -> r.world().clock().trust(true);
            case 900 -> ask(r, "b", ahead(r, GOOD_H));
            case 1_800 -> ask(r, "a", "none");
            case 3_300 -> r.world().clock().stepWall(SLOW_H * HOUR_MS);
            case 5_000 -> ask(r, "c", ahead(r, GOOD_H));
            default -> { }
        }
    }

    private static void ask(Rig r, String cone, String hour) {
        r.set(cone, "hatch/ready-by", hour);
    }

    /** Neither the hour is known any more, nor one cone's water. */
    private static void unknown(Rig r) {
        r.world().apply(new Fault.OfProbe("b", 0, SimProbe.Fault.ABSENT,
                new When(r.world().clock().elapsedMs(), FAULT_MS)));
        r.world().clock().trust(false);
    }

    /** As a person says it, by the computer's clock. */
    private static String ahead(Rig r, int hours) {
        return Instant.ofEpochMilli(r.world().clock().now().wallMs()).plus(Duration.ofHours(hours))
                .atZone(r.settings().site().feeding().zone())
                .format(DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT));
    }
}

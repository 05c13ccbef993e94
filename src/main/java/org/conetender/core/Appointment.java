package org.conetender.core;

import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.image.Hour;
import org.conetender.core.settings.Cone;

/**
 * What is done about the hour at which a batch is wanted. It only chooses what is wanted: guards, permits
 * and caps are not asked and not changed.
 *
 * @param hour asked for, with its date
 * @param setC the set-point for it, °C, inside the band of {@link org.conetender.core.hatch.ByHour.Band}
 * @param stand whether the hour can be kept
 * @param chance that it is ready by then, 0..1; NaN where nobody knows the time or its water
 */
public record Appointment(Hour hour, double setC, Stand stand, double chance) {

    /** While nobody knows what time it is. @param setC held before, °C */
    static Appointment withoutClock(Hour hour, double setC) {
        return new Appointment(hour, setC, Stand.NO_CLOCK, Double.NaN);
    }

    /** How it stands. */
    public enum Stand {
        /** It will be ready then. */
        KEPT,
        /** As warm as is safe, and still later. */
        LATE,
        /** Its heat is locked off, and without it comes later; the last set-point stays. */
        LOCKED,
        /** As cool as hatches well, and still earlier. */
        EARLY,
        /** Its water is not measured, so nothing heats it, and it will be late if that began again now. */
        UNHEATED,
        /** Its water is not measured, so nobody knows; the last set-point stays. */
        UNMEASURED,
        /** Nobody knows what time it is; the last set-point stays. */
        NO_CLOCK;

        /** Whether it will be late, for all that is known. */
        boolean late() {
            return this == LATE || this == LOCKED || this == UNHEATED;
        }
    }

    /** After a restart: the set-point that was last held for the hour, until it is reckoned anew. */
    static Optional<Appointment> resumed(String cone, Batch b, Optional<Checkpoint> last) {
        return last.flatMap(c -> c.cones().stream()
                .filter(p -> p.cone().equals(cone) && p.batch() == b.number() && p.heldC().isPresent())
                .findFirst()).flatMap(p -> b.marks().readyBy()
                        .map(h -> withoutClock(h, p.heldC().getAsDouble())));
    }

    /** The set-point of that batch, °C: told, chosen for its hour, or the cone's own. */
    public static double setC(Cone cone, Batch b, Optional<Appointment> made) {
        return b.marks().setpointC().orElseGet(() -> of(b, made).map(Appointment::setC)
                .orElse(cone.limits().setpointC()));
    }

    /** What was made of the hour that this batch is wanted at now. */
    public static Optional<Appointment> of(Batch b, Optional<Appointment> made) {
        return made.filter(a -> b.marks().readyBy().filter(a.hour()::equals).isPresent());
    }
}

package org.conetender.core.face;

import java.time.ZoneId;
import java.util.Optional;
import org.conetender.core.Appointment;
import org.conetender.core.hatch.Speed;
import org.conetender.core.image.Hour;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** What is said of the hour at which a batch is wanted, in whole sentences or clauses. */
public final class HourWords {

    /** Beyond it nothing is foreseen, h ({@code Forecast}'s look-ahead). */
    private static final double FORESEEN_H = 96;

    private HourWords() {}

    /** The hour, and what is needed to say it. @param nowWallMs ms since 1970 UTC */
    public record Said(Hour hour, ZoneId zone, long nowWallMs) {

        String asked() {
            return Sentences.clock(hour.wallMs(zone), zone, nowWallMs);
        }

        /** What is overdue comes now. */
        String after(double hours) {
            return Sentences.clock(nowWallMs + Units.msOfHours(Math.max(0, hours)), zone, nowWallMs);
        }
    }

    /**
     * Why an hour cannot be kept, and the nearest that can.
     *
     * @param setC the set-point that comes nearest, °C
     * @param readyHours until it is ready at that; infinite for never
     * @param late whether it comes too late rather than too early
     */
    public static String cannot(Said s, double setC, double readyHours, boolean late) {
        if (readyHours > FORESEEN_H) {
            return Text.of("it cannot be ready by %s, nor in four days: even at %.1f °C it does not get "
                    + "there; see to its heat.", s.asked(), setC);
        }
        return Text.of(late ? "it cannot be ready by %s: at %.1f °C, the most that is safe, it comes at %s; "
                + "say that hour or a later one."
                : "it cannot wait until %s: at %.1f °C, the least at which hatching is well known, it comes "
                + "at %s; say that hour or an earlier one.", s.asked(), setC, s.after(readyHours));
    }

    /** Why it cannot be kept while no heat is given. @param readyHours in water that nobody warms */
    public static String locked(Said s, double readyHours) {
        return "it cannot be ready by " + s.asked() + ": its heat is locked off, and without it "
                + (readyHours > FORESEEN_H ? "it does not get there in four days"
                : "it comes at " + s.after(readyHours)) + "; see to its alarm, then say the hour again.";
    }

    /** A clause for the alarm. @param readyHours until it is ready, as things stand */
    public static String missed(Said s, Appointment.Stand stand, double readyHours) {
        String how = stand == Appointment.Stand.LOCKED ? "while its heat is locked off"
                : "as warm as is safe";
        return "it will not be ready by " + s.asked() + (readyHours > FORESEEN_H ? ""
                : "; " + how + " it comes at " + s.after(readyHours));
    }

    /** Said once with the answer. @param lot one that is not well known is meant by its later quartile */
    public static String holding(double setC, Speed lot) {
        return Text.of(" Held at %.1f °C for that, and reckoned anew every minute%s.", setC,
                lot.known() ? "" : (lot.timesSeen() == 0 ? "; nobody has seen such cysts hatch yet"
                        : "; how fast they hatch is not well known yet")
                        + ", so in one case of four it comes later");
    }

    /** How it stands now. @param readyHours as announced, from now; empty while nothing is known */
    static String stand(Said s, Appointment a, Optional<Double> readyHours) {
        String comes = readyHours.filter(h -> h <= FORESEEN_H)
                .map(h -> ", which brings it at " + s.after(h)).orElse("");
        return switch (a.stand()) {
            case KEPT -> Text.of("Ready by %s: holding %.1f °C.", s.asked(), a.setC());
            case LATE -> Text.of("Cannot be ready by %s: holding %.1f °C, the most that is safe%s.",
                    s.asked(), a.setC(), comes);
            case LOCKED -> Text.of("Cannot be ready by %s while its heat is locked off: see to its alarm%s.",
                    s.asked(), readyHours.filter(h -> h <= FORESEEN_H)
                    .map(h -> "; as it is it comes at " + s.after(h)).orElse(""));
            case EARLY -> Text.of("Will be ready before %s: holding %.1f °C, the least at which hatching is "
                    + "well known%s.", s.asked(), a.setC(), comes);
            case NO_CLOCK -> Text.of("Ready by %s is wanted, but the clock is not set: holding %.1f °C until "
                    + "it is.", a.hour().text(), a.setC());
        };
    }
}

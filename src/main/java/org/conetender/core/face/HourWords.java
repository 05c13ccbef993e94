package org.conetender.core.face;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import org.conetender.core.Appointment;
import org.conetender.core.hatch.ByHour;
import org.conetender.core.hatch.Speed;
import org.conetender.core.image.Hour;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** What is said of the hour at which a batch is wanted, in whole sentences or clauses. */
public final class HourWords {

    /** Beyond it nothing is foreseen, h ({@code Forecast}'s look-ahead). */
    private static final double FORESEEN_H = 96;

    /** Less than that is not told in figures, 0..1 (*guess*). */
    private static final double HARDLY = 0.01;

    private static final DateTimeFormatter DATED =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm (EEE)", Locale.ENGLISH);

    private HourWords() {}

    /** The hour, and what is needed to say it. @param nowWallMs ms since 1970 UTC */
    public record Said(Hour hour, ZoneId zone, long nowWallMs) {

        String asked() {
            return Sentences.clock(askedMs(), zone, nowWallMs);
        }

        private long askedMs() {
            return hour.wallMs(zone);
        }

        /** What is overdue comes now. */
        String after(double hours) {
            return Sentences.clock(afterMs(hours), zone, nowWallMs);
        }

        private long afterMs(double hours) {
            return nowWallMs + Units.msOfHours(Math.max(0, hours));
        }

        /** Of a batch that is ready. @param sinceMs wall time  @param keepsMs until when its food keeps */
        String ripe(long sinceMs, OptionalLong keepsMs) {
            return "Ready since " + Sentences.clock(sinceMs, zone, nowWallMs) + ", "
                    + LotWords.span(Units.hours(Math.abs(askedMs() - sinceMs)))
                    + (sinceMs < askedMs() ? " before " : " after ") + asked() + ", when it is wanted"
                    + (keepsMs.isEmpty() ? "" : keeps(keepsMs.getAsLong())) + ".";
        }

        private String keeps(long untilMs) {
            String until = Sentences.clock(untilMs, zone, nowWallMs);
            return untilMs <= nowWallMs ? "; most of its food was there until " + until
                    : "; its food keeps until " + until
                    + (untilMs < askedMs() ? ": harvest it by then" : "");
        }

        /** With its date, as it can be said again, and the weekday ({@link Hour#withWeekday}). */
        private String dated(long wallMs) {
            return DATED.format(Instant.ofEpochMilli(wallMs).atZone(zone));
        }
    }

    /** Why an hour is refused as too early, and the nearest that can be kept. @param chance of it, 0..1 */
    public static String late(Said s, ByHour.Answer a, double chance) {
        if (a.readyHours() > FORESEEN_H) {
            return Text.of("%s, nor in four days: even at %.1f °C it does not get there; see to its heat.",
                    not(s, chance), a.setC());
        }
        return Text.of("%s: at %.1f °C, the most that is safe, it comes at %s; say that hour or a later one.",
                not(s, chance), a.setC(), s.dated(s.afterMs(a.readyHours())));
    }

    /** Why one is refused as too late, and the nearest that can be kept. */
    public static String early(Said s, ByHour.Answer a) {
        return Text.of("it cannot wait until %s: at %.1f °C, the least at which hatching is well known, it "
                + "comes at %s; say that hour or an earlier one.", s.dated(s.askedMs()), a.setC(),
                s.dated(s.afterMs(a.readyHours())));
    }

    /** Why it is refused while no heat is given. @param readyHours in water that nobody warms */
    public static String locked(Said s, double readyHours, double chance) {
        return not(s, chance) + ": its heat is locked off, and without heat "
                + (readyHours > FORESEEN_H ? "it does not get there in four days"
                : "it comes at " + s.dated(s.afterMs(readyHours)))
                + "; see to its alarm, then say the hour again.";
    }

    /** Why it is refused where nothing can be moved. @param readyHours in water that follows its room */
    public static String unheated(Said s, double readyHours) {
        return "it has no heater, so there is nothing to hold for " + s.dated(s.askedMs()) + ": in its room "
                + (readyHours > FORESEEN_H ? "it does not get there in four days; bring it to a warmer place."
                : "it comes at about " + s.dated(s.afterMs(readyHours)) + "; go by the forecast.");
    }

    /** What may well come true is not called impossible. */
    private static String not(Said s, double chance) {
        return (chance < HARDLY ? "it cannot be ready by " : "it is not likely enough to be ready by ")
                + s.dated(s.askedMs());
    }

    /** A clause for the alarm. @param readyHours until it is ready, as things stand */
    public static String missed(Said s, Appointment a, double readyHours) {
        String how = a.stand() == Appointment.Stand.LOCKED ? "while its heat is locked off"
                : "as warm as is safe";
        // Where nobody knows the odds, it would be late even if heat came back at once.
        return (s.askedMs() <= s.nowWallMs() ? "it was not ready by " + s.asked()
                : a.chance() < HARDLY || Double.isNaN(a.chance()) ? "it will not be ready by " + s.asked()
                : "it is not likely enough to be ready by " + s.asked() + " (the chance is "
                + percent(a.chance()) + ")")
                + (a.stand() == Appointment.Stand.UNHEATED
                ? ", since its water is not measured and so not heated" : readyHours > FORESEEN_H ? ""
                : "; " + how + " it comes at " + s.after(readyHours));
    }

    /** What is nearly sure is not told as sure. @param chance 0..1 */
    public static String percent(double chance) {
        return chance < HARDLY ? "less than 1 %" : chance > 0.99 ? "more than 99 %"
                : Text.of("%.0f %%", 100 * chance);
    }

    /** Said of an hour that is refused as too early. @param chance that it is ready by then, 0..1 */
    public static String allTheSame(double chance) {
        return " The chance that it is ready by the hour you asked for all the same is " + percent(chance)
                + ".";
    }

    /** The chance of being ready by the wanted hour; nothing where nobody knows what time it is. */
    public static String chance(Appointment a) {
        return Double.isNaN(a.chance()) ? "" : chance(a.chance());
    }

    /** The same of an hour for which nothing is held. @param chance 0..1 */
    public static String chance(double chance) {
        return " The chance of being ready by then is " + percent(chance) + ".";
    }

    /** Said once with the answer. @param lot one that is not well known is meant by its later quartile */
    public static String holding(double setC, Speed lot) {
        return Text.of(" Held at %.1f °C for that hour, and reckoned anew every minute%s.", setC,
                lot.known() ? "" : (lot.timesSeen() == 0 ? "; nobody has seen such cysts hatch yet"
                        : "; how fast they hatch is not well known yet")
                        + ", so in one case of four it comes later");
    }

    /** How it stands now. @param readyHours as announced, from now; empty while nothing is known */
    public static String stand(Said s, Appointment a, Optional<Double> readyHours) {
        String comes = readyHours.filter(h -> h <= FORESEEN_H)
                .map(h -> ", which brings it at " + s.after(h)).orElse("");
        return words(s, a, comes) + chance(a);
    }

    private static String not(Appointment a) {
        return a.chance() < HARDLY ? "Cannot be ready by" : "Not likely enough to be ready by";
    }

    private static String words(Said s, Appointment a, String comes) {
        return switch (a.stand()) {
            case KEPT -> Text.of("Ready by %s: holding %.1f °C.", s.asked(), a.setC());
            case LATE -> Text.of("%s %s: holding %.1f °C, the most that is safe%s.", not(a), s.asked(),
                    a.setC(), comes);
            case LOCKED -> Text.of("%s %s while its heat is locked off%s: see to its alarm.", not(a),
                    s.asked(), comes);
            case EARLY -> Text.of("Will be ready before %s: holding %.1f °C, the least at which hatching is "
                    + "well known%s.", s.asked(), a.setC(), comes);
            case UNHEATED -> Text.of("%s %s: its water is not measured, so it is not heated; look at its "
                    + "probe.", not(a), s.asked());
            case UNMEASURED -> Text.of("Ready by %s is wanted, but its water is not measured, so nobody "
                    + "knows whether it will be; look at its probe.", s.asked());
            case NO_CLOCK -> Text.of("Ready by %s is wanted, but the clock is not set: holding %.1f °C until "
                    + "it is.", a.hour().text(), a.setC());
        };
    }
}

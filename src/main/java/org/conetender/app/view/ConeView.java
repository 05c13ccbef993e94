package org.conetender.app.view;

import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.face.AlarmList;
import org.conetender.core.unit.Text;

/**
 * One look at a cone. What is not published is empty.
 *
 * @param id of the cone
 * @param hatch the batch
 * @param water what it is in
 * @param out what is switched
 * @param hand what a person is asked, and was told last
 * @param alerts sentences by their id
 */
public record ConeView(String id, Hatch hatch, Water water, Out out, Hand hand,
                       SortedMap<String, String> alerts) {

    /** @param done degree-hours  @param needed for the harvest point, °C·h  @param hatched percent */
    public record Hatch(String stage, Done done, OptionalDouble needed, OptionalDouble hatched,
                        Ready ready, Wanted wanted, Warnings warnings) {
        /** The stage for people: an hour lies ahead of a ready one only where that was too early. */
        String stands() {
            return stage.equals("ready") && ready.at().isPresent() ? "called ready, not ripe yet" : stage;
        }

        /** Share of the way to the harvest point, 0 to 1. */
        public OptionalDouble share() {
            return done.middle().isPresent() && needed.isPresent() && needed.getAsDouble() > 0
                    ? OptionalDouble.of(Math.clamp(done.middle().getAsDouble() / needed.getAsDouble(), 0, 1))
                    : OptionalDouble.empty();
        }
    }

    /** @param middle of what may have been done, °C·h  @param least surely  @param most at best */
    public record Done(OptionalDouble middle, OptionalDouble least, OptionalDouble most) {
        /** What rounding alone would tell apart is one figure, °C·h. */
        private static final double APART = 0.5;

        /** For people: one figure, or two while what happened in some hole is not known. */
        String text() {
            boolean apart = least.isPresent() && most.isPresent()
                    && most.getAsDouble() - least.getAsDouble() >= APART;
            return apart ? whole(least) + "-" + whole(most) : whole(middle);
        }

        private static String whole(OptionalDouble d) {
            return d.isPresent() ? Text.of("%.0f", d.getAsDouble()) : "?";
        }
    }

    /** The hour it is wanted at. @param stands in words  @param chance of being ready by then, percent */
    public record Wanted(Optional<String> stands, OptionalDouble chance) {}

    /** @param doubt why to look before feeding  @param missed the feed it was to be ready for */
    public record Warnings(Optional<String> doubt, Optional<String> missed) {
        private static final String LOOK = "Look before feeding: ";

        /** The doubt, unless an alarm that stands says the same, and what to do about it besides. */
        Optional<String> untold(SortedMap<String, String> alerts) {
            String told = alerts.getOrDefault(AlarmKind.DOUBTFUL.id(), "");
            return doubt.filter(d -> !d.startsWith(LOOK)
                    || !told.contains(d.substring(LOOK.length()).replaceFirst("[.]$", "")));
        }
    }

    /** When it will be ready. @param most in eight of ten cases  @param half in five of ten */
    public record Ready(Optional<OffsetDateTime> at, Between most, Between half, Food food) {}

    /** Two moments; an end that nobody can tell is not there. */
    public record Between(Optional<OffsetDateTime> from, Optional<OffsetDateTime> until) {
        boolean told() {
            return from.isPresent() && until.isPresent();
        }
    }

    /** When most of its food is in the cone. @param there 95 % of it  @param twice two harvests */
    public record Food(Optional<OffsetDateTime> most, Between there, Twice twice) {}

    /** Of a lot that hatches over long. @param share percent of what hatches that the first takes */
    public record Twice(Between at, OptionalDouble share) {}

    /** @param degreesC measured  @param aim °C  @param trust a word  @param why not, or untested */
    public record Water(OptionalDouble degreesC, Aim aim, String trust, Optional<String> why) {}

    /** @param setpoint of this batch, °C  @param held what heat aims at now, °C; empty: at nothing */
    public record Aim(OptionalDouble setpoint, OptionalDouble held) {}

    /** @param lamp empty where there is none  @param siphon a word */
    public record Out(Heat heat, boolean air, String proven, Optional<Boolean> lamp, String siphon) {}

    /**
     * @param duty wanted, percent  @param vetoed why it is withheld  @param limited why it is less
     * @param known how well it is known how the water answers it
     */
    public record Heat(boolean on, OptionalDouble duty, Optional<String> vetoed, Optional<String> limited,
                       Optional<String> known, Relay relay) {}

    /** @param closings so far  @param used percent of its life  @param daysLeft at its pace */
    public record Relay(OptionalDouble closings, OptionalDouble used, OptionalDouble daysLeft) {
        /** For people; empty where no relay is counted, and once its life is over, which an alarm tells. */
        Optional<String> words() {
            return used.isEmpty() || daysLeft.isEmpty() || used.getAsDouble() >= 100 ? Optional.empty()
                    : Optional.of(Text.of("%.0f %% of its life used; at this pace the rest lasts about %s",
                            used.getAsDouble(), span(daysLeft.getAsDouble())));
        }

        private static String span(double days) {
            return days < 1.5 ? "1 day" : days < 100 ? Text.of("%.0f days", days)
                    : days < 700 ? Text.of("%.0f months", days / 30.4) : Text.of("%.0f years", days / 365);
        }
    }

    /** @param next a sentence  @param answer the last one  @param alarms the list, if anything is in it */
    public record Hand(String next, Optional<String> answer, Optional<String> alarms) {}

    static ConeView of(Map<String, String> topics, String at, String id) {
        Look l = new Look(topics, at + "/");
        Ready ready = new Ready(l.time("hatch/ready-at"), l.between("ready-from", "ready-until"),
                l.between("ready-half-from", "ready-half-until"), new Food(l.time("hatch/food-most-at"),
                        l.between("food-from", "food-until"),
                        new Twice(l.between("harvest-first-at", "harvest-second-at"),
                                l.number("hatch/harvest-first-share"))));
        Hatch hatch = new Hatch(l.word("hatch/stage"), done(l),
                l.number("hatch/degree-hours-needed"), l.number("hatch/hatched"), ready,
                new Wanted(l.text("hatch/ready-by-outlook"), l.number("hatch/ready-by-chance")),
                new Warnings(l.text("hatch/doubt"), l.text("hatch/feed-missed")));
        Water water = new Water(l.number("water/temperature"),
                new Aim(l.number("water/setpoint"), l.number("water/held")), l.word("water/trust"),
                l.text("water/why").or(() -> l.text("water/untested")));
        Heat heat = new Heat(l.is("heat/on"), l.number("heat/duty"), l.text("heat/vetoed"),
                l.text("heat/limited"), l.text("heat/known"), new Relay(l.number("heat/relay-closings"),
                        l.number("heat/relay-used"), l.number("heat/relay-days-left")));
        Out out = new Out(heat, l.is("air/on"), l.word("air/proven"),
                l.text("lamp/on").map("true"::equals), l.word("siphon/state"));
        return new ConeView(id, hatch, water, out, new Hand(l.word("hand/next-step"), l.text("hand/answer"),
                l.text("hand/alarms").filter(a -> !a.equals(AlarmList.NONE))),
                SiteView.alerts(topics, at));
    }

    private static Done done(Look l) {
        return new Done(l.number("hatch/degree-hours"), l.number("hatch/degree-hours-least"),
                l.number("hatch/degree-hours-most"));
    }

    private record Look(Map<String, String> topics, String prefix) {

        Optional<String> text(String property) {
            return Optional.ofNullable(topics.get(prefix + property));
        }

        String word(String property) {
            return text(property).orElse("?");
        }

        boolean is(String property) {
            return text(property).filter("true"::equals).isPresent();
        }

        OptionalDouble number(String property) {
            Optional<String> t = text(property).filter(s -> s.matches("-?[0-9.]+(e-?[0-9]+)?"));
            return t.map(s -> OptionalDouble.of(Double.parseDouble(s))).orElse(OptionalDouble.empty());
        }

        Between between(String from, String until) {
            return new Between(time("hatch/" + from), time("hatch/" + until));
        }

        Optional<OffsetDateTime> time(String property) {
            try {
                return text(property).map(OffsetDateTime::parse);
            } catch (DateTimeParseException foreign) {
                return Optional.empty(); // somebody else's idea of a time is shown as none
            }
        }
    }
}

package org.conetender.core.face;

import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import org.conetender.core.AirOff;
import org.conetender.core.ConeLive;
import org.conetender.core.Offering;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Lives;
import org.conetender.core.batch.Reports;
import org.conetender.core.batch.Stage;
import org.conetender.core.batch.Verdict;
import org.conetender.core.guard.Handled;
import org.conetender.core.guard.View;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** What a batch asks of a person next, as a sentence. */
public final class NextStep {

    /** Asked once after a harvest; whoever does not answer is not asked again. */
    static final String VERDICT = "Was the hour right? Say 'too-early', 'right' or 'late', if you like.";

    /** Where nothing else is asked. */
    private static final String ALARM_FIRST = "see to its alarm first; it says what to do.";

    /** A valve that was shut by the book, before the air is stopped. */
    private static final String SETTLE_OR_OPEN =
            "report 'settle' to stop the air, or open the air valve and report 'valve-open'.";

    private NextStep() {}

    /**
     * Now, and how much longer the air must run before it may be stopped again.
     *
     * @param restMs 0 when it may be stopped
     * @param unripe of a batch that was called ready too early
     * @param lives what the site is locked for, during which no air is stopped
     * @param minutes of a separation; empty where nobody reckons them
     * @param keepsMs until when most of its food is there, wall time; empty while nobody knows
     * @param alarmed whether an alarm of it asks for something now
     */
    public record When(Moment now, long restMs, Optional<Unripe> unripe, Lives lives,
                       Optional<View.Caps> minutes, OptionalLong keepsMs, boolean alarmed) {

        public When(Moment now, long restMs) {
            this(now, restMs, Optional.empty(), Lives.NONE, Optional.empty(), OptionalLong.empty(), false);
        }

        /** As that cone stands. */
        public static When of(Cone cone, ConeLive live, Book book, Moment now) {
            Batch b = book.cone(cone.id()).batch();
            boolean near = b.stage() instanceof Stage.Ready || b.stage().airOff() != null;
            return new When(now, live.judged().air().breath().restMs(), Unripe.of(live, b, now), book.lives(),
                    near ? Optional.of(AirOff.caps(cone, b, live.judged(), live.known().naupliiPerGram()))
                            : Optional.empty(), Digest.keepsMs(live, b, now), false);
        }

        /** The same beside what stands of that cone. */
        public When beside(Alarms alarms, Cone cone) {
            return new When(now, restMs, unripe, lives, minutes, keepsMs, alarms.raised().stream()
                    .anyMatch(a -> a.cone().equals(cone.id()) && asks(a)));
        }

        /** Whether it cannot wait for the next round; a batch in doubt is looked at when it is fed. */
        private static boolean asks(Alarm a) {
            return a.course().goneAtMs().isEmpty() && !a.shelved() && a.kind() != AlarmKind.DOUBTFUL
                    && a.kind().priority() != AlarmKind.Priority.LATER;
        }

        /** How much is left of so long after the air went off in that stage, ms; empty across a boot. */
        private Optional<Long> leftMs(Stage stage, ToLongFunction<View.Caps> ms) {
            return minutes.filter(_ -> stage.airOff() != null && stage.airOff().sameBoot(now))
                    .map(m -> ms.applyAsLong(m) - (now.monoMs() - stage.airOff().monoMs()));
        }

        private boolean locked() {
            return !lives.locks().isEmpty();
        }
    }

    /**
     * A batch in stage ready that is known to be short of its harvest point: a separation was given up, or
     * its lot was learnt to be slower.
     *
     * @param readyAtMs when it will be, wall time; empty while nobody knows
     */
    public record Unripe(OptionalLong readyAtMs) {

        public static Optional<Unripe> of(ConeLive live, Batch b, Moment now) {
            return !(b.stage() instanceof Stage.Ready) || !live.unripe(b) ? Optional.empty()
                    : Optional.of(new Unripe(live.outlook().foretold(now).filter(Forecast::reachable)
                            .map(f -> OptionalLong.of(Digest.readyAtMs(live, f.ready().announced(), now)))
                            .orElse(OptionalLong.empty())));
        }

        /** That it is kept warm, where it is heated, and until when. */
        String words(Settings s, Cone cone, Moment now) {
            return (cone.fittings().heat().fitted() ? " and is kept warm" : "")
                    + (readyAtMs.isEmpty() ? "" : ", ready at about " + Sentences.clock(readyAtMs.getAsLong(),
                            s.site().feeding().zone(), now.wallMs()));
        }
    }

    /** The sentence, without the cone's name. */
    public static String of(Settings s, Cone cone, ConeBook book, When when) {
        Batch b = book.batch();
        Optional<String> first = handsIn(s, cone, b, when.now()).or(() -> openValve(b, when));
        return first.orElseGet(() -> switch (b.stage()) {
            case Stage.Clean _ ->
                    "shut the drain valve, connect the air, pump on, fill, open the air valve, add salt and "
                    + "cysts" + heated(cone, ", take your hands out, plug the heater in")
                    + "; then report 'started'.";
            case Stage.Filled _ -> b.marks().salted()
                    ? "when the salt is dissolved add the cysts; then report 'stocked'."
                    : "add the salt and report 'salted'; then the cysts, and report 'stocked'.";
            case Stage.Hydrating _ -> b.marks().salted() ? "after an hour or two swirl stuck cysts back in"
                    + heated(cone, ", with the heater unplugged meanwhile") + "."
                    : "add the salt and report 'salted'.";
            case Stage.Incubating _ when !b.marks().salted() ->
                    "the salt was never reported; add it and report 'salted'.";
            case Stage.Incubating _ -> when.alarmed() ? ALARM_FIRST : "nothing; it is growing.";
            case Stage.Hatching _ -> when.alarmed() ? ALARM_FIRST : "nothing needed; a 'count' is welcome.";
            case Stage.Ready _ when when.locked() -> unlock(s, when.lives());
            case Stage.Ready _ when Sentences.spoiled(b) -> "do not feed it, nobody came for it in time; "
                    + "report 'abandoned', then drain and clean the cone.";
            case Stage.Ready _ when when.unripe().isPresent() -> when.alarmed() ? ALARM_FIRST
                    : "wait; it is not ripe yet"
                    + when.unripe().get().words(s, cone, when.now()) + ".";
            case Stage.Ready _ -> ready(cone, b) + takes(when) + rest(s, when)
                    + offered(s.site().feeding(), when);
            case Stage.Settling g -> "wait"
                    + when.leftMs(g, View.Caps::waitMs).map(left -> when.now().wallTrusted()
                    ? " until " + hour(s, when, left)
                    : Text.of(" %.0f min", Math.ceil(Units.minutes(Math.max(0, left))))).orElse("")
                    + "; the nauplii gather at the drain." + airBack(s, when, g, View.Caps::settledMs);
            case Stage.Settled g -> "see that nothing else is open, then draw: report 'drawing'."
                    + airBack(s, when, g, View.Caps::settledMs);
            case Stage.Drawing g ->
                    "let the first 20 to 50 mL go, draw the orange layer into the sieve, stop before the "
                    + "shells, shut the drain; then report 'drained', or 'part-drawn' to leave the rest."
                    + airBack(s, when, g, View.Caps::drawingMs);
            case Stage.Drained _ -> (Reports.told(book, Step.RINSED) || !Verdict.harvested(book)
                    ? cooled(cone) : heated(cone, "unplug the heater; ") + "rinse the nauplii; "
                    + heated(cone, "once the heater is cool ")) + "scrub and rinse the cone; then report "
                    + "'cleaned'."
                    + (Verdict.wanted(book) ? " " + VERDICT : "");
            case Stage.Abandoned _ -> cooled(cone) + "drain and clean the cone; then report 'cleaned'.";
        });
    }

    /** What was set aside of a cone must be reported again before its lock opens. */
    private static String unlock(Settings s, Lives lives) {
        String aside = lives.aside().stream().map(Change.SetAside::cone).filter(c -> s.cone(c).isPresent())
                .distinct().flatMap(c -> lives.wanted(c).stream()).collect(Collectors.joining(", "));
        return (aside.isEmpty() ? "" : "report again " + aside + "; then ") + "acknowledge "
                + lives.locks().stream().map(l -> "'" + l.guard() + "'").collect(Collectors.joining(" and "))
                + (aside.isEmpty() ? " first" : "") + "; until then the air must run and nothing can settle.";
    }

    private static String cooled(Cone cone) {
        return heated(cone, "unplug the heater, let it cool, ");
    }

    /** Those words, where it has a heater. */
    private static String heated(Cone cone, String words) {
        return cone.fittings().heat().fitted() ? words : "";
    }

    /** While hands are in it nothing else is asked. */
    private static Optional<String> handsIn(Settings s, Cone cone, Batch b, Moment now) {
        return b.marks().handsIn().filter(m -> m.sameBoot(now))
                .filter(m -> now.monoMs() - m.monoMs() < Handled.HANDS_MS)
                .map(m -> unplug(cone, b, Sentences.clock(now.wallMs() + Handled.HANDS_MS
                        - (now.monoMs() - m.monoMs()), s.site().feeding().zone(), now.wallMs())) + ".");
    }

    /** @param back when hands are taken to be out again */
    private static String unplug(Cone cone, Batch b, String back) {
        Cone.Lights l = cone.fittings().lights();
        boolean lamps = l.harvest() || l.trigger();
        if (!cone.fittings().heat().fitted()) {
            return lamps ? "hands are in it; the lamps return at " + back : "hands are in it, until " + back;
        }
        return !b.stage().hasWater()
                ? "unplug the heater and leave it unplugged until the cone is filled again"
                + (lamps ? "; lamps return at " + back : "")
                : "unplug the heater before hands go in, and plug it in again after; heat"
                + (lamps ? " and lamps return at " : " returns at ") + back;
    }

    /** A shut air valve is for a harvest only: for one that may begin now, or else it is to be opened. */
    private static Optional<String> openValve(Batch b, When when) {
        if (!b.marks().valveShut() || !b.stage().hasWater() || b.stage().airOff() != null) {
            return Optional.empty();
        }
        // Of what a part was just drawn the rest hatches on.
        boolean taken = (b.stage() instanceof Stage.Hatching && b.marks().harvests() == 0
                || b.stage() instanceof Stage.Ready)
                && !when.locked() && when.restMs() <= 0;
        boolean ripe = b.stage() instanceof Stage.Ready && when.unripe().isEmpty();
        return !taken ? Optional.of("open the air valve and report 'valve-open'; no air gets in through a "
                + "shut one.") : ripe ? Optional.empty() : Optional.of(SETTLE_OR_OPEN);
    }

    /** Air that was just stopped must run before it is stopped again. */
    private static String rest(Settings s, When when) {
        return when.restMs() <= 0 ? "" : " Not before " + Sentences.clock(when.now().wallMs() + when.restMs(),
                s.site().feeding().zone(), when.now().wallMs()) + ": the water needs air until then.";
    }

    private static String ready(Cone cone, Batch b) {
        return b.marks().valveShut()
                ? SETTLE_OR_OPEN
                : cone.fittings().air().geometry().canSiphon()
                ? "to harvest, shut the air valve while the pump runs and report 'valve-shut', then 'settle'."
                : "to harvest, report 'settle'; the air stops" + (cone.fittings().lights().harvest()
                ? " and the lamp at the drain comes on." : ".");
    }

    /** How long a separation takes, and how long the air may be off for it. */
    private static String takes(When when) {
        return when.minutes().filter(m -> m.waitMs() >= Units.MINUTE_MS).map(m -> Text.of(" After %.0f min "
                + "you draw; the air comes back by itself after %.0f min, %.0f while you draw.",
                Math.ceil(Units.minutes(m.waitMs())), Math.floor(Units.minutes(m.settledMs())),
                Math.floor(Units.minutes(m.drawingMs())))).orElse("");
    }

    private static String airBack(Settings s, When when, Stage stage, ToLongFunction<View.Caps> cap) {
        return when.leftMs(stage, cap).map(left -> " The air comes back by itself "
                + (when.now().wallTrusted() ? "at " + hour(s, when, left)
                : Text.of("in %.0f min", Math.floor(Units.minutes(Math.max(0, left))))) + ".").orElse("");
    }

    private static String hour(Settings s, When when, long inMs) {
        return Sentences.clock(when.now().wallMs() + inMs, s.site().feeding().zone(), when.now().wallMs());
    }

    /**
     * The hour before the next feed at which separating should begin (design.md, stage ready); nobody is to
     * wait for it longer than the food is there.
     */
    private static String offered(Site.Feeding feeding, When when) {
        Moment now = when.now();
        if (!now.wallTrusted()) {
            return "";
        }
        return Offering.nextFeed(feeding, now).map(f -> f.toInstant().toEpochMilli()).map(feedMs -> {
            long beginMs = feedMs - feeding.leadMinutes() * Units.MINUTE_MS;
            String feed = Sentences.clock(feedMs, feeding.zone(), now.wallMs());
            if (when.keepsMs().stream().anyMatch(k -> k < beginMs)) {
                long keepsMs = when.keepsMs().getAsLong();
                String until = Sentences.clock(keepsMs, feeding.zone(), now.wallMs());
                return keepsMs <= now.wallMs() ? " Most of its food was there until " + until
                        + "; what is left gets less by the hour."
                        : " Do not wait for the feed at " + feed + ": most of its food is there until "
                        + until + " only.";
            }
            return beginMs <= now.wallMs() ? " It is time, for the feed at " + feed + "."
                    : " Or wait until " + Sentences.clock(beginMs, feeding.zone(), now.wallMs())
                    + ", for the feed at " + feed + ".";
        }).orElse("");
    }
}

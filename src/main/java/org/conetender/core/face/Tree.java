package org.conetender.core.face;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.conetender.core.Appointment;
import org.conetender.core.ConeLive;
import org.conetender.core.Offering;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Reconsidered;
import org.conetender.core.batch.Stage;
import org.conetender.core.guard.Finding;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.image.Hour;
import org.conetender.core.judge.AirTrack;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Thermal;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * The retained topics that follow from a state: values and alerts, without {@code $state} and {@code
 * $description}. What is not known is not there, since a stale value is worse than none (mqtt.md).
 */
public final class Tree {

    /** Topics of a site with a few cones; more are no harm. */
    private static final int SOME = 256;

    private final Settings settings;
    private final Paths paths;
    private final ZoneId zone;
    private final Result result;
    private final Moment now;
    private final Map<String, String> out = HashMap.newHashMap(SOME);

    private Tree(Settings settings, Paths paths, Result result, Moment now) {
        this.settings = settings;
        this.paths = paths;
        this.zone = settings.site().feeding().zone();
        this.result = result;
        this.now = now;
    }

    /** Topic to payload, in no order. @param result of the tick at {@code now} */
    public static Map<String, String> of(Settings settings, Names names, Result result, Moment now) {
        return of(settings, new Paths(names), result, now);
    }

    /** The same, time after time. */
    public static Map<String, String> of(Settings settings, Paths paths, Result result, Moment now) {
        return new Tree(settings, paths, result, now).build();
    }

    /** @param cone empty for the site  @param property after its node */
    private void put(String cone, String property, String value) {
        out.put(paths.of(cone, property), value);
    }

    private Map<String, String> build() {
        State s = result.next();
        site(s);
        for (Cone c : settings.cones()) {
            String at = c.id();
            ConeLive live = s.live().cones().get(c.id());
            Batch b = s.book().cone(c.id()).batch();
            water(at, c, live, b);
            hatch(at, live, b);
            hour(at, live, s.book().cone(c.id()));
            outputs(at, c, live, b);
            usual(at, s.book().cone(c.id()).usual());
            put(at, "hand/next-step", NextStep.of(settings, c, s.book().cone(c.id()),
                    NextStep.When.of(c, live, s.book(), now).beside(s.live().alarms(), c)));
        }
        alarms(s);
        return out;
    }

    /** Every alarm is in the list; what a person was told stands as its own alert, or in that of many. */
    private void alarms(State s) {
        List<Alarm> all = s.live().alarms().raised();
        for (Alarm a : all) {
            if (a.shown()) {
                out.put(Topics.alert(paths.names(), a), AlarmWords.alert(settings, a, now));
            }
        }
        s.live().alarms().calls().many().ifPresent(m -> out.put(Topics.many(paths.names()),
                AlarmWords.many(settings, m)));
        put("", "site/alarms", AlarmList.of(settings, s.live().alarms(),
                Optional.empty(), now));
        put("", "site/escalated", AlarmWords.escalated(settings, s, now).orElse("\0"));
        for (Cone c : settings.cones()) {
            put(c.id(), "hand/alarms", AlarmList.of(settings, s.live().alarms(),
                    Optional.of(c.id()), now));
        }
    }

    private void site(State s) {
        String at = "";
        put(at, "site/clock", now.wallTrusted() ? "trusted" : "untrusted");
        put(at, "site/record", record());
        put(at, "site/away",
                s.book().away().map(a -> a.helper()).filter(h -> !h.isEmpty()).orElse("\0"));
        Offering.nextFeed(settings.site().feeding(), now).ifPresent(f -> {
            put(at, "feed/next", iso(f.toInstant().toEpochMilli()));
            put(at, "feed/digest", Digest.of(settings, s, f.toInstant().toEpochMilli(), now));
        });
        for (ConeLive live : s.live().cones().values()) {
            if (live.judged().roomC().isPresent()) {
                put(at, "room/temperature", Text.decimals(live.judged().roomC().get(), 1));
                break;
            }
        }
    }

    private String record() {
        for (List<Finding> found : result.findings().values()) {
            for (Finding f : found) {
                if (f.alarm().isPresent() && f.alarm().get() == AlarmKind.RECORD) {
                    return f.what();
                }
            }
        }
        return "kept";
    }

    private void water(String at, Cone c, ConeLive live, Batch b) {
        Belief w = live.judged().belief();
        if (w.known()) {
            put(at, "water/temperature", Text.decimals(w.middleC(), 1));
        }
        if (c.fittings().heat().fitted()) {
            put(at, "water/setpoint",
                    Sentences.plain(Appointment.setC(c, b, live.outlook().appointment())));
        }
        if (Double.isFinite(live.hold().aimC())) {
            put(at, "water/held", Sentences.plain(live.hold().aimC()));
        }
        put(at, "water/trust", switch (w) {
            case Belief.Trusted _ -> "trusted";
            case Belief.Projected _ -> "projected";
            case Belief.Untrusted _ -> "untrusted";
        });
        if (w instanceof Belief.Untrusted(String why)) {
            put(at, "water/why", why + (live.judged().water().doubt().isPresent() ? Sentences.AGAIN : ""));
        } else if (w.known() && live.judged().thermal().filter(Thermal::untestable).isPresent()) {
            put(at, "water/untested", Sentences.UNTESTED);
        }
    }

    private void hatch(String at, ConeLive live, Batch b) {
        put(at, "hatch/stage", b.stage().word());
        put(at, "hatch/batch", String.valueOf(b.number()));
        Sentences.doubts(b).ifPresent(d -> put(at, "hatch/doubt", d));
        if (!b.stage().develops()) {
            return;
        }
        Development done = live.growth().done();
        put(at, "hatch/degree-hours", Text.decimals(done.degreeHours(), 1));
        put(at, "hatch/degree-hours-least", Text.decimals(done.leastDegreeHours(), 1));
        put(at, "hatch/degree-hours-most", Text.decimals(done.mostDegreeHours(), 1));
        live.outlook().forecast().ifPresent(f ->
                put(at, "hatch/degree-hours-needed", Text.decimals(f.neededDegreeHours(), 1)));
        if (live.outlook().lapsed(now)) {
            put(at, "hatch/outlook", b.stage().growing() || live.unripe(b) ? Sentences.UNMEASURED
                    : Sentences.UNMEASURED_RIPE);
            return;
        }
        live.outlook().forecast().ifPresent(f -> {
            put(at, "hatch/hatched", Text.decimals(100 * f.hatched().median(), 0));
            put(at, "hatch/arrested",
                    String.valueOf(!f.reachable() && f.course().end() != Forecast.End.TOO_SLOW));
            put(at, "hatch/outlook", f.sentence());
            if (live.outlook().promise().missed()) {
                put(at, "hatch/feed-missed", missed(live, f));
            }
            if (f.reachable() && (b.stage().growing() || live.unripe(b))) {
                ReadyHours ready = ReadyHours.of(live, b, now, result.next().book().boots());
                put(at, "hatch/ready-at", iso(Digest.readyAtMs(live, ready.announced(), now)));
                ready.margins().forEach((property, hours) -> moment(at, property, live, hours));
            }
        });
        // For the lot's median; it goes on counting while the batch waits to be harvested.
        live.outlook().harvest().ifPresent(h -> {
            moment(at, "hatch/food-most-at", live, h.best().hours());
            moment(at, "hatch/food-from", live, h.fromHours());
            moment(at, "hatch/food-until", live, h.untilHours());
            h.twice().filter(_ -> b.marks().harvests() == 0).ifPresent(t -> {
                moment(at, "hatch/harvest-first-at", live, t.firstHours());
                put(at, "hatch/harvest-first-share", Text.decimals(100 * t.firstShare(), 0));
                moment(at, "hatch/harvest-second-at", live, t.secondHours());
            });
        });
    }

    /** The hour it is wanted at, and how that stands. */
    private void hour(String at, ConeLive live, ConeBook book) {
        Batch b = book.batch();
        put(at, "hatch/ready-by", b.marks().readyBy().map(Hour::text).orElse("\0"));
        Appointment.of(b, live.outlook().appointment()).ifPresent(a -> {
            Boots boots = result.next().book().boots();
            HourWords.Said said = new HourWords.Said(a.hour(), zone,
                    boots.wallMs(now).orElse(now.wallMs()));
            if (b.stage() instanceof Stage.Ready(Moment since) && !live.unripe(b)) {
                OptionalLong keeps = Sentences.spoiled(b) ? OptionalLong.empty()
                        : Digest.keepsMs(live, b, now);
                boots.wallMs(Reconsidered.ripeSince(book).orElse(since)).ifPresent(w ->
                        put(at, "hatch/ready-by-outlook", said.ripe(w, keeps)));
            } else if (b.stage().growing()) {
                double sinceH = Units.hours(now.monoMs() - live.outlook().atMs());
                put(at, "hatch/ready-by-outlook", HourWords.stand(said, a,
                        live.outlook().forecast().map(f -> f.ready().announced() - sinceH)));
                if (!Double.isNaN(a.chance())) {
                    put(at, "hatch/ready-by-chance", Text.decimals(100 * a.chance(), 0));
                }
            }
        });
    }

    /** @param hours after the forecast was made; nothing is told of what never comes */
    private void moment(String at, String property, ConeLive live, double hours) {
        if (Double.isFinite(hours)) {
            put(at, property, iso(Digest.readyAtMs(live, hours, now)));
        }
    }

    private String missed(ConeLive live, Forecast f) {
        String about = f.reachable() ? "now it is about " + Sentences.clock(
                Digest.readyAtMs(live, f.ready().announced(), now), zone, now.wallMs()) : f.sentence();
        return "It was to be ready for the feed at "
                + Sentences.clock(live.outlook().promise().feedWallMs(), zone, now.wallMs())
                + " and will not be: " + about + ".";
    }

    private void outputs(String at, Cone c, ConeLive live, Batch b) {
        HeatNode.of(c, result, now).forEach((property, value) -> put(at, property, value));
        put(at, "air/on", String.valueOf(!live.out().airPause()));
        // Air that is paused does not fail: whether it would come, nothing tells until it is on again.
        AirTrack.Proof proof = live.judged().air().proof();
        put(at, "air/proven", (live.out().airPause() && proof == AirTrack.Proof.FAILED
                ? AirTrack.Proof.UNVERIFIED : proof).name().toLowerCase(Locale.ROOT));
        if (c.fittings().lights().harvest()) {
            put(at, "lamp/on", String.valueOf(live.out().lamp()));
        }
        boolean can = c.fittings().air().geometry().canSiphon();
        put(at, "siphon/state", !can ? "safe" : b.marks().valveShut() ? "valve-shut" : "at-risk");
    }

    private void usual(String at, Cone.Usual u) {
        put(at, "usual/lot", u.lot());
        put(at, "usual/litres", Sentences.plain(u.litres()));
        put(at, "usual/cysts-g", Sentences.plain(u.cystsG()));
        put(at, "usual/ppt", Sentences.plain(u.ppt()));
    }

    /** To the minute: a label, and fewer messages. */
    private String iso(long wallMs) {
        ZonedDateTime t = Instant.ofEpochMilli(wallMs).atZone(zone).truncatedTo(ChronoUnit.MINUTES);
        // There are dozens of them, and a formatter would take ten times as long.
        return t.toLocalDateTime() + ":00" + (t.getOffset().getTotalSeconds() == 0 ? "+00:00"
                : t.getOffset().getId());
    }
}

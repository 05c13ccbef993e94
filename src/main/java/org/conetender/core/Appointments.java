package org.conetender.core;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;
import java.util.OptionalLong;
import org.conetender.core.Appointment.Stand;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Stage;
import org.conetender.core.face.HourWords;
import org.conetender.core.face.HourWords.Said;
import org.conetender.core.hatch.ByHour;
import org.conetender.core.hatch.ByHour.Answer;
import org.conetender.core.hatch.Growth;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/** Makes and keeps the appointments of one tick: accepted or refused, solved anew, told when missed. */
final class Appointments {

    /** A missed hour calls a person only in the last hours before it (design.md, must not cry wolf). */
    private static final double CALL_WITHIN_H = 6;

    /** Later than this is a missed hour, h: a twelfth, five minutes (guess: a forecast trembles by less). */
    private static final double MISSED_BY_H = 1.0 / 12;

    private final Work work;

    Appointments(Work work) {
        this.work = work;
    }

    /** The same request with its date, by today's clock; nothing else is recorded. */
    Ask.ReadyBy dated(Ask.ReadyBy r) {
        return new Ask.ReadyBy(r.hour().map(h -> h.dated(wallNow())));
    }

    /** Why no such appointment is made, with what to do; empty when it can be kept. */
    Optional<String> refusal(Ask.ReadyBy r, Cone c) {
        Batch b = work.batch(c.id());
        if (r.hour().isEmpty()) {
            return Optional.empty();
        }
        if (!work.image.now().wallTrusted()) {
            return Optional.of("the clock is not set, so no hour can be kept; see that the network is there, "
                    + "or tell a 'setpoint'.");
        }
        Optional<String> unfit = unfit(b, work.judged.get(c.id()));
        if (unfit.isPresent()) {
            return unfit;
        }
        Hour hour = r.hour().get().dated(wallNow());
        double hours = hoursUntil(hour).orElseThrow();
        if (hours <= 0) {
            return Optional.of("that hour is past; say one that is still to come.");
        }
        Growth growth = work.live(c.id()).growth();
        ByHour by = foresight(c, growth).byHour();
        if (!c.fittings().heat().fitted()) {
            double setC = c.limits().setpointC();
            return Optional.of(HourWords.unheated(said(hour), shown(c).orElseGet(() -> by.at(setC, hours)
                    .readyHours())) + HourWords.chance(by.chance(setC, hours)));
        }
        Answer a = by.solve(hours, ByHour.Band.of(c.limits()));
        return switch (a.reach()) {
            case MET -> Optional.empty();
            case LATER -> Optional.of(late(c, hour, a, by.chance(a.setC(), hours)));
            case EARLIER -> Optional.of(HourWords.early(said(hour), a));
        };
    }

    /** Hours until it is ready as the screen has it, which is reckoned each minute: there is one answer. */
    private Optional<Double> shown(Cone c) {
        ConeLive live = work.live(c.id());
        return live.outlook().foretold(work.image.now()).map(f -> left(live, live.readyH(
                f.ready().announced(), work.batch(c.id()), work.image.now(), work.ledger.book().boots())));
    }

    private String late(Cone c, Hour hour, Answer a, double chance) {
        return (PowerAhead.locked(work, c) ? HourWords.locked(said(hour), a.readyHours(), chance)
                : HourWords.late(said(hour), a, chance)) + HourWords.allTheSame(chance);
    }

    private static Optional<String> unfit(Batch b, ConeJudgement judged) {
        return switch (b.stage()) {
            case Stage.Clean _, Stage.Filled _, Stage.Drained _, Stage.Abandoned _ ->
                    Optional.of("no cysts are in it, and the hours count from their wetting; report "
                            + "'started' or 'stocked' first.");
            case Stage.Ready _, Stage.Settling _, Stage.Settled _, Stage.Drawing _ ->
                    Optional.of("it has come to its harvest point already.");
            case Stage.Hatching _ when b.marks().harvests() > 0 -> Optional.of("a part of it is drawn "
                    + "already, and what is left is held for no hour; go by the forecast.");
            case Stage.Hydrating _, Stage.Incubating _, Stage.Hatching _ -> judged.belief().known()
                    ? Optional.empty() : Optional.of("its water is not known, so nothing can be reckoned; "
                            + "see to its probe, then say it again.");
        };
    }

    /** What is made of the hour that was told, a minute later, or for the first time. */
    Optional<Appointment> renewed(Cone c, Growth growth, Optional<Appointment> before) {
        Batch b = work.batch(c.id());
        Optional<Appointment> was = Appointment.of(b, before);
        if (b.marks().readyBy().isEmpty() || b.marks().harvests() > 0) {
            return Optional.empty();
        }
        if (!b.stage().growing()) {
            return was;
        }
        Hour hour = b.marks().readyBy().get();
        double usualC = was.map(Appointment::setC).orElse(c.limits().setpointC());
        Optional<Double> hours = hoursUntil(hour);
        boolean known = work.judged.get(c.id()).belief().known();
        if (known && hours.isEmpty()) {
            return Optional.of(Appointment.withoutClock(hour, usualC));
        }
        Foresight foresight = foresight(c, growth);
        ByHour by = foresight.byHour();
        ByHour.Band band = ByHour.Band.of(c.limits());
        if (!known) {
            boolean late = hours.filter(h -> by.at(band.mostC(), foresight.around().water().agoH() + h)
                    .reach() == ByHour.Reach.LATER).isPresent();
            return Optional.of(new Appointment(hour, usualC, late ? Stand.UNHEATED : Stand.UNMEASURED,
                    Double.NaN));
        }
        Answer a = was.isPresent() ? by.solve(hours.get(), band, usualC) : by.solve(hours.get(), band);
        boolean locked = a.reach() == ByHour.Reach.LATER && PowerAhead.locked(work, c);
        double setC = locked ? usualC : a.setC();
        return Optional.of(new Appointment(hour, setC, switch (a.reach()) {
            case MET -> Stand.KEPT;
            case EARLIER -> Stand.EARLY;
            case LATER -> locked ? Stand.LOCKED : Stand.LATE;
        }, by.chance(setC, hours.get())));
    }

    /**
     * A batch that will be late for its hour, in the last hours before it and until it is ready; by a few
     * minutes only keeps up what stands, since the forecast moves by so much. No hour is told once the water
     * is unmeasured for so long that none is known.
     */
    Optional<Alarms.Cause> missed(Cone c) {
        ConeLive live = work.live(c.id());
        Batch b = work.batch(c.id());
        return Appointment.of(b, live.outlook().appointment())
                .filter(a -> a.stand().late() && b.stage().growing())
                .filter(a -> hoursUntil(a.hour()).filter(h -> h <= CALL_WITHIN_H).isPresent())
                .map(a -> {
                    double readyInH = live.outlook().foretold(work.image.now())
                            .map(f -> left(live, f.ready().announced())).orElse(Double.POSITIVE_INFINITY);
                    return new Alarms.Cause(c.id(), AlarmKind.HOUR_MISSED,
                            HourWords.missed(said(a.hour()), a, readyInH), Alarm.Held.BY_CAUSE,
                            readyInH - hoursUntil(a.hour()).orElseThrow() < MISSED_BY_H, true);
                });
    }

    /** Said of an hour that is on record now. */
    String answer(Cone c) {
        Batch b = work.batch(c.id());
        Growth growth = work.live(c.id()).growth();
        return !b.stage().growing() ? "" : renewed(c, growth, Optional.empty())
                .map(a -> work.judged.get(c.id()).belief().known()
                        ? HourWords.holding(a.setC(), work.known(c.id()).speed()) + HourWords.chance(a)
                        : " " + HourWords.stand(said(a.hour()), a, Optional.empty()))
                .orElse("");
    }

    /** What a report that was made now means for an hour that was kept before; empty while it is kept. */
    String broken(Cone c) {
        Batch b = work.batch(c.id());
        ConeLive live = work.live(c.id());
        Optional<Appointment> was = Appointment.of(b, live.outlook().appointment());
        return renewed(c, live.growth(), live.outlook().appointment())
                .filter(a -> was.filter(w -> w.stand() == a.stand()).isEmpty() && a.stand() != Stand.KEPT)
                .map(a -> " " + HourWords.stand(said(a.hour()), a, Optional.of(foresight(c, live.growth())
                        .at(a.setC()).ready().announced()))).orElse("");
    }

    private Foresight foresight(Cone c, Growth growth) {
        Batch b = work.batch(c.id());
        return Foresight.of(work, c, growth.doneOf(b));
    }

    /** Of a forecast some minutes old, hours from now. */
    private double left(ConeLive live, double hours) {
        return hours - Units.hours(work.image.now().monoMs() - live.outlook().atMs());
    }

    private Said said(Hour hour) {
        Moment now = work.image.now();
        return new Said(hour, zone(), work.ledger.book().boots().wallMs(now).orElse(now.wallMs()));
    }

    /** Hours until then, below 0 when it is past; empty while nobody knows what time it is. */
    private Optional<Double> hoursUntil(Hour hour) {
        OptionalLong wall = work.ledger.book().boots().wallMs(work.image.now());
        return wall.isEmpty() ? Optional.empty()
                : Optional.of(Units.hours(hour.wallMs(zone()) - wall.getAsLong()));
    }

    private ZonedDateTime wallNow() {
        return Instant.ofEpochMilli(work.image.now().wallMs()).atZone(zone());
    }

    private ZoneId zone() {
        return work.settings.site().feeding().zone();
    }
}

package org.conetender.core;

import java.util.Optional;
import java.util.stream.Stream;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Fits;
import org.conetender.core.batch.Reports;
import org.conetender.core.face.LotWords;
import org.conetender.core.face.Sentences;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Lesson.Sight;
import org.conetender.core.hatch.Plausible;
import org.conetender.core.hatch.Speed;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/**
 * What whoever reported a look or a verdict is told, once it is durable: what of it does not count and why,
 * what is known of the lot now, and the hour if that moved.
 */
final class LookAnswer {

    /** A forecast that moved by less is not told anew, h (*guess*: it trembles by as much in an hour). */
    private static final double MOVED_H = 1.0 / 12;

    private final Work work;
    private final Cone cone;
    private final Request request;

    private LookAnswer(Work work, Cone cone, Request request) {
        this.work = work;
        this.cone = cone;
        this.request = request;
    }

    /** Nothing for a request that is no look at the cysts. */
    static String of(Work work, Cone cone, Request r) {
        return Teaching.looks(r.ask()) ? new LookAnswer(work, cone, r).words() : "";
    }

    private String words() {
        Batch b = work.batch(cone.id());
        Teaching.known(work, cone);
        Optional<Lesson> lesson = work.ledger.book().lots().all().stream()
                .filter(k -> k.cone().equals(cone.id()) && k.source().equals(request.id()))
                .map(k -> k.what().lesson()).findFirst();
        if (lesson.isEmpty() || b.stock().isEmpty()) {
            return request.ask() instanceof Ask.Did(Step s) && Teaching.verdict(s) && b.stock().isPresent()
                    ? LotWords.NO_COURSE : Teaching.tooEarly(work, cone, request.ask())
                    .map(at -> LotWords.tooEarly(at.degreeHours())).orElse("");
        }
        // What a slip would have taught is not said as if it were known.
        Optional<String> slip = hardToBelieve(lesson.get());
        if (slip.isPresent()) {
            return slip.get() + hour(b);
        }
        return before(lesson.get().sight()).map(this::once).orElse("")
                + LotWords.taught(b.stock().get().lot(), work.speed(cone.id())) + hour(b);
    }

    /** The report of this batch that keeps this one from counting. */
    private Optional<Fact> before(Sight sight) {
        return sight instanceof Sight.First || sight instanceof Sight.NoneYet
                ? facts().filter(f -> f.change() instanceof Change.Told(Ask.Did(Step s))
                        && s == Step.FIRST_SEEN && taught(f) && !mine(f)).findFirst() : Optional.empty();
    }

    private Stream<Fact> facts() {
        return work.ledger.book().cone(cone.id()).facts().stream();
    }

    private boolean mine(Fact f) {
        return f.source().equals(request.id());
    }

    private boolean taught(Fact report) {
        return work.ledger.book().lots().all().stream().anyMatch(k -> k.by(report));
    }

    /** The first nauplii came once: who reported them before is believed. */
    private String once(Fact first) {
        int reports = (int) facts().filter(f -> Reports.withdrawable(f) && f.seq() >= first.seq())
                .map(Fact::source).distinct().count();
        boolean late = work.since(first.at()).mostMs() > Fits.WITHDRAW_WITHIN_MS;
        return LotWords.once(request.ask().word(), work.image.now().wallTrusted() && first.at().wallTrusted()
                ? Optional.of(Sentences.clock(first.at().wallMs(), work.settings.site().feeding().zone(),
                        work.image.now().wallMs())) : Optional.empty(), late ? 0 : reports);
    }

    /** A count that contradicts all that is known, where it was not let move that. */
    private Optional<String> hardToBelieve(Lesson lesson) {
        if (!(lesson.sight() instanceof Sight.Counted c)) {
            return Optional.empty();
        }
        Speed was = work.live(cone.id()).known().at(work.live(cone.id()).growth().lastC());
        Plausible p = Plausible.of(was, lesson.at());
        double moved = Math.abs(Math.log(work.speed(cone.id()).k50DegreeHours() / was.k50DegreeHours()));
        return p.fits(c) || moved > p.sd() ? Optional.empty() : Optional.of(LotWords.slip(
                lesson.at().degreeHours(), p.tooMany(c), p.tooMany(c) ? p.most() : p.least()));
    }

    /** The new hour, where this report moved it. */
    private String hour(Batch b) {
        ConeLive live = work.live(cone.id());
        Optional<Forecast> was = live.outlook().forecast();
        if (!b.stage().growing() || was.isEmpty() || !work.judged.get(cone.id()).belief().known()) {
            return "";
        }
        if (b.marks().readyBy().isPresent()) {
            return new Appointments(work).broken(cone);
        }
        Forecast f = Foresight.of(work, cone, live.growth().doneOf(b))
                .at(Appointment.setC(cone, b, live.outlook().appointment()));
        double now = f.ready().announced();
        double before = was.get().ready().announced()
                - Units.hours(work.image.now().monoMs() - live.outlook().atMs());
        if (!f.reachable() || Double.isFinite(before) && Math.abs(now - before) < MOVED_H) {
            return "";
        }
        String when = now <= 0 ? "now" : work.image.now().wallTrusted() ? "about " + Sentences.clock(
                work.image.now().wallMs() + Units.msOfHours(now), work.settings.site().feeding().zone(),
                work.image.now().wallMs()) : LotWords.inHours(now);
        return LotWords.moved(when, Double.isFinite(before) ? now - before : 0);
    }
}

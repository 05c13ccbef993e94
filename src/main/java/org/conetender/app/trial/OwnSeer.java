package org.conetender.app.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Learnt;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Lesson.Sight;
import org.conetender.core.hatch.Loose;
import org.conetender.core.hatch.Projection;
import org.conetender.core.hatch.Room;
import org.conetender.core.hatch.RoomDay;
import org.conetender.core.hatch.Speed;
import org.conetender.core.hatch.Zones;
import org.conetender.core.judge.Estimate;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;
import org.conetender.sim.trial.Pilot;
import org.conetender.sim.trial.Report;
import org.conetender.sim.trial.Seer;
import org.conetender.sim.trial.TrialHatch;

/** The daemon's own forecast in a trial: the same lessons, the same learning, fed with what is measured. */
public final class OwnSeer implements Seer {

    private static final double HOUR_S = 3_600;

    private final List<List<Lesson>> past = new ArrayList<>();
    private final List<Lesson> own = new ArrayList<>();
    private Speed lot = Speed.UNKNOWN_LOT;
    private Development done = Development.NONE;
    private double hours;
    private TrialHatch hatch;
    private double setC;
    private double waterC;
    private double roomC;
    private Optional<Estimate> known = Optional.empty();
    /** Of a room that was watched before the batch. */
    private Optional<RoomDay> day = Optional.empty();
    private double waitedS;

    @Override
    public void learns(Past batch) {
        List<Lesson> lessons = new ArrayList<>();
        Development d = Development.NONE;
        int next = 0;
        for (int i = 0; i < batch.shownC().length; i++) {
            double h = i * batch.stepH();
            double c = batch.shownC()[i];
            d = d.advance(Units.msOfHours(batch.stepH()), c, c, Zones.USUAL);
            for (; next < batch.reports().size() && batch.reports().get(next).hour() <= h; next++) {
                lessons.add(lesson(batch.reports().get(next), d, h));
            }
        }
        past.add(List.copyOf(lessons));
    }

    @Override
    public void begins(TrialHatch at, double heldC) {
        lot = Learnt.of(Learnt.Prior.UNKNOWN, past, own);
        hatch = at;
        setC = heldC;
    }

    @Override
    public void waits(double seconds, double c) {
        day = Optional.of(day.orElse(RoomDay.NONE).after(now(), Math.round(seconds * Units.SECOND_MS),
                measured(c)));
        waitedS += seconds;
    }

    /** The bench's days begin at midnight. */
    private Moment now() {
        long ms = Math.round((waitedS + hours * HOUR_S) * Units.SECOND_MS);
        return new Moment("boot-1", ms, ms, true);
    }

    private Optional<Double> measured(double c) {
        return hatch.roomMeasured() ? Optional.of(c) : Optional.empty();
    }

    @Override
    public void sees(double seconds, Pilot.Look look) {
        day = day.map(d -> d.after(now(), Math.round(seconds * Units.SECOND_MS), measured(look.roomC())));
        waterC = look.probeC();
        roomC = look.roomC();
        known = look.known();
        hours += seconds * Units.SECOND_MS / Units.HOUR_MS;
        done = done.advance(Math.round(seconds * Units.SECOND_MS), waterC, waterC, Zones.USUAL);
    }

    @Override
    public void hears(Report report) {
        own.add(lesson(report, done, hours));
        lot = Learnt.of(Learnt.Prior.UNKNOWN, past, own);
    }

    @Override
    public Told tells() {
        Room room = day.map(d -> d.room(now(), measured(roomC), roomC)).orElse(Room.constant(roomC));
        boolean heated = !Double.isNaN(setC);
        Projection.Plant plant = !heated ? Loose.unheated(new Loose.Standing(hatch.litres(), hatch.lid(),
                waterC, hours), hatch.nominal().lossPerS() * hatch.litres() * Units.BRINE_J_PER_L_K,
                hatch.roomMeasured() ? Optional.of(room) : Optional.empty())
                : Loose.heated(Projection.Plant.learned(hatch.litres(), known.orElseGet(() ->
                Estimate.first(hatch.nominal(), waterC)), room), setC, day.isEmpty() || hatch.roomMeasured());
        Forecast.Ready r = Forecast.of(done, lot, new Projection(waterC, plant,
                Projection.Plan.hold(heated ? setC : waterC)), Zones.USUAL.rate()).ready();
        return new Told(r.earliest(), r.earlierQuartile(), r.median(), r.laterQuartile(), r.latest());
    }

    private static Lesson lesson(Report r, Development d, double hours) {
        return new Lesson(new Lesson.At(d.leastDegreeHours(), d.mostDegreeHours(), hours), switch (r.what()) {
            case NONE -> new Sight.NoneYet();
            case FIRST -> new Sight.First();
            case COUNT -> new Sight.Counted(r.nauplii(), 0, r.unhatched());
            case TOO_EARLY -> new Sight.Judged(Lesson.Word.TOO_EARLY);
            case RIGHT -> new Sight.Judged(Lesson.Word.RIGHT);
            case LATE -> new Sight.Judged(Lesson.Word.LATE);
        });
    }
}

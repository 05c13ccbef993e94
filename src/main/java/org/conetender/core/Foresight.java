package org.conetender.core;

import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Reconsidered;
import org.conetender.core.hatch.Behind;
import org.conetender.core.hatch.ByHour;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Known;
import org.conetender.core.hatch.Foretold;
import org.conetender.core.hatch.Loose;
import org.conetender.core.hatch.Projection;
import org.conetender.core.hatch.Rate;
import org.conetender.core.hatch.Room;
import org.conetender.core.hatch.RoomDay;
import org.conetender.core.hatch.Zones;
import org.conetender.core.heat.Hold;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.judge.Judge;
import org.conetender.core.judge.Proving;
import org.conetender.core.judge.Thermal;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/**
 * What one cone's water and cysts will do, from what is believed now. Where its water is not known, from when
 * it was last: nothing heats it until now, and hours count from then.
 *
 * @param cone its settings
 * @param batch the batch
 * @param cysts in it
 * @param judged what is believed of it
 * @param around what else matters
 */
record Foresight(Cone cone, Batch batch, Cysts cysts, ConeJudgement judged, Around around) {

    /**
     * @param done what they have done  @param behind in how long
     * @param needed of the hour that was announced last, at which the floor begins to hold, °C·h; or NaN
     * @param lot what is known of it
     */
    record Cysts(Development done, Behind behind, double needed, Known lot) {}

    /**
     * @param room from when its water was last known  @param rate by which the cysts develop in their water
     * @param power what its heater may give, as a share of its own, 0..1
     * @param water how its room is known
     */
    record Around(Room room, Rate rate, double power, Water water) {}

    /**
     * @param lastC as it was last measured, °C  @param agoH so long ago, h; 0 while it is known
     * @param measured whether a probe tells of the room  @param stoodH since it was filled in, h
     */
    record Water(double lastC, double agoH, boolean measured, double stoodH) {}

    /** Of that cone in this tick. @param done what its cysts have done */
    static Foresight of(Work work, Cone c, Development done) {
        Water water = water(work, c);
        Known lot = work.known(c.id());
        // Of a lot that was learnt just now another hour will be announced.
        double needed = lot.speed().equals(work.live(c.id()).known().speed()) ? work.live(c.id()).needed()
                : Double.NaN;
        return new Foresight(c, work.batch(c.id()),
                new Cysts(done, behind(work, c, done, water.agoH()), needed, lot),
                work.judged.get(c.id()), new Around(room(work, c).since(water.agoH()),
                        Zones.of(work.settings.site(), c, work.batch(c.id())).rate(),
                        PowerAhead.locked(work, c) ? 0 : work.power.share(c), water));
    }

    /** Nobody knows how warm it was before a restart without a probe: as warm as it was to be held. */
    private static Water water(Work work, Cone c) {
        Belief now = work.judged.get(c.id()).belief();
        ConeLive live = work.live(c.id());
        double lastC = now.known() ? now.middleC() : live.growth().lastC();
        double agoH = now.known() ? 0 : Units.hours(work.since(live.growth().lastAt()).leastMs());
        return new Water(Double.isNaN(lastC) ? Appointment.setC(c, work.batch(c.id()),
                live.outlook().appointment()) : lastC, agoH, measured(work, c), stoodH(work, c));
    }

    /** Of a ripe batch the moment it was called so stands, whatever its water does since. */
    private static Behind behind(Work work, Cone c, Development done, double unmeasuredH) {
        Optional<Double> hours = work.batch(c.id()).stock().flatMap(s -> hours(work.since(s.at())))
                .map(h -> Math.max(0, h - unmeasuredH));
        double ripeH = Reconsidered.ripeSince(work.ledger.book().cone(c.id()))
                .flatMap(at -> hours(work.since(at))).orElse(0.0);
        double needed = work.live(c.id()).needed();
        return hours.map(h -> ripeH > 0 && ripeH < h && done.degreeHours() >= needed
                ? new Behind(h - ripeH, ripeH, needed) : Behind.growing(h)).orElse(Behind.UNKNOWN);
    }

    /** Empty while nobody knows. */
    private static Optional<Double> hours(Span s) {
        return s.bounded() ? Optional.of(Units.hours((s.leastMs() + s.mostMs()) / 2)) : Optional.empty();
    }

    private static boolean measured(Work work, Cone c) {
        return work.judged.get(c.id()).roomC().isPresent() || work.before.live().day().known();
    }

    private static double stoodH(Work work, Cone c) {
        return work.batch(c.id()).fill().map(f -> Units.hours(work.since(f.at()).leastMs())).orElse(0.0);
    }

    /** With the course of its day, as far as that is learnt: from its probe, or else from this very water. */
    static Room room(Work work, Cone c) {
        RoomDay measured = work.before.live().day();
        Optional<Double> nowC = work.judged.get(c.id()).roomC();
        return measured(work, c)
                ? measured.room(work.image.now(), nowC, ConeJudgement.UNMEASURED_ROOM_C)
                : work.live(c.id()).heating().felt().course(work.image.now(),
                        ConeJudgement.UNMEASURED_ROOM_C);
    }

    /** When it is ready if it is held there. @param setC °C */
    Forecast at(double setC) {
        return Forecast.of(cysts.done(), cysts.lot().speed(), projection(setC), around.rate());
    }

    /** The same, and when most of its food is in the cone. @param setC °C */
    Foretold foretold(double setC) {
        return Foretold.of(cysts.done(), cysts.lot().speed(), projection(setC), around.rate());
    }

    /** The same, to be brought to an hour. */
    ByHour byHour() {
        return new ByHour(cysts.done(), cysts.lot().speed(), projection(cone.limits().setpointC()),
                around.rate());
    }

    private Projection projection(double setC) {
        double needed = Double.isNaN(cysts.needed()) ? cysts.lot().at(setC).calledReadyAt() : cysts.needed();
        return new Projection(around.water().lastC(), plant(setC), new Projection.Plan(setC,
                Math.min(setC, cone.limits().floorC()), needed,
                around.water().agoH() + idleH(Judge.warmedLitres(cone, batch))), cysts.behind());
    }

    /** And what is doubted of its room, where no heater holds it; evaporating, where none works. */
    private Projection.Plant plant(double setC) {
        if (!cone.fittings().heat().fitted()) {
            double litres = Judge.litres(cone, batch);
            return Loose.unheated(new Loose.Standing(litres, cone.fittings().vessel().lid(),
                    around.water().lastC(), around.water().stoodH()), Judge.lossWPerK(cone, litres),
                    Optional.of(around.room()).filter(_ -> around.water().measured()));
        }
        Projection.Plant learnt = plant(cone, batch, judged, around.room());
        boolean measured = around.water().measured();
        return around.power() > 0 ? Loose.heated(learnt.powered(around.power()), setC, measured)
                : Loose.idle(learnt, around.room(), cone.fittings().vessel().lid(), measured);
    }

    /** As the cone has shown itself, where that fits its water; else as it was configured. */
    static Projection.Plant plant(Cone cone, Batch batch, ConeJudgement judged, Room room) {
        double litres = Judge.warmedLitres(cone, batch);
        return judged.thermal().filter(Thermal::fits)
                .map(t -> Projection.Plant.learned(litres, t.estimate(), room))
                .orElseGet(() -> new Projection.Plant(litres, cone.fittings().heat().watts(),
                        Judge.lossWPerK(cone, litres), room));
    }

    /** How long no heat will be given yet, h: the switches are tried, then it begins gently. */
    private double idleH(double litres) {
        Cone.Heat heat = cone.fittings().heat();
        if (heat.kind() != Cone.HeatKind.IMMERSED) {
            return 0;
        }
        double riseKPerS = heat.riseKPerS(litres);
        double gentleS = (1 / Hold.most(cone, judged.heat()) - 1) * HeatTrack.FIRST_WINDOW_K
                / riseKPerS;
        return Units.hours(judged.proving().leftMs(new Proving.Plant(heat.cutOut(), riseKPerS, 0)))
                + gentleS * Units.SECOND_MS / Units.HOUR_MS;
    }
}

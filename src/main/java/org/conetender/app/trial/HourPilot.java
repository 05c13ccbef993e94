package org.conetender.app.trial;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.hatch.ByHour;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Projection;
import org.conetender.core.hatch.Room;
import org.conetender.core.hatch.Speed;
import org.conetender.core.hatch.Zones;
import org.conetender.core.judge.Estimate;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;
import org.conetender.sim.trial.HourTrial;
import org.conetender.sim.trial.Pilot;
import org.conetender.sim.trial.TrialHatch;

/** The daemon's own way to an hour, flown in a trial: the same solver, fed with what is measured. */
public final class HourPilot implements Pilot {

    /** Limits of a usual cone, °C (design.md). */
    private static final Cone.Limits LIMITS = new Cone.Limits(27, 31, 33, 38, 20);
    public static final ByHour.Band BAND = ByHour.Band.of(LIMITS);

    /** So often the lot is watched where the last watching would have it held: it settles quickly. */
    private static final int WATCHED = 4;

    private final TrialHatch hatch;
    /** Whether the lot was watched at the very temperature at which it will be held. */
    private final boolean there;
    private Speed lot;
    private Development done = Development.NONE;
    private double waterC;
    private double roomC;
    private double heldC;
    private boolean holding;
    private Optional<Estimate> known = Optional.empty();

    private HourPilot(TrialHatch hatch, Speed lot, boolean there) {
        this.hatch = hatch;
        this.there = there;
        this.lot = lot;
        this.heldC = hatch.usualC();
    }

    /** What may be known of a lot, each by its name. */
    public static Map<String, School> schools() {
        Map<String, School> all = new LinkedHashMap<>();
        all.put("lot known at 26 °C", h -> new HourPilot(h, usual(h), false));
        all.put("lot learnt from reports at 23 to 29 °C", h -> new HourPilot(h, KnownLot.learnt(h), false));
        all.put("lot known where it is held", h -> new HourPilot(h, usual(h), true));
        all.put(HourTrial.SCATTERED + ", lot known where it is held", h -> new HourPilot(h, usual(h), true));
        return all;
    }

    private static Speed usual(TrialHatch h) {
        return KnownLot.at(h, KnownLot.USUAL_C);
    }

    @Override
    public void seen(double seconds, Look look) {
        double probeC = look.probeC();
        waterC = probeC;
        roomC = look.roomC();
        known = look.known();
        done = done.advance(Math.round(seconds * Units.SECOND_MS), probeC, probeC, Zones.USUAL);
    }

    @Override
    public boolean asked(double hoursToGo) {
        for (int i = 0; there && i < WATCHED; i++) {
            lot = KnownLot.at(hatch, byHour().solve(hoursToGo, BAND).setC());
        }
        return byHour().solve(hoursToGo, BAND).reach() == ByHour.Reach.MET;
    }

    @Override
    public double aimC(double hoursToGo) {
        ByHour by = byHour();
        heldC = (holding ? by.solve(hoursToGo, BAND, heldC) : by.solve(hoursToGo, BAND)).setC();
        holding = true;
        return heldC;
    }

    private ByHour byHour() {
        Projection.Plant plant = Projection.Plant.learned(hatch.litres(),
                known.orElseGet(() -> Estimate.first(hatch.nominal(), waterC)),
                Room.constant(roomC));
        return new ByHour(done, lot, new Projection(waterC, plant,
                new Projection.Plan(LIMITS.setpointC(), LIMITS.floorC(), lot.calledReadyAt(), 0)),
                Zones.USUAL.rate());
    }
}

package org.conetender.sim.trial;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.conetender.core.Story;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Losses;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;
import org.conetender.sim.Plant;
import org.conetender.sim.Room;
import org.conetender.sim.Seeds;
import org.conetender.sim.SimProbe;

/**
 * The core's decisions over one cone as it was drawn: 0.5 to 20 L, 3 to 25 W/L, losses of 0.7 to 2.0 times
 * the nominal, evaporation and bubbles among them, a reading each 1 to 8 s. The truth is {@link Plant}.
 */
final class HeaterDrawn {

    /** When its heater has to answer anew. */
    enum When { RESTART, WARM_FILL, TOP_UP }

    /**
     * What came of it.
     *
     * @param told alarms since the heater had to answer  @param minutes until then since heat was given
     * @param responded whether the heater was found to work  @param who the cone
     */
    record Outcome(Set<String> told, int minutes, boolean responded, String who) {}

    /** Of its power so much is needed at the set-point at most. */
    private static final double USED = 0.85;
    private static final double USUAL_C = 27;
    private static final double FILLED_C = 22;
    private static final double NOISE_C = 0.02;
    private static final int MINUTE_S = 60;
    private static final Cone.Geometry HIGH = new Cone.Geometry(60, 45, false, Optional.empty());

    private final SplittableRandom random;
    private final long seed;
    private final double litres;
    private final double watts;
    private final boolean lid;
    private final double losses;
    private final int periodS;
    private final double probeS;
    private final Room room;
    private final Plant plant;
    private final Cone cone;
    private final Story story;
    private boolean dead;
    private double sleeveC;
    private long seconds;
    private long heatedS;

    HeaterDrawn(long seed) {
        this.seed = seed;
        random = Seeds.of(seed, "heater drawn");
        litres = 0.5 * Math.pow(40, random.nextDouble());
        watts = litres * 3 * Math.pow(25.0 / 3, random.nextDouble());
        lid = random.nextBoolean();
        losses = 0.7 * Math.pow(2.0 / 0.7, random.nextDouble());
        double roomC = random.nextDouble(16, 23);
        room = new Room(new Room.Climate(roomC, random.nextDouble(0.3, 1.5), 0.3, 0.5), random.split());
        double wPerK = Losses.wattsPerK(litres, lid) * losses;
        plant = plant(wPerK, roomC);
        periodS = random.nextInt(1, 9);
        probeS = random.nextDouble(5, 20);
        cone = cone(Math.max(Cone.Limits.LEAST_SETPOINT_C, Math.min(USUAL_C, roomC + USED * watts / wPerK)));
        Site site = new Site("larkmoor", "Larkmoor Fry Room",
                new Site.Feeding(ZoneId.of("Europe/London"), List.of(LocalTime.of(7, 30)), 30),
                new Site.Supply(watts, false),
                random.nextBoolean() ? Optional.of("room") : Optional.empty(), Optional.empty(), false);
        story = new Story(new Settings(site, List.of(cone))).trying().each(s -> second());
    }

    private Cone cone(double setpointC) {
        Cone.SwitchKind kind = random.nextBoolean() ? Cone.SwitchKind.RELAY : Cone.SwitchKind.SOLID_STATE;
        Cone.Heat heat = new Cone.Heat(Cone.HeatKind.IMMERSED, watts, kind, random.nextBoolean());
        Cone.Fittings f = new Cone.Fittings(new Cone.Probes(List.of("a-water"), random.nextInt(4) == 0), heat,
                new Cone.Air(Cone.AirEntry.BOTTOM, true, true, HIGH), new Cone.Lights(false, false), false,
                new Cone.Vessel(lid, false, 0, Set.of()));
        return new Cone("a", f, new Cone.Limits(setpointC, 31, 33, 38, Math.min(20, setpointC)),
                new Cone.Timing(2, 6, 6, 10, false), new Cone.Usual("L-0417", litres, litres, TrialCone.PPT));
    }

    /** One that loses so many W/K at the usual temperature, evaporation and bubbles among them. */
    private Plant plant(double wPerK, double roomC) {
        double lagS = random.nextDouble(20, 90);
        double draught = random.nextDouble(0.45, 0.9);
        double wet = leavesW(new Plant.Quirks(lagS, 0, draught), roomC);
        double dry = leavesW(new Plant.Quirks(lagS, 1, draught), roomC) - wet;
        return over(new Plant.Quirks(lagS, Math.max(0.1, (wPerK * (USUAL_C - roomC) - wet) / dry), draught),
                room);
    }

    private Plant over(Plant.Quirks quirks, Room around) {
        Plant p = new Plant(new Plant.Build(Cone.HeatKind.IMMERSED, watts, litres, quirks), around);
        p.lid(lid);
        return p;
    }

    /** What leaves it at the usual temperature, W. */
    private double leavesW(Plant.Quirks quirks, double roomC) {
        Room still = new Room(Room.Climate.steady(roomC), new SplittableRandom(0));
        still.step(0, MINUTE_S);
        Plant p = over(quirks, still);
        p.pour(litres, USUAL_C, TrialCone.PPT);
        for (int i = 0; i < MINUTE_S; i++) {
            p.step(0, 0, TrialCone.AIR_PER_L * litres, 1);
        }
        return (USUAL_C - p.waterC()) / MINUTE_S * litres * Units.BRINE_J_PER_L_K;
    }

    private void second() {
        seconds++;
        room.step(story.now().wallMs(), 1);
        boolean on = story.on("a.heat") && (!cone.fittings().heat().cutOut() || story.on("a.cut-out"));
        heatedS += on ? 1 : 0;
        plant.step(on && !dead ? watts : 0, 0, TrialCone.AIR_PER_L * litres, 1);
        sleeveC += (plant.waterC() - sleeveC) / probeS;
        if (seconds % periodS == 0) {
            story.senses.water("a", SimProbe.inSteps(sleeveC + NOISE_C * random.nextGaussian()));
            story.senses.frozen("a-water").silent("a-water", story.now().monoMs() + 1_000);
            if (story.settings().site().roomProbe().isPresent()) {
                story.senses.room(SimProbe.inSteps(room.airC()));
            }
        }
    }

    private void pour(double c) {
        plant.pour(litres - plant.litres(), c, TrialCone.PPT);
        sleeveC = plant.waterC();
    }

    /**
     * What happens once its heater has to answer.
     *
     * @param isDead whether it died then  @param most minutes of its heat that are waited for
     */
    Outcome play(When when, boolean isDead, int most) {
        double aimC = cone.limits().setpointC();
        pour(when == When.WARM_FILL ? aimC - random.nextDouble(0, 1) : FILLED_C);
        if (when == When.WARM_FILL) {
            dead = isDead;
            story.does(Step.STARTED);
        } else {
            held(4 + random.nextInt(3));
            dead = isDead;
        }
        if (when == When.RESTART) {
            story.restart("boot-1", 5_000);
        } else if (when == When.TOP_UP) {
            plant.drain(random.nextDouble(0.05, 0.25) * litres);
            pour(Math.max(15, aimC - random.nextDouble(0, 6)));
            story.does(Step.TOPPED_UP);
        }
        return after(most);
    }

    private void held(int hours) {
        story.does(Step.STARTED);
        for (int i = 0; i < hours; i++) {
            story.minutes(59);
        }
    }

    private Outcome after(int most) {
        int before = story.told().size();
        long heated = heatedS;
        int n = 0;
        for (int all = 0; n < most && all < 2 * most && story.told().size() == before; all++) {
            story.minutes(1);
            n += heatedS > heated ? 1 : 0;
        }
        return outcome(before, n);
    }

    /** Hours in which the lid is put on or taken off untold, some times a day. */
    Outcome lids(int hours) {
        pour(FILLED_C);
        story.does(Step.STARTED);
        boolean on = lid;
        int n = 0;
        for (; n < hours * 4 && story.told().isEmpty(); n++) {
            story.minutes(15);
            on ^= random.nextInt(36) == 0;
            plant.lid(on);
        }
        return outcome(0, 15 * n);
    }

    private Outcome outcome(int from, int minutes) {
        Set<String> told = new TreeSet<>();
        story.told().subList(from, story.told().size()).forEach(a -> told.add(a.kind().id()));
        return new Outcome(told, minutes, story.state().live().cones().get("a").judged().heat().responded(),
                Text.of("seed %d: %.1f L, %.0f W, losses %.2f, %.1f °C", seed, litres, watts, losses,
                        cone.limits().setpointC()));
    }
}

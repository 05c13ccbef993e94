package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.conetender.core.heat.Predict;
import org.conetender.core.judge.Thermal;
import org.conetender.sim.LoneBatch;
import org.conetender.sim.Seeds;

/** The present batch of a brood, held by the heating law, and what was told of it meanwhile. */
final class ForecastRun {

    private static final int HOUR_S = 3_600;
    private static final int MINUTE_S = 60;
    private static final int LOOK_S = 10;
    /** A forecast is written down so often, s. */
    private static final int TELL_S = 900;
    private static final int GIVEN_UP_S = 150 * HOUR_S;
    /** A weak heater brings the water so far, °C, and misses the set-point by so much, K (guesses). */
    private static final double HATCHES_C = 20;
    private static final double MISSES_K = 1;
    /** Nobody hatches without a heater in a colder room, °C (guess). */
    private static final double WARM_ROOM_C = 22;
    /** By then a daemon knows the day of its room, s. */
    private static final int WAITS_S = 48 * HOUR_S;
    /** Seeds of other cones lie so far apart. */
    private static final long ANOTHER = 1_000_003;
    /** Who counts does so within some hours after the first nauplii, h (guess). */
    private static final double COUNTS_FROM_H = 2;
    private static final double COUNTS_TO_H = 6;

    /**
     * What was forecast at one moment.
     *
     * @param hour h after wetting  @param told then
     * @param doneDegreeHours above the textbook's threshold, by the probe, °C·h
     * @param waterC by the probe, °C
     */
    record Moment(double hour, Seer.Told told, double doneDegreeHours, double waterC) {}

    /**
     * @param t90H true hours from wetting; NaN if never
     * @param usualH the same of a batch such as its lot has in the mean, in the water that the probe shows:
     *     what nobody can better who knows all of the lot and nothing of this batch
     * @param moments in order  @param roomMeasured whether a probe measures the room
     */
    record End(double t90H, double usualH, List<Moment> moments, boolean roomMeasured) {}

    private final Brood brood;
    private final ForecastTrial.Heating heating;
    private final TrialHatch hatch;

    ForecastRun(Brood brood, ForecastTrial.Heating heating) {
        this.brood = brood;
        this.heating = heating;
        for (long i = 0;; i++) {
            TrialCone cone = TrialCone.draw(brood.seed() + i * ANOTHER);
            if (suits(cone)) {
                this.hatch = TrialHatch.draw(brood.seed() + i * ANOTHER);
                return;
            }
        }
    }

    private boolean suits(TrialCone cone) {
        double heldC = cone.known().setpointC();
        return switch (heating) {
            case ABLE -> !cone.weak() || heldC >= brood.setC();
            case WEAK -> cone.weak() && heldC >= HATCHES_C && heldC <= brood.setC() - MISSES_K;
            case NONE -> cone.climate().meanC() >= WARM_ROOM_C;
        };
    }

    /** What is told moves no water, so the batch is run twice: first to see what is to be seen. */
    End run(Seer seer) {
        List<Double> shares = new ArrayList<>();
        pass(Optional.empty(), List.of(), shares);
        return pass(Optional.of(seer), reports(shares.stream().mapToDouble(s -> s).toArray()), shares);
    }

    /** @param shares hatched, by the minute */
    private List<Report> reports(double[] shares) {
        SplittableRandom person = Seeds.of(brood.seed(), "person");
        double stepH = MINUTE_S / (double) HOUR_S;
        List<Report> looks = Brood.first(shares, stepH, person);
        List<Report> all = new ArrayList<>(looks);
        for (int k = 0; k < brood.counts(); k++) {
            double hour = looks.getLast().hour() + person.nextDouble(COUNTS_FROM_H, COUNTS_TO_H);
            int minute = (int) (hour / stepH);
            if (minute < shares.length) {
                all.add(brood.count(hour, shares[minute], person));
            }
        }
        all.sort(Comparator.comparingDouble(Report::hour));
        return all;
    }

    private End pass(Optional<Seer> seer, List<Report> reports, List<Double> shares) {
        TrialBench bench = new TrialBench(hatch.cone());
        LoneBatch batch = new LoneBatch(brood.lot(), brood.speed(0));
        LoneBatch usual = new LoneBatch(brood.lot(), 1);
        double off = brood.probeOffC(0);
        double shownC = Double.NaN;
        Predict.Switching kind = Switches.values()[(int) (brood.seed() % Switches.values().length)].kind();
        Thermal known = null;
        Predict law = Predict.IDLE;
        List<Moment> moments = new ArrayList<>();
        double degreeHours = 0;
        boolean on = false;
        int heard = 0;
        boolean heated = heating != ForecastTrial.Heating.NONE;
        seer.ifPresent(s -> s.begins(hatch, heated ? brood.setC() : Double.NaN));
        if (heating != ForecastTrial.Heating.ABLE) {
            for (int t = 0; t < WAITS_S; t += MINUTE_S) {
                bench.waits(t, MINUTE_S);
                seer.ifPresent(s -> s.waits(MINUTE_S, bench.seen(false).roomC()));
            }
        }
        for (int t = 0; t < GIVEN_UP_S && Double.isNaN(batch.hoursTo(90)); t++) {
            double hour = t / (double) HOUR_S;
            bench.step(on);
            batch.step(bench.waterC(), 1);
            Law.Seen s = bench.seen(on);
            shownC = s.probeC() + off;
            usual.step(shownC, 1);
            degreeHours += Textbook.perHour(shownC) / HOUR_S;
            if (seer.isEmpty() && t % MINUTE_S == 0) {
                shares.add(batch.hatched());
            }
            if (seer.isPresent() && t % LOOK_S == 0) {
                seer.get().sees(t == 0 ? 0 : LOOK_S, new Pilot.Look(shownC, s.roomC(),
                        Optional.ofNullable(heated ? known : null).map(Thermal::estimate)));
                for (; heard < reports.size() && reports.get(heard).hour() <= hour; heard++) {
                    seer.get().hears(reports.get(heard));
                }
            }
            if (seer.isPresent() && t % TELL_S == LOOK_S) {
                moments.add(new Moment(hour, seer.get().tells(), degreeHours, shownC));
            }
            // The law sees the probe that is off, so the water is held off by as much the other way.
            double aimC = brood.setC() - off;
            known = known == null ? Thermal.from(hatch.nominal(), s.probeC()) : known.after(s.step(), aimC);
            law = law.steered(known, aimC, new Predict.Around(s.roomC(), 1), kind);
            on = heated && law.on();
        }
        return new End(batch.hoursTo(90), goesOn(usual, shownC), moments,
                hatch.roomMeasured());
    }

    /** In water that stays as it is. */
    private static double goesOn(LoneBatch batch, double waterC) {
        for (int t = 0; t < GIVEN_UP_S && Double.isNaN(batch.hoursTo(90)); t++) {
            batch.step(waterC, 1);
        }
        return batch.hoursTo(90);
    }
}

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
     * @param moments in order
     */
    record End(double t90H, double usualH, List<Moment> moments) {}

    private final Brood brood;
    private final TrialHatch hatch;

    ForecastRun(Brood brood) {
        this.brood = brood;
        this.hatch = able(brood);
    }

    /** A cone whose heater holds that in the coldest hour; what cannot be held is another matter. */
    private static TrialHatch able(Brood brood) {
        for (long i = 0;; i++) {
            TrialCone cone = TrialCone.draw(brood.seed() + i * ANOTHER);
            if (!cone.weak() || cone.known().setpointC() >= brood.setC()) {
                return TrialHatch.draw(brood.seed() + i * ANOTHER);
            }
        }
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
        seer.ifPresent(s -> s.begins(hatch, brood.setC()));
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
                        Optional.ofNullable(known).map(Thermal::estimate)));
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
            on = law.on();
        }
        return new End(batch.hoursTo(90), goesOn(usual, shownC), moments);
    }

    /** In water that stays as it is. */
    private static double goesOn(LoneBatch batch, double waterC) {
        for (int t = 0; t < GIVEN_UP_S && Double.isNaN(batch.hoursTo(90)); t++) {
            batch.step(waterC, 1);
        }
        return batch.hoursTo(90);
    }
}

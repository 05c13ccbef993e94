package org.conetender.app.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import org.conetender.core.hatch.Rate;
import org.conetender.core.hatch.Speed;
import org.conetender.sim.LoneBatch;
import org.conetender.sim.trial.HourTrial;
import org.conetender.sim.trial.Pilot;
import org.conetender.sim.trial.TrialHatch;
import org.junit.jupiter.api.Test;

/** The daemon's own solver in the trial. */
class HourPilotTest {

    private static final HourTrial.Plan FEW = new HourTrial.Plan(6, 2, HourPilot.BAND.leastC(),
            HourPilot.BAND.mostC());

    /** Keeps the drawn batch, which only the trial can make. */
    private static TrialHatch hatch() throws InterruptedException {
        TrialHatch[] drawn = new TrialHatch[1];
        HourTrial.run(new HourTrial.Plan(1, 1, 22, 30), Map.of("any", h -> {
            drawn[0] = h;
            return HourPilot.schools().values().iterator().next().of(h);
        }), _ -> { });
        return drawn[0];
    }

    @Test
    void aLotIsKnownRightWhereItWasWatched() throws InterruptedException {
        TrialHatch h = hatch();
        for (double c : new double[] {23, 26, 28.5}) {
            Speed s = KnownLot.at(h, c);
            LoneBatch b = h.watchedAt(c);
            assertThat(s.known()).isTrue();
            assertThat(s.k90() / Rate.USUAL.perHour(c)).as("T90 at %s °C", c)
                    .isCloseTo(b.hoursTo(90), org.assertj.core.api.Assertions.within(0.02));
        }
    }

    @Test
    void aLotThatIsLearntAtManyTemperaturesIsRightAtEach() throws InterruptedException {
        TrialHatch h = hatch();
        Speed s = KnownLot.learnt(h);
        assertThat(s.known()).isTrue();
        for (double c : new double[] {22.5, 26, 29}) {
            assertThat(s.at(c, 12).k90() / Rate.USUAL.perHour(c) / h.watchedAt(c).hoursTo(90))
                    .as("T90 at %s °C", c).isBetween(0.93, 1.07);
        }
    }

    @Test
    void theSolverIsPunctualerThanTheSetPointThatIsUsual() throws InterruptedException {
        Map<String, Pilot.School> schools = new LinkedHashMap<>();
        schools.put("ours", HourPilot.schools().get("lot known where it is held"));
        schools.put("usual", h -> new Usual(h.usualC()));
        HourTrial t = HourTrial.run(FEW, schools, _ -> { });
        double ours = t.targets().get(0).got();
        double usual = t.targets().get(2).got();
        assertThat(ours).as("share that misses").isLessThan(usual);
    }

    /** Holds the cone's own set-point, whatever is asked. */
    private record Usual(double setC) implements Pilot {
        @Override
        public void seen(double seconds, Look look) {
            assertThat(look.probeC()).isFinite();
        }

        @Override
        public boolean asked(double hoursToGo) {
            return true;
        }

        @Override
        public double aimC(double hoursToGo) {
            return setC;
        }
    }
}

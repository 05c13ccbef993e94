package org.conetender.sim.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.conetender.sim.LoneBatch;
import org.conetender.sim.Lot;
import org.junit.jupiter.api.Test;

/** The trial of hours asked for, on other seeds than the real one, with pilots that know nothing or all. */
class HourTrialTest {

    private static final long OTHER_SEED = 78_000;
    private static final HourTrial.Plan FEW = new HourTrial.Plan(4, 1, 22, 30);

    /** Promises everything and aims at one temperature. */
    private record Stubborn(double setC) implements Pilot {
        @Override
        public void seen(double seconds, Look look) {
            assertThat(look.probeC()).isBetween(5.0, 40.0);
            assertThat(seconds).isBetween(0.0, 10.0);
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

    @Test
    void aBatchByItselfHatchesAtTheHoursOfItsLot() {
        Lot lot = Lot.draw(OTHER_SEED, "L-0417");
        LoneBatch b = LoneBatch.held(lot, 26);
        assertThat(b.hoursTo(50)).isCloseTo(lot.t50At26H(), org.assertj.core.api.Assertions.within(0.1));
        assertThat(b.hoursTo(10)).isLessThan(b.hoursTo(50));
        assertThat(b.hoursTo(90)).isGreaterThan(b.hoursTo(50));
        assertThat(LoneBatch.held(lot, 22).hoursTo(90)).as("cooler is slower").isGreaterThan(b.hoursTo(90));
        assertThat(LoneBatch.held(lot, 5).hoursTo(10)).as("never").isNaN();
    }

    @Test
    void theHourIsAskedWithinTheTrueWindowFourTimesInFive() {
        int inside = 0;
        for (int i = 0; i < 500; i++) {
            TrialHatch h = TrialHatch.draw(OTHER_SEED + i);
            assertThat(TrialHatch.draw(OTHER_SEED + i)).isEqualTo(h);
            assertThat(h.askedAtH()).isBetween(0.0, 4.0);
            inside += h.beyondH() == 0 ? 1 : 0;
            assertThat(h.wish()).isBetween(0.0, 1.0);
            assertThat(h.scatter()).isBetween(0.85, 1.15);
        }
        assertThat(inside).isBetween(350, 450);
    }

    @Test
    void aPilotThatNeverAsksWhatTimeItIsIsSeldomPunctualAndPromisesTooMuch() throws InterruptedException {
        HourTrial t = HourTrial.run(OTHER_SEED, new HourTrial.Plan(12, 2, 22, 30),
                Map.of("stubborn", _ -> new Stubborn(26)), _ -> { });
        List<Target> targets = t.targets();
        assertThat(targets).hasSize(2);
        assertThat(targets.get(0).what()).contains("stubborn");
        assertThat(targets.get(0).met()).as("punctual").isFalse();
        assertThat(targets.get(1).got()).as("promises whatever is asked").isEqualTo(1);
        assertThat(t.lines()).anyMatch(l -> l.contains("12 batches")).anyMatch(l -> l.contains("stubborn"));
    }

    @Test
    void theSamePlanComesOutTheSameOnOneThreadAndOnTwo() throws InterruptedException {
        Map<String, Pilot.School> schools = Map.of("stubborn", _ -> new Stubborn(25));
        HourTrial one = HourTrial.run(OTHER_SEED, FEW, schools, _ -> { });
        HourTrial two = HourTrial.run(OTHER_SEED, new HourTrial.Plan(4, 2, 22, 30), schools, _ -> { });
        assertThat(two.lines()).isEqualTo(one.lines());
        assertThat(two.targets()).isEqualTo(one.targets());
    }

    /** Held at either end all along is the window itself: the truth of it is no pilot's opinion. */
    @Test
    void heldWarmerIsSooner() {
        HourRun run = new HourRun(TrialHatch.draw(OTHER_SEED + 3), 1, Switches.SOLID_STATE);
        assertThat(run.held(30)).isLessThan(run.held(26));
        assertThat(run.held(26)).isLessThan(run.held(22));
        HourRun quick = new HourRun(TrialHatch.draw(OTHER_SEED + 3), 1.1, Switches.SOLID_STATE);
        assertThat(quick.held(26)).as("a quick batch").isLessThan(run.held(26));
    }
}

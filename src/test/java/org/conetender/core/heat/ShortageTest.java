package org.conetender.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.conetender.core.heat.Share.Claim;
import org.conetender.core.heat.Share.Credit;
import org.conetender.core.heat.Share.Supply;
import org.conetender.core.heat.Shortage.Heater;
import org.junit.jupiter.api.Test;

/** What a heater is foreseen to have is what it has, second by second, beside water that is held. */
class ShortageTest {

    private static final long[] TURNS_MS = {120_000, 216_000, 576_000};
    private static final int DAY_S = 86_400;

    /** Waters that lose heat, now more and now less; each asks for its heater while it is below its band. */
    private static double lived(Heater own, List<Heater> others, double limitW) {
        List<Heater> all = new ArrayList<>(others);
        all.addFirst(own);
        Credit[] credit = new Credit[all.size()];
        Arrays.fill(credit, Credit.NONE);
        double[] heldS = new double[all.size()];
        boolean[] wants = new boolean[all.size()];
        boolean[] on = new boolean[all.size()];
        Random draught = new Random(1);
        double[] loses = new double[all.size()];
        int had = 0;
        for (int t = 0; t < DAY_S; t++) {
            List<Claim> claims = new ArrayList<>();
            for (int i = 0; i < all.size(); i++) {
                Heater h = all.get(i);
                loses[i] = t % 600 == 0 ? h.duty() * (0.8 + 0.4 * draught.nextDouble()) : loses[i];
                heldS[i] += (on[i] ? 1 : 0) - loses[i];
                double bandS = h.duty() * (1 - h.duty()) * h.turnMs() / 1_000;
                wants[i] = i == 0 || (wants[i] ? heldS[i] < bandS / 2 : heldS[i] < -bandS / 2);
                credit[i] = Share.wanting(credit[i], wants[i] ? Share.Want.ON : Share.Want.OFF, on[i], 1_000);
                claims.add(new Claim("" + i, credit[i], on[i], h.turnMs()));
            }
            Supply supply = Supply.of(limitW, 0);
            for (Claim c : Share.order(claims)) {
                int i = Integer.parseInt(c.cone());
                on[i] = wants[i] && supply.takenW() + all.get(i).watts() <= limitW;
                supply = supply.after(c, all.get(i).watts(), on[i]);
            }
            had += on[0] ? 1 : 0;
        }
        return had / (double) DAY_S;
    }

    private static Heater heater(double watts, double duty) {
        return new Heater(watts, duty, 120_000);
    }

    @Test
    void aSmallHeaterStandsStillWhileALargeOneThatItDoesNotFitBesideRuns() {
        List<Heater> large = List.of(heater(50, 0.2));
        assertThat(Shortage.share(heater(25, 1), large, 60)).isCloseTo(0.8, within(0.03));
        assertThat(lived(heater(25, 1), large, 60)).isCloseTo(0.8, within(0.03));
    }

    @Test
    void allOfItWhereTheLimitLetsAllRunAndNothingWhereItLetsItNever() {
        assertThat(Shortage.share(heater(25, 1), List.of(heater(25, 1), heater(10, 1)), 60)).isEqualTo(1);
        assertThat(Shortage.share(heater(25, 1), List.of(), 20)).isZero();
        assertThat(Shortage.share(heater(25, 1), List.of(heater(50, 0)), 60)).isCloseTo(1, within(0.02));
    }

    /** Where all want all of it, by equal turns. */
    @Test
    void equalTurnsAreTheLeastOfIt() {
        assertThat(Shortage.share(heater(25, 1), List.of(heater(50, 1)), 60)).isCloseTo(0.5, within(0.03));
        assertThat(Shortage.share(heater(25, 1), List.of(heater(25, 1), heater(25, 1)), 60))
                .isCloseTo(2 / 3.0, within(0.04));
    }

    /** Seeded: watts, needs, turns and limits at random. */
    @Test
    void whateverStandsBesideItTheShareIsTheOneItLivesWith() {
        List<Double> off = new ArrayList<>();
        for (int seed = 1; seed <= 60; seed++) {
            Random r = new Random(seed);
            List<Heater> others = new ArrayList<>();
            for (int i = 0; i < 1 + r.nextInt(4); i++) {
                others.add(new Heater(10 + 5 * r.nextInt(19), 0.05 + 0.9 * r.nextDouble(),
                        TURNS_MS[r.nextInt(3)]));
            }
            Heater own = new Heater(10 + 5 * r.nextInt(19), 1, TURNS_MS[r.nextInt(3)]);
            double all = own.watts() + others.stream().mapToDouble(Heater::watts).sum();
            double limitW = own.watts() + r.nextDouble() * (all - own.watts());
            double lived = lived(own, others, limitW);
            double foreseen = Shortage.share(own, others, limitW);
            off.add(foreseen - lived);
        }
        assertThat(off.stream().mapToDouble(d -> d).average().orElseThrow()).as("neither way")
                .isCloseTo(0, within(0.02));
        assertThat(off.stream().mapToDouble(Math::abs).average().orElseThrow()).isLessThan(0.03);
        // Where heaters keep step with each other for hours it depends on who began.
        assertThat(off).allSatisfy(d -> assertThat(d).isCloseTo(0, within(0.2)));
    }
}

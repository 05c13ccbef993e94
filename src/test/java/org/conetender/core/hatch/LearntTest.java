package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.conetender.core.hatch.Learnt.Prior;
import org.conetender.core.hatch.Lesson.At;
import org.conetender.core.hatch.Lesson.Sight;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LearntTest {

    private static final double MID = Math.log(271);

    /** Seen after so many degree-hours in water of that temperature. */
    private static Lesson seen(double degreeHours, double waterC, Sight sight) {
        return new Lesson(new At(degreeHours, degreeHours, degreeHours / (waterC - 12)), sight);
    }

    private static Lesson first(double degreeHours) {
        return seen(degreeHours, 26, new Sight.First());
    }

    private static Lesson none(double degreeHours) {
        return seen(degreeHours, 26, new Sight.NoneYet());
    }

    private static Lesson count(double degreeHours, int nauplii, int rest) {
        return seen(degreeHours, 26, new Sight.Counted(nauplii, 0, rest));
    }

    private static Lesson judged(double degreeHours, Lesson.Word word) {
        return seen(degreeHours, 26, new Sight.Judged(word));
    }

    private static Speed learnt(List<List<Lesson>> others, Lesson... own) {
        return Learnt.of(Prior.UNKNOWN, others, List.of(own));
    }

    @Test
    void withoutALessonALotIsWhatAnyLotIs() {
        assertThat(learnt(List.of())).isEqualTo(Speed.UNKNOWN_LOT);
        assertThat(learnt(List.of(List.of()))).isEqualTo(Speed.UNKNOWN_LOT);
    }

    @Test
    void aLookThatCannotTellAnythingMovesNothing() {
        assertThat(learnt(List.of(), none(40), none(90), count(150, 0, 0))).isEqualTo(Speed.UNKNOWN_LOT);
        assertThat(learnt(List.of(), none(90), none(230))).isEqualTo(learnt(List.of(), none(230)));
        assertThat(learnt(List.of(), none(230)).k50DegreeHours()).isGreaterThan(275);
        Prior slow = new Prior(Math.log(360), 0.05);
        assertThat(Learnt.of(slow, List.of(), List.of(none(150)))).isEqualTo(
                Learnt.of(slow, List.of(), List.of()));
    }

    /** Five unknowns and a random effect for each batch, drawn a million times and weighed one by one. */
    @Test
    void theGridGivesWhatDrawingFromThePriorGives() {
        List<List<Lesson>> others = List.of(List.of(first(170), count(290, 120, 90)),
                List.of(seen(200, 22, new Sight.NoneYet()), seen(230, 22, new Sight.First())));
        List<Lesson> own = List.of(count(250, 60, 110));
        Speed grid = Learnt.of(Prior.UNKNOWN, others, own);
        Random r = new Random(17);
        double[] viables = {0.55, 0.70, 0.82, 0.94};
        double[] upTo = {0.10, 0.35, 0.70, 1.0};
        double[] sum = new double[7];
        for (int i = 0; i < 1_000_000; i++) {
            double k = MID + 0.20 * r.nextGaussian();
            double sigma = 0.10 + 0.18 * r.nextDouble();
            double form = 0.7 * r.nextGaussian();
            double u = r.nextDouble();
            int v = 0;
            while (u > upTo[v]) {
                v++;
            }
            double firstZ = new double[] {-0.45, 0, 0, 0.45}[r.nextInt(4)];
            double log = 0;
            for (List<Lesson> b : others) {
                double c = b.getFirst().at().waterC(12);
                double effect = Math.hypot(0.03, 0.2 / (c - 12)) * r.nextGaussian();
                log += new Odds(b).log(k + form * Doubt.Form.reach(c, 12) + effect, sigma,
                        new Odds.Besides(viables[v], firstZ));
            }
            double mine = Math.hypot(0.03, 0.2 / 14) * r.nextGaussian();
            log += new Odds(own).log(k + form * Doubt.Form.reach(26, 12) + mine, sigma,
                    new Odds.Besides(viables[v], firstZ));
            double w = Math.exp(log);
            double x = k + mine;
            double[] terms = {1, x, x * x, sigma, sigma * sigma, x * sigma, form};
            for (int j = 0; j < sum.length; j++) {
                sum[j] += w * terms[j];
            }
        }
        double x = sum[1] / sum[0];
        double s = sum[3] / sum[0];
        assertThat(Math.log(grid.k50DegreeHours())).isCloseTo(x, within(0.004));
        assertThat(grid.doubt().lot()).isCloseTo(Math.sqrt(sum[2] / sum[0] - x * x), within(0.004));
        assertThat(grid.sigma()).isCloseTo(s, within(0.004));
        assertThat(grid.doubt().spread()).isCloseTo(Math.sqrt(sum[4] / sum[0] - s * s), within(0.004));
        assertThat(grid.doubt().together().lotSpread()).isCloseTo(sum[5] / sum[0] - x * s, within(3e-4));
        assertThat(grid.doubt().form().mean()).isCloseTo(sum[6] / sum[0], within(0.05));
        assertThat(grid.timesSeen()).isEqualTo(3);
    }

    @Test
    void theOrderOfTheLessonsDoesNotMatter() {
        List<List<Lesson>> batches = new ArrayList<>(List.of(
                new ArrayList<>(List.of(none(140), first(165), count(270, 80, 70))),
                new ArrayList<>(List.of(first(180), judged(350, Lesson.Word.RIGHT))),
                new ArrayList<>(List.of(judged(300, Lesson.Word.TOO_EARLY)))));
        Speed before = learnt(batches, none(100));
        Collections.reverse(batches);
        batches.forEach(Collections::reverse);
        Speed after = learnt(batches, none(100));
        assertThat(after.k50DegreeHours()).isCloseTo(before.k50DegreeHours(), within(1e-7));
        assertThat(after.sigma()).isCloseTo(before.sigma(), within(1e-9));
        assertThat(after.doubt().lot()).isCloseTo(before.doubt().lot(), within(1e-9));
    }

    static Stream<Lesson> looks() {
        return Stream.of(none(150), first(170), first(260), count(270, 5_000, 4_000), count(270, 50, 40),
                count(300, 1_000_000, 200_000), judged(340, Lesson.Word.RIGHT),
                judged(340, Lesson.Word.TOO_EARLY), judged(340, Lesson.Word.LATE));
    }

    @ParameterizedTest
    @MethodSource("looks")
    void oneLookIsNeverConfident(Lesson look) {
        Speed of = learnt(List.of(List.of(look)));
        assertThat(of.known()).isFalse();
        assertThat(of.doubt().logSdAt(Normal.Z90)).isGreaterThan(0.08);
        assertThat(learnt(List.of(), look).doubt().logSdAt(Normal.Z90)).isGreaterThan(0.07);
    }

    /** A batch that was looked at four times: K50 250, sigma 0.15, nine in ten can hatch. */
    private static List<Lesson> followed(double waterC) {
        return List.of(seen(176, waterC, new Sight.First()), seen(200, waterC, new Sight.Counted(9, 6, 135)),
                seen(250, waterC, new Sight.Counted(67, 13, 70)),
                seen(400, waterC, new Sight.Counted(135, 0, 15)));
    }

    @Test
    void manyLooksAtOneBatchAreNeverWorthMoreThanOneBatch() {
        List<Lesson> often = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            often.addAll(followed(26).subList(1, 4));
        }
        double once = learnt(List.of(often)).doubt().lot();
        assertThat(once).isGreaterThan(Math.hypot(0.03, 0.2 / 14) * 0.95);
        assertThat(learnt(Collections.nCopies(10, followed(26))).doubt().lot()).isLessThan(once * 0.7);
    }

    @Test
    void everyLookMovesTheLotTheWayItMust() {
        assertThat(learnt(List.of(List.of(first(130)))).k90()).isLessThan(Speed.UNKNOWN_LOT.k90());
        for (double late : new double[] {160, 200, 240, 300, 400}) {
            assertThat(learnt(List.of(List.of(first(late)))).k90()).as("no look before it: they came by then")
                    .isLessThanOrEqualTo(Speed.UNKNOWN_LOT.k90() + 0.5);
        }
        assertThat(learnt(List.of(List.of(none(230), first(260)))).k90())
                .isGreaterThan(Speed.UNKNOWN_LOT.k90());
        assertThat(learnt(List.of(List.of(none(230)))).k90())
                .isGreaterThan(learnt(List.of(List.of(none(120)))).k90() + 20);
        double right = learnt(List.of(List.of(judged(340, Lesson.Word.RIGHT)))).k90();
        assertThat(learnt(List.of(List.of(judged(340, Lesson.Word.TOO_EARLY)))).k90())
                .isGreaterThan(right + 10);
        assertThat(learnt(List.of(List.of(judged(340, Lesson.Word.LATE)))).k90()).isLessThan(right - 10);
    }

    @Test
    void aLookInVainShutsOutWhatCameBeforeIt() {
        double alone = learnt(List.of(List.of(first(260)))).k50DegreeHours();
        double between = learnt(List.of(List.of(none(200), first(260)))).k50DegreeHours();
        double late = learnt(List.of(List.of(none(245), first(260)))).k50DegreeHours();
        assertThat(between).isGreaterThan(alone + 5);
        assertThat(late).isGreaterThan(between + 2);
        // Of two looks in vain the later one counts, and an earlier one told afterwards says nothing.
        assertThat(learnt(List.of(List.of(none(10), none(200), first(260)))).k50DegreeHours())
                .isCloseTo(between, within(1e-9));
        assertThat(learnt(List.of(List.of(none(200), first(260), none(100)))).k50DegreeHours())
                .isCloseTo(between, within(1e-9));
        assertThat(learnt(List.of(List.of(none(245), first(260)))).doubt().lot())
                .isLessThan(learnt(List.of(List.of(first(260)))).doubt().lot());
    }

    /** All cones are looked at in the morning: what hatched at night must not make three lots slow. */
    @Test
    void threeBatchesFirstSeenAtBreakfastAreNoProofOfASlowLot() {
        Speed s = learnt(Collections.nCopies(2, List.of(first(300))), first(300));
        assertThat(s.known()).isFalse();
        assertThat(s.k50DegreeHours()).isBetween(260.0, 320.0);
        assertThat(s.doubt().lot()).isGreaterThan(0.12);
    }

    @Test
    void oneSlipAmongManyLooksIsOverruled() {
        List<List<Lesson>> good = new ArrayList<>(Collections.nCopies(5, List.of(count(270, 90, 90))));
        double before = learnt(good).k50DegreeHours();
        good.add(List.of(first(60)));
        assertThat(learnt(good).k50DegreeHours()).isCloseTo(before, within(0.04 * before));
    }

    @Test
    void whatWasLearntInWarmWaterIsLessSureInCold() {
        Speed lot = learnt(Collections.nCopies(6, followed(29)));
        assertThat(lot.at(29, 12).doubt().lot()).isLessThan(lot.at(22, 12).doubt().lot() - 0.02);
        Speed both = learnt(Stream.of(22, 24, 26, 27, 28, 29).map(LearntTest::followed).toList());
        assertThat(both.at(22, 12).doubt().lot()).isLessThan(lot.at(22, 12).doubt().lot() - 0.015);
    }

    @Test
    void otherLotsOfItsSourceMoveALotHalfwayAtMost() {
        Speed slow = new Speed(330, 0.15, 0.03, 5);
        Prior one = Prior.of(List.of(slow));
        Prior four = Prior.of(Collections.nCopies(4, slow));
        assertThat(Prior.of(List.of()).lnK50()).isCloseTo(MID, within(1e-12));
        assertThat(Prior.of(List.of()).sd()).isCloseTo(0.20, within(1e-12));
        assertThat(one.lnK50()).isBetween(MID, MID + (Math.log(330) - MID) / 3);
        assertThat(four.lnK50()).isBetween(one.lnK50(), Math.log(330) - 0.05);
        assertThat(four.sd()).isBetween(0.17, one.sd());
        assertThat(Learnt.of(four, List.of(), List.of()).k50DegreeHours())
                .isCloseTo(Math.exp(four.lnK50()), within(0.5));
    }

    /** A look in vain at the very beginning tells nothing, and so moves nothing. */
    @Test
    void aReportThatTellsNothingMovesNoHour() {
        Speed s = Learnt.of(Prior.UNKNOWN, List.of(), List.of(none(60), first(150)));
        Speed heard = Learnt.of(new Prior(MID, 0.20), List.of(List.of(none(60))), List.of(none(90)));
        assertThat(s.k90()).isLessThan(0.9 * Speed.UNKNOWN_LOT.k90());
        assertThat(heard.k90()).isCloseTo(Speed.UNKNOWN_LOT.k90(), within(0.5));
        assertThat(heard.calledReadyAt()).isCloseTo(Speed.UNKNOWN_LOT.calledReadyAt(), within(1.0));
    }

    /** What was believed of each of them before counts once, not once for each. */
    @Test
    void kinOfWhichNothingWasSeenTellNothing() {
        Prior none = Prior.of(Collections.nCopies(9, Speed.UNKNOWN_LOT));
        assertThat(none.lnK50()).isCloseTo(MID, within(1e-12));
        assertThat(none.sd()).isCloseTo(0.20, within(1e-12));
        Speed hardly = new Speed(330, 0.15, 0.19, 1);
        assertThat(Prior.of(List.of(hardly, hardly)).sd()).isBetween(0.195, 0.20);
    }

    /** Lots, batches and looks drawn from the model itself. */
    @Test
    void ofTenHarvestPointsEightLieWhereTheyWereSaidTo() {
        Random r = new Random(55);
        int inside = 0;
        int below = 0;
        int n = 400;
        for (int i = 0; i < n; i++) {
            double k = MID + 0.20 * r.nextGaussian();
            double sigma = 0.10 + 0.18 * r.nextDouble();
            double viable = new double[] {0.6, 0.7, 0.7, 0.8, 0.8, 0.9, 0.9, 0.97}[r.nextInt(8)];
            double eyes = 0.32 * r.nextGaussian();
            List<List<Lesson>> others = new ArrayList<>();
            for (int b = 0; b < 1 + i % 3; b++) {
                double batch = k + Math.hypot(0.03, 0.2 / 14) * r.nextGaussian();
                double seen = batch + sigma * (-2.326 + eyes + 0.35 * r.nextGaussian());
                double dh = Math.exp(seen) + 7 * r.nextGaussian();
                double at = 230 + r.nextInt(90);
                int nauplii = 0;
                for (int a = 0; a < 60; a++) {
                    nauplii += r.nextDouble() < viable * Normal.share((Math.log(at) - batch) / sigma) ? 1 : 0;
                }
                others.add(List.of(none(dh - 14), first(dh), count(at, nauplii, 60 - nauplii)));
            }
            Speed s = Learnt.of(Prior.UNKNOWN, others, List.of()).at(26, 12);
            double shape = 0.02 * r.nextGaussian();
            double truth = k + 0.03 * r.nextGaussian() + shape + sigma * Normal.Z90;
            double z = (truth - Math.log(s.k90())) / s.logSdAt(Normal.Z90);
            inside += Math.abs(z) < Normal.Z90 ? 1 : 0;
            below += z < 0 ? 1 : 0;
        }
        assertThat(inside / (double) n).isBetween(0.74, 0.87);
        assertThat(below / (double) n).isBetween(0.40, 0.60);
    }

    private static List<Lesson> watched(double degreeHours) {
        return List.of(none(0.9 * degreeHours), first(degreeHours));
    }

    /** Whatever speed was told, a report moves it as far, and the way it points. */
    @ParameterizedTest
    @ValueSource(doubles = {100, 180, 271, 500, 800})
    void aLotThatIsToldToBeVerySlowOrQuickLearnsAsAnyOther(double told) {
        Prior prior = new Prior(Math.log(told), 0.10);
        Prior usual = new Prior(MID, 0.10);
        for (double share : new double[] {0.5, 0.65, 0.8, 1}) {
            double expected = Learnt.of(usual, List.of(), watched(share * 271)).k50DegreeHours() / 271;
            double here = Learnt.of(prior, List.of(), watched(share * told)).k50DegreeHours() / told;
            assertThat(here).as("seen at %s of it", share).isCloseTo(expected, within(0.001));
        }
        assertThat(Learnt.of(prior, List.of(), List.of(none(told))).k50DegreeHours())
                .isBetween(1.03 * told, 1.4 * told);
        assertThat(Learnt.of(prior, List.of(), List.of(count(told, 180, 20))).k50DegreeHours())
                .isBetween(0.7 * told, 0.97 * told);
    }
}

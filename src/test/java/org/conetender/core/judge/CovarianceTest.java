package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/** The shortened arithmetic against whole matrices. All numbers are about 1, so that one tolerance does. */
class CovarianceTest {

    private static final int N = Covariance.N;
    private static final double NOISE = 0.3;
    private static final double[] ADDED = {0.01, 0.02, 0.003, 0.001, 0.002, 0};

    /** The whole matrix, out of a step that makes the first number a copy of another. */
    private static RealMatrix whole(Covariance c) {
        RealMatrix m = MatrixUtils.createRealMatrix(N, N);
        for (int i = 0; i < N; i++) {
            double[] copy = new double[N];
            copy[i] = 1;
            Covariance first = c.stepped(copy, 1, new double[N]);
            assertThat(first.variance(0)).isCloseTo(c.variance(i), within(1e-12));
            for (int j = 1; j < N; j++) {
                m.setEntry(i, j, first.withFirst(j));
            }
            m.setEntry(i, 0, c.withFirst(i));
        }
        return m;
    }

    private static RealMatrix stepped(RealMatrix p, double[] g, double keep) {
        RealMatrix f = MatrixUtils.createRealIdentityMatrix(N);
        f.setRow(0, g);
        f.setEntry(1, 1, keep);
        RealMatrix n = f.multiply(p).multiply(f.transpose());
        for (int i = 0; i < N; i++) {
            n.addToEntry(i, i, ADDED[i]);
        }
        return n;
    }

    private static RealMatrix read(RealMatrix p) {
        RealVector first = p.getColumnVector(0);
        RealMatrix n = p.subtract(first.outerProduct(first).scalarMultiply(1 / (p.getEntry(0, 0) + NOISE)));
        n.setEntry(N - 1, N - 1, p.getEntry(N - 1, N - 1));
        return n;
    }

    private static double[] weights(Random random) {
        return new double[] {0.9 + 0.1 * random.nextDouble(), random.nextDouble(), random.nextDouble(),
            -random.nextDouble(), random.nextDouble() - 0.5, random.nextDouble() - 0.5};
    }

    private static void assertSame(Covariance got, RealMatrix wanted) {
        assertThat(whole(got).subtract(wanted).getNorm1()).isLessThan(1e-9 * (1 + wanted.getNorm1()));
    }

    @Test
    void itIsTheMatrixArithmeticOfAKalmanFilter() {
        for (int seed = 1; seed <= 20; seed++) {
            Random random = new Random(seed);
            Covariance c = Covariance.independent(1, 0.5, 0.7, 0.2, 1.5, 0.8);
            RealMatrix p = MatrixUtils.createRealDiagonalMatrix(
                    new double[] {1, 0.25, 0.49, 0.04, 2.25, 0.64});
            assertSame(c, p);
            for (int i = 0; i < 100; i++) {
                double[] g = weights(random);
                double keep = 0.9 + 0.1 * random.nextDouble();
                c = c.stepped(g, keep, ADDED);
                p = stepped(p, g, keep);
                assertSame(c, p);
                if (random.nextBoolean()) {
                    c = c.read(c.variance(0) + NOISE);
                    p = read(p);
                    assertSame(c, p);
                }
            }
        }
    }

    @Test
    void aReadingNeverWidensADoubt() {
        Random random = new Random(5);
        Covariance c = Covariance.independent(1, 1, 1, 1, 1, 1);
        for (int i = 0; i < 2_000; i++) {
            Covariance before = c.stepped(weights(random), 0.95, ADDED);
            c = before.read(before.variance(0) + NOISE);
            for (int j = 0; j < N; j++) {
                assertThat(c.variance(j)).isBetween(0.0, before.variance(j));
            }
            assertThat(c.variance(0)).as("what was read is known as well as it was read")
                    .isLessThan(NOISE);
        }
    }

    @Test
    void doubtsStayDoubtsThroughTenThousandReadings() {
        Random random = new Random(6);
        Covariance c = Covariance.independent(1, 1, 1, 1, 1, 1);
        for (int i = 1; i <= 10_000; i++) {
            c = c.stepped(weights(random), 0.95, ADDED);
            c = c.read(c.variance(0) + NOISE);
            if (i % 500 == 0) {
                RealMatrix m = whole(c);
                assertThat(m.subtract(m.transpose()).getNorm1()).as("symmetric").isLessThan(1e-9);
                for (double e : new EigenDecompositionSymmetric(m).getEigenvalues()) {
                    assertThat(e).as("no direction is known better than perfectly").isGreaterThan(-1e-12);
                }
            }
        }
    }

    @Test
    void whatNothingTellsOfStaysAsDoubtful() {
        Covariance c = Covariance.independent(1, 1, 1, 1, 1, 1);
        for (int i = 0; i < 1_000; i++) {
            c = c.stepped(new double[] {1, 0.1, 0, 0, 0, 0}, 1, new double[N]).read(2);
        }
        assertThat(c.variance(2)).isEqualTo(1);
        assertThat(c.variance(3)).isEqualTo(1);
        assertThat(c.variance(1)).as("while what moves the reading is found").isLessThan(0.1);
    }
}

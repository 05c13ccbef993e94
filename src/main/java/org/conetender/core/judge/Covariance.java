package org.conetender.core.judge;

/**
 * The doubts of the five numbers of {@link Estimate} and how they hang together: a symmetric matrix, of
 * which a step changes one row and one diagonal only, and a reading everything. Immutable.
 */
final class Covariance {

    static final int N = 5;

    private final double[] p;

    private Covariance(double[] p) {
        this.p = p;
    }

    /** Independent doubts. @param sd standard deviations */
    static Covariance independent(double... sd) {
        double[] p = new double[N * N];
        for (int i = 0; i < N; i++) {
            p[i * N + i] = sd[i] * sd[i];
        }
        return new Covariance(p);
    }

    double variance(int i) {
        return p[i * N + i];
    }

    /** Doubt that the number {@code i} shares with the first. */
    double withFirst(int i) {
        return p[i];
    }

    /**
     * After a step in which the first number becomes the sum of all, weighted, and the second decays.
     *
     * @param g weights, five
     * @param keep what remains of the second
     * @param addedFirst variance that the first gains  @param addedSecond variance that the second gains
     */
    Covariance stepped(double[] g, double keep, double addedFirst, double addedSecond) {
        double[] n = p.clone();
        double s0 = g[0] * p[0] + g[1] * p[1] + g[2] * p[2] + g[3] * p[3] + g[4] * p[4];
        double s1 = g[0] * p[1] + g[1] * p[6] + g[2] * p[7] + g[3] * p[8] + g[4] * p[9];
        double s2 = g[0] * p[2] + g[1] * p[7] + g[2] * p[12] + g[3] * p[13] + g[4] * p[14];
        double s3 = g[0] * p[3] + g[1] * p[8] + g[2] * p[13] + g[3] * p[18] + g[4] * p[19];
        double s4 = g[0] * p[4] + g[1] * p[9] + g[2] * p[14] + g[3] * p[19] + g[4] * p[24];
        n[0] = g[0] * s0 + g[1] * s1 + g[2] * s2 + g[3] * s3 + g[4] * s4 + addedFirst;
        n[1] = keep * s1;
        n[2] = s2;
        n[3] = s3;
        n[4] = s4;
        n[6] = keep * keep * p[6] + addedSecond;
        n[7] = keep * p[7];
        n[8] = keep * p[8];
        n[9] = keep * p[9];
        return new Covariance(n);
    }

    /** After the first number was read. @param variance of the difference between reading and number */
    Covariance read(double variance) {
        double[] n = p.clone();
        double w = 1 / variance;
        for (int i = 0; i < N; i++) {
            double k = p[i] * w;
            for (int j = i; j < N; j++) {
                n[i * N + j] -= k * p[j];
            }
        }
        return new Covariance(n);
    }
}

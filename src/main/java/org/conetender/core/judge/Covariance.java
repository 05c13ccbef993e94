package org.conetender.core.judge;

/**
 * The doubts of the five numbers of {@link Estimate}, and of a sixth that is not learned but makes them
 * doubtful, and how they hang together: a symmetric matrix, of which a step changes one row and one
 * diagonal only, and a reading everything but the doubt of the sixth. Immutable.
 */
final class Covariance {

    static final int N = 6;
    private static final int LAST = N * N - 1;

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
     * @param g weights, six
     * @param keep what remains of the second
     * @param added variance that each gains, six
     */
    Covariance stepped(double[] g, double keep, double[] added) {
        double[] n = p.clone();
        double first = added[0];
        for (int j = 0; j < N; j++) {
            double sum = 0;
            for (int i = 0; i < N; i++) {
                sum += g[i] * p[i <= j ? i * N + j : j * N + i];
            }
            first += g[j] * sum;
            n[j] = j == 1 ? keep * sum : sum;
        }
        n[0] = first;
        n[N + 1] = keep * keep * p[N + 1] + added[1];
        for (int j = 2; j < N; j++) {
            n[N + j] = keep * p[N + j];
            n[j * N + j] += added[j];
        }
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
        // A number that is only reckoned with stays as doubtful as it was.
        n[LAST] = p[LAST];
        return new Covariance(n);
    }
}

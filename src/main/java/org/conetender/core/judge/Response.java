package org.conetender.core.judge;

/**
 * How much of its heater's power the water shows, whatever it loses meanwhile: least squares through the
 * readings with four unknown, where the water was, what it loses apart from the room and towards it, and
 * the share of power that arrives. Losses act in the pauses too and heat does not, so pulses tell them
 * apart; what the configuration says of losses is only a wide guess to begin with. Immutable.
 */
final class Response {

    private static final int N = 4;
    private static final int SHARE = 3;
    /** What a reading is off by, K: noise and step of a probe, and what mixes (control.md §2.3, widened). */
    private static final double READING_K = 0.04;
    /** Losses over nominal: half to three and a half, for bubbles and open lids (science.md §9). */
    private static final double[] LOSS = {1.5, 1.0};
    /** Share of power before anything was seen: dead and sound alike (guess). */
    private static final double[] POWER = {0.5, 1.0};
    /** Evaporation and a room that nobody measures, as K over the room (guess). */
    private static final double[] APART_K = {2, 6};
    /** A second older than this counts little: lids and rooms change, s (guess). */
    private static final double FORGOTTEN_S = 2_400;

    /** Nothing was seen. */
    static final Response NONE = new Response(new double[N * N], new double[N], new double[N]);

    private final double[] info;
    private final double[] seen;
    /** What the water should show of each unknown now. */
    private final double[] way;

    private Response(double[] info, double[] seen, double[] way) {
        this.info = info;
        this.seen = seen;
        this.way = way;
    }

    /**
     * A step later.
     *
     * @param p what the cone is like, by its configuration
     * @param felt of full power by the reading, 0..1
     * @param dtS length of the step, s
     * @param overK what was read, over where the water was at first, K; NaN where nothing was
     */
    Response after(HeatTrack.Physics p, double felt, double dtS, double overK) {
        double[] w = {1, way[1] - p.lossPerS() * dtS, way[2] - p.lossKPerS() * dtS,
                way[SHARE] + p.slopeKPerS() * felt * dtS};
        double keep = Math.exp(-dtS / FORGOTTEN_S);
        double weight = Double.isNaN(overK) ? 0 : 1 / (READING_K * READING_K);
        double[] in = new double[N * N];
        double[] s = new double[N];
        for (int i = 0; i < N; i++) {
            s[i] = keep * seen[i] + (weight == 0 ? 0 : weight * w[i] * overK);
            for (int j = 0; j < N; j++) {
                in[i * N + j] = keep * info[i * N + j] + weight * w[i] * w[j];
            }
        }
        return new Response(in, s, w);
    }

    /** @param mean share of full power that arrives  @param doubt its standard deviation */
    record Share(double mean, double doubt) {}

    /** What has been shown so far. */
    Share share() {
        double[][] a = new double[N][N + 2];
        double[] mean = {0, APART_K[0], LOSS[0], POWER[0]};
        double[] sd = {1, APART_K[1], LOSS[1], POWER[1]};
        for (int i = 0; i < N; i++) {
            System.arraycopy(info, i * N, a[i], 0, N);
            a[i][i] += 1 / (sd[i] * sd[i]);
            a[i][N] = seen[i] + mean[i] / (sd[i] * sd[i]);
            a[i][N + 1] = i == SHARE ? 1 : 0;
        }
        // Elimination downwards leaves the last unknown alone in the last row.
        for (int k = 0; k < SHARE; k++) {
            for (int i = k + 1; i < N; i++) {
                double f = a[i][k] / a[k][k];
                for (int j = k; j < N + 2; j++) {
                    a[i][j] -= f * a[k][j];
                }
            }
        }
        double pivot = a[SHARE][SHARE];
        return new Share(a[SHARE][N] / pivot, Math.sqrt(1 / pivot));
    }
}

package org.conetender.sim.trial;

/**
 * What became of one run, all of the true water.
 *
 * @param warmS seconds from cold to within 0.2 °C; negative if it never came
 * @param overshootK beyond the set-point in the two hours after, K; 0 or more
 * @param rmsK root mean square error of the day after that, K
 * @param peakK largest error of that day, K
 * @param cycles switchings on in that day
 * @param excess cycles over the least that the mean ripple allows: 86400·rise·D(1−D)/ripple
 */
record Measures(double warmS, double overshootK, double rmsK, double peakK, double cycles, double excess) {

    private static final double DAY_S = 86_400;

    /** Takes them, second by second. */
    static final class Taker {

        private final double setpointC;
        private double overshootK;
        private double squares;
        private double peakK;
        private int seconds;
        private int onSeconds;
        private int cycles;
        private double lowC = Double.MAX_VALUE;
        private double highC = -Double.MAX_VALUE;
        private double ripplesK;
        private int ripples;

        Taker(double setpointC) {
            this.setpointC = setpointC;
        }

        void take(double waterC, boolean warming, boolean on, boolean was) {
            double errorK = waterC - setpointC;
            if (warming) {
                overshootK = Math.max(overshootK, errorK);
                return;
            }
            seconds++;
            squares += errorK * errorK;
            peakK = Math.max(peakK, Math.abs(errorK));
            onSeconds += on ? 1 : 0;
            if (on && !was) {
                ripple();
            }
            lowC = Math.min(lowC, waterC);
            highC = Math.max(highC, waterC);
        }

        private void ripple() {
            if (cycles++ > 0) {
                ripplesK += highC - lowC;
                ripples++;
            }
            lowC = Double.MAX_VALUE;
            highC = -Double.MAX_VALUE;
        }

        Measures taken(int warmS, double riseKPerS) {
            double days = seconds / DAY_S;
            double duty = onSeconds / (double) Math.max(1, seconds);
            double least = ripples == 0 ? Double.NaN
                    : DAY_S * riseKPerS * duty * (1 - duty) / (ripplesK / ripples);
            return new Measures(warmS, overshootK, Math.sqrt(squares / Math.max(1, seconds)), peakK,
                    cycles / days, cycles / days / least);
        }
    }
}

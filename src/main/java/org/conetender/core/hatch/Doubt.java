package org.conetender.core.hatch;

/**
 * How uncertain a lot's figures are, and together with what: what is learnt of one figure is mostly learnt of
 * another with it. First nauplii alone, for instance, do not tell a slow lot that is spread wide from a quick
 * one that hatches at once, and the harvest point lies on the far side of both.
 *
 * @param lot standard deviation of ln K50 at {@value Rate#ANCHOR_C} °C
 * @param batch standard deviation by which this batch differs from its lot, as far as {@code lot} lacks it
 * @param spread standard deviation of sigma
 * @param form how the lot answers to temperature
 * @param together covariances
 */
public record Doubt(double lot, double batch, double spread, Form form, Together together) {

    /**
     * The lower threshold of the lot, as a part of the way from ours (0) to the other published one (1).
     *
     * @param mean of it  @param sd its standard deviation
     */
    public record Form(double mean, double sd) {

        /** The other published lower threshold, °C (science.md §1 and §2.3: A. sinica, 9.07). */
        private static final double OTHER_BASE_C = 9.07;

        /** ln K50 is never taken to depend on the threshold by more than twice this (*guess*). */
        static final double MOST = 0.3;

        /**
         * The two published thresholds are taken for two draws of what lots have: such a pair lies apart by
         * the square root of two of one's standard deviation (*guess*).
         */
        static final Form UNKNOWN = new Form(0, 0.7);
        static final Form SETTLED = new Form(0, 0);

        /**
         * By how much ln K50 differs there from what it is at {@value Rate#ANCHOR_C} °C, if the other
         * threshold holds.
         */
        static double reach(double waterC, double baseC) {
            double ours = (Rate.ANCHOR_C - baseC) / Math.max(1, waterC - baseC);
            double theirs = (Rate.ANCHOR_C - OTHER_BASE_C) / Math.max(1, waterC - OTHER_BASE_C);
            return Math.clamp(Math.log(theirs / ours), -2 * MOST, 2 * MOST);
        }
    }

    /** @param lotSpread of ln K50 and sigma  @param lotForm of ln K50 and form  @param spreadForm the rest */
    public record Together(double lotSpread, double lotForm, double spreadForm) {
        static final Together NOTHING = new Together(0, 0, 0);
    }

    /** Batches of one lot differ by this log-sd (*guess*; no published figure). */
    static final double BATCH_LOG_SD = 0.03;

    /**
     * Whether hatch times are really lognormal: from counts before the middle a chain of equal stages, as
     * widely spread, comes to 90 % two or three hundredths sooner (science.md §3.4; derived for sigma 0.19).
     */
    private static final double SHAPE_LOG_SD = 0.02;

    /** Of a lot whose speed alone was told. */
    static Doubt told(double logSdOfK50, double spread) {
        return new Doubt(logSdOfK50, BATCH_LOG_SD, spread, Form.UNKNOWN, Together.NOTHING);
    }

    boolean possible() {
        double sum = lot + batch + spread + form.sd() + Math.abs(form.mean()) + Math.abs(together.lotSpread())
                + Math.abs(together.lotForm()) + Math.abs(together.spreadForm());
        return lot >= 0 && lot < 2 && batch >= 0 && spread >= 0 && form.sd() >= 0 && sum < 100;
    }

    /** At another temperature, for good. @param reach {@link Form#reach} */
    Doubt at(double reach) {
        double kk = lot * lot + 2 * reach * together.lotForm() + reach * reach * form.sd() * form.sd();
        return new Doubt(Math.sqrt(Math.max(0, kk)), batch, spread, Form.SETTLED,
                new Together(together.lotSpread() + reach * together.spreadForm(), 0, 0));
    }

    /** Log-sd of this batch's degree-hours at a share, {@code z} being that share's standard score. */
    double logSdAt(double z) {
        double shape = SHAPE_LOG_SD * z / Normal.Z90;
        return Math.sqrt(shape * shape + Math.max(0, lot * lot + batch * batch
                + 2 * z * together.lotSpread() + z * z * spread * spread));
    }
}

package org.conetender.sim;

import java.util.SplittableRandom;
import org.conetender.core.settings.Cone.HeatKind;

/**
 * The water of one cone and its heater (science.md §9). Two layers of equal volume: air keeps them one;
 * without air an immersed heater warms the upper one. All states are public truth in °C, litres and ppt.
 */
public final class Plant {

    /**
     * @param kind how heat reaches the water
     * @param watts rating of the heater
     * @param litres what the cone holds when filled as usual
     * @param quirks how this one differs from the book
     */
    public record Build(HeatKind kind, double watts, double litres, Quirks quirks) {}

    /**
     * @param lagS time constant of the heater, 20 to 90 s (control.md, head note; a bath is slower)
     * @param loss factor on the dry losses
     * @param draught factor on evaporation from the surface; 0.6 gives the open surface of science.md §9
     */
    public record Quirks(double lagS, double loss, double draught) {
        static final Quirks BOOK = new Quirks(45, 1, 0.6);

        static Quirks draw(HeatKind kind, SplittableRandom random) {
            double lag = kind == HeatKind.BATH ? 300 : random.nextDouble(20, 90);
            return new Quirks(lag, Seeds.logFactor(random, 0.1), random.nextDouble(0.45, 0.9));
        }
    }

    /** Bare wall, W/(m²·K) (science.md §9). */
    private static final double WALL = 9.5;
    /** Open surface without evaporation, W/(m²·K) (science.md §9, radiation and convection parts). */
    private static final double OPEN_DRY = 9.5;
    /** Under a lid, W/(m²·K), of which the rest up to about 10 is evaporation (science.md §9). */
    private static final double LID_DRY = 7.5;
    /** What a lid leaves of the evaporation: with LID_DRY it makes the 10 W/(m²·K) of science.md §9. */
    private static final double LID_EVAPORATION = 0.16;
    /** Lewis relation, m/s (science.md §9). */
    private static final double EVAPORATION_M_PER_S = 0.0047;
    /** Air: density times specific heat, J/(m³·K), textbook. */
    private static final double AIR_J_PER_M3_K = 1_206;
    /** Bubbles stir in 10 to 15 s (science.md §9). */
    private static final double STIRRED_S = 12;
    /** Cold water over warm turns over by itself in this time (guess). */
    private static final double OVERTURN_S = 30;
    /** Warm over cold mixes only slowly (guess). */
    private static final double QUIET_S = 2_400;
    /** Below this share of the usual fill an immersed heater is dry and the level contact open (guess). */
    private static final double HEATER_AT = 0.4;
    private static final double EMPTY_LITRES = 0.02;
    private static final double RENEW_S = 60;
    private static final double AIR_MIXES_LPM = 0.05;

    /** What was drawn of it. */
    public final Build build;
    private final Room room;
    private final Element element;
    private double litres;
    private double ppt;
    private double upperC;
    private double lowerC;
    private boolean lid = true;
    private double layerJPerK;
    private double wallWPerK;
    private double topM2;
    private double evaporatedKg;
    private double sinceS;

    public Plant(Build build, Room room) {
        this.build = build;
        this.room = room;
        this.upperC = room.airC();
        this.lowerC = upperC;
        this.element = new Element(build.kind, build.watts, build.quirks.lagS);
        renew();
    }

    /**
     * One step.
     *
     * @param heaterW electrical power that really reaches the heater
     * @param lampW light and heat that the lamps leave in the water
     * @param airLpm air that really bubbles through, L/min
     * @param seconds at most about 10, for the heater's sake
     */
    public void step(double heaterW, double lampW, double airLpm, double seconds) {
        boolean immersed = build.kind == HeatKind.IMMERSED;
        boolean warms = immersed ? heaterCovered() : waterPresent();
        double aroundC = !warms ? Double.NaN : immersed ? upperC : waterC();
        double intoWater = element.step(heaterW, aroundC, room.airC(), seconds);
        if (!waterPresent()) {
            upperC = room.airC();
            lowerC = upperC;
            return;
        }
        boolean stirred = airLpm > AIR_MIXES_LPM;
        double leaves = surface(airLpm, seconds);
        double wall = wallWPerK / 2;
        // A plume from an immersed heater rises; without stirring its heat stays above.
        double aloft = immersed && !stirred ? 1 : 0.5;
        double k = seconds / layerJPerK;
        upperC += k * (aloft * intoWater + lampW / 2 - leaves - wall * (upperC - room.airC()));
        lowerC += k * ((1 - aloft) * intoWater + lampW / 2 - wall * (lowerC - room.airC()));
        mix(stirred ? STIRRED_S : upperC < lowerC ? OVERTURN_S : QUIET_S, seconds);
        sinceS += seconds;
        if (sinceS >= RENEW_S) {
            renew();
        }
    }

    /** Heat that leaves through the surface and with the bubbles, W; also counts what evaporates. */
    private double surface(double airLpm, double seconds) {
        double warmerK = upperC - room.airC();
        double dryness = Brine.vapourKgPerM3(upperC, ppt) - room.vapourKgPerM3();
        double lidded = lid ? LID_EVAPORATION : 1;
        double airM3PerS = airLpm / 60_000;
        double kgPerS = dryness * (topM2 * EVAPORATION_M_PER_S * build.quirks.draught * lidded + airM3PerS);
        evaporatedKg += kgPerS * seconds;
        double dry = topM2 * (lid ? LID_DRY : OPEN_DRY) * build.quirks.loss + airM3PerS * AIR_J_PER_M3_K;
        return dry * warmerK + kgPerS * Brine.latentJPerKg(upperC);
    }

    private void mix(double withinS, double seconds) {
        double mean = (upperC + lowerC) / 2;
        // Rational instead of exponential: never overshoots, and is quick.
        double keep = 1 / (1 + seconds / withinS);
        upperC = mean + (upperC - mean) * keep;
        lowerC = mean + (lowerC - mean) * keep;
    }

    /** What changes slowly: volume, salt, areas, heat capacity. */
    private void renew() {
        sinceS = 0;
        if (evaporatedKg != 0 && waterPresent()) {
            double before = litres;
            litres = Math.max(EMPTY_LITRES, litres - evaporatedKg);
            ppt *= before / litres;
        }
        evaporatedKg = 0;
        double holding = Math.max(litres, EMPTY_LITRES);
        Vessel vessel = Vessel.holding(holding);
        wallWPerK = vessel.wallM2() * WALL * build.quirks.loss;
        topM2 = vessel.topM2();
        layerJPerK = Brine.joulesPerKelvin(holding, waterC(), ppt) / 2;
    }

    /** Pours in water and lets it mix. @param more litres  @param degreesC of it  @param saltPpt of it */
    public void pour(double more, double degreesC, double saltPpt) {
        double old = waterPresent() ? litres : 0;
        double all = old + more;
        double mixedC = (old * waterC() + more * degreesC) / all;
        ppt = (old * ppt + more * saltPpt) / all;
        litres = all;
        upperC = mixedC;
        lowerC = mixedC;
        renew();
    }

    /** Lets water out at the bottom. @return litres that came; at most what was there */
    public double drain(double wanted) {
        double out = Math.min(wanted, litres);
        litres -= out;
        if (!waterPresent()) {
            litres = 0;
        }
        renew();
        return out;
    }

    /** Salt is stirred in until the water has this much, ppt. */
    public void salt(double saltPpt) {
        ppt = saltPpt;
        renew();
    }

    public void lid(boolean on) {
        lid = on;
    }

    /** Mean temperature of the water, °C. */
    public double waterC() {
        return (upperC + lowerC) / 2;
    }

    /** Temperature at a height, °C. @param share 0 at the bottom, 1 at the surface */
    public double waterC(double share) {
        return lowerC + (upperC - lowerC) * share;
    }

    /** Temperature of the heater itself, °C. */
    public double elementC() {
        return element.degreesC(room.airC());
    }

    public double litres() {
        return litres;
    }

    public double ppt() {
        return ppt;
    }

    public boolean waterPresent() {
        return litres > EMPTY_LITRES;
    }

    /** Whether water stands at the heater's height. */
    public boolean heaterCovered() {
        return litres >= HEATER_AT * build.litres;
    }
}

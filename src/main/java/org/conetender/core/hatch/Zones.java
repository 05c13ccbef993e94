package org.conetender.core.hatch;

import org.conetender.core.batch.Batch;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Site;
import org.conetender.core.unit.Text;

/**
 * The temperature zones of hydrated cysts (science.md §1): where they develop and how fast, where they
 * are arrested, and where they may be lost.
 *
 * @param rate development between base and ceiling
 * @param lossC at or above it the batch is in doubt, °C; above the rate's ceiling
 */
public record Zones(Rate rate, double lossC) {

    /** science.md §3.5 and the default loss temperature of design.md. */
    public static final Zones USUAL = new Zones(Rate.USUAL, 38);

    /** Deviation stays this far below a ceiling that was configured unusually low, K (*guess*). */
    private static final double BEND_K = 1;

    public Zones {
        if (!(lossC > rate.ceilingC())) {
            throw new IllegalArgumentException(Text.of("loss must lie above arrest (%s °C), got %s °C",
                    rate.ceilingC(), lossC));
        }
    }

    /** The zones of a cone: its arrest temperature is the ceiling of the rate (design.md). */
    public static Zones of(Cone.Limits limits) {
        double td = Math.min(Rate.USUAL.bestC(), limits.arrestC() - BEND_K);
        return new Zones(new BaseDeviationCeiling(Rate.USUAL.baseC(), td, limits.arrestC()), limits.lossC());
    }

    /** The same in water of that salinity, where it is to count. @param ppt g of salt for each kg */
    public Zones in(double ppt) {
        return new Zones(new Salted(rate, ppt), lossC);
    }

    /** Of the cysts of that batch: its water's salt counts only where somebody wants it to. */
    public static Zones of(Site site, Cone cone, Batch batch) {
        Zones z = of(cone.limits());
        return site.saltSlows() ? z.in(batch.fill().map(Batch.Fill::ppt).orElse(cone.usual().ppt())) : z;
    }
}

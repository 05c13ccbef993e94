package org.conetender.core.hatch;

import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * How far the cysts of one batch have come. Immutable; grows by {@link #advance} every tick and by
 * {@link #acrossGap} after a time in which nothing was measured. No degree-hour is ever taken back.
 *
 * @param leastDegreeHours degree-hours surely done, °C·h
 * @param mostDegreeHours degree-hours that may have been done, °C·h; not below the least
 * @param hoursWarm hours in which the water may have stood at or above arrest
 * @param hoursCold hours in which the water may have stood at or below the base temperature
 * @param hoursAboveLoss of the warm hours, those that may have reached the loss temperature
 */
public record Development(double leastDegreeHours, double mostDegreeHours, double hoursWarm,
                          double hoursCold, double hoursAboveLoss) {

    /** Cysts just wetted. */
    public static final Development NONE = new Development(0, 0, 0, 0, 0);

    /** @throws IllegalArgumentException unless all figures are finite, ordered and not negative */
    public Development {
        boolean sound = leastDegreeHours >= 0 && mostDegreeHours >= leastDegreeHours && hoursWarm >= 0
                && hoursCold >= 0 && hoursAboveLoss >= 0
                && Double.isFinite(mostDegreeHours + hoursWarm + hoursCold + hoursAboveLoss);
        if (!sound) {
            throw new IllegalArgumentException(
                    Text.of("not a development: %s to %s °C·h, %s h warm, %s h cold, %s h hot",
                    leastDegreeHours, mostDegreeHours, hoursWarm, hoursCold, hoursAboveLoss));
        }
    }

    /** The middle of what may have been done: the figure a person is shown, °C·h. */
    public double degreeHours() {
        return (leastDegreeHours + mostDegreeHours) / 2;
    }

    /** Hours without development, too warm or too cold. */
    public double hoursArrested() {
        return hoursWarm + hoursCold;
    }

    /**
     * One sample interval further. Called at the sample interval, never with a mean temperature over
     * a longer time: near the ceiling the rate of a mean is not the mean of the rates (science.md §3.5).
     *
     * @param dtMs since the last call; nothing happens at 0 or below
     * @param waterLeastC coldest the water may have been; equal to the most while a probe is trusted
     * @param waterMostC hottest it may have been
     * @throws IllegalArgumentException if the temperatures are not finite and ordered
     */
    public Development advance(long dtMs, double waterLeastC, double waterMostC, Zones zones) {
        if (!(waterLeastC <= waterMostC) || Double.isInfinite(waterMostC - waterLeastC)) {
            throw new IllegalArgumentException(Text.of("not a water temperature: %s to %s °C",
                    waterLeastC, waterMostC));
        }
        if (dtMs <= 0) {
            return this;
        }
        double h = Units.hours(dtMs);
        Rate rate = zones.rate();
        return new Development(
                leastDegreeHours + h * rate.least(waterLeastC, waterMostC),
                mostDegreeHours + h * rate.most(waterLeastC, waterMostC),
                hoursWarm + (waterMostC >= rate.ceilingC() ? h : 0),
                hoursCold + (waterLeastC <= rate.baseC() ? h : 0),
                hoursAboveLoss + (waterMostC >= zones.lossC() ? h : 0));
    }

    /** Past a time without measurements: adds what the cysts can have done in it, as an interval. */
    public Development acrossGap(Gap gap, Zones zones) {
        return plus(gap.development(zones));
    }

    /** Both together. */
    public Development plus(Development more) {
        return new Development(
                leastDegreeHours + more.leastDegreeHours,
                mostDegreeHours + more.mostDegreeHours,
                hoursWarm + more.hoursWarm,
                hoursCold + more.hoursCold,
                hoursAboveLoss + more.hoursAboveLoss);
    }

    /** A part of it. @param part 0..1 */
    Development times(double part) {
        return new Development(leastDegreeHours * part, mostDegreeHours * part, hoursWarm * part,
                hoursCold * part, hoursAboveLoss * part);
    }
}

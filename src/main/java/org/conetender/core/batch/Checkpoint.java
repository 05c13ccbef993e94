package org.conetender.core.batch;

import java.util.List;
import org.conetender.core.unit.Moment;

/**
 * What is written down once a minute so that a restart loses at most that minute of development.
 *
 * @param at when it was taken
 * @param temperatures every trusted reading of that moment
 * @param cones where the cysts of each cone stood
 */
public record Checkpoint(Moment at, List<Temperature> temperatures, List<ConePoint> cones) {

    public Checkpoint {
        temperatures = List.copyOf(temperatures);
        cones = List.copyOf(cones);
    }

    /** @param series cone id, or {@code room}  @param degreesC °C */
    public record Temperature(String series, double degreesC) {}

    /**
     * @param cone its id
     * @param batch the batch's number, so that a point is never taken for another batch's
     * @param leastDegreeHours degree-hours done, low end
     * @param mostDegreeHours degree-hours done, high end
     * @param hoursArrested hours spent too warm or too cold to develop
     */
    public record ConePoint(String cone, long batch, double leastDegreeHours, double mostDegreeHours,
                            double hoursArrested) {}
}

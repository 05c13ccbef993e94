package org.conetender.core.face;

import java.util.Map;
import org.conetender.core.ConeLive;
import org.conetender.core.batch.Batch;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;

/**
 * When a batch is called ready, in hours after its forecast was made.
 *
 * @param announced the hour that is told
 * @param margins between which it lies, by property; none of what is ripe and only waits for its second
 *     harvest, whose hour is sure
 */
record ReadyHours(double announced, Map<String, Double> margins) {

    /** Of a batch that has a forecast. @param boots by which its time behind a first harvest is known */
    static ReadyHours of(ConeLive live, Batch b, Moment now, Boots boots) {
        Forecast f = live.outlook().forecast().orElseThrow();
        Forecast.Ready r = f.ready();
        double announced = live.readyH(r.announced(), b, now, boots);
        boolean waits = announced > r.announced() && f.doneDegreeHours() >= f.neededDegreeHours();
        return new ReadyHours(announced, waits ? Map.of()
                : Map.of("hatch/ready-from", live.readyH(r.earliest(), b, now, boots),
                        "hatch/ready-until", live.readyH(r.latest(), b, now, boots),
                        "hatch/ready-half-from", live.readyH(r.earlierQuartile(), b, now, boots),
                        "hatch/ready-half-until", live.readyH(r.laterQuartile(), b, now, boots)));
    }
}

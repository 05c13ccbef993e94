package org.conetender.core.hatch;

import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.judge.Belief;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * How far the cysts of one batch are, advanced every tick from what was measured; what could not be
 * measured is bridged as an interval ({@link Gap}).
 *
 * @param stock the cysts it belongs to; another stock starts from nothing
 * @param done their development
 * @param lastC the last believed water temperature, °C; NaN while none is known
 * @param lastAt its moment; the wetting at first
 */
public record Growth(Optional<Batch.Stock> stock, Development done, double lastC, Moment lastAt) {

    /** A hole in the measurements longer than this is bridged, shorter ones are simply integrated. */
    static final long HOLE_MS = 5 * Units.SECOND_MS;

    /** @param room °C, measured or assumed  @param timeConstantH C/UA in hours  @param zones of the cone */
    public record Around(double roomC, double timeConstantH, Zones zones) {}

    /** Where a batch stood at the last checkpoint; from its wetting if it has none yet. */
    public static Growth resumed(String cone, Batch batch, Optional<Checkpoint> checkpoint) {
        for (Checkpoint c : checkpoint.stream().toList()) {
            for (Checkpoint.ConePoint p : c.cones()) {
                if (p.cone().equals(cone) && p.batch() == batch.number() && batch.stock().isPresent()) {
                    return new Growth(batch.stock(),
                            new Development(p.leastDegreeHours(), p.mostDegreeHours(),
                            p.hoursArrested(), 0, 0), waterC(c, cone), c.at());
                }
            }
        }
        return of(batch);
    }

    private static double waterC(Checkpoint c, String cone) {
        return c.temperatures().stream().filter(t -> t.series().equals(cone))
                .mapToDouble(Checkpoint.Temperature::degreesC).findFirst().orElse(Double.NaN);
    }

    private static Growth of(Batch batch) {
        return new Growth(batch.stock(), Development.NONE, Double.NaN,
                batch.stock().map(Batch.Stock::at).orElse(batch.stage().since()));
    }

    /** The development of that batch: nothing yet when these cysts are another's. */
    public Development doneOf(Batch batch) {
        return batch.stock().equals(stock) ? done : Development.NONE;
    }

    /** The growth after a tick at {@code now}. */
    public Growth after(Batch batch, Belief water, Around around, Moment now) {
        if (!batch.stock().equals(stock)) {
            return of(batch).after(batch, water, around, now);
        }
        if (stock.isEmpty() || !batch.stage().develops() || !water.known()) {
            return this;
        }
        return new Growth(stock, advanced(water, around, now), water.middleC(), now);
    }

    private Development advanced(Belief water, Around around, Moment now) {
        var since = now.since(lastAt);
        if (since.exact() && since.leastMs() <= HOLE_MS) {
            return done.advance(since.leastMs(), water.coldestC(), water.hottestC(), around.zones());
        }
        double before = Double.isNaN(lastC) ? water.middleC() : lastC;
        return done.acrossGap(new Gap(since, before, water.middleC(), around.roomC(), around.timeConstantH()),
                around.zones());
    }
}

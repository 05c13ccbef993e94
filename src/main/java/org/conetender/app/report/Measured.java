package org.conetender.app.report;

import java.util.List;
import java.util.Optional;
import org.conetender.adapter.sqlite.RecordReader;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Fact;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.Speed;
import org.conetender.core.hatch.ThermometerLog;
import org.conetender.core.judge.Losses;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;
import org.conetender.port.Store;

/** What was measured of some batches, and what their cysts did by that. */
public final class Measured {

    /** Where no thermometer told of the room, °C (guess, as in {@code forecast}). */
    private static final double ROOM_C = 20;

    /** A reading before the wetting tells the water at the wetting, ms: one before the last mean. */
    private static final long BEFORE_MS = 20 * Units.MINUTE_MS;

    private final Past past;
    private final Ruler ruler;
    private final Water water;
    private final Doings doings;
    /** Empty until it is asked for. */
    private List<Called> called = List.of();

    private Measured(Past past) {
        this.past = past;
        this.ruler = past.ruler();
        this.water = new Water(ruler);
        this.doings = new Doings(ruler);
    }

    /** @throws Store.StoreException if the temperatures on record cannot be read */
    public static Measured of(Past past, RecordReader record, List<Story> stories)
            throws Store.StoreException {
        Measured m = none(past);
        Optional<Moment> from = m.from(stories);
        if (from.isPresent()) {
            record.history().temperatures(from.get(), m.water::take);
        }
        return m;
    }

    /**
     * What was switched and what was called as well: for a year of many cones that takes a while.
     *
     * @throws Store.StoreException if what is on record of it cannot be read
     */
    public Measured withOutputs(RecordReader record, List<Story> stories) throws Store.StoreException {
        Optional<Moment> from = from(stories);
        if (from.isPresent()) {
            record.history().outputs(from.get(), doings::take);
        }
        called = Called.of(record.history().alarms(), past.facts(), ruler);
        return this;
    }

    private Optional<Moment> from(List<Story> stories) {
        return stories.stream().flatMap(s -> s.facts().stream().limit(1).map(Fact::at))
                .min((a, b) -> Long.compare(ruler.lineMs(a), ruler.lineMs(b)))
                .map(m -> new Moment(m.boot(), Math.max(0, m.monoMs() - BEFORE_MS), m.wallMs(), false));
    }

    /** Where nothing is known of temperatures. */
    public static Measured none(Past past) {
        return new Measured(past);
    }

    Past past() {
        return past;
    }

    /** Degree-hours and what else its water did to the cysts. @param exact whether all hours are known */
    public record Done(Development development, boolean exact) {}

    /** Until the harvest, the end, or the last reading; empty without cysts or measurements. */
    public Optional<Done> done(Story s) {
        return log(s).map(l -> new Done(l.development(question(s, Speed.UNKNOWN_LOT)), exact(s)));
    }

    /** Whether all its hours are known. */
    boolean exact(Story s) {
        Moment from = s.stock().orElseThrow().at();
        Moment to = s.over().orElse(s.facts().getLast().at());
        return ruler.exact(from, to);
    }

    Optional<ThermometerLog> log(Story s) {
        if (s.stock().isEmpty()) {
            return Optional.empty();
        }
        long from = ruler.lineMs(s.stock().get().at());
        long to = s.harvest().or(s::over).map(ruler::lineMs)
                .or(() -> water.lastMs(s.cone())).orElse(from);
        return water.between(s.cone(), from, to).filter(l -> l.lastMs() > from);
    }

    /** The last place at which its cone was measured. */
    Optional<Long> lastMs(Story s) {
        return water.lastMs(s.cone());
    }

    Optional<ThermometerLog> between(Story s, long fromMs, long toMs) {
        return water.between(s.cone(), fromMs, toMs);
    }

    Replay.Question question(Story s, Speed speed) {
        Cone c = past.cone(s);
        double litres = s.batch().fill().map(Batch.Fill::litres).orElse(c.usual().litres());
        return new Replay.Question(speed, past.zones(s),
                ruler.lineMs(s.stock().orElseThrow().at()), new Replay.Surroundings(ROOM_C,
                        Losses.timeConstantH(litres, Losses.wattsPerK(litres, c.fittings().vessel()))));
    }

    /** How long its heater had power, h; empty where that is not on record. */
    Optional<Double> heatHours(Story s) {
        long from = ruler.lineMs(s.facts().getFirst().at());
        long to = s.over().map(ruler::lineMs).orElse(Long.MAX_VALUE);
        return doings.means(s.cone(), from, to).map(m -> m.heat() * Units.hours(m.ofMs()));
    }

    /** What was switched in the cones. */
    Doings doings() {
        return doings;
    }

    /** The alarms of its cone and of the site that stood while it was the present batch. */
    List<Called> called(Story s) {
        long from = ruler.lineMs(s.facts().getFirst().at());
        long to = past.next(s).map(n -> ruler.lineMs(n.facts().getFirst().at())).orElse(Long.MAX_VALUE);
        return called.stream().filter(c -> c.rise().cone().isEmpty() || c.rise().cone().equals(s.cone()))
                .filter(c -> c.within(ruler, from, to)).toList();
    }
}

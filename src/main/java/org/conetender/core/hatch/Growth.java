package org.conetender.core.hatch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Bridge;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Cooling;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/**
 * How far the cysts of one batch are, advanced every tick from what was measured. A hole of known length
 * is bridged at once ({@link Gap}); one of unknown length is kept apart, and reckoned anew whenever the
 * clocks tell more of it.
 *
 * @param stock the cysts it belongs to; another stock starts from nothing
 * @param sure their development without what is kept apart
 * @param lastC the last believed water temperature, °C; NaN while none is known
 * @param lastAt its moment; the wetting at first
 * @param crossings what is kept apart
 * @param before of the cysts that were in this cone before, for the report of these may be taken back
 */
public record Growth(Optional<Batch.Stock> stock, Development sure, double lastC, Moment lastAt,
                     Crossings crossings, Optional<Growth> before) {

    /**
     * A hole in the measurements longer than this is bridged, shorter ones are simply integrated (guess: in
     * 5 s no cone moves by a tenth of a degree).
     */
    static final long HOLE_MS = 5 * Units.SECOND_MS;

    /** So long a length is left open before it is judged by what is known (control.md §5; guess: an hour). */
    public static final long WAIT_MS = Units.HOUR_MS;

    /** @param roomC °C, measured or assumed  @param cooling without heat  @param zones of the cone */
    public record Around(double roomC, Cooling cooling, Zones zones) {}

    /** @param now this tick's  @param boots of this machine  @param bridges that the book holds */
    public record When(Moment now, Boots boots, List<Bridge> bridges) {}

    /**
     * Where a batch stood at the last checkpoint; from its wetting if it has none yet. One from before the
     * wetting is of cysts that were withdrawn again: the batch has their number, but not their hours.
     */
    public static Growth resumed(String cone, Book all, Optional<Checkpoint> checkpoint) {
        ConeBook book = all.cone(cone);
        Batch batch = book.batch();
        Growth g = of(batch);
        for (Checkpoint c : checkpoint.stream().toList()) {
            for (Checkpoint.ConePoint p : c.cones()) {
                if (p.cone().equals(cone) && p.batch() == batch.number()
                        && batch.stock().filter(s -> !all.boots().earlier(c.at(), s.at())).isPresent()) {
                    g = new Growth(batch.stock(), p.done(), waterC(c, cone), c.momentOf(p), Crossings.NONE,
                            Optional.empty());
                }
            }
        }
        return g.past(book.bridges());
    }

    /** A bridge that the book has but the checkpoint had not: what comes next begins at its far end. */
    private Growth past(List<Bridge> bridges) {
        Growth g = this;
        for (Bridge b : bridges) {
            if (b.from().sameBoot(g.lastAt) && b.from().monoMs() == g.lastAt.monoMs()) {
                g = new Growth(stock, sure, b.ends().afterC(), b.to(), crossings, before);
            }
        }
        return g;
    }

    private static double waterC(Checkpoint c, String cone) {
        return c.temperatures().stream().filter(t -> t.series().equals(cone))
                .mapToDouble(Checkpoint.Temperature::degreesC).findFirst().orElse(Double.NaN);
    }

    private static Growth of(Batch batch) {
        return new Growth(batch.stock(), Development.NONE, Double.NaN,
                batch.stock().map(Batch.Stock::at).orElse(batch.stage().since()), Crossings.NONE,
                Optional.empty());
    }

    /** Everything together: measured, and bridged as far as its length is known. */
    public Development done() {
        return sure.plus(crossings.development());
    }

    /** The development of that batch: nothing yet when these cysts are another's. */
    public Development doneOf(Batch batch) {
        return batch.stock().equals(stock) ? done() : Development.NONE;
    }

    /**
     * Whether the cysts are short of the harvest point for certain, as after a separation that was tried too
     * early: such a batch is kept warm on, though it was called ready.
     *
     * @param needed degree-hours at which it is called ready, °C·h; NaN while nobody knows
     */
    public boolean unripe(Batch batch, double needed) {
        return doneOf(batch).mostDegreeHours() < needed;
    }

    /**
     * What a batch may move on by: within the first hour after a hole whose length nothing bounds, only
     * what has surely been done.
     */
    public Development dependable(Batch batch, Moment now, Boots boots) {
        Development d = doneOf(batch);
        return !crossings.open(now, boots, WAIT_MS) ? d
                : new Development(d.leastDegreeHours(), d.leastDegreeHours(), d.hoursWarm(), d.hoursCold(),
                        d.hoursAboveLoss());
    }

    /** The growth after a tick. */
    public Growth after(Batch batch, Belief water, Around around, When when) {
        if (!batch.stock().equals(stock)) {
            Optional<Growth> kept = stock.isEmpty() ? before : Optional.of(after(Optional.empty()));
            return before.filter(g -> g.stock.equals(batch.stock())).orElseGet(() -> of(batch).after(kept))
                    .after(batch, water, around, when);
        }
        Crossings known = crossings.of(when, around.zones());
        if (stock.isEmpty() || !batch.stage().develops() || !water.known()) {
            return new Growth(stock, sure, lastC, lastAt, known, before);
        }
        Span since = when.boots().between(lastAt, when.now());
        if (since.known()) {
            return new Growth(stock, advanced(water, around, since, !lastAt.sameBoot(when.now())),
                    water.middleC(), when.now(), known, before);
        }
        // Without a temperature before, the cooling clock cannot tell: a room like the water stops it.
        boolean first = Double.isNaN(lastC);
        Bridge fresh = new Bridge(lastAt, when.now(), new Bridge.Ends(first ? water.middleC() : lastC,
                water.middleC(), first ? water.middleC() : around.roomC(), around.cooling()));
        List<Bridge> all = new ArrayList<>(when.bridges());
        all.add(fresh);
        return new Growth(stock, sure, water.middleC(), when.now(),
                known.of(new When(when.now(), when.boots(), all), around.zones()).opened(fresh), before);
    }

    private Growth after(Optional<Growth> other) {
        return new Growth(stock, sure, lastC, lastAt, crossings, other);
    }

    /** @param off whether the machine was off since */
    private Development advanced(Belief water, Around around, Span since, boolean off) {
        if (since.leastMs() <= HOLE_MS) {
            return sure.advance(since.leastMs(), water.coldestC(), water.hottestC(), around.zones());
        }
        double before = Double.isNaN(lastC) ? water.middleC() : lastC;
        return sure.acrossGap(new Gap(since, before, water.middleC(), around.roomC(), around.cooling(),
                off), around.zones());
    }
}

package org.conetender.core.hatch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Bridge;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;

/**
 * The times of unknown length in a batch's development, each with its length as known now and what the
 * cysts can have done in it. Lengths narrow when a clock is set, and the reckoning is done anew then.
 *
 * @param all in order
 * @param fresh the one that was opened in this tick and has yet to be recorded
 */
public record Crossings(List<Crossed> all, Optional<Bridge> fresh) {

    static final Crossings NONE = new Crossings(List.of(), Optional.empty());

    /** @param span by the clocks  @param development within it */
    public record Crossed(Bridge bridge, Span span, Development development) {}

    /** Those of the book, reckoned by what the clocks know now; what did not change is kept. */
    Crossings of(Growth.When when, Zones zones) {
        if (when.bridges().isEmpty()) {
            return NONE;
        }
        List<Crossed> next = new ArrayList<>();
        for (int i = 0; i < when.bridges().size(); i++) {
            Bridge b = when.bridges().get(i);
            Span span = when.boots().between(b.from(), b.to());
            boolean same = i < all.size() && all.get(i).bridge().equals(b) && all.get(i).span().equals(span);
            next.add(same ? all.get(i) : new Crossed(b, span, gap(b, span).development(zones)));
        }
        return new Crossings(List.copyOf(next), Optional.empty());
    }

    private static Gap gap(Bridge b, Span span) {
        Bridge.Ends e = b.ends();
        return new Gap(span, e.beforeC(), e.afterC(), e.roomC(), e.cooling(),
                !b.from().sameBoot(b.to()));
    }

    Crossings opened(Bridge b) {
        return new Crossings(all, Optional.of(b));
    }

    Development development() {
        Development d = Development.NONE;
        for (Crossed c : all) {
            d = d.plus(c.development());
        }
        return d;
    }

    /** Whether nothing bounds one of them, and it ended less than so long ago. */
    boolean open(Moment now, Boots boots, long waitMs) {
        for (Crossed c : all) {
            if (!c.span().bounded() && boots.between(c.bridge().to(), now).leastMs() < waitMs) {
                return true;
            }
        }
        return false;
    }

    /** Whether the clocks bound all of them, as they ever will. */
    public boolean settled() {
        for (Crossed c : all) {
            if (!c.span().bounded()) {
                return false;
            }
        }
        return true;
    }
}

package org.conetender.app.report;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.conetender.app.plot.Hatch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store;

/**
 * Where every moment of a record lies in time. As {@link org.conetender.core.unit.Boots}, over any number of
 * boots, and for a person who reads it later: a boot whose clock was never set has no hour, but its place
 * among the others is known.
 */
public final class Ruler {

    /**
     * @param lastMs latest monotonic time heard
     * @param startMs wall time of its zero, once it was trusted
     */
    private record Boot(long lastMs, OptionalLong startMs) {}

    private final Map<String, Boot> boots = new LinkedHashMap<>();
    private final Map<String, Long> starts = new LinkedHashMap<>();
    private final ZoneId zone;

    /** @param zone of the hours that people are told */
    Ruler(Store.Kept kept, ZoneId zone) {
        this.zone = zone;
        for (Fact f : kept.facts()) {
            if (f.change() instanceof Change.Began(Optional<Moment> last)) {
                last.ifPresent(this::heard);
            }
            heard(f.at());
        }
        kept.checkpoint().ifPresent(c -> heard(c.at()));
        long free = begin();
        for (Map.Entry<String, Boot> b : boots.entrySet()) {
            long start = b.getValue().startMs().orElse(free);
            starts.put(b.getKey(), start);
            free = start + b.getValue().lastMs();
        }
    }

    /** Boots before the first whose clock was set end where that one begins. */
    private long begin() {
        long before = 0;
        for (Boot b : boots.values()) {
            if (b.startMs().isPresent()) {
                return b.startMs().getAsLong() - before;
            }
            before += b.lastMs();
        }
        return 0;
    }

    /** How a picture from one place of the line to another tells its times. */
    Hatch.Axis axis(long fromMs, long toMs) {
        boolean clock = true;
        List<Long> breaks = new ArrayList<>();
        boolean before = true;
        for (Map.Entry<String, Boot> b : boots.entrySet()) {
            long start = starts.get(b.getKey());
            boolean set = b.getValue().startMs().isPresent();
            clock &= set || start > toMs || start + b.getValue().lastMs() < fromMs;
            if (start > fromMs && start < toMs && !(set && before)) {
                breaks.add(start);
            }
            before = set;
        }
        return new Hatch.Axis(zone, clock, breaks);
    }

    private void heard(Moment m) {
        Boot was = boots.getOrDefault(m.boot(), new Boot(0, OptionalLong.empty()));
        boots.put(m.boot(), new Boot(Math.max(was.lastMs(), m.monoMs()), m.wallTrusted()
                ? OptionalLong.of(m.wallMs() - m.monoMs()) : was.startMs()));
    }

    public ZoneId zone() {
        return zone;
    }

    /** The hour of that moment; empty while the clock of its boot was never set. */
    public Optional<ZonedDateTime> hour(Moment m) {
        return boots.containsKey(m.boot()) && boots.get(m.boot()).startMs().isPresent() || m.wallTrusted()
                ? Optional.of(Instant.ofEpochMilli(lineMs(m)).atZone(zone)) : Optional.empty();
    }

    /**
     * A place on one line on which all moments lie in their order, ms: true ones since 1970 UTC where the
     * clock was set, else as if the machine had not been off before that boot.
     */
    long lineMs(Moment m) {
        return m.monoMs() + starts.getOrDefault(m.boot(), m.wallMs() - m.monoMs());
    }

    /** Whether the time from one moment to the other is known, and not only that it was at least so long. */
    boolean exact(Moment from, Moment to) {
        return from.sameBoot(to) || hour(from).isPresent() && hour(to).isPresent();
    }
}

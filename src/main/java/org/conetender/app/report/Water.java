package org.conetender.app.report;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.conetender.adapter.sqlite.HistoryReader.Reading;
import org.conetender.core.hatch.ThermometerLog;

/** What the thermometers of a site showed, by series, on one line of time. */
final class Water {

    /** Between two readings of the record lies a minute, or ten where they are means; twice that, ms. */
    private static final long NEAR_MS = 20 * 60_000;

    private static final class Series {
        private long[] ms = new long[1_024];
        private double[] degreesC = new double[1_024];
        private int size;

        void add(long at, double c) {
            // Clocks that were set back may let boots overlap: what came later in the record is left out.
            if (size > 0 && at <= ms[size - 1]) {
                return;
            }
            if (size == ms.length) {
                ms = Arrays.copyOf(ms, 2 * size);
                degreesC = Arrays.copyOf(degreesC, 2 * size);
            }
            ms[size] = at;
            degreesC[size++] = c;
        }

        /** The first at or after that. */
        int from(long at) {
            int i = Arrays.binarySearch(ms, 0, size, at);
            return i < 0 ? -i - 1 : i;
        }

        /** Measured then, or between two that are near; empty in a gap. */
        OptionalDouble at(long at) {
            int i = from(at);
            if (i < size && ms[i] == at) {
                return OptionalDouble.of(degreesC[i]);
            }
            boolean before = i > 0 && at - ms[i - 1] <= NEAR_MS;
            boolean after = i < size && ms[i] - at <= NEAR_MS;
            if (before && after) {
                double part = (at - ms[i - 1]) / (double) (ms[i] - ms[i - 1]);
                return OptionalDouble.of(degreesC[i - 1] + part * (degreesC[i] - degreesC[i - 1]));
            }
            return before ? OptionalDouble.of(degreesC[i - 1]) : after ? OptionalDouble.of(degreesC[i])
                    : OptionalDouble.empty();
        }
    }

    private final Ruler ruler;
    private final Map<String, Series> all = new TreeMap<>();

    Water(Ruler ruler) {
        this.ruler = ruler;
    }

    void take(String series, Reading r) {
        all.computeIfAbsent(series, _ -> new Series()).add(ruler.lineMs(r.at()), r.degreesC());
    }

    /**
     * What was measured from one place of the line to another, with a point at either end where something was
     * measured near it; empty where nothing was.
     */
    Optional<ThermometerLog> between(String series, long fromMs, long toMs) {
        Series s = all.get(series);
        if (s == null || toMs <= fromMs) {
            return Optional.empty();
        }
        Series cut = new Series();
        s.at(fromMs).ifPresent(c -> cut.add(fromMs, c));
        for (int i = s.from(fromMs); i < s.size && s.ms[i] < toMs; i++) {
            cut.add(s.ms[i], s.degreesC[i]);
        }
        s.at(toMs).ifPresent(c -> cut.add(toMs, c));
        return cut.size < 2 ? Optional.empty()
                : Optional.of(ThermometerLog.of(cut.ms, cut.degreesC, cut.size));
    }

    /** The last place of the line at which that series was measured. */
    Optional<Long> lastMs(String series) {
        return Optional.ofNullable(all.get(series)).map(s -> s.ms[s.size - 1]);
    }
}

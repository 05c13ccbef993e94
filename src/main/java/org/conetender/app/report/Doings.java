package org.conetender.app.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.conetender.adapter.sqlite.HistoryReader.Switched;
import org.conetender.app.plot.BatchPicture;
import org.conetender.core.batch.Minute;
import org.conetender.core.unit.Units;

/** What the outputs of the cones did, on one line of time. */
final class Doings {

    /** As fine as the record has it, so that a year of a cone takes a megabyte. */
    private static final double FINE = 100;
    private static final short NO_SET = Short.MIN_VALUE;
    private static final int SHARES = 4;

    /**
     * Means over a time, as far as it is on record.
     *
     * @param heat share of it, 0..1, in which the heater had power; the others likewise
     * @param setC mean of the set-point while one was followed, °C
     */
    record Means(double heat, double cutOut, double air, double lamp, OptionalDouble setC, long ofMs) {}

    private static final class Series {
        private long[] fromMs = new long[1_024];
        private long[] toMs = new long[1_024];
        private byte[] shares = new byte[SHARES * 1_024];
        private short[] set = new short[1_024];
        private int size;

        void add(long from, long to, Minute.Outputs o) {
            // Clocks that were set back may let boots overlap: what came later in the record is cut.
            long begin = size > 0 ? Math.max(from, toMs[size - 1]) : from;
            if (begin >= to) {
                return;
            }
            if (size == toMs.length) {
                fromMs = Arrays.copyOf(fromMs, 2 * size);
                toMs = Arrays.copyOf(toMs, 2 * size);
                shares = Arrays.copyOf(shares, 2 * SHARES * size);
                set = Arrays.copyOf(set, 2 * size);
            }
            fromMs[size] = begin;
            toMs[size] = to;
            double[] all = {o.heat(), o.cutOut(), o.air(), o.lamp()};
            for (int i = 0; i < SHARES; i++) {
                shares[SHARES * size + i] = (byte) Math.round(FINE * all[i]);
            }
            set[size++] = o.setC().isPresent() ? (short) Math.round(FINE * o.setC().getAsDouble()) : NO_SET;
        }

        double share(int i, int which) {
            return shares[SHARES * i + which] / FINE;
        }

        OptionalDouble setC(int i) {
            return set[i] == NO_SET ? OptionalDouble.empty() : OptionalDouble.of(set[i] / FINE);
        }

        /** The first that ends after that. */
        int from(long at) {
            int i = Arrays.binarySearch(toMs, 0, size, at + 1);
            return i < 0 ? -i - 1 : i;
        }
    }

    private final Ruler ruler;
    private final Map<String, Series> all = new TreeMap<>();

    Doings(Ruler ruler) {
        this.ruler = ruler;
    }

    void take(Switched s) {
        long from = ruler.lineMs(s.from());
        all.computeIfAbsent(s.outputs().cone(), _ -> new Series())
                .add(from, from + s.minutes() * Units.MINUTE_MS, s.outputs());
    }

    /** Empty where nothing of that time is on record. */
    Optional<Means> means(String cone, long fromMs, long toMs) {
        Series s = all.getOrDefault(cone, new Series());
        double[] sums = new double[SHARES];
        double set = 0;
        long setMs = 0;
        long ofMs = 0;
        for (int i = s.from(fromMs); i < s.size && s.fromMs[i] < toMs; i++) {
            long ms = Math.min(s.toMs[i], toMs) - Math.max(s.fromMs[i], fromMs);
            ofMs += ms;
            for (int k = 0; k < SHARES; k++) {
                sums[k] += ms * s.share(i, k);
            }
            if (s.setC(i).isPresent()) {
                set += ms * s.setC(i).getAsDouble();
                setMs += ms;
            }
        }
        return ofMs == 0 ? Optional.empty() : Optional.of(new Means(sums[0] / ofMs, sums[1] / ofMs,
                sums[2] / ofMs, sums[3] / ofMs, setMs == 0 ? OptionalDouble.empty()
                : OptionalDouble.of(set / setMs), ofMs));
    }

    /** Piece by piece, for a picture. */
    List<BatchPicture.Switched> pieces(String cone, long fromMs, long toMs) {
        Series s = all.getOrDefault(cone, new Series());
        List<BatchPicture.Switched> out = new ArrayList<>();
        for (int i = s.from(fromMs); i < s.size && s.fromMs[i] < toMs; i++) {
            out.add(new BatchPicture.Switched(new BatchPicture.Stretch("", Math.max(s.fromMs[i], fromMs),
                    Math.min(s.toMs[i], toMs)), s.share(i, 0), s.share(i, 2), s.share(i, 3), s.setC(i)));
        }
        return out;
    }
}

package org.conetender.core.unit;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * How the boots of this machine lie in time, as far as the record knows (control.md §5).
 *
 * <p>Intuition: each boot is a ruler whose marks (monotonic time) hardly stretch, but whose place on the wall
 * is unknown until its wall clock was trusted once. A ruler that lies between two placed ones cannot lie
 * outside them. So a time across boots is an interval, which narrows, backwards too, whenever one more
 * boot is placed. An untrusted wall clock is never used: it may be years off.
 *
 * @param known the boots in their order, oldest first
 */
public record Boots(List<Boot> known) {

    public static final Boots NONE = new Boots(List.of());

    /** Older boots are forgotten; times from them on are then unbounded (guess: a year of weekly cuts). */
    static final int REMEMBERED = 64;

    /** A trusted clock that moves by more than this was wrong before, ms (guess: above any slewing). */
    static final long STEP_MS = 5_000;

    /**
     * By so much a clock may be off that has just come to be trusted, ms: trust begins when the kernel's own
     * bound of its error (adjtimex(2), maxerror) is that small ({@code LinuxClock}; it may reach 16 s while
     * the clock counts as synchronised). Two boots are placed by two clocks.
     */
    public static final long SKEW_MS = 5_000;

    /**
     * A monotonic clock is off by one part in so many while nothing sets it right: 100 ppm (guess: a common
     * quartz is bought within 50 and ages and warms besides). While the wall clock is trusted, both are kept
     * in step (clock_gettime(2), CLOCK_MONOTONIC).
     */
    private static final long DRIFTS_ONE_IN = 10_000;

    /**
     * @param id the kernel's boot id
     * @param lastMs the latest monotonic time heard in it, ms
     * @param startWallMs wall time of its monotonic zero, ms since 1970 UTC; empty while never trusted
     * @param trusted from when to when, monotonic ms, its wall clock was heard to be trusted and said so
     */
    public record Boot(String id, long lastMs, OptionalLong startWallMs, Span trusted) {

        /** @param at a monotonic time in it, ms  @return how far from where its clock was trusted, ms */
        private long untrustedMs(long at) {
            return Math.max(0, Math.max(trusted.leastMs() - at, at - trusted.mostMs()));
        }

        private Boot heard(Moment m, boolean placed) {
            long last = Math.max(lastMs, m.monoMs());
            if (!m.wallTrusted()) {
                return new Boot(id, last, startWallMs, trusted);
            }
            return placed ? new Boot(id, last, startWallMs, new Span(Math.min(trusted.leastMs(), m.monoMs()),
                    Math.max(trusted.mostMs(), m.monoMs())))
                    : new Boot(id, last, start(m), Span.exactly(m.monoMs()));
        }
    }

    /**
     * A time in which the machine was off.
     *
     * @param from the last boot before it, by its place in {@link #known}
     * @param off how long it was off
     */
    public record Cut(int from, Span off) {}

    public Boots {
        known = List.copyOf(known.size() <= REMEMBERED ? known
                : known.subList(known.size() - REMEMBERED, known.size()));
    }

    /** With that moment heard; the record hands its moments over in order. */
    public Boots heard(Moment m) {
        int i = index(m.boot());
        Boot with = i < 0 ? new Boot(m.boot(), m.monoMs(), start(m), Span.exactly(m.monoMs()))
                : known.get(i).heard(m, placed(m));
        if (i >= 0 && with.equals(known.get(i))) {
            return this;
        }
        List<Boot> next = new ArrayList<>(known);
        if (i < 0) {
            next.add(with);
        } else {
            next.set(i, with);
        }
        return new Boots(next);
    }

    /** As if these were heard one after the other; those of a boot that say no more of it are heard once. */
    public Boots heard(Iterable<Moment> all) {
        Boots b = this;
        Moment furthest = null;
        for (Moment m : all) {
            if (furthest != null && m.sameBoot(furthest) && b.placed(m)
                    && m.wallTrusted() == furthest.wallTrusted()) {
                furthest = m.monoMs() > furthest.monoMs() ? m : furthest;
            } else {
                b = (furthest == null ? b : b.heard(furthest)).heard(m);
                furthest = m;
            }
        }
        return furthest == null ? b : b.heard(furthest);
    }

    private static OptionalLong start(Moment m) {
        return m.wallTrusted() ? OptionalLong.of(m.wallMs() - m.monoMs()) : OptionalLong.empty();
    }

    /** Whether that moment's trusted clock says nothing new about its boot. Untrusted ones never do. */
    public boolean placed(Moment m) {
        int i = index(m.boot());
        OptionalLong at = i < 0 ? OptionalLong.empty() : known.get(i).startWallMs();
        return !m.wallTrusted()
                || at.isPresent() && Math.abs(at.getAsLong() - (m.wallMs() - m.monoMs())) <= STEP_MS;
    }

    /**
     * The wall time of a moment, ms since 1970 UTC, reckoned on the monotonic clock from where its boot was
     * placed, so that it holds also after the network is lost; empty while its boot was never placed.
     */
    public OptionalLong wallMs(Moment m) {
        int i = index(m.boot());
        OptionalLong start = start(m).isPresent() || i < 0 ? start(m) : known.get(i).startWallMs();
        return start.isPresent() ? OptionalLong.of(start.getAsLong() + m.monoMs()) : start;
    }

    /** Place of that boot in {@link #known}; −1 when it is not known any more, or not yet. */
    public int index(String boot) {
        for (int i = known.size() - 1; i >= 0; i--) {
            if (known.get(i).id().equals(boot)) {
                return i;
            }
        }
        return -1;
    }

    /** Whether {@code a} came before {@code b}; a boot that is known no longer lies before all that are. */
    public boolean earlier(Moment a, Moment b) {
        return a.sameBoot(b) ? a.monoMs() < b.monoMs() : index(a.boot()) < index(b.boot());
    }

    /**
     * How long it was from one moment to a later one, ms. Exact within a boot, and between two placed ones
     * known to twice what either clock may be off, and to what the quartz may have drifted while nothing set
     * it right. Nothing when {@code to} was not later. Trusted clocks that
     * contradict the monotonic ones bound nothing.
     */
    public Span between(Moment from, Moment to) {
        if (from.sameBoot(to)) {
            return Span.exactly(Math.max(0, to.monoMs() - from.monoMs()));
        }
        Boots all = heard(to);
        int i = all.index(from.boot());
        int j = all.index(to.boot());
        if (i < 0) {
            return to.since(from);
        }
        return i > j ? Span.exactly(0) : all.apart(i, from.monoMs(), j, to.monoMs());
    }

    /** Every time between two boots, oldest first; a cut began up to a minute after the last moment heard. */
    public List<Cut> cuts() {
        return cuts(0);
    }

    /** The same from that boot on. @param first by its place */
    public List<Cut> cuts(int first) {
        List<Cut> cuts = new ArrayList<>();
        for (int i = Math.max(0, first); i + 1 < known.size(); i++) {
            Span s = apart(i, known.get(i).lastMs(), i + 1, 0);
            cuts.add(new Cut(i, new Span(Math.max(0, s.leastMs() - Units.MINUTE_MS), s.mostMs())));
        }
        return cuts;
    }

    private Span apart(int i, long fromMs, int j, long toMs) {
        long seen = known.get(i).lastMs() - fromMs + toMs;
        for (int k = i + 1; k < j; k++) {
            seen += known.get(k).lastMs();
        }
        seen = Math.max(seen, toMs);
        seen -= drift(seen);
        OptionalLong least = less(earliest(j, toMs), latest(i, fromMs), -2 * SKEW_MS);
        OptionalLong most = less(latest(j, toMs), earliest(i, fromMs), 2 * SKEW_MS);
        if (most.isPresent() && most.getAsLong() < seen) {
            return new Span(seen, Long.MAX_VALUE);
        }
        long low = Math.max(seen, least.orElse(seen));
        return new Span(low, most.isPresent() ? Math.max(low, most.getAsLong()) : Long.MAX_VALUE);
    }

    private static OptionalLong less(OptionalLong a, OptionalLong b, long plus) {
        return a.isPresent() && b.isPresent() ? OptionalLong.of(a.getAsLong() - b.getAsLong() + plus)
                : OptionalLong.empty();
    }

    /** By how much a monotonic clock may be off after that time, ms. */
    private static long drift(long ms) {
        return Math.ceilDiv(ms, DRIFTS_ONE_IN);
    }

    /** Earliest wall time of that moment of a boot: after all that was seen since the last placed one. */
    private OptionalLong earliest(int k, long ms) {
        long seen = 0;
        for (int i = k; i >= 0; i--) {
            Boot b = known.get(i);
            long at = i == k ? ms : b.lastMs();
            if (b.startWallMs().isPresent()) {
                return OptionalLong.of(b.startWallMs().getAsLong() + at + seen
                        - drift(b.untrustedMs(at) + seen));
            }
            seen += at;
        }
        return OptionalLong.empty();
    }

    /** Latest wall time of that moment of a boot: before all that was seen until the next placed one. */
    private OptionalLong latest(int k, long ms) {
        long seen = 0;
        for (int i = k; i < known.size(); i++) {
            Boot b = known.get(i);
            long at = i == k ? ms : 0;
            if (b.startWallMs().isPresent()) {
                return OptionalLong.of(b.startWallMs().getAsLong() + at - seen
                        + drift(b.untrustedMs(at) + seen));
            }
            seen += b.lastMs() - at;
        }
        return OptionalLong.empty();
    }
}

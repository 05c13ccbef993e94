package org.conetender.core.heat;

import java.util.ArrayList;
import java.util.List;

/**
 * Turns duties into on and off. Each cone has a credit of heater seconds it is owed: it grows by the
 * duty, shrinks while the heater is on. On when the credit is worth it, off when it is used up, which
 * gives windows of the wanted length; where power is short, whoever ran for a whole turn gives way to the
 * one that waited longest, so that nobody starves, and the windows stagger themselves.
 */
public final class Share {

    /** No pulse or pause is shorter than this share of the window: 10 s for a relay (control.md §1.5). */
    private static final double LEAST_SHARE = 1.0 / 24;
    /** No running heater is displaced before it has run this long, ms (guess). */
    static final long TURN_MS = 120_000;
    /** No look is longer, ms (guess: a doubt is mostly over in 20 s, three of its kind in three minutes). */
    private static final double LOOKS_MS = 180_000;
    /** Who was on and looks is taken to have waited for so long, ms (guess: it had hardly begun). */
    private static final long NEXT_MS = 600_000;

    private Share() {}

    /**
     * @param creditMs heater milliseconds owed
     * @param wants whether it would be on now if there were power for all
     * @param turnMs how long it has waited for power; negative: how long it has had it
     */
    public record Credit(double creditMs, boolean wants, long turnMs) {
        public static final Credit NONE = new Credit(0, false, 0);
    }

    /**
     * One cone's credit after a tick.
     *
     * @param before its credit
     * @param duty wanted, 0..1
     * @param wasOn whether its heater really was on
     * @param window the tick and the switching window, ms
     */
    public static Credit after(Credit before, double duty, boolean wasOn, Window window) {
        if (duty <= 0) {
            return Credit.NONE;
        }
        double credit = before.creditMs() + (duty - (wasOn ? 1 : 0)) * window.dtMs();
        double most = window.windowMs();
        credit = credit < -most ? -most : credit > most ? most : credit;
        boolean wants = wasOn ? credit > 0 || duty >= 1 : credit >= start(duty, most);
        return new Credit(credit, wants, turnMs(before, wants, wasOn, window.dtMs()));
    }

    /** What must be owed before it is worth switching on, ms. */
    private static double start(double duty, double windowMs) {
        return windowMs * Math.max(duty * (1 - duty), LEAST_SHARE * Math.max(duty, 1 - duty));
    }

    private static long turnMs(Credit before, boolean wants, boolean wasOn, long dtMs) {
        return !wants ? 0 : wasOn ? Math.min(0, before.turnMs()) - dtMs : Math.max(0, before.turnMs()) + dtMs;
    }

    /** What a law that decides on and off itself wants. */
    public enum Want {
        ON,
        /** Nothing for the moment, to see whether it understands its water, or to spare the switch. */
        LOOKS,
        OFF
    }

    /**
     * The same for a cone whose law decides on and off itself: nothing is owed, but its turn counts. Who
     * looks for a moment keeps what it has waited, and comes next if it was on.
     *
     * @param dtMs since the last tick
     */
    public static Credit wanting(Credit before, Want want, boolean wasOn, long dtMs) {
        // What is owed counts nothing here: it tells how long it has looked.
        double lookedMs = before.creditMs() + dtMs;
        if (want == Want.LOOKS && (wasOn || before.turnMs() > 0) && lookedMs <= LOOKS_MS) {
            return new Credit(lookedMs, false, wasOn ? NEXT_MS : before.turnMs());
        }
        boolean wants = want == Want.ON;
        return new Credit(0, wants, turnMs(before, wants, wasOn, dtMs));
    }

    /** The same for a heater that is tried: once it has its turn it keeps it to the end. */
    public static Credit trying(Credit before, boolean wasOn, long dtMs) {
        return new Credit(0, true, wasOn ? -1 : Math.max(0, before.turnMs()) + dtMs);
    }

    /** @param dtMs since the last tick  @param windowMs the switching window */
    public record Window(long dtMs, long windowMs) {}

    /**
     * @param cone its id
     * @param credit what it is owed
     * @param wasOn whether it was on
     * @param wholeTurnMs how long it may run before it gives way, which spares its switch
     */
    public record Claim(String cone, Credit credit, boolean wasOn, long wholeTurnMs) {

        /** Whether it has waited for a whole turn. */
        private boolean overdue() {
            return credit.wants() && !wasOn && credit.turnMs() >= wholeTurnMs;
        }

        /** Who runs keeps its place for a whole turn and then gives way to whoever waits. */
        private long rankMs() {
            return !wasOn ? credit.turnMs() : -credit.turnMs() < wholeTurnMs ? Long.MAX_VALUE : 0;
        }
    }

    /**
     * The site's power while it is shared out, W. Whoever has waited longest, for a whole turn, has its
     * power kept: else small heaters that come and go would leave a large one what is too little for ever.
     *
     * @param limitW of all heaters together
     * @param atLargeW taken by heaters that cannot be switched off
     * @param takenW by those, by all served so far, and for the one that waits
     * @param keeps whether some is kept for one that waits
     */
    public record Supply(double limitW, double atLargeW, double takenW, boolean keeps) {

        /** Before anybody is served. */
        public static Supply of(double limitW, double atLargeW) {
            return new Supply(limitW, atLargeW, atLargeW, false);
        }

        /** Once it was that claim's turn. @param watts of its heater  @param served whether it is on */
        public Supply after(Claim c, double watts, boolean served) {
            boolean keep = !served && !keeps && c.overdue() && atLargeW + watts <= limitW;
            return served || keep ? new Supply(limitW, atLargeW, takenW + watts, keeps || keep) : this;
        }
    }

    /** Below 0 if {@code a} is served first: by rank, then by how long it has waited. */
    static int turns(Claim a, Claim b) {
        int ranks = Long.compare(b.rankMs(), a.rankMs());
        int waits = ranks != 0 ? ranks : Long.compare(b.credit().turnMs(), a.credit().turnMs());
        return waits != 0 ? waits : a.cone().compareTo(b.cone());
    }

    /** The claims in the order in which they are served; of those that run, the longest running gives way. */
    public static List<Claim> order(List<Claim> claims) {
        List<Claim> sorted = new ArrayList<>(claims.size());
        // There are few, so each is put in its place.
        for (Claim c : claims) {
            int place = sorted.size();
            while (place > 0 && turns(c, sorted.get(place - 1)) < 0) {
                place--;
            }
            sorted.add(place, c);
        }
        return sorted;
    }
}

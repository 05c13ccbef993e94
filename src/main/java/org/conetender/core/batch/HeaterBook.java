package org.conetender.core.batch;

import java.util.Optional;
import org.conetender.core.unit.Moment;

/**
 * What is durable of one cone's heater.
 *
 * @param learned how it behaved at the last proof that said something new
 * @param learnedAt when that was
 * @param triedFor the filling before whose first heat its switches were tried and found to open
 * @param relay what the relay that switches it has done
 */
public record HeaterBook(Optional<Learned> learned, Optional<Moment> learnedAt, Optional<Moment> triedFor,
                         RelayBook relay) {

    static final HeaterBook NONE = new HeaterBook(Optional.empty(), Optional.empty(), Optional.empty(),
            RelayBook.NEW);

    /** A share of what the configuration says below or above which nothing was learned but nonsense. */
    private static final double LEAST = 0.3;
    private static final double MOST = 3;
    /** Lags of a heater as {@code core.judge} has them, s. */
    private static final double LEAST_LAG_S = 5;
    private static final double MOST_LAG_S = 150;
    /** What it cools is news by so much, relative; and never more, times the nominal (guesses). */
    private static final double COOLS_NEWS = 0.1;
    private static final double MOST_COOLS = 4;

    /**
     * Ratios only: temperature tells no more (control.md §2.4).
     *
     * @param watts of the heater and  @param litres of the water for which it holds
     * @param rise at full power over what the configuration gives, 0.3 to 3
     * @param loss over what the configuration gives, 0.3 to 3
     * @param lagS time constant of the heater, s, 5 to 150
     * @param cools how fast it would cool without heat, with all that evaporates and leaves by its bubbles,
     *     over what the configuration gives; 0 while it has not shown that
     */
    public record Learned(double watts, double litres, double rise, double loss, double lagS,
                          double cools) {

        /** Whether it is about that heater in that much water, and can be true. */
        public boolean fits(double ofWatts, double inLitres) {
            return watts == ofWatts && litres == inLitres && rise >= LEAST && rise <= MOST && loss >= LEAST
                    && loss <= MOST && lagS >= LEAST_LAG_S && lagS <= MOST_LAG_S;
        }

        /** Whether the other says something new: by so much, relative, or about another heater. */
        public boolean differs(Learned other, double by) {
            return !other.fits(watts, litres) || Math.abs(rise / other.rise - 1) > by
                    || Math.abs(loss / other.loss - 1) > by || Math.abs(lagS / other.lagS - 1) > by
                    || coolsOtherwise(other);
        }

        private boolean coolsOtherwise(Learned other) {
            return cools > 0 && !(Math.abs(cools / other.cools - 1) <= COOLS_NEWS);
        }

        /** Whether it has shown how fast it cools. */
        public boolean coolingKnown() {
            return cools >= LEAST && cools <= MOST_COOLS;
        }
    }

    /** Whether the switches have been tried since that batch's filling. */
    public boolean tried(Batch b) {
        return b.fill().isPresent() && triedFor.equals(b.fill().map(Batch.Fill::at));
    }

    HeaterBook learned(Learned l, Moment at) {
        return new HeaterBook(Optional.of(l), Optional.of(at), triedFor, relay);
    }

    /** @param filling whose first heat follows; empty when a switch was found not to open */
    HeaterBook tried(Optional<Moment> filling) {
        return new HeaterBook(learned, learnedAt, filling, relay);
    }

    HeaterBook worn(long closings, Moment at) {
        return new HeaterBook(learned, learnedAt, triedFor, relay.worn(closings, at));
    }

    /** Another relay is in its place: a life that begins behind that tries the switches again. */
    HeaterBook relayExchanged() {
        return new HeaterBook(learned, learnedAt, Optional.empty(), relay.another());
    }

    /** That was reported by mistake. */
    HeaterBook relayNotExchanged() {
        return new HeaterBook(learned, learnedAt, triedFor, relay.sameAsBefore());
    }
}

package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.conetender.core.image.Hour;
import org.conetender.core.unit.Moment;

/**
 * One batch of one cone, from the filling to the cleaning.
 *
 * @param number counts the cone's batches from 1; 0 before the first
 * @param stage where it stands
 * @param fill the water, once it is in
 * @param stock the cysts, once they are in
 * @param marks what else was noted of it
 */
public record Batch(long number, Stage stage, Optional<Fill> fill, Optional<Stock> stock, Marks marks) {

    /** @param litres water, L  @param ppt salt, g per kg of solution  @param at when */
    public record Fill(double litres, double ppt, Moment at) {}

    /** @param lot label of the tin  @param cystsG dry product, g  @param at when they got wet */
    public record Stock(String lot, double cystsG, Moment at) {}

    /** What was told of a batch's temperature; a later word takes an earlier one's place. */
    public sealed interface Held {

        /** Nothing: the cone's own set-point. */
        record Usual() implements Held {}

        /** @param degreesC °C */
        record At(double degreesC) implements Held {}

        /** Whatever brings it to its harvest point by that hour. @param hour with its date */
        record ReadyBy(Hour hour) implements Held {}
    }

    /**
     * @param salted whether the salt is in
     * @param valveShut whether a person confirmed that the air valve is shut (or the tube pinched)
     * @param harvests how often part of it was drawn
     * @param held what was told of its temperature
     * @param handsIn since when hands are in the water
     * @param toppedUp when water was last added or taken
     * @param words what has to be remembered in words
     */
    public record Marks(boolean salted, boolean valveShut, int harvests, Held held,
                        Optional<Moment> handsIn, Optional<Moment> toppedUp, Words words) {

        public static final Marks NONE = new Marks(false, false, 0, new Held.Usual(),
                Optional.empty(), Optional.empty(), new Words(List.of(), List.of()));

        Marks salted(boolean yes) {
            return new Marks(yes, valveShut, harvests, held, handsIn, toppedUp, words);
        }

        Marks valveShut(boolean yes) {
            return new Marks(salted, yes, harvests, held, handsIn, toppedUp, words);
        }

        Marks harvested() {
            return new Marks(salted, valveShut, harvests + 1, held, handsIn, toppedUp, words);
        }

        Marks held(Held next) {
            return new Marks(salted, valveShut, harvests, next, handsIn, toppedUp, words);
        }

        /** Told for this batch only, °C. */
        public OptionalDouble setpointC() {
            return held instanceof Held.At(double c) ? OptionalDouble.of(c) : OptionalDouble.empty();
        }

        /** The hour at which it is wanted. */
        public Optional<Hour> readyBy() {
            return held instanceof Held.ReadyBy(Hour hour) ? Optional.of(hour) : Optional.empty();
        }

        Marks handsIn(Moment at) {
            return new Marks(salted, valveShut, harvests, held, Optional.of(at), toppedUp, words);
        }

        Marks toppedUp(Moment at) {
            return new Marks(salted, valveShut, harvests, held, handsIn, Optional.of(at), words);
        }

        Marks words(Words w) {
            return new Marks(salted, valveShut, harvests, held, handsIn, toppedUp, w);
        }
    }

    /**
     * @param doubts why nobody should feed it without looking first
     * @param assumed step words that a later report implied
     */
    public record Words(List<String> doubts, List<String> assumed) {
        public Words {
            doubts = List.copyOf(doubts);
            assumed = List.copyOf(assumed);
        }
    }

    /** The cone as it stands before its first batch. */
    public static Batch none(Moment at) {
        return new Batch(0, new Stage.Clean(at), Optional.empty(), Optional.empty(), Marks.NONE);
    }

    Batch to(Stage next) {
        return new Batch(number, next, fill, stock, marks);
    }

    Batch with(Marks m) {
        return new Batch(number, stage, fill, stock, m);
    }

    Batch doubted(String why) {
        if (marks.words().doubts().contains(why)) {
            return this;
        }
        return with(marks.words(new Words(plus(marks.words().doubts(), List.of(why)),
                marks.words().assumed())));
    }

    Batch undoubted(String why) {
        List<String> left = marks.words().doubts().stream().filter(d -> !d.equals(why)).toList();
        return with(marks.words(new Words(left, marks.words().assumed())));
    }

    Batch assumed(List<String> steps) {
        return steps.isEmpty() ? this
                : with(marks.words(new Words(marks.words().doubts(), plus(marks.words().assumed(), steps))));
    }

    private static List<String> plus(List<String> a, List<String> b) {
        List<String> out = new ArrayList<>(a);
        out.addAll(b);
        return out;
    }
}

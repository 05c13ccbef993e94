package org.conetender.core.face;

import java.util.Optional;
import org.conetender.core.batch.Lots;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Slip;
import org.conetender.core.hatch.Speed;
import org.conetender.core.unit.Text;

/** What is known of a lot, in a sentence: said to whoever has just taught something of it. */
public final class LotWords {

    /** Said of a verdict on cysts of which the record no longer knows how far they were. */
    public static final String NO_COURSE = " It teaches nothing, since it is not known how far its "
            + "cysts were when they were drawn.";

    private static final String NO_LABEL = " Its tin has no label, so the next batch learns nothing from "
            + "this: write one on it and name it, as in 'usual lot=L-0417'.";

    private static final String FEW = " If it stays so, few of these cysts can hatch at all.";

    private LotWords() {}

    /** Of a tin that nobody named there is nothing to say but that they are cysts. */
    static String grams(double g, String lot) {
        return Sentences.plain(g) + (Lots.unnamed(lot) ? " g of cysts" : " g of lot " + lot);
    }

    /**
     * Why a look does not count after the first nauplii were reported.
     *
     * @param word of the look  @param at when they were, where a clock tells
     * @param back reports to withdraw until that one is taken back as well; 0 where it stands
     */
    public static String once(String word, Optional<String> at, int back) {
        return Text.of(" For the hour it does not count: 'first-seen' was reported%s, and the first come "
                + "only once. If this '%s' was the slip, say 'withdraw'; if that was, %s.",
                at.map(t -> " at " + t).orElse(" before"), word, back == 0
                ? "it stands by now, and a 'count' outvotes it" : "say 'withdraw' "
                + (back == 2 ? "twice" : back + " times") + ", then again what was right");
    }

    /**
     * Why a count moves nothing.
     *
     * @param degreeHours done  @param many whether too many had hatched in it, rather than too few
     * @param bound share that would be expected at most, or at least, 0..1
     */
    public static String slip(double degreeHours, boolean many, double bound) {
        return Text.of(" That %s So it is kept, but taken for a slip: it moves the hour little or not at "
                + "all. See that cone and lot are right and that empty shells were left out; then say "
                + "'withdraw', or count once more.%s", hardly(degreeHours, many, bound), many ? "" : FEW);
    }

    /** Why nauplii that were seen teach nothing. @param degreeHours done */
    public static String tooEarly(double degreeHours) {
        return Text.of(" That %s So it is kept, but taken for a slip, and nothing is learnt from it. See "
                + "that the cone is right and that what swims are nauplii; if not, say 'withdraw'.",
                hardly(degreeHours, true, 0));
    }

    /** The same of a look in a log, which nobody can take back. @param s the slip */
    public static String slip(Slip s) {
        if (s.lesson().sight() instanceof Lesson.Sight.First) {
            return hardly(s.lesson().at().degreeHours(), true, 0) + " Taken for a slip, nothing is learnt "
                    + "from it: see that log, lot and hour are right and that what swims are nauplii.";
        }
        return Text.of("%s Taken for a slip, it moves the hour little or not at all: see that log, lot and "
                + "hour are right and that empty shells were left out.%s", hardly(s.lesson().at()
                .degreeHours(), s.many(), s.bound()), s.many() ? "" : FEW);
    }

    private static String hardly(double degreeHours, boolean many, double bound) {
        String expected = many ? bound < 0.01 ? "less than 1 %" : Text.of("at most %.0f %%", 100 * bound)
                : bound > 0.99 ? "more than 99 %" : Text.of("at least %.0f %%", 100 * bound);
        return Text.of("hardly can be: after %s, %s of what hatches should have hatched.",
                degreeHours < 1.5 ? "scarcely a degree-hour" : Text.of("%.0f degree-hours", degreeHours),
                expected);
    }

    /** Said of a tin whose label nobody used: a slip of the pen begins a lot of its own. */
    static String unheardOf(String lot) {
        return " No cone holds cysts of that label or takes them as usual, and nothing is known of it: see "
                + "that it reads as you stock it, else say 'tin' with the right one, and '" + lot
                + "' with 0 g.";
    }

    /** What the time without air was reckoned with, where that is the lot's own. @param perGram nauplii/g */
    public static String dense(double perGram) {
        return Text.of(" That is reckoned with %,.0f nauplii a gram, by what was counted of this lot.",
                Math.round(perGram / 1_000) * 1_000.0);
    }

    /** @param hours from now */
    public static String inHours(double hours) {
        return Text.of("in about %.1f h", hours);
    }

    /** The hour that a report has moved. @param when in words  @param laterH by how much, h; 0 if unknown */
    public static String moved(String when, double laterH) {
        return " That makes it ready " + when + (laterH == 0 ? "." : ", " + span(Math.abs(laterH))
                + (laterH < 0 ? " sooner" : " later") + " than was told before.");
    }

    static String span(double hours) {
        return hours < 1.5 ? Text.of("%.0f min", 60 * hours) : Text.of("%.1f h", hours);
    }

    /** @param lot label of the tin  @param speed of it in the water it stands in */
    public static String taught(String lot, Speed speed) {
        if (speed.timesSeen() == 0) {
            return "";
        }
        boolean unnamed = Lots.unnamed(lot);
        return Text.of(" %s: first tenth at about %.0f degree-hours, half at %.0f, ripe at %.0f (in four "
                + "cases of five %.0f to %.0f).%s", unnamed ? "This batch" : "Lot " + lot + ", from "
                + (speed.timesSeen() == 1 ? "one batch" : speed.timesSeen() + " batches"), speed.k10(),
                speed.k50DegreeHours(), speed.k90(), speed.k90Within(false), speed.k90Within(true),
                unnamed ? NO_LABEL : "");
    }
}

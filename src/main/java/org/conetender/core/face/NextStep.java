package org.conetender.core.face;

import org.conetender.core.Offering;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Stage;
import org.conetender.core.batch.Verdict;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/** What a batch asks of a person next, as a sentence. */
public final class NextStep {

    /** Asked once after a harvest; whoever does not answer is not asked again. */
    static final String VERDICT = "Was the hour right? Say 'too-early', 'right' or 'late', if you like.";

    private NextStep() {}

    /** The sentence, without the cone's name. */
    public static String of(Settings s, Cone cone, ConeBook book, Moment now) {
        Batch b = book.batch();
        return switch (b.stage()) {
            case Stage.Clean _ ->
                    "shut the drain valve, connect the air, pump on, fill, open the air valve, add salt "
                    + "and cysts; then report 'started'.";
            case Stage.Filled _ -> b.marks().salted()
                    ? "when the salt is dissolved add the cysts; then report 'stocked'."
                    : "add the salt and report 'salted'; then the cysts, and report 'stocked'.";
            case Stage.Hydrating _ -> b.marks().salted() ? "after an hour or two swirl stuck cysts back in."
                    : "add the salt and report 'salted'.";
            case Stage.Incubating _ -> b.marks().salted() ? "nothing; it is growing."
                    : "the salt was never reported; add it and report 'salted'.";
            case Stage.Hatching _ -> "nothing needed; a 'count' is welcome.";
            case Stage.Ready _ -> ready(cone, b) + offered(s.site().feeding(), now);
            case Stage.Settling _ -> "wait; the nauplii gather at the drain.";
            case Stage.Settled _ -> "see that nothing else is open, then draw: report 'drawing'.";
            case Stage.Drawing _ ->
                    "let the first 20 to 50 mL go, draw the orange layer into the sieve, stop before the "
                    + "shells, shut the drain; then report 'drained', or 'part-drawn' to leave the rest.";
            case Stage.Drained _ ->
                    "rinse the nauplii; unplug the heater, scrub and rinse the cone; then report "
                    + "'cleaned'." + (Verdict.wanted(book) ? " " + VERDICT : "");
            case Stage.Abandoned _ -> "unplug the heater, drain and clean the cone; then report 'cleaned'.";
        };
    }

    private static String ready(Cone cone, Batch b) {
        return b.marks().valveShut()
                ? "report 'settle' to stop the air, or open the air valve and report 'valve-open'."
                : cone.fittings().air().geometry().canSiphon()
                ? "to harvest, shut the air valve while the pump runs and report 'valve-shut', then 'settle'."
                : "to harvest, report 'settle'; the air stops and the lamp at the drain comes on.";
    }

    /** The hour before the next feed at which separating should begin (design.md, stage ready). */
    private static String offered(Site.Feeding feeding, Moment now) {
        if (!now.wallTrusted()) {
            return "";
        }
        return Offering.nextFeed(feeding, now).map(f -> f.toInstant().toEpochMilli()).map(feedMs -> {
            long beginMs = feedMs - feeding.leadMinutes() * Units.MINUTE_MS;
            String feed = Sentences.clock(feedMs, feeding.zone(), now.wallMs());
            return beginMs <= now.wallMs() ? " It is time, for the feed at " + feed + "."
                    : " Or wait until " + Sentences.clock(beginMs, feeding.zone(), now.wallMs())
                    + ", for the feed at " + feed + ".";
        }).orElse("");
    }
}

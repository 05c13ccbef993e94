package org.conetender.core.face;

import org.conetender.core.hatch.Speed;
import org.conetender.core.unit.Text;

/** What is known of a lot, in a sentence: said to whoever has just taught something of it. */
public final class LotWords {

    private LotWords() {}

    /** @param lot label of the tin  @param speed of it in the water it stands in */
    public static String taught(String lot, Speed speed) {
        if (speed.timesSeen() == 0) {
            return "";
        }
        return Text.of(" Lot %s, from %s: first tenth at about %.0f degree-hours, half at %.0f, ripe at %.0f "
                + "(in four cases of five %.0f to %.0f).", lot, speed.timesSeen() == 1 ? "one batch"
                : speed.timesSeen() + " batches", speed.k10(), speed.k50DegreeHours(), speed.k90(),
                speed.k90Within(false), speed.k90Within(true));
    }
}

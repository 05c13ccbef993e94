package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * Danger: air failed though commanded on. Most urgent once nauplii swim (science.md §1, §7.3); and when they
 * were without it for longer than they stand, whatever kept it away, the batch is in doubt from then on.
 */
public final class AirFailed implements Guard {

    /**
     * Past the cap the batch is in doubt only after the minute in which the valve is shut before the pump
     * stops and the minute in which it is opened afterwards ({@link ShutValve}): both are work by the book.
     */
    private static final long BY_THE_BOOK_MS = 2 * ShutValve.OPEN_WITHIN_MS;

    private static final String LACK = "no air was seen to arrive for more than ";

    @Override
    public String id() {
        return "air-failed";
    }

    @Override
    public List<Finding> look(View v) {
        List<Finding> found = new ArrayList<>();
        if (v.judged().air().unprovenForMs() > 0 && v.stage().hasWater()) {
            AlarmKind kind = v.stage().hasAnimals() ? AlarmKind.AIR_FAILED_ANIMALS : AlarmKind.AIR_FAILED;
            Finding f = Finding.veto(id(), "its air is switched on but none arrives").alarm(kind);
            if (!v.batch().marks().valveShut()) {
                found.add(f);
            } else if (v.stage().develops() && !ShutValve.tooLong(v)
                    && v.judged().air().unprovenForMs() - v.valveShutForMs() >= kind.onDelayMs()) {
                // Air does not come back by a shut valve: what stood before does so until that is told
                // instead. A lack that the valve brought is no failure.
                found.add(f.justBack());
            }
        }
        // What was marked goes on being told: the mark outlasts the lack, and a restart.
        marked(v).or(() -> lack(v)).filter(_ -> v.stage().hasAnimals())
                .ifPresent(why -> found.add(Finding.veto(id(), why).alarm(AlarmKind.DOUBTFUL).doubting(why)));
        return found;
    }

    /** A report that nauplii swim, withdrawn: cysts bear for hours what was counted as theirs. */
    @Override
    public List<String> takesBack(View v) {
        return v.stage().develops() && !v.stage().hasAnimals() ? marked(v).stream().toList() : List.of();
    }

    private static Optional<String> marked(View v) {
        for (String d : v.batch().marks().words().doubts()) {
            if (d.startsWith(LACK)) {
                return Optional.of(d);
            }
        }
        return Optional.empty();
    }

    /** How long animals may be without air, whatever keeps it away, before they are in doubt, ms. */
    static long borneMs(View.Caps caps) {
        return caps.drawingMs() + BY_THE_BOOK_MS;
    }

    private static Optional<String> lack(View v) {
        long capMs = borneMs(v.scene().caps());
        return v.judged().air().breath().withoutMs() <= capMs ? Optional.empty()
                : Optional.of(Text.of(LACK + "%.0f min with nauplii in the water",
                        Math.floor(Units.minutes(capMs))));
    }
}

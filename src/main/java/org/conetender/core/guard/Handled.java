package org.conetender.core.guard;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.conetender.core.batch.Batch;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/** Danger: hands in the water. Heater and lamps off, air on; it returns by itself. */
public final class Handled implements Guard {

    /** Probe alarms are held, and heat stays off, this long after {@code hands-in} (design.md). */
    public static final long HANDS_MS = 15 * Units.MINUTE_MS;

    /** A probe takes this long to come to the temperature of water just poured in (guess: 10 lags). */
    static final long FILLING_MS = 3 * Units.MINUTE_MS;

    @Override
    public String id() {
        return "hands-in";
    }

    @Override
    public List<Finding> look(View v) {
        if (v.handsIn()) {
            return List.of(Finding.veto(id(), "hands are in the water",
                    Power.HEAT, Power.CUT_OUT, Power.LAMPS, Power.AIR_OFF));
        }
        // While jumps of the probe are let pass, nothing shows that it still hangs in the water. A new
        // filling needs no veto: it must answer at low power, or to a level contact, first (DryHeater).
        boolean toppedUp = within(v.batch().marks().toppedUp(), v::since, HANDS_MS);
        return !toppedUp ? List.of() : List.of(Finding.veto(id(), "the water was topped up just now",
                Power.HEAT, Power.CUT_OUT));
    }

    /**
     * Whether the water was touched so lately that its probes prove nothing. The one decision: what is
     * believed, what is told and what is allowed all ask here.
     */
    public static boolean lately(Batch b, Function<Moment, Span> since) {
        return within(b.marks().handsIn(), since, HANDS_MS)
                || within(b.marks().toppedUp(), since, HANDS_MS)
                || within(b.fill().map(Batch.Fill::at), since, FILLING_MS);
    }

    /** Whether that was reported less than {@code ms} before now; while nobody knows, it was. */
    static boolean within(Optional<Moment> m, Function<Moment, Span> since, long ms) {
        return m.isPresent() && since.apply(m.get()).leastMs() < ms;
    }
}

package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.unit.Text;

/** Danger: too many heaters at once. Who is served first is {@code core.heat}'s choice, the limit is ours. */
public final class TooManyWatts implements Guard {

    /** Its findings only mean "not yet". */
    public static final String ID = "watts";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public List<Finding> look(View v) {
        double with = v.scene().site().wattsBefore() + v.cone().fittings().heat().watts();
        double limit = v.settings().site().supply().limitWatts();
        return !v.scene().wants().heat() || with <= limit ? List.of()
                : List.of(Finding.veto(id(), Text.of("the site's %.0f W are taken", limit), Power.HEAT));
    }
}

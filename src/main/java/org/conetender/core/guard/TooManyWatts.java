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
                : List.of(Finding.veto(id(), "the site's " + Text.decimals(limit, 0) + " W are taken",
                        Power.HEAT));
    }
}

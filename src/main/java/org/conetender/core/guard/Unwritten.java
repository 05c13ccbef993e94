package org.conetender.core.guard;

import java.util.List;

/**
 * Danger: power that rests on a report nobody will remember. A report may take and give at once, as
 * {@code part-drawn} brings the air back and the heat with it, or {@code settle} ends the heat and stops
 * the air. What it takes is taken when it is said; what it gives waits until a restart would
 * read it too. And what a report on its way will take is taken already.
 */
public final class Unwritten implements Guard {

    @Override
    public String id() {
        return "unwritten";
    }

    @Override
    public List<Finding> look(View v) {
        return v.scene().unwritten().isEmpty() ? List.of()
                : List.of(Finding.veto(id(), "the report it rests on is not in the record yet",
                        v.scene().unwritten().toArray(Power[]::new)));
    }
}

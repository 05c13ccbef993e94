package org.conetender.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.unit.Moment;

/** When a batch was drawn: at once, in parts, or in vain. @param stages it went through, in order */
record Drawings(List<Story.Entered> stages) {

    private static final String DRAWING = "drawing";

    /** When somebody began to draw and the air came back first: nothing says that anything was drawn then. */
    List<Moment> inVain() {
        List<Moment> out = new ArrayList<>();
        for (int i = 1; i < stages.size(); i++) {
            if (stages.get(i).stage().equals("ready") && stages.get(i - 1).stage().equals(DRAWING)) {
                out.add(stages.get(i - 1).at());
            }
        }
        return out;
    }

    /** The first that was not in vain. */
    Optional<Moment> first() {
        List<Moment> vain = inVain();
        return stages.stream().filter(e -> e.stage().equals(DRAWING)).map(Story.Entered::at)
                .filter(t -> !vain.contains(t)).findFirst();
    }

    /** Whether a part was left in the cone, which hatched on. */
    boolean inParts() {
        return hatchesOn() >= 0;
    }

    /** The first of what was left last; empty while that hatches on, or where nobody drew it. */
    Optional<Moment> last() {
        return new Drawings(stages.subList(hatchesOn() + 1, stages.size())).first();
    }

    /** Where the rest began to hatch on for the last time; below 0 where none was left. */
    private int hatchesOn() {
        for (int i = stages.size() - 1; i > 0; i--) {
            if (stages.get(i).stage().equals("hatching") && stages.get(i - 1).stage().equals(DRAWING)) {
                return i;
            }
        }
        return -1;
    }
}

package org.conetender.core.batch;

import java.util.Optional;
import org.conetender.core.image.Step;

/** The one step that is obviously next, which is all that the hand button can say. */
public final class Obvious {

    private Obvious() {}

    /** @param step the next step  @param dangerous whether the button must be held for it (design.md) */
    public record Next(Step step, boolean dangerous) {}

    /**
     * The next step; empty while there is nothing to do.
     *
     * @param canSiphon whether stopping air needs a shut valve
     */
    public static Optional<Next> after(Batch b, boolean canSiphon) {
        return Optional.ofNullable(switch (b.stage()) {
            case Stage.Clean _ -> new Next(Step.STARTED, false);
            case Stage.Filled _ -> new Next(Step.STOCKED, false);
            case Stage.Ready _ -> b.marks().valveShut() || !canSiphon ? new Next(Step.SETTLE, true)
                    : new Next(Step.VALVE_SHUT, true);
            case Stage.Settled _ -> new Next(Step.DRAWING, true);
            case Stage.Drawing _ -> new Next(Step.DRAINED, false);
            case Stage.Drained _ -> new Next(Step.CLEANED, false);
            case Stage.Hydrating _ -> null;
            case Stage.Incubating _ -> null;
            case Stage.Hatching _ -> null;
            case Stage.Settling _ -> null;
            case Stage.Abandoned _ -> null;
        });
    }
}

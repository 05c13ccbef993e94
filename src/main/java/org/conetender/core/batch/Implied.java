package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.image.Step;

/** Which steps a later report implies, so that a person who touches the cone twice a day is understood. */
public final class Implied {

    /** The order of a batch's steps as far as one implies another. */
    private static final List<Step> ORDER = List.of(Step.FILLED, Step.STOCKED, Step.SETTLE, Step.DRAWING,
            Step.DRAINED, Step.CLEANED);

    private Implied() {}

    /** Words of the steps that lie between this stage and that step and were never reported. */
    public static List<String> before(Stage stage, Step step) {
        List<String> out = new ArrayList<>();
        int to = step == Step.FILLED ? ORDER.size() : ORDER.indexOf(step);
        for (int i = done(stage); i < to; i++) {
            out.add(ORDER.get(i).word());
        }
        return out;
    }

    /** How many steps of the order this stage has behind it. */
    private static int done(Stage stage) {
        return switch (stage) {
            case Stage.Clean _ -> 6;
            case Stage.Filled _ -> 1;
            case Stage.Hydrating _ -> 2;
            case Stage.Incubating _ -> 2;
            case Stage.Hatching _ -> 2;
            case Stage.Ready _ -> 2;
            case Stage.Settling _ -> 3;
            case Stage.Settled _ -> 3;
            case Stage.Drawing _ -> 4;
            case Stage.Drained _ -> 5;
            case Stage.Abandoned _ -> 4;
        };
    }
}

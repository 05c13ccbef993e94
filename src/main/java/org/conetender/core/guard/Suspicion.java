package org.conetender.core.guard;

import java.util.Set;
import org.conetender.core.judge.Watch;
import org.conetender.core.judge.Watch.Suspect;

/** What {@link org.conetender.core.judge.Watch} suspects, as the guards may go by it. */
final class Suspicion {

    /** Guards whose latches name why water and heater do not do what they should. */
    private static final Set<String> NAMING = Set.of(WeldedHeater.ID, SwitchesTried.ID, NoEffect.ID,
            FrozenProbe.ID, WrongCone.ID);

    private Suspicion() {}

    /**
     * Whether that guard may name this cause: the water is watched, does so, and no other cause has been
     * named before, which would explain it as well.
     */
    static boolean falls(View v, Suspect on, String guard) {
        return v.judged().suspect() == on && v.stage().hasWater()
                && !(on.heated() ? WrongCone.warms(v) : WrongCone.explains(v))
                && NAMING.stream().noneMatch(g -> !g.equals(guard) && v.latch(g).isPresent());
    }
}

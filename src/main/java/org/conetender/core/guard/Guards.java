package org.conetender.core.guard;

import java.util.List;

/** All guards. The order is only the order of their reasons: each looks every tick, and any may veto. */
public final class Guards {

    /** One for every row of design.md's table of dangers that is the program's to act on. */
    public static final List<Guard> ALL = List.of(new CookedBatch(), new WeldedHeater(), new SwitchesTried(),
            new WrongCone(), new NoEffect(), new LyingProbe(), new FrozenProbe(), new DryHeater(),
            new FallingWater(), new StillWater(), new Handled(), new AirFailed(), new Suffocation(),
            new BackSiphon(), new ShutValve(), new AirWhileDrawing(), new PowerCut(), new TooManyWatts(),
            new StaleCommand(), new LostRecord(), new Unwritten(), new WrongClock(), new SilentFailure(),
            new StuckHeater(), new StuckOutput(), new CrashLoop(), new DamagedRecord());

    private Guards() {}
}

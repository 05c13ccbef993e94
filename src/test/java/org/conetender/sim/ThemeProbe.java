package org.conetender.sim;

import org.conetender.core.guard.Guards;

/** Runs one theme by hand and prints what came of it. */
public final class ThemeProbe {
    public static void main(String[] a) {
        for (Theme t : Theme.values()) {
            if (a.length > 0 && !t.name().matches(a[0])) {
                continue;
            }
            long t0 = System.nanoTime();
            Rig r = t.run(new Rig(Larkmoor.settings(), a.length > 1 ? Long.parseLong(a[1]) : 1, Bench.larkmoor(),
                    Guards.ALL));
            System.out.println(t + " " + (System.nanoTime() - t0) / 1_000_000 + " ms " + r.invariants().broken()
                    + "\n   " + r.coverage().stages() + "\n   " + r.coverage().alarms() + " " + r.coverage().guards()
                    + "\n   " + r.coverage().refusals());
        }
    }
}

package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.conetender.core.guard.Guards;
import org.conetender.sim.Fault;
import org.conetender.sim.Rig;
import org.conetender.sim.Seeds;
import org.conetender.sim.SimCone;

/**
 * A whole daemon over two cones: both are started and held; then one is emptied and filled anew beside the
 * other, which is when a keeper may mistake a plug. Whatever is crossed is so from that moment on.
 */
final class PairRun {

    private static final int HOUR_S = 3_600;
    /** Cones are renewed so long after the start, s (guess: held and known, or just so). */
    private static final int LEAST_S = 3 * HOUR_S;
    private static final int MOST_S = 8 * HOUR_S;
    /** It takes a keeper this long to clean and to fill, s (guess). */
    private static final long CLEANED_S = 120;
    private static final long FULL_S = 300;
    /** Unnoticed for so long is missed, s. */
    private static final long MISSED_S = 4 * HOUR_S;

    /** What is crossed. */
    enum Mistake {
        PLUGS("plugs exchanged"), SWITCHES("switches exchanged"), SHORTED("outputs touch"),
        PROBES("probes exchanged");

        private final String words;

        Mistake(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /**
     * @param clear whether nothing of the kind was named before
     * @param first that was named after it, "" for nothing
     * @param delayS from the moment in which both were full until the right name was told; NaN for never
     * @param hottestK above its set-point, of either water until then, K
     */
    record Notice(boolean clear, String first, double delayS, double hottestK) {}

    /**
     * @param hours of both cones together
     * @param crossed times that crossed wires were named
     * @param welded times that a switch was called welded
     * @param asked times that it was asked whose heater it is
     * @param askedS seconds that took
     */
    record Calm(double hours, int crossed, int welded, int asked, double askedS) {}

    private final Rig rig;
    private final Pair pair;
    private final long renewedAt;

    PairRun(Pair pair) {
        this.pair = pair;
        this.rig = new Rig(pair.settings(), pair.seed(), pair.bench(), Guards.ALL);
        SplittableRandom random = Seeds.of(pair.seed(), "pair renewed");
        this.renewedAt = random.nextInt(LEAST_S, MOST_S);
    }

    /** Something is crossed when cone a is emptied. */
    Notice run(Mistake what) {
        String first = "";
        double hottestK = 0;
        List<String> before = List.of();
        for (long s = 0; s < renewedAt + FULL_S + MISSED_S; s++) {
            if (s == renewedAt) {
                rig.world().apply(fault(what));
                before = told();
            }
            second(s, renewedAt);
            if (s < renewedAt) {
                continue;
            }
            for (SimCone c : rig.world().cones()) {
                hottestK = Math.max(hottestK, c.water().waterC() - c.settings().limits().setpointC());
            }
            List<String> told = new ArrayList<>(told());
            told.removeAll(before);
            first = first.isEmpty() && !told.isEmpty() ? told.getFirst() : first;
            if (told.contains("wrong-cone")) {
                return new Notice(before.isEmpty(), first, Math.max(0, s - renewedAt - FULL_S), hottestK);
            }
        }
        return new Notice(before.isEmpty(), first, Double.NaN, hottestK);
    }

    /** Nothing is crossed; the cones are renewed in turn, one in eight hours. */
    Calm calm(int hours) {
        int crossed = 0;
        int welded = 0;
        int asked = 0;
        long askedS = 0;
        Set<String> was = Set.of();
        boolean open = false;
        for (long s = 0; s < (long) hours * HOUR_S; s++) {
            second(s, s < renewedAt ? renewedAt : renewedAt + (s - renewedAt) / MOST_S * MOST_S);
            Set<String> now = Set.copyOf(told());
            crossed += now.contains("wrong-cone") && !was.contains("wrong-cone") ? 1 : 0;
            welded += now.contains("welded") && !was.contains("welded") ? 1 : 0;
            boolean asks = rig.alive() && rig.state().live().cones().values().stream()
                    .anyMatch(c -> c.beside().crossing().open());
            asked += asks && !open ? 1 : 0;
            askedS += asks ? 1 : 0;
            open = asks;
            was = now;
        }
        return new Calm(2.0 * hours, crossed, welded, asked, askedS);
    }

    private Fault fault(Mistake what) {
        Fault.When when = new Fault.When(rig.world().clock().elapsedMs(), Keeping.FOR_EVER_MS);
        return switch (what) {
            case PLUGS -> new Fault.Crossed("a", "b", Fault.Wiring.PLUGS, when);
            case SWITCHES -> new Fault.Crossed("a", "b", Fault.Wiring.SWITCHES, when);
            case SHORTED -> new Fault.Crossed("a", "b", Fault.Wiring.SHORTED, when);
            case PROBES -> new Fault.Swapped("a", "b", when);
        };
    }

    /** One second. @param renewed when a cone is emptied last, or next */
    private void second(long s, long renewed) {
        if (s == Keeping.FILLED_S) {
            rig.world().cones().forEach(c -> Keeping.fill(rig, c));
        }
        SimCone turn = rig.world().cones().get((int) ((renewed - renewedAt) / MOST_S % 2));
        String id = turn.settings().id();
        if (s == renewed) {
            turn.drain();
            rig.say(id, "drained");
        }
        if (s == renewed + CLEANED_S) {
            rig.say(id, "cleaned");
        }
        if (s == renewed + FULL_S) {
            Keeping.fill(rig, turn);
        }
        rig.second();
    }

    private List<String> told() {
        return Keeping.named(rig).stream().map(a -> a.kind().id()).sorted().toList();
    }
}

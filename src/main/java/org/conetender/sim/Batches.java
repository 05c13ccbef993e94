package org.conetender.sim;

import java.util.ArrayList;
import java.util.List;

/** The batches of one cone, in order: which is in it now, and what became of those before. */
final class Batches {

    /** Spread between batches of one lot (science.md §3.5 leaves 0.03 to 0.05 beside counting error). */
    private static final double LOG_SD = 0.03;

    private final World world;
    private final String cone;
    private final List<BatchTruth> ended = new ArrayList<>();
    private long stockedAtMs;
    /** What is in the cone; null when nothing lives there. */
    Cysts cysts;

    Batches(World world, String cone) {
        this.world = world;
        this.cone = cone;
    }

    void begin(String lot, double grams) {
        end();
        stockedAtMs = world.clock().elapsedMs();
        double z = Seeds.of(world.seed(), "batch/" + cone + "/" + ended.size()).nextGaussian();
        cysts = new Cysts(Lot.draw(world.seed(), lot), grams, Math.exp(LOG_SD * z));
    }

    void end() {
        if (cysts != null) {
            ended.add(BatchTruth.of(cone, cysts, stockedAtMs, world.clock().elapsedMs()));
            cysts = null;
        }
    }

    List<BatchTruth> all() {
        List<BatchTruth> all = new ArrayList<>(ended);
        if (cysts != null) {
            all.add(BatchTruth.of(cone, cysts, stockedAtMs, -1));
        }
        return all;
    }
}

package org.conetender.sim;

import org.conetender.core.batch.Fact;
import org.conetender.core.batch.FactText;
import org.conetender.port.Transport.Outgoing;

/**
 * Sixty-four bits of all that a run has done, in order: every level of every output, every message, every
 * fact. Only texts and figures enter, which are the same in every process and on every machine. Two runs
 * of one seed that differ in anything differ in it, but for one case in 2^64.
 */
final class Trace {

    private long hash = Seeds.BASIS;
    private long seq;

    /** Something was published. */
    void message(Outgoing m) {
        text(m.topic());
        text(m.payload());
    }

    /** A second is over. */
    void second(World world, SimStore.Disk disk) {
        long levels = 1;
        for (SimSwitch s : world.devices().switches().values()) {
            levels = 2 * levels + (s.commanded() ? 1 : 0);
        }
        number(levels);
        number(of(world));
        seq = Math.min(seq, disk.lastSeq());
        for (Fact f : disk.since(seq)) {
            seq = f.seq();
            text(f.cone());
            text(f.source());
            text(FactText.write(f.change()));
        }
    }

    /** A number that differs when any state of the world differs. */
    static long of(World world) {
        long h = mix(world.clock().elapsedMs(), world.room().airC());
        for (SimCone c : world.cones()) {
            h = mix(mix(h, c.water().waterC()), c.water().litres());
            h = mix(mix(h, c.oxygen().layer()), c.air().flowLpm());
            h = mix(h, c.cysts().map(Cysts::hatchedFraction).orElse(-1.0));
        }
        for (SimProbe p : world.devices().probes().values()) {
            h = mix(h, p.shownC());
        }
        return h;
    }

    private static long mix(long h, double value) {
        return (h ^ Double.doubleToLongBits(value)) * 0x9E3779B97F4A7C15L + (h >>> 29);
    }

    private void text(String s) {
        for (int i = 0; i < s.length(); i++) {
            hash = (hash ^ s.charAt(i)) * Seeds.PRIME;
        }
        number(s.length());
    }

    private void number(long n) {
        hash = (Long.rotateLeft(hash, 29) ^ n) * Seeds.PRIME;
    }

    long hash() {
        return hash;
    }
}

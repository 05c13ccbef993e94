package org.conetender.adapter.onewire;

import java.nio.file.Path;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.port.Probe;

/** One probe: written by its bus's reader thread, read by anybody, neither waiting for the other. */
final class OneWireProbe implements Probe {

    /** @param endMonoMs when the conversion ended, or when this probe began to be waited for */
    private record Seen(Reading reading, long endMonoMs) {}

    private final String id;
    private final Path folder;
    private volatile Seen seen;

    OneWireProbe(String id, Path folder, long nowMonoMs) {
        this.id = id;
        this.folder = folder;
        this.seen = new Seen(new Reading.NotYet(), nowMonoMs);
    }

    @Override
    public String id() {
        return id;
    }

    Path folder() {
        return folder;
    }

    /** Reader thread only. */
    void saw(Reading reading, long endMonoMs) {
        seen = new Seen(reading, endMonoMs);
    }

    @Override
    public ProbeSample latest(long nowMonoMs) {
        Seen s = seen;
        return new ProbeSample(id, s.reading(), Math.max(0, nowMonoMs - s.endMonoMs()));
    }
}

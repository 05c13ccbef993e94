package org.conetender.core.image;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.conetender.core.unit.Moment;

/**
 * All that one tick is told. Built by the shell, once, at the top of the tick; immutable.
 *
 * @param now the clock, read once
 * @param probes the latest sample of every configured probe
 * @param contacts the level of every configured contact
 * @param inbox what came in since the last tick
 * @param pipes health of our own pipes
 */
public record Image(Moment now, List<ProbeSample> probes, List<ContactSample> contacts, Inbox inbox,
                    Pipes pipes) {

    /**
     * @param requests waiting requests, bounded; the rest stay in the shell's queue
     * @param commits what the record agent finished
     */
    public record Inbox(List<Request> requests, List<Commit> commits) {
        public static final Inbox EMPTY = new Inbox(List.of(), List.of());
    }

    /**
     * @param store empty while the record is being kept; else why it is not
     * @param history empty while temperatures are being kept for reports; else why they are not
     * @param broker empty while connected; else why not
     * @param lateMs how much later than planned this tick began
     * @param unset ids of the outputs that could not be set in the last tick, such as {@code a.heat}:
     *     their real level is unknown
     */
    public record Pipes(Optional<String> store, Optional<String> history, Optional<String> broker,
                        long lateMs, Set<String> unset) {
        public static final Pipes HEALTHY = new Pipes(Optional.empty(), Optional.empty(), 0, Set.of());

        public Pipes {
            unset = Set.copyOf(unset);
        }

        /** Whether that output of that cone could not be set. @param output such as {@code .heat} */
        public boolean unset(String cone, String output) {
            return !unset.isEmpty() && unset.contains(cone + output);
        }

        /** Where temperatures are kept, or nobody asks for them. */
        public Pipes(Optional<String> store, Optional<String> broker, long lateMs, Set<String> unset) {
            this(store, Optional.empty(), broker, lateMs, unset);
        }
    }

    /** The sample of that probe; {@link Reading.NotYet} when the shell has none. */
    public ProbeSample probe(String id) {
        for (ProbeSample p : probes) {
            if (p.probe().equals(id)) {
                return p;
            }
        }
        return new ProbeSample(id, new Reading.NotYet(), 0);
    }

    /** The samples of these probes, in their order. */
    public List<ProbeSample> probes(List<String> ids) {
        List<ProbeSample> some = new ArrayList<>(ids.size());
        for (String id : ids) {
            some.add(probe(id));
        }
        return some;
    }

    /** The level of that cone's contact; unknown when the shell has none. @param kind such as .level */
    public ContactSample.Level contact(String cone, String kind) {
        for (ContactSample c : contacts) {
            // In every tick, so nothing is put together.
            if (c.contact().length() == cone.length() + kind.length() && c.contact().startsWith(cone)
                    && c.contact().endsWith(kind)) {
                return c.level();
            }
        }
        return ContactSample.Level.UNKNOWN;
    }
}

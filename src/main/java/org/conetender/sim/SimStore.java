package org.conetender.sim;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.CheckpointText;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.FactText;
import org.conetender.core.batch.Minute;
import org.conetender.port.Store;

/**
 * The record of a simulated world. What outlives the process lies on a {@link Disk}, as text, so that
 * a fact which cannot be written or read back fails here as it would on a card. A power cut may be
 * told to fall just before or just after the commit of the next write.
 *
 * <p>One thread: the simulation's.
 */
public final class SimStore implements Store {

    /** What the disk does to writes from now on; reading always works. */
    public enum Mood {
        HEALTHY,
        /** No room is left. */
        FULL,
        /** The card answers with errors. */
        FAILING,
        /** Somebody is in the way: a write waits {@link #SLOW_MS}, then is refused. */
        SLOW
    }

    /** Where the next power cut falls. */
    public enum Cut { NONE, BEFORE_COMMIT, AFTER_COMMIT }

    /** As long as the real store waits for whoever is in its way, ms. */
    public static final long SLOW_MS = 2_000;

    /** The power failed in the middle of a write; nobody was told whether it was kept. */
    public static final class PowerCut extends RuntimeException {
        private static final long serialVersionUID = 1;

        PowerCut(Cut where) {
            super("power cut, " + where);
        }
    }

    /** What survives a crash. Belongs to the world, not to the daemon; one store at a time opens it. */
    public static final class Disk {
        private record Row(Fact headOnly, String change) {}

        private final TreeMap<Long, Row> facts = new TreeMap<>();
        private final Set<String> sources = new HashSet<>();
        private Optional<String> checkpoint = Optional.empty();
        private List<Fact> all = List.of();
        private List<String> damages = List.of();
        private Optional<SimStore> owner = Optional.empty();
        private Mood mood = Mood.HEALTHY;
        private Cut cut = Cut.NONE;
        private long waitedMs;

        /** What was committed after that number, in order. */
        List<Fact> since(long seq) {
            if (facts.isEmpty() || facts.lastKey() <= seq) {
                return List.of();
            }
            List<Fact> all = new ArrayList<>();
            for (Row r : facts.tailMap(seq, false).values()) {
                Fact h = r.headOnly();
                all.add(new Fact(h.seq(), h.at(), h.cone(), h.source(), FactText.read(r.change())));
            }
            return all;
        }

        /** All of them. Read anew only when more was committed. */
        List<Fact> all() {
            if (all.size() != facts.size()) {
                all = List.copyOf(since(0));
            }
            return all;
        }

        /** How often it was damaged. */
        int damaged() {
            return damages.size();
        }

        /** Number of the last fact; 0 while there is none. */
        long lastSeq() {
            return facts.isEmpty() ? 0 : facts.lastKey();
        }

        /**
         * The disk loses what was written last, while nobody holds it. @param percent of the facts that can
         * still be read; of less than a half the checkpoint is gone as well
         */
        public void damage(int percent) {
            if (owner.isPresent()) {
                throw new IllegalStateException("somebody holds this disk");
            }
            long lost = facts.size() - (long) facts.size() * percent / 100;
            for (long i = 0; i < lost; i++) {
                facts.pollLastEntry();
            }
            sources.clear();
            facts.values().forEach(r -> sources.add(r.headOnly().source()));
            all = List.of();
            checkpoint = checkpoint.filter(_ -> percent >= 50);
            List<String> more = new ArrayList<>(damages);
            more.add("the record was damaged: " + lost + " of its facts are lost; it is kept aside as number "
                    + (damages.size() + 1));
            damages = List.copyOf(more);
        }

        /** Whether a fact of that request was committed. */
        boolean knows(String request) {
            return sources.contains(request);
        }

        /** From now on, until told otherwise; survives a restart, as a bad card does. */
        public void mood(Mood mood) {
            this.mood = mood;
        }

        /** Whether writes are refused now. */
        boolean failing() {
            return mood != Mood.HEALTHY;
        }

        /** The next write, and only that one, is interrupted there. */
        public void cutPowerAt(Cut cut) {
            this.cut = cut;
        }

        /** How long writes made their caller wait since this was last asked, ms of simulated time. */
        public long takeWaitedMs() {
            long ms = waitedMs;
            waitedMs = 0;
            return ms;
        }
    }

    private final Disk disk;

    private SimStore(Disk disk) {
        this.disk = disk;
    }

    /** @throws StoreException if another store holds this disk */
    public static SimStore open(Disk disk) throws StoreException {
        if (disk.owner.isPresent()) {
            throw new StoreException("the record is in use by another conetender; stop that one first", null);
        }
        SimStore store = new SimStore(disk);
        disk.owner = Optional.of(store);
        return store;
    }

    /** The process dies here. The disk keeps what was committed; this object is of no more use. */
    public void crash() {
        close();
    }

    @Override
    public Kept load() throws StoreException {
        alive();
        return new Kept(disk.since(0), disk.checkpoint.map(CheckpointText::read), disk.damages);
    }

    @Override
    public void append(List<Fact> facts) throws StoreException {
        TreeMap<Long, Disk.Row> pending = new TreeMap<>();
        for (Fact f : facts) {
            Fact head = new Fact(f.seq(), f.at(), f.cone(), f.source(), null);
            if (f.seq() < 1 || disk.facts.containsKey(f.seq())
                    || pending.put(f.seq(), new Disk.Row(head, FactText.write(f.change()))) != null) {
                throw new StoreException("fact " + f.seq() + " contradicts what is already recorded, which"
                        + " is a fault of conetender", null);
            }
        }
        commit(() -> {
            disk.facts.putAll(pending);
            facts.forEach(f -> disk.sources.add(f.source()));
        });
    }

    @Override
    public void minute(Checkpoint checkpoint) throws StoreException {
        String text = CheckpointText.write(checkpoint);
        commit(() -> disk.checkpoint = Optional.of(text));
    }

    /** Nothing in a simulated world reads them. */
    @Override
    public void history(Minute minute) throws StoreException {
        alive();
        refuse(disk.mood);
    }

    private void commit(Runnable keep) throws StoreException {
        alive();
        refuse(disk.mood);
        Cut cut = disk.cut;
        disk.cut = Cut.NONE;
        if (cut == Cut.BEFORE_COMMIT) {
            crash();
            throw new PowerCut(cut);
        }
        keep.run();
        if (cut == Cut.AFTER_COMMIT) {
            crash();
            throw new PowerCut(cut);
        }
    }

    private void refuse(Mood mood) throws StoreException {
        switch (mood) {
            case HEALTHY -> { }
            case FULL -> throw new StoreException("the disk is full; free some space", null);
            case FAILING -> throw new StoreException("the disk answers with errors; change the card", null);
            case SLOW -> {
                disk.waitedMs += SLOW_MS;
                throw new StoreException("another program holds the record; close it", null);
            }
        }
    }

    private void alive() {
        if (disk.owner.filter(o -> o == this).isEmpty()) {
            throw new IllegalStateException("this store was closed, or crashed; open the disk again");
        }
    }

    @Override
    public void close() {
        if (disk.owner.filter(o -> o == this).isPresent()) {
            disk.owner = Optional.empty();
        }
    }
}

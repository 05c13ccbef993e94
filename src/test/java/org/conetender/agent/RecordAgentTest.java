package org.conetender.agent;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.Result;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store;
import org.junit.jupiter.api.Test;

/** A disk that takes its time to say no: ticks go on meanwhile, and each of them has nothing to write. */
class RecordAgentTest {

    private static final Result.Record NOTHING = new Result.Record(List.of(), Optional.empty());
    private static final Minute MINUTE = Minute.of(new Checkpoint(new Moment("boot-1", 60_000, 60_000, false),
            List.of(), List.of()));
    private static final int ROUNDS = 14;
    /** A second each. */
    private static final int TICKS_A_WRITE = 10;

    private final Mail mail = new Mail("life");
    private int tries;

    private final class SlowToFail implements Store {

        private void write() throws StoreException {
            tries++;
            for (int t = 0; t < TICKS_A_WRITE; t++) {
                mail.record(NOTHING);
            }
            throw new StoreException("the disk answers with errors", null);
        }

        @Override
        public Kept load() {
            return new Kept(List.of(), Optional.empty(), List.of());
        }

        @Override
        public void append(List<Fact> facts) throws StoreException {
            write();
        }

        @Override
        public void minute(Checkpoint checkpoint) throws StoreException {
            write();
        }

        @Override
        public void history(Minute minute) throws StoreException {
            write();
        }

        @Override
        public void close() {
            tries = 0;
        }
    }

    /** A full disk: facts still find room, minutes do not until there is some. */
    private final class RoomForFacts implements Store {

        private boolean room;
        private int facts;
        /** What everybody else knew while a minute was written. */
        private final List<Optional<String>> known = new ArrayList<>();

        @Override
        public Kept load() {
            return new Kept(List.of(), Optional.empty(), List.of());
        }

        @Override
        public void append(List<Fact> more) {
            facts += more.size();
        }

        @Override
        public void minute(Checkpoint checkpoint) throws StoreException {
            known.add(mail.storeTrouble());
            if (!room) {
                throw new StoreException("the disk is full", null);
            }
        }

        @Override
        public void history(Minute minute) throws StoreException {
            throw new StoreException("the disk is nearly full", null);
        }

        @Override
        public void close() {
            room = false;
        }
    }

    private static Result.Record fact(long seq) {
        return new Result.Record(List.of(List.of(new Fact(seq, new Moment("boot-1", 60_000 + seq, 0, false),
                "a", "", new Change.Tripped("welded", "the water warms though its heater is off")))),
                Optional.empty());
    }

    @Test
    void aFactThatFoundRoomDoesNotEndTheAlarmOfADiskThatIsFullForMinutes() {
        RoomForFacts store = new RoomForFacts();
        RecordAgent agent = new RecordAgent(store, mail);
        mail.record(new Result.Record(List.of(), Optional.of(MINUTE)));
        agent.doWork();
        assertThat(mail.storeTrouble()).hasValue("the disk is full");
        mail.commits();
        mail.record(fact(1));
        agent.doWork();
        assertThat(store.facts).isEqualTo(1);
        assertThat(mail.commits()).singleElement().satisfies(c -> assertThat(c.failure()).isEmpty());
        assertThat(mail.storeTrouble()).hasValue("the disk is full");
        store.room = true;
        mail.record(fact(2));
        agent.doWork();
        assertThat(mail.storeTrouble()).as("as soon as a minute could be kept").isEmpty();
        assertThat(store.known).as("not for a moment before").containsExactly(Optional.empty(),
                Optional.of("the disk is full"), Optional.of("the disk is full"));
    }

    @Test
    void aDiskThatIsSlowToFailIsTriedNoMoreOftenForIt() {
        RecordAgent agent = new RecordAgent(new SlowToFail(), mail);
        mail.record(new Result.Record(List.of(), Optional.of(MINUTE)));
        agent.doWork();
        assertThat(mail.storeTrouble()).isPresent();
        int before = tries;
        for (int i = 0; i < ROUNDS; i++) {
            mail.record(NOTHING);
            agent.doWork();
        }
        assertThat(tries - before).isBetween(2, ROUNDS / RecordAgent.AGAIN_TICKS + 1);
        assertThat(mail.records()).as("what waits while a write lasts").hasSizeLessThanOrEqualTo(1);
    }
}

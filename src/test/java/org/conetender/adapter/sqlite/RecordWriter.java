package org.conetender.adapter.sqlite;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.core.hatch.Development;
import org.conetender.core.unit.Moment;

/**
 * Writes until it is killed: facts, one to three in a transaction, and now and then a minute. Each
 * number is printed once the store has acknowledged it; a minute is printed as its monotonic time.
 */
public final class RecordWriter {

    private RecordWriter() {}

    public static void main(String[] args) throws Exception {
        try (SqliteStore store = SqliteStore.open(Path.of(args[0]), 1)) {
            long seq = store.load().facts().size();
            for (;;) {
                List<Fact> together = new ArrayList<>();
                for (long n = seq % 3; n >= 0; n--) {
                    seq++;
                    together.add(fact(seq));
                }
                store.append(together);
                System.out.println("fact " + seq);
                if (seq % 4 == 0) {
                    store.minute(minute(seq));
                    store.history(history(seq));
                    System.out.println("minute " + seq);
                }
            }
        }
    }

    static Fact fact(long seq) {
        return new Fact(seq, new Moment("boot-1", seq, seq, false), "a", "r-" + seq,
                new Change.Doubted("number " + seq + " " + "x".repeat((int) (seq % 700))));
    }

    static Checkpoint minute(long seq) {
        return new Checkpoint(new Moment("boot-1", seq, seq, false),
                List.of(new Checkpoint.Temperature("a", seq / 16.0), new Checkpoint.Temperature("b", 27)),
                List.of(new Checkpoint.ConePoint("a", 1,
                        new Development(seq, seq + 0.5, 0, 0, 0), new Checkpoint.At("boot-1", seq))));
    }

    /** Some minutes have an alarm. */
    static Minute history(long seq) {
        Checkpoint c = minute(seq);
        return new Minute(c, List.of(outputs("a", seq % 101 / 100.0), outputs("b", 0)),
                seq % 16 > 0 ? List.of() : List.of(new Minute.AlarmTurn(c.at(), "a", "probe",
                        seq % 32 == 0 ? Minute.Turn.RAISED : Minute.Turn.OVER,
                        seq % 32 == 0 ? "the probe is silent" : "")));
    }

    private static Minute.Outputs outputs(String cone, double heat) {
        return new Minute.Outputs(cone, heat, 1, 1, 0, OptionalDouble.of(27));
    }
}

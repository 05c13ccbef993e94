package org.conetender.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.core.hatch.Development;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;
import org.conetender.port.Store;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Eight cones and a room for many days: a checkpoint, nine temperatures and the outputs of eight cones a
 * minute, eight alarms a day, and for each cone and day what a batch and its troubles write. How much lies on
 * the disk in the end, how much is written a day.
 */
class YearTest {

    /** With {@code -Dconetender.days=365} the year; without, what stands for it. */
    private static final int DAYS = Integer.getInteger("conetender.days", 3);
    /** Minutes of history in a commit; with {@code -Dconetender.together=1} each has one of its own. */
    private static final int TOGETHER = Integer.getInteger("conetender.together", History.TOGETHER);
    private static final int CONES = 8;
    /** Of each cone and day: twice what a batch in a day and a half writes (guess). */
    private static final int FACTS = 24;
    /** An alarm's rise, acknowledgement or end so often: eight alarms a day (guess: a bad day). */
    private static final int TURN_MIN = 60;
    private static final long MB = 1_000_000;
    private static final long WRITTEN_A_DAY = 20 * MB;
    private static final long YEAR_ON_DISK = 300 * MB;
    private static final int YEAR_DAYS = 365;
    private static final int WHOLE_DAYS = 30;
    /** What is left of a day by then, facts and alarms with it, is less than this part of it. */
    private static final int THINNED = 4;
    private static final int DAY_MIN = 1_440;

    @TempDir
    Path folder;

    private long seq;

    private Moment at(long minute) {
        return new Moment("9b0c4e1a-55d2-4c1e-9f59-6f1f0f0a3b77", minute * 60_000L,
                1_795_581_286_000L + minute * 60_000L, true);
    }

    private Checkpoint minute(long minute) {
        List<Checkpoint.Temperature> t = new ArrayList<>();
        t.add(new Checkpoint.Temperature("room", 19.4375));
        List<Checkpoint.ConePoint> points = new ArrayList<>();
        for (int c = 0; c < CONES; c++) {
            t.add(new Checkpoint.Temperature("cone-" + c, 26.5 + (minute * 7 + c) % 16 / 16.0));
            double done = minute % 2_000 * 0.4512345678 + c;
            points.add(new Checkpoint.ConePoint("cone-" + c, minute / 2_000,
                    new Development(done, done + 0.731, done / 7, done / 9, 0.123456789),
                    new Checkpoint.At(at(minute).boot(), at(minute).monoMs()), OptionalDouble.of(27.0),
                    Optional.of(new Checkpoint.Air(0.1234, 123_456))));
        }
        return new Checkpoint(at(minute), t, points);
    }

    /** A minute with its outputs, as a solid-state switch makes them, and now and then an alarm. */
    private Minute history(long minute) {
        List<Minute.Outputs> outputs = new ArrayList<>();
        for (int c = 0; c < CONES; c++) {
            outputs.add(new Minute.Outputs("cone-" + c, (minute * 13 + c * 5) % 60 / 100.0, 1, 1,
                    minute % 1_000 < 8 ? 1 : 0, OptionalDouble.of(26.8 + minute / 60 % 7 / 30.0)));
        }
        Minute.Turn turn = Minute.Turn.values()[(int) (minute / TURN_MIN % 3)];
        return new Minute(minute(minute), outputs, minute % TURN_MIN != 0 ? List.of()
                : List.of(new Minute.AlarmTurn(at(minute), "cone-3", "one-probe", turn,
                        turn == Minute.Turn.RAISED ? "one of two probes has been silent for ten minutes; the"
                                + " other serves" : "")));
    }

    private void facts(Store store, long minute) throws Store.StoreException {
        String cone = "cone-" + minute % CONES;
        seq++;
        store.append(List.of(new Fact(seq, at(minute), cone, "tell-" + seq + "-5d2c4c1e", seq % 3 == 0
                ? new Change.Told(new Ask.Did(Step.VALVE_SHUT))
                : new Change.Moved("incubating", "hydration is over, and the water was warm enough"))));
    }

    /** The kernel's count for this process, bytes. @param what of its counts */
    private static long count(String what) throws IOException {
        return Files.readAllLines(Path.of("/proc/self/io")).stream().filter(l -> l.startsWith(what))
                .mapToLong(l -> Long.parseLong(l.substring(l.indexOf(' ') + 1))).findFirst().orElseThrow();
    }

    /** In a short run all minutes are whole; of a year all but thirty days of them become means. */
    private long ofAYear() throws IOException {
        return DAYS > WHOLE_DAYS ? lies() * YEAR_DAYS / DAYS
                : lies() / DAYS * (WHOLE_DAYS + (YEAR_DAYS - WHOLE_DAYS) / THINNED);
    }

    private long lies() throws IOException {
        try (var all = Files.list(folder)) {
            return all.mapToLong(f -> f.toFile().length()).sum();
        }
    }

    @Test
    void aYearOfEightConesIsSmallAndLittleIsWritten() throws Exception {
        long pages = count("write_bytes");
        long handed = count("wchar");
        try (SqliteStore store = SqliteStore.open(folder.resolve("record.db"), TOGETHER)) {
            for (long m = 0; m < (long) DAYS * DAY_MIN; m++) {
                store.minute(minute(m));
                store.history(history(m));
                if (m % (DAY_MIN / (CONES * FACTS)) == 0) {
                    facts(store, m);
                }
            }
        }
        pages = (count("write_bytes") - pages) / DAYS;
        handed = (count("wchar") - handed) / DAYS;
        System.out.println(Text.of("%d days: %.1f MB on disk; pages written a day %.1f MB, handed over"
                + " %.1f MB", DAYS, lies() / 1e6, pages / 1e6, handed / 1e6));
        // Whole pages are what a card is worn by; a disk in memory counts none.
        assertThat(Math.max(pages, handed)).isBetween(MB, WRITTEN_A_DAY);
        assertThat(ofAYear()).as("what a year comes to").isLessThan(YEAR_ON_DISK);
    }
}

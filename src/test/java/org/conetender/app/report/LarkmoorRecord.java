package org.conetender.app.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.conetender.adapter.sqlite.SqliteStore;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store.StoreException;

/**
 * A record of Larkmoor Fry Room, written through the real store as the daemon writes it: minute by minute the
 * water of the cones, and what people told.
 */
public final class LarkmoorRecord implements AutoCloseable {

    private static final long BEGIN_MS = Instant.parse("2026-11-20T18:00:00Z").toEpochMilli();

    private final SqliteStore store;
    private String boot = "boot-1";
    private long bootBeganMin;
    private boolean clock = true;
    private long minute = 10;
    private long seq;
    private int requests;
    private Function<String, Optional<Minute.Outputs>> outputs = _ -> Optional.empty();

    private LarkmoorRecord(SqliteStore store) throws StoreException {
        this.store = store;
        this.seq = store.load().facts().size();
        told("", new Change.Began(Optional.empty()));
    }

    public static LarkmoorRecord in(Path folder) throws StoreException {
        return new LarkmoorRecord(SqliteStore.open(folder.resolve("conetender.db")));
    }

    /** A configuration whose record is in that folder. */
    public static Path config(Path folder) throws IOException {
        Path file = folder.resolve("larkmoor.toml");
        Files.writeString(file, Files.readString(Path.of("config/larkmoor.toml"))
                + "\n[record]\nfolder = \"" + folder + "\"\n");
        return file;
    }

    public Moment now() {
        long mono = (minute - bootBeganMin) * 60_000;
        return new Moment(boot, mono, BEGIN_MS + minute * 60_000, clock);
    }

    /** A cut of so many minutes. @param clockSet whether the clock is set in the new boot */
    public LarkmoorRecord cut(int minutes, boolean clockSet) throws StoreException {
        Moment last = now();
        minute += minutes;
        bootBeganMin = minute - 1;
        boot = boot + "x";
        clock = clockSet;
        return told("", new Change.Began(Optional.of(last)));
    }

    /** Facts of one request. */
    public LarkmoorRecord told(String cone, Change... changes) throws StoreException {
        requests++;
        List<Fact> facts = new ArrayList<>();
        for (Change c : changes) {
            String source = c instanceof Change.Told || c instanceof Change.Taught ? "r" + requests : "";
            facts.add(new Fact(++seq, now(), cone, source, c));
        }
        store.append(facts);
        return this;
    }

    public static Change did(Step step) {
        return new Change.Told(new Ask.Did(step));
    }

    public LarkmoorRecord did(String cone, Step step) throws StoreException {
        return told(cone, did(step));
    }

    public LarkmoorRecord moved(String cone, String stage) throws StoreException {
        return told(cone, new Change.Moved(stage, "it was time"));
    }

    public LarkmoorRecord started(String cone, String lot, double grams) throws StoreException {
        return told(cone, did(Step.STARTED), new Change.Told(new Ask.DidFill(2, 25)), did(Step.SALTED),
                new Change.Told(new Ask.DidStock(lot, grams)));
    }

    /** So many minutes at that temperature, cone and room; of many without outputs every fifth is written. */
    public LarkmoorRecord minutes(int minutes, String cone, double c) throws StoreException {
        for (int i = 0; i < minutes; i++) {
            minute++;
            if (minutes > 30 && i % 5 != 0 && outputs.apply(cone).isEmpty()) {
                continue;
            }
            Checkpoint at = new Checkpoint(now(), List.of(new Checkpoint.Temperature(cone, c
                    + 0.1 * Math.sin(minute / 7.0)), new Checkpoint.Temperature("room", 19.5)), List.of());
            store.history(outputs.apply(cone).map(o -> new Minute(at, List.of(o), List.of()))
                    .orElse(Minute.of(at)));
        }
        return this;
    }

    /** From now on such outputs are kept of each minute of a cone; none before. */
    public LarkmoorRecord switching(Function<String, Optional<Minute.Outputs>> each) {
        outputs = each;
        return this;
    }

    /** An alarm turned in a minute in which nothing was measured. */
    public LarkmoorRecord turned(String cone, String alarm, Minute.Turn turn, String what)
            throws StoreException {
        store.history(new Minute(new Checkpoint(now(), List.of(), List.of()), List.of(),
                List.of(new Minute.AlarmTurn(now(), cone, alarm, turn, what))));
        return this;
    }

    /** A report with what it teaches. */
    public LarkmoorRecord taught(String cone, Ask ask, Change.Taught what) throws StoreException {
        return told(cone, new Change.Told(ask), what);
    }

    /** What a look teaches after so many degree-hours. */
    public static Change.Taught lesson(String lot, long batch, double degreeHours, Lesson.Sight sight) {
        return new Change.Taught(lot, batch, new Lesson(
                new Lesson.At(degreeHours - 1, degreeHours + 1, degreeHours / 15), sight));
    }

    /**
     * A whole batch at 27 °C: 15 °C·h an hour, hatched after 17 h, ready after 23, drawn after 25, with a
     * count of so many when it was drawn.
     */
    public LarkmoorRecord batch(String cone, long number, String lot, int[] count) throws StoreException {
        started(cone, lot, 2).minutes(120, cone, 27).moved(cone, "incubating").minutes(15 * 60, cone, 27)
                .moved(cone, "hatching").minutes(6 * 60, cone, 27).moved(cone, "ready")
                .minutes(2 * 60, cone, 27).did(cone, Step.SETTLE).moved(cone, "settled")
                .did(cone, Step.DRAWING);
        Ask ask = new Ask.DidCount(count[0], count[1], count[2], 1);
        taught(cone, ask, lesson(lot, number, 375,
                new Lesson.Sight.Counted(count[0], count[1], count[2])));
        minutes(10, cone, 26).did(cone, Step.DRAINED).did(cone, Step.RINSED);
        taught(cone, new Ask.Did(Step.RIGHT), lesson(lot, number, 375,
                new Lesson.Sight.Judged(Lesson.Word.RIGHT)));
        return minutes(20, cone, 21).did(cone, Step.CLEANED).minutes(5, cone, 20);
    }

    /** The checkpoint of a minute, with that cone's cysts. */
    public LarkmoorRecord checkpoint(String cone, long batch, double degreeHours) throws StoreException {
        store.minute(new Checkpoint(now(), List.of(), List.of(new Checkpoint.ConePoint(cone, batch,
                new Development(degreeHours, degreeHours, 0, 0, 0),
                new Checkpoint.At(now().boot(), now().monoMs())))));
        return this;
    }

    @Override
    public void close() {
        store.close();
    }
}

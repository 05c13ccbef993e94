package org.conetender.core.batch;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.conetender.core.batch.Checkpoint.ConePoint;
import org.conetender.core.batch.Checkpoint.Temperature;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.Lesson.Sight;
import org.conetender.core.hatch.RoomDay;
import org.conetender.core.judge.Cooling;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;

/** Facts and checkpoints from a seed, with texts chosen to break a careless written form. */
public final class RandomFacts {

    private static final String[] BITS = {"a", "L-0417", " ", "\t", "\n", "\r", "\\", "\\t", "\\\\",
        "'", "\"", ";", "ü", "°C", "盐", "🦐", "\u2028", "\u0000", "--", "NULL"};

    private RandomFacts() {}

    public static String text(Random r) {
        StringBuilder s = new StringBuilder();
        for (int n = r.nextInt(8); n > 0; n--) {
            s.append(BITS[r.nextInt(BITS.length)]);
        }
        return s.toString();
    }

    public static Moment moment(Random r) {
        return new Moment(text(r), r.nextLong(1L << 45), r.nextLong(1L << 45) - (1L << 30), r.nextBoolean());
    }

    public static Fact fact(Random r, long seq) {
        return new Fact(seq, moment(r), text(r), text(r), change(r));
    }

    public static Change change(Random r) {
        return switch (r.nextInt(19)) {
            case 0 -> new Change.Told(ask(r));
            case 1 -> new Change.Moved(text(r), text(r));
            case 2 -> new Change.Tripped(text(r), text(r));
            case 3 -> new Change.Released(text(r), text(r));
            case 4 -> new Change.Doubted(text(r));
            case 5 -> new Change.AlarmOver(text(r));
            case 6 -> new Change.Undoubted(text(r));
            case 7 -> new Change.Bridged(new Bridge(moment(r), moment(r),
                    new Bridge.Ends(figure(r), figure(r), figure(r),
                            new Cooling(figure(r), figure(r)))));
            case 8 -> new Change.ClockSet();
            case 9 -> new Change.Left();
            case 11 -> new Change.Tried(text(r));
            case 16 -> new Change.Taught(text(r), r.nextLong(1L << 40), lesson(r));
            case 17 -> new Change.Drawn(r.nextLong(1L << 40), lesson(r).at());
            case 15 -> new Change.Worn(r.nextLong(1L << 40));
            case 12 -> new Change.Learned(new HeaterBook.Learned(figure(r), figure(r), figure(r), figure(r),
                    figure(r), figure(r)));
            case 10 -> new Change.SetAside(text(r), text(r), text(r));
            case 13 -> new Change.Described(text(r), r.nextLong(1L << 40), text(r));
            case 14 -> new Change.AlarmRaised(text(r), text(r));
            default -> new Change.Began(r.nextBoolean() ? Optional.of(moment(r)) : Optional.empty());
        };
    }

    private static Lesson lesson(Random r) {
        double least = 1e-3 + r.nextDouble() * 900;
        return new Lesson(new Lesson.At(least, least + r.nextDouble(), 1e-3 + r.nextDouble() * 90),
                switch (r.nextInt(4)) {
            case 0 -> new Sight.NoneYet();
            case 1 -> new Sight.First();
            case 2 -> new Sight.Counted(r.nextInt(1_000), r.nextInt(1_000), r.nextInt(1_000));
            default -> new Sight.Judged(Lesson.Word.values()[r.nextInt(Lesson.Word.values().length)]);
        });
    }

    private static Ask ask(Random r) {
        return switch (r.nextInt(15)) {
            case 0 -> new Ask.Did(Step.values()[r.nextInt(Step.values().length)]);
            case 1 -> new Ask.DidFill(figure(r), figure(r));
            case 2 -> new Ask.DidStock(text(r), figure(r));
            case 3 -> new Ask.DidCount(r.nextInt(), r.nextInt(), r.nextInt(), figure(r));
            case 4 -> new Ask.SetUsual(Optional.of(text(r)).filter(s -> !s.isEmpty()),
                    maybe(r), maybe(r), maybe(r));
            case 5 -> new Ask.SetSetpoint(figure(r));
            case 8 -> new Ask.ReadyBy(hour(r));
            case 6 -> new Ask.Withdraw(text(r));
            case 7 -> new Ask.Acknowledge(text(r));
            case 9 -> new Ask.Shelve(text(r), figure(r));
            case 10 -> new Ask.Alarms();
            case 11 -> new Ask.DidWeigh(figure(r));
            case 12 -> new Ask.TinHolds(text(r), figure(r));
            case 13 -> new Ask.DidStockAsUsual(Optional.of(text(r)).filter(s -> !s.isEmpty()), maybe(r));
            default -> new Ask.Away(text(r));
        };
    }

    private static Optional<Hour> hour(Random r) {
        LocalTime time = LocalTime.of(r.nextInt(24), r.nextInt(60));
        LocalDate date = LocalDate.ofEpochDay(r.nextInt(40_000));
        return switch (r.nextInt(4)) {
            case 0 -> Optional.empty();
            case 1 -> Optional.of(new Hour(Optional.empty(), Optional.empty(), time));
            case 2 -> Optional.of(new Hour(Optional.empty(), Optional.of(date.getDayOfWeek()), time));
            default -> Optional.of(Hour.of(date, time));
        };
    }

    public static Checkpoint checkpoint(Random r) {
        List<Temperature> temperatures = new ArrayList<>();
        for (int n = r.nextInt(10); n > 0; n--) {
            temperatures.add(new Temperature(n + text(r), kept(r.nextGaussian() * 20)));
        }
        List<ConePoint> cones = new ArrayList<>();
        for (int n = r.nextInt(9); n > 0; n--) {
            double least = r.nextDouble() * 900;
            Development done = new Development(kept(least), kept(least + r.nextDouble()),
                    kept(r.nextDouble()), kept(r.nextDouble()), kept(r.nextDouble()));
            cones.add(new ConePoint(n + text(r), r.nextLong(), done,
                    new Checkpoint.At("b" + text(r), r.nextLong(1L << 45)), r.nextBoolean()
                            ? OptionalDouble.empty() : OptionalDouble.of(kept(r.nextDouble() * 30)),
                    r.nextBoolean() ? Optional.empty()
                            : Optional.of(new Checkpoint.Air(kept(r.nextDouble()), r.nextLong(1L << 45)))));
        }
        return new Checkpoint(moment(r), temperatures, cones, r.nextBoolean() ? List.of() : day(r));
    }

    /** Not all of it unknown. */
    private static List<RoomDay.Hour> day(Random r) {
        return IntStream.range(0, RoomDay.HOURS).mapToObj(h -> h > 0 && r.nextInt(4) == 0
                ? RoomDay.Hour.UNKNOWN : new RoomDay.Hour(Math.round(r.nextGaussian() * 2_000) / 1e2,
                        1 + r.nextInt(RoomDay.MOST_DAYS))).toList();
    }

    /** As fine as a checkpoint keeps it. */
    private static double kept(double figure) {
        return Math.round(figure * 1e4) / 1e4;
    }

    private static Optional<Double> maybe(Random r) {
        return r.nextBoolean() ? Optional.of(figure(r)) : Optional.empty();
    }

    private static double figure(Random r) {
        return r.nextBoolean() ? r.nextInt(64) / 16.0 : r.nextGaussian() * Math.pow(10, r.nextInt(40) - 20);
    }
}

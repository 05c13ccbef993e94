package org.conetender.sim.trial;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.conetender.core.unit.Text;
import org.conetender.sim.trial.ForecastTrial.Judged;
import org.conetender.sim.trial.ForecastTrial.Point;

/** The table of a {@link ForecastTrial}, and what was aimed at. */
record ForecastTable(List<Judged> all) {

    private static final double MINUTES = 60;
    private static final double PERCENT = 100;
    /** Of intervals that should hold so much, these shares may miss it by (issue: 76 to 84 %). */
    private static final double SHOULD = 0.80;
    private static final double MAY_MISS = 0.04;
    private static final double LAST_MIN = 20;
    private static final int OFTEN = 3;
    private static final double FIXED_PART = 1 / 3.0;

    /** What came out, a row for each split. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        Set<String> none = new LinkedHashSet<>();
        lines.add("  within: share inside the 80 and the 50 % interval; wide: median width of the 80 %, h; "
                + "off: median");
        lines.add("  absolute error, min; fixed: that of 24 h; by hand: that of 319 °C·h above 12 °C; "
                + "known:");
        lines.add("  that of who knows all of the lot, but not how its batches and probes differ");
        for (Point p : Point.values()) {
            lines.add("  " + name(p));
            List<Split> splits = splits(p);
            for (Brood.Habit habit : Brood.Habit.values()) {
                splits.add(new Split("seen 3, " + name(habit),
                        of(p, b -> b.seen() == OFTEN && b.habit() == habit)));
            }
            for (Split s : splits) {
                if (s.some.isEmpty()) {
                    none.add(s.what);
                } else {
                    lines.add(row(s.what, s.some));
                }
            }
        }
        if (!none.isEmpty()) {
            lines.add("  no row and no target, since no batch was of it: " + String.join("; ", none));
        }
        return lines;
    }

    /** Of water that is not held: a row for each point and how its room is known. */
    List<String> loose() {
        List<String> lines = new ArrayList<>();
        for (Point p : Point.values()) {
            lines.add("  " + name(p));
            List<Judged> of = of(p, _ -> true);
            for (Split s : List.of(new Split("all", of),
                    new Split("room measured", of.stream().filter(Judged::roomMeasured).toList()),
                    new Split("room not measured", of.stream().filter(j -> !j.roomMeasured()).toList()),
                    new Split("lot seen 0", of(p, b -> b.seen() == 0)),
                    new Split("lot seen 3 or 10", of(p, b -> b.seen() >= OFTEN)))) {
                if (!s.some.isEmpty()) {
                    lines.add(row(s.what, s.some));
                }
            }
        }
        return lines;
    }

    /** What was aimed at (issue). */
    List<Target> targets() {
        List<Target> targets = new ArrayList<>();
        for (Point p : Point.values()) {
            splits(p).stream().filter(s -> !s.some.isEmpty())
                    .forEach(s -> targets.add(holds(name(p) + ", " + s.what, s.some)));
        }
        List<Judged> often = of(Point.START, b -> b.seen() == OFTEN);
        if (!often.isEmpty()) {
            targets.add(new Target("error at the start, lot seen 3, as a part of that of fixed hours",
                median(often, Judged::offMin) / median(often, ForecastTable::fixedMin), FIXED_PART,
                often.size() >= Target.LEAST));
        }
        List<Judged> last = of(Point.LAST, _ -> true);
        targets.add(new Target("median error 3 h before, min", median(last, Judged::offMin), LAST_MIN,
                last.size() >= Target.LEAST));
        return targets;
    }

    /** @param what of all batches  @param some those */
    private record Split(String what, List<Judged> some) {}

    private List<Split> splits(Point p) {
        List<Split> splits = new ArrayList<>(List.of(new Split("all", of(p, _ -> true))));
        for (int seen : Brood.SEEN) {
            splits.add(new Split("lot seen " + seen, of(p, b -> b.seen() == seen)));
        }
        for (int i = 0; i + 1 < Brood.BANDS_C.length; i++) {
            int band = i;
            splits.add(new Split(band(band), of(p, b -> inBand(b, band))));
        }
        return splits;
    }

    private static Target holds(String what, List<Judged> some) {
        return Target.off("80 % interval off its share, " + what, share(some, Judged::in80),
                new Target.Share(SHOULD, MAY_MISS), some.size());
    }

    private static String row(String what, List<Judged> some) {
        return Text.of("    %-32s %5d  within %3.0f, %2.0f %%  wide %5.1f  off %4.0f  fixed %4.0f  "
                + "by hand %4.0f  known %3.0f", what, some.size(), PERCENT * share(some, Judged::in80),
                PERCENT * share(some, Judged::in50),
                median(some, j -> j.told().p90() - j.told().p10()), median(some, Judged::offMin),
                median(some, ForecastTable::fixedMin), median(some, j -> offMin(j, j.others().textbook())),
                median(some, j -> offMin(j, j.others().usual())));
    }

    private static double fixedMin(Judged j) {
        return offMin(j, j.others().fixed());
    }

    private static double offMin(Judged j, double saidH) {
        return MINUTES * Math.abs(saidH - j.truthH());
    }

    private List<Judged> of(Point p, Predicate<Brood> which) {
        return all.stream().filter(j -> j.point() == p && which.test(j.brood())).toList();
    }

    private static boolean inBand(Brood b, int band) {
        return b.setC() >= Brood.BANDS_C[band] && b.setC() < Brood.BANDS_C[band + 1];
    }

    private static double share(List<Judged> some, Predicate<Judged> which) {
        return some.isEmpty() ? Double.NaN : some.stream().filter(which).count() / (double) some.size();
    }

    private static double median(List<Judged> some, ToDoubleFunction<Judged> what) {
        return new Quantiles(some.stream().mapToDouble(what).toArray()).at(0.5);
    }

    private static String band(int band) {
        return Text.of("held at %.0f to %.0f °C", Brood.BANDS_C[band], Brood.BANDS_C[band + 1]);
    }

    private static String name(Point p) {
        return switch (p) {
            case START -> "at the start";
            case HALF -> "half-way";
            case LAST -> "3 h before";
        };
    }

    private static String name(Brood.Habit h) {
        return switch (h) {
            case FIRST -> "first nauplii told";
            case VERDICT -> "and the harvest judged";
            case COUNT -> "and a sub-sample counted";
            case COUNTS -> "and three large ones counted";
        };
    }
}

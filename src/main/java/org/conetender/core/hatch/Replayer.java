package org.conetender.core.hatch;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.judge.Cooling;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/** Walks a {@link ThermometerLog} once, closing an hour of the table whenever one is over. */
final class Replayer {

    /** Between two readings the water moves on a straight line, integrated in pieces no longer than this. */
    private static final long PIECE_MS = Units.MINUTE_MS;

    /** A point of the course stands at least so often. */
    private static final long STEP_MS = Math.round(Projection.STEP_H * Units.HOUR_MS);

    private final ThermometerLog log;
    private final Replay.Question question;
    private final List<Replay.Hour> hours = new ArrayList<>();
    private final List<Replay.Hole> holes = new ArrayList<>();
    private Development done = Development.NONE;
    private Development doneBeforeHour = Development.NONE;
    private final Course.Builder course = new Course.Builder(512);
    private int steps;

    // The hour being filled: temperature times time, coldest, warmest, measured time.
    private double degreeMs;
    private double leastC = Double.POSITIVE_INFINITY;
    private double mostC = Double.NEGATIVE_INFINITY;
    private long measuredMs;

    Replayer(ThermometerLog log, Replay.Question question) {
        if (question.stockedMs() > log.lastMs()) {
            throw new IllegalArgumentException("the cysts were stocked after the last reading");
        }
        this.log = log;
        this.question = question;
    }

    Replay run() {
        walk();
        if (log.lastMs() > question.stockedMs() + steps * STEP_MS) {
            course.add(Units.hours(log.lastMs() - question.stockedMs()), done, log.waterC(log.size() - 1));
        }
        Rate rate = question.zones().rate();
        Onward onward = Onward.of(log, lastHourC());
        Projection held = onward.projection(log).after(Behind.growing(Units.hours(log.lastMs()
                - question.stockedMs())));
        Course whole = course.ahead(held, rate);
        Speed lot = question.speed();
        Ahead ahead = Ahead.walk(done.degreeHours(), lot.calledReadyAt(), held, rate);
        Speed speed = ahead.there(lot);
        Spread spread = Spread.of(done, speed, ahead, ahead::doneAt).doubting(onward.doubtK(), done, ahead);
        Forecast forecast = new Remembered(onward, whole, spread)
                .of(Forecast.of(done, lot, held, rate), rate);
        hours.replaceAll(h -> h.hatched(speed));
        return new Replay(new Replay.Past(hours, holes), done, forecast,
                new Replay.Outlook(speed, onward, whole, Harvest.of(whole, speed), spread));
    }

    /** Mean of the last hour since stocking, °C; only of readings behind the last gap. */
    private double lastHourC() {
        int last = log.size() - 1;
        long from = Math.max(log.timeMs(last) - Units.HOUR_MS, question.stockedMs());
        double degree = 0;
        long measured = 0;
        for (int i = last; i > 0 && log.timeMs(i) > from && !log.gapBefore(i); i--) {
            long t0 = log.timeMs(i - 1);
            long begin = Math.max(t0, from);
            double share = (begin - t0) / (double) (log.timeMs(i) - t0);
            double beginC = log.waterC(i - 1) + share * (log.waterC(i) - log.waterC(i - 1));
            degree += (beginC + log.waterC(i)) / 2 * (log.timeMs(i) - begin);
            measured += log.timeMs(i) - begin;
        }
        return measured == 0 ? log.waterC(last) : degree / measured;
    }

    /** Only what was done until the last reading. */
    Development walk() {
        course.add(0, done, Double.NaN);
        beforeFirstReading();
        for (int i = 1; i < log.size(); i++) {
            if (log.timeMs(i) <= question.stockedMs()) {
                continue;
            }
            if (log.gapBefore(i)) {
                gap(Math.max(question.stockedMs(), log.timeMs(i - 1)), log.timeMs(i),
                        log.waterC(i - 1), log.waterC(i));
            } else {
                measured(i);
            }
        }
        closeHour(log.lastMs());
        return done;
    }

    /** Cysts wetted before the log began: the water was somewhere between the room and the first reading. */
    private void beforeFirstReading() {
        if (question.stockedMs() < log.firstMs()) {
            gap(question.stockedMs(), log.firstMs(), question.surroundings().roomC(), log.waterC(0));
        }
    }

    private void measured(int i) {
        long t0 = log.timeMs(i - 1);
        long t1 = log.timeMs(i);
        double c0 = log.waterC(i - 1);
        double slope = (log.waterC(i) - c0) / (t1 - t0);
        long from = Math.max(question.stockedMs(), t0);
        while (from < t1) {
            long to = Math.min(Math.min(t1, from + PIECE_MS), stepEndMs());
            double start = c0 + slope * (from - t0);
            double end = c0 + slope * (to - t0);
            double c = (start + end) / 2;
            done = done.advance(to - from, c, c, question.zones());
            degreeMs += c * (to - from);
            measuredMs += to - from;
            leastC = Math.min(leastC, Math.min(start, end));
            mostC = Math.max(mostC, Math.max(start, end));
            closeStepIfOver(to, end);
            from = to;
        }
    }

    /** A gap is bounded as a whole; the hours it spans share what it gave by their length. */
    private void gap(long fromMs, long toMs, double beforeC, double afterC) {
        Replay.Surroundings s = question.surroundings();
        Development all = new Gap(Span.exactly(toMs - fromMs), beforeC, afterC, s.roomC(),
                Cooling.nominal(s.timeConstantH()), false).development(question.zones());
        holes.add(new Replay.Hole(fromMs, toMs, all));
        long from = fromMs;
        while (from < toMs) {
            long to = Math.min(toMs, stepEndMs());
            done = done.plus(all.times((to - from) / (double) (toMs - fromMs)));
            closeStepIfOver(to, Double.NaN);
            from = to;
        }
    }

    private long hourEndMs() {
        return question.stockedMs() + (hours.size() + 1) * Units.HOUR_MS;
    }

    private long stepEndMs() {
        return question.stockedMs() + (steps + 1) * STEP_MS;
    }

    /** Every hour ends with one of its steps. @param c the water, NaN where it was not measured */
    private void closeStepIfOver(long nowMs, double c) {
        if (nowMs == stepEndMs()) {
            steps++;
            course.add(steps * Projection.STEP_H, done, c);
        }
        if (nowMs == hourEndMs()) {
            closeHour(nowMs);
        }
    }

    private void closeHour(long nowMs) {
        if (nowMs == question.stockedMs() + hours.size() * Units.HOUR_MS && !hours.isEmpty()) {
            return;
        }
        double mean = measuredMs > 0 ? degreeMs / measuredMs : Double.NaN;
        hours.add(new Replay.Hour(nowMs, new Replay.Water(mean, leastC, mostC, Units.minutes(measuredMs)),
                done.degreeHours() - doneBeforeHour.degreeHours(), done, 0));
        doneBeforeHour = done;
        degreeMs = 0;
        measuredMs = 0;
        leastC = Double.POSITIVE_INFINITY;
        mostC = Double.NEGATIVE_INFINITY;
    }
}

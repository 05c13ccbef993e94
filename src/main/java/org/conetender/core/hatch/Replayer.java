package org.conetender.core.hatch;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/** Walks a {@link ThermometerLog} once, closing an hour of the table whenever one is over. */
final class Replayer {

    /** Between two readings the water moves on a straight line, integrated in pieces no longer than this. */
    private static final long PIECE_MS = Units.MINUTE_MS;

    private final ThermometerLog log;
    private final Replay.Question question;
    private final List<Replay.Hour> hours = new ArrayList<>();
    private Development done = Development.NONE;
    private Development doneBeforeHour = Development.NONE;
    private double heldC;

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
        this.heldC = log.waterC(log.size() - 1);
    }

    Replay run() {
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
        Rate rate = question.zones().rate();
        Forecast forecast = Forecast.of(done, question.speed(), Projection.steady(heldC), rate);
        return new Replay(hours, done, forecast, heldC);
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
            long to = Math.min(Math.min(t1, from + PIECE_MS), hourEndMs());
            double start = c0 + slope * (from - t0);
            double end = c0 + slope * (to - t0);
            double c = (start + end) / 2;
            done = done.advance(to - from, c, c, question.zones());
            degreeMs += c * (to - from);
            measuredMs += to - from;
            leastC = Math.min(leastC, Math.min(start, end));
            mostC = Math.max(mostC, Math.max(start, end));
            closeHourIfOver(to);
            from = to;
        }
    }

    /** A gap is bounded as a whole; the hours it spans share what it gave by their length. */
    private void gap(long fromMs, long toMs, double beforeC, double afterC) {
        Replay.Surroundings s = question.surroundings();
        Development all = new Gap(Span.exactly(toMs - fromMs), beforeC, afterC, s.roomC(), s.timeConstantH())
                .development(question.zones());
        long from = fromMs;
        while (from < toMs) {
            long to = Math.min(toMs, hourEndMs());
            done = done.plus(all.times((to - from) / (double) (toMs - fromMs)));
            closeHourIfOver(to);
            from = to;
        }
    }

    private long hourEndMs() {
        return question.stockedMs() + (hours.size() + 1) * Units.HOUR_MS;
    }

    private void closeHourIfOver(long nowMs) {
        if (nowMs == hourEndMs()) {
            closeHour(nowMs);
        }
    }

    private void closeHour(long nowMs) {
        if (nowMs == question.stockedMs() + hours.size() * Units.HOUR_MS && !hours.isEmpty()) {
            return;
        }
        double mean = measuredMs > 0 ? degreeMs / measuredMs : Double.NaN;
        heldC = measuredMs > 0 ? mean : heldC;
        hours.add(new Replay.Hour(nowMs, new Replay.Water(mean, leastC, mostC, Units.minutes(measuredMs)),
                done.degreeHours() - doneBeforeHour.degreeHours(), done,
                question.speed().hatchedShare(done.degreeHours())));
        doneBeforeHour = done;
        degreeMs = 0;
        measuredMs = 0;
        leastC = Double.POSITIVE_INFINITY;
        mostC = Double.NEGATIVE_INFINITY;
    }
}

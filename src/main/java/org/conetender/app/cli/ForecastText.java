package org.conetender.app.cli;

import java.io.PrintWriter;
import java.util.Locale;
import org.conetender.core.hatch.Course;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Harvest;
import org.conetender.core.hatch.Onward;
import org.conetender.core.hatch.Rate;
import org.conetender.core.hatch.RateForm;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.Speed;

/** A {@link ForecastReport} for people: a table that adds up by hand, then the answer. */
record ForecastText(ForecastReport report) {

    void print(PrintWriter out) {
        LogReader.Result read = report.read();
        line(out, "%d %s from %s to %s (%s)", read.log().size(),
                read.log().size() == 1 ? "reading" : "readings", report.time(read.log().firstMs()),
                report.time(read.log().lastMs()), read.zone());
        read.remarks().forEach(r -> out.println("note: " + r));
        line(out, "cysts stocked %s%n", report.time(report.stockedMs()));
        printTable(out);
        printAnswer(out, report.replay().forecast());
        printArrest(out, report.replay().development());
        out.println(report.asked().form() == RateForm.BASE
                ? "by hand: up to 30 °C each measured hour gains its mean temperature less 12"
                : "reckoned by the rate \"" + report.asked().form() + "\", whose degree-hours are those of "
                        + "the usual one at 24 °C only; a lot's K50 belongs to the form it was found with");
    }

    private void printTable(PrintWriter out) {
        out.println("hour  until             mean °C  least   most  gained   done  hatched");
        int number = 0;
        for (Replay.Hour h : report.replay().hours()) {
            number++;
            line(out, "%4d  %s  %s %7.2f %6.1f %7.1f%%%s", number, report.time(h.untilMs()),
                    water(h.water()), h.gainedDegreeHours(), h.done().degreeHours(), 100 * h.hatched(),
                    interval(h.done()));
        }
        out.println();
    }

    private static String water(Replay.Water w) {
        return !w.measured() ? "      -      -      -"
                : String.format(Locale.ROOT, "%7.2f %6.2f %6.2f", w.meanC(), w.leastC(), w.mostC());
    }

    /** Shown once it would change the printed figure. */
    private static String interval(Development d) {
        double least = d.leastDegreeHours();
        double most = d.mostDegreeHours();
        return most - least < 0.05 ? "" : String.format(Locale.ROOT, "  (done %.1f to %.1f)", least, most);
    }

    private void printAnswer(PrintWriter out, Forecast f) {
        line(out, "degree-hours" + (report.asked().form() == RateForm.BASE ? " above 12 °C" : "")
                + ": %.1f done of %.1f needed (%s; K50 %.0f)",
                f.doneDegreeHours(), f.neededDegreeHours(),
                report.speed().known() ? "until 90 % have hatched, as told"
                : "by then nine in ten have hatched in three " + (report.speed().timesSeen() == 0 ? "lots"
                : "such batches") + " of four", report.speed().k50DegreeHours());
        line(out, "hatched at the last reading: %.0f %% of what hatches, probably %.0f to %.0f %%",
                100 * f.hatched().median(), 100 * f.hatched().low(), 100 * f.hatched().high());
        if (f.reachable()) {
            printReady(out, f);
        } else {
            out.println(f.sentence());
        }
        report.byMs().ifPresent(ms -> line(out, "chance of being ready by %s: %s", report.time(ms),
                percent(report.chance())));
        printFood(out);
        Onward o = report.replay().outlook().onward();
        if (o.daily()) {
            line(out, "from the last reading on the water is taken to do as in the 24 h before it: %.1f to "
                    + "%.1f °C, in the mean %.1f °C", o.leastC(), o.mostC(), o.meanC());
        } else {
            line(out, "from the last reading on the water is taken to stay at %.1f °C, the last hour's mean",
                    o.meanC());
        }
    }

    /** What is nearly sure is not told as sure. */
    private static String percent(double chance) {
        return chance < 0.01 ? "less than 1 %" : chance > 0.99 ? "more than 99 %"
                : String.format(Locale.ROOT, "%.0f %%", 100 * chance);
    }

    private void printReady(PrintWriter out, Forecast f) {
        Forecast.Ready r = f.ready();
        line(out, "ready %s %s; 8 in 10 such batches between %s and %s, 5 in 10 between %s and %s",
                r.announced() < 0 ? "since about" : "at", ahead(r.announced()), ahead(r.earliest()),
                ahead(r.latest()), ahead(r.earlierQuartile()), ahead(r.laterQuartile()));
        if (!report.speed().known()) {
            out.println("this is late on purpose, since " + (report.speed().timesSeen() == 0
                    ? "nobody has seen the lot hatch" : "one look does not settle what a lot does"));
        }
        if (!f.course().calibrated()) {
            out.println("most of the way lies outside 20 to 30 °C, where little is published: "
                    + "the interval is wider");
        }
    }

    /** For the lot's median: when the shares are reached, and when to harvest. */
    private void printFood(PrintWriter out) {
        Course course = report.replay().outlook().course();
        Speed s = report.speed();
        if (Double.isFinite(course.hoursAt(s.k90()))) {
            line(out, "in the middle of such batches 10 %% hatch by %s, 50 %% by %s, 90 %% by %s",
                    ahead(course.hoursAt(s.k10())), ahead(course.hoursAt(s.k50DegreeHours())),
                    ahead(course.hoursAt(s.k90())));
        }
        Harvest h = report.replay().outlook().harvest();
        if (Double.isFinite(h.best().hours())) {
            line(out, "most food in the cone then about %s, with %.0f %% hatched; 95 %% of it from %s to %s",
                    ahead(h.best().hours()), 100 * h.best().hatched(), ahead(h.fromHours()),
                    ahead(h.untilHours()));
        }
        h.twice().ifPresent(t -> line(out, "this lot hatches over longer than its first nauplii take to "
                + "moult: harvest twice, about %s (%.0f %% of them) and %s", ahead(t.firstHours()),
                100 * t.firstShare(), ahead(t.secondHours())));
    }

    private Rate rate() {
        return report.asked().form().rate();
    }

    private void printArrest(PrintWriter out, Development d) {
        if (d.hoursArrested() > 0) {
            line(out, "no development for up to %.1f h too warm (%.0f °C or more) and %.1f h too cold "
                    + "(%.0f °C or less); progress is kept", d.hoursWarm(), rate().ceilingC(), d.hoursCold(),
                    rate().baseC());
        }
        if (d.hoursAboveLoss() > 0) {
            line(out, "up to %.1f h at 38 °C or more: the cysts may be lost; look before you feed",
                    d.hoursAboveLoss());
        }
    }

    private String ahead(double hours) {
        return Double.isFinite(hours) ? report.time(report.aheadMs(hours)) : "an hour nobody can tell";
    }

    private static void line(PrintWriter out, String format, Object... values) {
        out.println(String.format(Locale.ROOT, format, values));
    }
}

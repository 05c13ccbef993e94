package org.conetender.app.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.conetender.app.report.Lines;
import org.conetender.core.face.HourWords;
import org.conetender.core.hatch.Course;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Harvest;
import org.conetender.core.hatch.Onward;
import org.conetender.core.hatch.Rate;
import org.conetender.core.hatch.RateForm;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.Speed;
import org.conetender.core.unit.Text;

/**
 * A {@link ForecastReport} for people: the answer, the moments at which something is to be done, and where it
 * is wanted the table of all hours, which adds up by hand.
 *
 * @param hours whether every hour is listed
 */
record ForecastText(ForecastReport report, boolean hours) {

    /** @param what happens  @param hours after the last reading */
    private record Event(String what, double hours) {}

    void print(PrintWriter out) {
        LogReader.Result read = report.read();
        wrapped(out, Text.of("%d %s from %s to %s (%s)", read.log().size(),
                read.log().size() == 1 ? "reading" : "readings", report.time(read.log().firstMs()),
                report.time(read.log().lastMs()), read.zone()));
        report.notes().forEach(r -> wrapped(out, "note: " + r));
        line(out, "cysts stocked %s%n", report.time(report.stockedMs()));
        printAnswer(out, report.replay().forecast());
        printArrest(out, report.replay().development());
        out.println();
        printEvents(out);
        if (hours) {
            out.println();
            printTable(out);
        }
        if (!usual()) {
            wrapped(out, "reckoned by the rate \"" + report.asked().form() + "\", whose degree-hours are "
                    + "those of the usual one at 24 °C only; a lot's K50 belongs to the form it was found "
                    + "with");
        } else if (hours) {
            out.println("by hand: up to 30 °C each measured hour gains its mean temperature less 12");
        }
    }

    private void printTable(PrintWriter out) {
        out.println("hour  until             mean °C  least   most  gained   done  hatched");
        int number = 0;
        Development before = Development.NONE;
        for (Replay.Hour h : report.replay().hours()) {
            number++;
            line(out, "%4d  %s  %s %7.2f %6.1f %7.1f%%%s", number, report.time(h.untilMs()),
                    water(h.water()), h.gainedDegreeHours(), h.done().degreeHours(), 100 * h.hatched(),
                    interval(before, h.done()));
            before = h.done();
        }
    }

    private static String water(Replay.Water w) {
        return !w.measured() ? "      -      -      -"
                : Text.of("%7.2f %6.2f %6.2f", w.meanC(), w.leastC(), w.mostC());
    }

    /** Of the sum, and of what was added to it; shown once it would change the printed figure. */
    private static String interval(Development before, Development d) {
        double least = d.leastDegreeHours() - before.leastDegreeHours();
        double most = d.mostDegreeHours() - before.mostDegreeHours();
        String gained = most - least < 0.05 ? "" : Text.of("gained %.1f to %.1f, ", least, most);
        return d.mostDegreeHours() - d.leastDegreeHours() < 0.05 ? "" : Text.of("  (%sdone %.1f to %.1f)",
                gained, d.leastDegreeHours(), d.mostDegreeHours());
    }

    private void printAnswer(PrintWriter out, Forecast f) {
        line(out, "degree-hours" + (usual() ? " above 12 °C" : "")
                + ": %.1f done of %.1f needed (K50 %.0f)%n  %s",
                f.doneDegreeHours(), f.neededDegreeHours(), report.speed().k50DegreeHours(),
                report.speed().known() ? "until 90 % have hatched, as told"
                : "by then nine in ten have hatched in three " + (report.speed().timesSeen() == 0 ? "lots"
                : "such batches") + " of four");
        report.unmeasured().ifPresent(u -> wrapped(out, 2, Text.of("between %.1f and %.1f done, since %s",
                report.replay().development().leastDegreeHours(),
                report.replay().development().mostDegreeHours(), u)));
        line(out, "hatched at the last reading: %.0f %% of what hatches, probably %.0f to %.0f %%",
                100 * f.hatched().median(), 100 * f.hatched().low(), 100 * f.hatched().high());
        if (f.reachable()) {
            printReady(out, f);
        } else {
            wrapped(out, f.sentence());
        }
        report.byMs().ifPresent(ms -> line(out, "chance of being ready by %s: %s", report.time(ms),
                HourWords.percent(report.chance())));
        Onward o = report.replay().outlook().onward();
        wrapped(out, "from the last reading on the water is taken to " + (o.daily() ? Text.of("do as in the "
                + "24 h before it: %.1f to %.1f °C, in the mean %.1f °C", o.leastC(), o.mostC(), o.meanC())
                : Text.of("stay at %.1f °C, the last hour's mean", o.meanC())));
    }

    private void printReady(PrintWriter out, Forecast f) {
        Forecast.Ready r = f.ready();
        line(out, "ready %s %s%n  8 in 10 such batches between %s and %s%n  5 in 10 between %s and %s",
                r.announced() < 0 ? "since about" : "at", ahead(r.announced()), ahead(r.earliest()),
                ahead(r.latest()), ahead(r.earlierQuartile()), ahead(r.laterQuartile()));
        if (!report.speed().known()) {
            out.println("  late on purpose, since " + (report.speed().timesSeen() == 0
                    ? "nobody has seen the lot hatch" : "one look does not settle what a lot does"));
        }
        if (!f.course().calibrated()) {
            wrapped(out, "most of the way lies outside 20 to 30 °C, where little is published"
                    + (usual() ? ": the interval is wider" : ""));
        }
        if (report.replay().outlook().harvest().twice().isPresent()) {
            wrapped(out, "this lot hatches over longer than its first nauplii take to moult: harvest twice");
        }
    }

    /** In their order, each with where the middle of such batches stands then. */
    private void printEvents(PrintWriter out) {
        Course course = report.replay().outlook().course();
        Speed s = report.speed();
        Forecast f = report.replay().forecast();
        Harvest h = report.replay().outlook().harvest();
        List<Event> all = new ArrayList<>(List.of(new Event("last reading", 0),
                new Event("T0, first nauplii", course.hoursAt(s.k0())),
                new Event("T10, a tenth hatched", course.hoursAt(s.k10())),
                new Event("T50, half hatched", course.hoursAt(s.k50DegreeHours())),
                new Event("T90, nine tenths", course.hoursAt(s.k90())),
                new Event("ready, as announced", f.reachable() ? f.ready().announced() : Double.NaN)));
        if (Double.isFinite(h.best().hours())) {
            all.addAll(List.of(new Event("most food, 95 % from", h.fromHours()),
                    new Event("most food in the cone", h.best().hours()),
                    new Event("most food, 95 % until", h.untilHours())));
        }
        h.twice().ifPresent(t -> all.addAll(List.of(new Event(Text.of(
                "first harvest (%.0f %%)", 100 * t.firstShare()), t.firstHours()),
                new Event("second harvest", t.secondHours()))));
        out.println("                          when                °C·h  hatched");
        all.stream().filter(e -> Double.isFinite(e.hours())).sorted(Comparator.comparingDouble(Event::hours))
                .forEach(e -> {
                    double done = course.doneAt(e.hours()).degreeHours();
                    line(out, "%-25s %-17s %6.1f %6.0f %%", e.what(), ahead(e.hours()), done,
                            100 * s.hatchedShare(done));
                });
    }

    private boolean usual() {
        return report.asked().form() == RateForm.BASE;
    }

    private Rate rate() {
        return report.asked().form().rate();
    }

    private void printArrest(PrintWriter out, Development d) {
        if (d.hoursArrested() > 0) {
            wrapped(out, Text.of("no development for up to %.1f h too warm (%.0f °C or more) and %.1f h too "
                    + "cold (%.0f °C or less); progress is kept", d.hoursWarm(), rate().ceilingC(),
                    d.hoursCold(), rate().baseC()));
        }
        if (d.hoursAboveLoss() > 0) {
            line(out, "up to %.1f h at 38 °C or more: the cysts may be lost; look before you feed",
                    d.hoursAboveLoss());
        }
    }

    private String ahead(double hours) {
        return Double.isFinite(hours) ? report.time(report.aheadMs(hours)) : "an hour nobody can tell";
    }

    private static void wrapped(PrintWriter out, String text) {
        wrapped(out, 0, text);
    }

    private static void wrapped(PrintWriter out, int indent, String text) {
        Lines.wrapped(indent, text).forEach(out::println);
    }

    private static void line(PrintWriter out, String format, Object... values) {
        out.println(Text.of(format, values));
    }
}

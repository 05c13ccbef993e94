package org.conetender.app.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.conetender.app.plot.Hatch;
import org.conetender.app.plot.HatchPicture;
import org.conetender.app.plot.Picture;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.unit.Text;

/**
 * A {@link ForecastReport} as a picture.
 *
 * @param log the log's name, for the title where nothing else can be said
 */
record ForecastPicture(ForecastReport report, String log) {

    /** A verdict stands where a lot is ripe. */
    private static final double RIPE = 0.9;

    private static final String SVG = ".svg";
    private static final String PNG = ".png";

    /** Whether the name says in which of the two forms. */
    static boolean canDraw(Path file) {
        return ending(file).equals(SVG) || ending(file).equals(PNG);
    }

    private static String ending(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return name.substring(Math.max(0, name.length() - SVG.length()));
    }

    /** Whole or not at all, as far as the drawing goes. @param file such as {@link #canDraw} takes */
    void drawInto(Path file) throws IOException {
        ForecastReport r = report;
        write(file, new HatchPicture(new Hatch(r.read().log(), r.replay(), r.read().zone(),
                r.seen().looks().stream().map(this::look).toList()), title(), lines()));
    }

    private Hatch.Look look(Lesson l) {
        double atH = l.at().hours() + report.replay().outlook().course().hours(0);
        return switch (l.sight()) {
            case Lesson.Sight.NoneYet _ -> new Hatch.Look(atH, 0, "none yet");
            case Lesson.Sight.First _ -> new Hatch.Look(atH, 0, "first seen");
            case Lesson.Sight.Counted c -> {
                double share = c.nauplii() / (double) Math.max(1, c.nauplii() + c.umbrella()
                        + c.unhatched());
                yield new Hatch.Look(atH, share, Text.of("%.0f %% counted", 100 * share));
            }
            case Lesson.Sight.Judged(Lesson.Word w) -> new Hatch.Look(atH, RIPE, switch (w) {
                case TOO_EARLY -> "judged too early";
                case RIGHT -> "judged right";
                case LATE -> "judged late";
            });
        };
    }

    /** In the form that the name asks for. */
    static void write(Path file, Picture picture) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        if (ending(file).equals(SVG)) {
            picture.svg(bytes);
        } else {
            picture.png(bytes);
        }
        Files.write(file, bytes.toByteArray());
    }

    private String title() {
        Forecast f = report.replay().forecast();
        if (!f.reachable() || !Double.isFinite(f.ready().announced())) {
            return log + ": not ready in sight";
        }
        return (f.ready().announced() < 0 ? "Ready since about " : "Ready about ")
                + report.dayAndTime(report.aheadMs(f.ready().announced()));
    }

    private List<String> lines() {
        Forecast f = report.replay().forecast();
        List<String> lines = new ArrayList<>();
        if (!f.reachable()) {
            lines.addAll(List.of(f.sentence().split("(?<=[:;]) ")));
        } else if (Double.isFinite(f.ready().latest())) {
            lines.add("8 in 10 such batches: " + report.dayAndTime(report.aheadMs(f.ready().earliest()))
                    + " to " + report.dayAndTime(report.aheadMs(f.ready().latest())));
        }
        lines.add("stocked " + report.dayAndTime(report.stockedMs()) + ", last reading "
                + report.dayAndTime(report.read().log().lastMs()));
        if (f.reachable() && !report.speed().known()) {
            lines.add(report.speed().timesSeen() == 0
                    ? "nobody has seen this lot hatch, so it is told late on purpose"
                    : "seen once, so it is still told a little late on purpose");
        }
        return lines;
    }
}

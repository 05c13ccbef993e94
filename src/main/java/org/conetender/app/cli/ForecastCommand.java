package org.conetender.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import org.conetender.app.view.Terminal;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Learnt;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.hatch.RateForm;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.Slip;
import org.conetender.core.hatch.Speed;
import org.conetender.core.hatch.ThermometerLog;
import org.conetender.core.hatch.Zones;
import org.conetender.core.judge.Losses;
import org.conetender.core.unit.Units;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code forecast}: when a hatch will be ready, from a thermometer's log alone. Needs no daemon. */
@Command(name = "forecast", mixinStandardHelpOptions = true, sortOptions = false,
        description = {"Reckons from a thermometer's log how far a hatch has come and when it will be ready.",
            "The log is CSV: a time and a water temperature per line, with or without a header,"
                + " fields parted by , or ; or tabs."},
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:the forecast was printed",
            "2:the log or an option is wrong; nothing was reckoned"},
        footerHeading = "%nExample:%n",
        footer = {"  conetender forecast --log cone-a.csv --zone Europe/London \\",
            "      --stocked '2026-03-01 19:00' --plot cone-a.svg",
            "  where cone-a.csv holds lines such as", "",
            "    2026-03-01 19:00,21.5", "    2026-03-01 19:10,23.1"})
public final class ForecastCommand implements Callable<Integer> {

    private static final int BAD_INPUT = 2;

    /** How well a person knows the K50 they give: about 10 % (*guess*). */
    private static final double TOLD_LOG_SD = 0.10;

    /** Where a synchrony is told, °C, and the standard score of 90 %. */
    private static final double SYNCHRONY_AT_C = 25;
    private static final double SCORE_OF_90 = 1.2816;

    /** More than this between stocking and the first reading says nothing any more, ms (*guess*). */
    private static final long LONGEST_BEFORE_MS = 48L * 3_600_000;

    @Spec
    private CommandSpec spec;

    @Option(names = "--log", required = true, paramLabel = "FILE", description = "the thermometer's log")
    private Path log;

    @Option(names = "--stocked", paramLabel = "TIME",
            description = "when the cysts were wetted; default: the first reading")
    private String stocked;

    @Option(names = "--lot-speed", paramLabel = "K50",
            description = "degree-hours above 12 °C at which half of this lot has hatched; default: 271, "
                + "as for a lot nobody has seen hatch")
    private Double lotSpeed;

    @Option(names = "--synchrony", paramLabel = "H",
            description = "hours at 25 °C from 10 %% to 90 %% hatched of this lot; default: about "
                + "10, in the middle of what lots take")
    private Double synchronyH;

    @Option(names = "--rate", paramLabel = "FORM", defaultValue = "base",
            description = "how development answers to temperature: base (straight up to 30 °C, none from "
                + "33), briere or enzyme (smooth, without published figures of their own); "
                + "default: ${DEFAULT-VALUE}")
    private RateForm form;

    @Mixin
    private final ForecastReports reports = new ForecastReports();

    @Option(names = "--by", paramLabel = "TIME",
            description = "also tell the chance of being ready by then, such as '2026-03-02 20:00'")
    private String by;

    @Option(names = "--zone", paramLabel = "ZONE",
            description = "zone of times without an offset, and of the answer, such as Europe/London")
    private ZoneId zone;

    @Option(names = "--day-first", description = "1/3/2026 and 1-3-2026 are days of March; "
            + "1.3.2026 always is")
    private boolean dayFirst;

    @Option(names = "--fahrenheit", description = "the log's temperatures are in °F")
    private boolean fahrenheit;

    @Option(names = "--room", paramLabel = "CELSIUS", defaultValue = "20",
            description = "the room, for hours without readings; default: ${DEFAULT-VALUE} °C")
    private double roomC;

    @Option(names = "--litres", paramLabel = "L", defaultValue = "2",
            description = "water in the cone, for hours without readings; default: ${DEFAULT-VALUE} L")
    private double litres;

    @Option(names = "--plot", paramLabel = "FILE",
            description = "also draw a picture into this file: SVG or PNG, as its name ends")
    private Path plot;

    @Option(names = "--hours", description = "also list every hour, a table that adds up by hand")
    private boolean hours;

    @Option(names = "--json", description = "print one JSON object for another program")
    private boolean json;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        ForecastReport report;
        try {
            checkPlot();
            report = reckon();
        } catch (BadLog e) {
            PrintWriter err = spec.commandLine().getErr();
            e.problems().forEach(err::println);
            err.flush();
            return BAD_INPUT;
        }
        if (plot != null && !draw(new ForecastPicture(report, log.getFileName().toString()))) {
            return BAD_INPUT;
        }
        if (json) {
            new ForecastJson(report).print(out);
        } else {
            new ForecastText(report, hours).print(out);
        }
        out.flush();
        return 0;
    }

    private void checkPlot() throws BadLog {
        if (plot != null && !ForecastPicture.canDraw(plot)) {
            throw new BadLog("--plot " + plot + " must end in .svg or .png");
        }
        if (plot != null && form != RateForm.BASE) {
            throw new BadLog("--plot draws by the usual rate alone; leave --rate " + form + " or --plot out");
        }
    }

    /** Drawn before anything is printed: who asked for a picture and got none is told so first. */
    private boolean draw(ForecastPicture picture) {
        try {
            picture.drawInto(plot);
            return true;
        } catch (IOException e) {
            PrintWriter err = spec.commandLine().getErr();
            err.println("--plot " + plot + " could not be written: " + reason(e));
            err.flush();
            return false;
        }
    }

    static String reason(IOException e) {
        return switch (e) {
            case NoSuchFileException _ -> "its folder is not there";
            case AccessDeniedException _ -> "this user may not write there";
            case FileSystemException f when f.getReason() != null -> f.getReason();
            default -> e.getMessage();
        };
    }

    private ForecastReport reckon() throws BadLog {
        Speed speed = speed();
        Replay.Surroundings surroundings = surroundings();
        LogReader.Result read = read();
        ThermometerLog readings = read.log();
        long stockedMs = stocked == null ? readings.firstMs() : stockedMs(readings);
        Zones zones = new Zones(form.rate(), Zones.USUAL.lossC());
        Replay replay = readings.replay(new Replay.Question(speed, zones, stockedMs, surroundings));
        List<Lesson> looks = List.of();
        if (!reports.isEmpty()) {
            if (form != RateForm.BASE) {
                throw new BadLog("--rate " + form + " cannot go with what was seen of the batch: a lot is "
                        + "learnt by the usual rate; leave one of them out");
            }
            looks = reports.lessons(times(), readings, replay);
            Speed seen = Learnt.of(prior(), List.of(), Slip.believed(prior(), looks));
            // A lot whose speed was told stays one that is known.
            Speed lot = lotSpeed == null ? seen : new Speed(seen.k50DegreeHours(), seen.sigma(), seen.doubt(),
                    Speed.KNOWN_AFTER);
            replay = readings.replay(new Replay.Question(lot, zones, stockedMs, surroundings));
        }
        OptionalLong byMs = by == null ? OptionalLong.empty() : OptionalLong.of(byMs(readings, stockedMs));
        return new ForecastReport(read, new ForecastReport.Asked(stockedMs, byMs, form), replay,
                new ForecastReport.Seen(looks, looks.isEmpty() ? List.of() : Slip.among(prior(), looks)));
    }

    private Learnt.Prior prior() throws BadLog {
        if (synchronyH != null) {
            throw new BadLog("--synchrony cannot go with what was seen of the batch: that tells it already");
        }
        return lotSpeed == null ? Learnt.Prior.UNKNOWN : new Learnt.Prior(Math.log(lotSpeed), TOLD_LOG_SD);
    }

    private LogTimes times() {
        return new LogTimes(Optional.ofNullable(zone), dayFirst);
    }

    private LogReader.Result read() throws BadLog {
        Progress progress = new Progress(spec.commandLine().getErr(), "reading " + log.getFileName());
        try {
            return LogReader.read(log, new LogReader.Format(Optional.ofNullable(zone), dayFirst, fahrenheit,
                    Terminal.there() ? progress : _ -> { }));
        } finally {
            progress.wipe();
        }
    }

    private Speed speed() throws BadLog {
        // Lots run from about 200 to 360 °C·h (science.md §2.3); what lies far outside is a slip.
        if (lotSpeed != null && !(lotSpeed >= 100 && lotSpeed <= 800)) {
            throw new BadLog("--lot-speed " + lotSpeed + " is no K50: lots run from about 200 to 360 °C·h"
                    + " above 12 °C (100 to 800 is accepted)");
        }
        double k50 = lotSpeed == null ? Speed.UNKNOWN_LOT.k50DegreeHours() : lotSpeed;
        double sigma = synchronyH == null ? Speed.UNKNOWN_LOT.sigma() : sigma(k50);
        return lotSpeed == null ? new Speed(k50, sigma, Learnt.Prior.UNKNOWN.sd(), 0)
                : new Speed(k50, sigma, TOLD_LOG_SD, Speed.KNOWN_AFTER);
    }

    /** From T90 − T10 and T50 (science.md §3.4). */
    private double sigma(double k50) throws BadLog {
        double t50H = k50 / form.rate().perHour(SYNCHRONY_AT_C);
        double x = synchronyH / (2 * t50H);
        double sigma = Math.log(x + Math.sqrt(x * x + 1)) / SCORE_OF_90;
        // Lots run from 0.10 to 0.28 (science.md §2.3).
        if (!(sigma >= 0.03 && sigma <= 0.6)) {
            throw new BadLog("--synchrony " + synchronyH + " is none: from 10 to 90 % hatched a lot takes "
                    + "about 5 to 15 h at 25 °C");
        }
        return sigma;
    }

    private Replay.Surroundings surroundings() throws BadLog {
        if (!(roomC > -20 && roomC < 50)) {
            throw new BadLog("--room " + roomC + " is no room; give °C between -20 and 50");
        }
        if (!(litres > 0 && litres <= 1000)) {
            throw new BadLog("--litres " + litres + " is no cone; give litres above 0, up to 1000");
        }
        return new Replay.Surroundings(roomC, Losses.timeConstantH(litres, Losses.wattsPerK(litres, false)));
    }

    private long stockedMs(ThermometerLog readings) throws BadLog {
        long ms = ms("--stocked", stocked);
        if (ms > readings.lastMs()) {
            throw new BadLog("--stocked " + stocked + " is after the last reading; check the time"
                    + " and its zone");
        }
        if (readings.firstMs() - ms > LONGEST_BEFORE_MS) {
            throw new BadLog("--stocked " + stocked + " is more than 48 h before the first reading;"
                    + " check the time, or give a log that begins earlier");
        }
        return ms;
    }

    private long byMs(ThermometerLog readings, long stockedMs) throws BadLog {
        long ms = ms("--by", by);
        if (ms <= stockedMs) {
            throw new BadLog("--by " + by + " is not after the cysts were stocked; check the time"
                    + " and its zone");
        }
        if (Units.hours(ms - readings.lastMs()) > Forecast.HORIZON_H) {
            throw new BadLog("--by " + by + " is more than " + Forecast.HORIZON_H + " h after the last"
                    + " reading; so far ahead nothing is reckoned");
        }
        return ms;
    }

    private long ms(String option, String text) throws BadLog {
        try {
            return times().read(text, Long.MIN_VALUE).ms();
        } catch (BadLog e) {
            throw new BadLog(option + " " + e.getMessage());
        }
    }
}

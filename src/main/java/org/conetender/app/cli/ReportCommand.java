package org.conetender.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.conetender.adapter.sqlite.RecordReader;
import org.conetender.app.Wiring;
import org.conetender.app.config.Config;
import org.conetender.app.plot.BatchPicture;
import org.conetender.app.report.BatchPage;
import org.conetender.app.report.BatchTable;
import org.conetender.app.report.Cleaning;
import org.conetender.app.report.LotCard;
import org.conetender.app.report.Measured;
import org.conetender.app.report.Past;
import org.conetender.app.report.Story;
import org.conetender.core.batch.Batch;
import org.conetender.port.Store;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code report}: what the record tells of batches, lots and cleaning. The daemon may run meanwhile. */
@Command(name = "report", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Tells what the record holds of batches, lots and cleaning. It changes nothing, "
                + "and the daemon may run meanwhile; only to restore a backup it must be stopped.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:the report was printed, or the copy is whole",
            "2:the configuration or an option is wrong; nothing was printed",
            "69:the record or the backup cannot be had"},
        footerHeading = "%nExamples:%n",
        footer = {"  conetender report --cone a --since 2026-03-01",
            "  conetender report --batch a/12 --plot a-12.svg", "  conetender report --lot L-0417",
            "  conetender report --cleaning --cone a",
            "  conetender report --csv > batches.csv",
            "  conetender report --backup /media/usb/larkmoor-2026-11-26.zip"})
public final class ReportCommand implements Callable<Integer> {

    private static final int BAD_INPUT = 2;

    @Spec
    private CommandSpec spec;

    @Mixin
    private ConfigFile configFile;

    @Option(names = "--cone", paramLabel = "ID", description = "only of this cone")
    private String cone;

    @Option(names = "--lot", paramLabel = "LOT", description = "only of this lot, with what is known of it")
    private String lot;

    @Option(names = "--since", paramLabel = "DATE", description = "only batches begun on this day or later, "
            + "such as 2026-03-01, in the site's zone")
    private String since;

    @Option(names = "--batch", paramLabel = "CONE/NUMBER", description = "all about one batch, such as a/12")
    private String batch;

    @Option(names = "--plot", paramLabel = "FILE", description = "with --batch: also draw a picture into "
            + "this file: SVG or PNG, as its name ends")
    private Path plot;

    @Option(names = "--cleaning", description = "when the cones were rinsed, cleaned and disinfected")
    private boolean cleaning;

    @Option(names = "--csv", description = "print batches as CSV, for a spreadsheet")
    private boolean csv;

    @Option(names = "--json", description = "print JSON, for a program")
    private boolean json;

    @Mixin
    private final RecordCopies copies = new RecordCopies();

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        Optional<Config> config = configFile.load(err);
        if (config.isEmpty()) {
            return BAD_INPUT;
        }
        try {
            Path book = config.get().hardware().paths().store().resolve(Wiring.RECORD);
            if (copies.wanted()) {
                if (batch != null || cleaning || cone != null || lot != null || since != null || csv
                        || json) {
                    throw wrong("--backup and --restore stand alone: they are of the whole record");
                }
                copies.carryOut(book, spec.commandLine());
                return 0;
            }
            return report(config.get(), RecordReader.of(book));
        } catch (Store.StoreException e) {
            err.println(Places.sentence("The record: " + e.getMessage()));
            err.flush();
            return RunCommand.UNAVAILABLE;
        }
    }

    private int report(Config config, RecordReader record) throws Store.StoreException {
        Past past = Past.of(config.settings(), record);
        List<Story> stories = chosen(past);
        PrintWriter out = spec.commandLine().getOut();
        if (batch != null) {
            return page(past, record);
        }
        if (cleaning) {
            printCleaning(new Cleaning(past, stories), out);
            return 0;
        }
        Measured measured = measured(past, record, stories);
        if (lot != null && !csv) {
            printCard(new LotCard(measured, lot, stories), out);
        }
        BatchTable table = new BatchTable(measured, stories);
        if (json && lot != null) {
            out.flush();
            return 0;
        }
        if (csv) {
            table.printCsv(out);
        } else if (json) {
            table.printJson(out);
        } else {
            table.print(out);
        }
        out.flush();
        return 0;
    }

    private int page(Past past, RecordReader record) {
        Story story = past.stories().stream().filter(s -> s.name().equals(batch)).findFirst()
                .orElseThrow(() -> wrong("There is no batch " + batch + "; name it as the table does, such "
                        + "as a/12"));
        BatchPage page = new BatchPage(measured(past, record, List.of(story)), story);
        if (plot != null && !drawn(page)) {
            return BAD_INPUT;
        }
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            page.printJson(out);
        } else {
            page.print(out);
        }
        out.flush();
        return 0;
    }

    private boolean drawn(BatchPage page) {
        BatchPicture picture = page.picture().orElseThrow(() -> wrong("--plot: nothing was measured of "
                + batch));
        try {
            ForecastPicture.write(plot, picture);
            return true;
        } catch (IOException e) {
            spec.commandLine().getErr().println("--plot " + plot + " could not be written: "
                    + ForecastCommand.reason(e));
            spec.commandLine().getErr().flush();
            return false;
        }
    }

    private void printCleaning(Cleaning c, PrintWriter out) {
        if (csv) {
            throw wrong("--cleaning has no --csv; it has --json");
        }
        if (json) {
            c.printJson(out);
        } else {
            c.print(out);
        }
        out.flush();
    }

    private void printCard(LotCard card, PrintWriter out) {
        if (!card.known()) {
            throw wrong("No batch of lot " + lot + " is on record, and nobody told what is left of it");
        }
        if (json) {
            card.printJson(out);
        } else {
            card.print(out);
            out.println();
        }
    }

    /** Without the history the rest can still be told. What was switched is read where it is shown. */
    private Measured measured(Past past, RecordReader record, List<Story> stories) {
        try {
            Measured m = Measured.of(past, record, stories);
            return batch != null || csv || json ? m.withOutputs(record, stories) : m;
        } catch (Store.StoreException e) {
            spec.commandLine().getErr().println("note: no temperatures, outputs and alarms, since: "
                    + e.getMessage());
            spec.commandLine().getErr().flush();
            return Measured.none(past);
        }
    }

    private List<Story> chosen(Past past) {
        if (plot != null && (batch == null || !ForecastPicture.canDraw(plot))) {
            throw wrong(batch == null ? "--plot needs --batch" : "--plot " + plot
                    + " must end in .svg or .png");
        }
        if (csv && (json || batch != null)) {
            throw wrong(json ? "--csv or --json: choose one" : "--batch has no --csv; it has --json");
        }
        if (cone != null && !past.knows(cone)) {
            throw wrong("--cone " + cone + " is no cone of this site, and the record knows none of that "
                    + "name");
        }
        if (cleaning && lot != null) {
            throw wrong("--cleaning is of cones, whatever lot was in them; leave out --lot, or give --cone");
        }
        Optional<LocalDate> from = from();
        return past.stories().stream().filter(s -> cone == null || s.cone().equals(cone))
                .filter(s -> lot == null || s.stock().map(Batch.Stock::lot).filter(lot::equals).isPresent())
                .filter(s -> from.isEmpty() || past.begunOnOrAfter(s, from.get())).toList();
    }

    private ParameterException wrong(String sentence) {
        return new ParameterException(spec.commandLine(), sentence + ".");
    }

    private Optional<LocalDate> from() {
        try {
            return Optional.ofNullable(since).map(LocalDate::parse);
        } catch (DateTimeParseException e) {
            throw wrong("--since " + since + " is no day; write it as 2026-03-01");
        }
    }
}

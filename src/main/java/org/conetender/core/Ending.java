package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Lots;
import org.conetender.core.batch.Stage;
import org.conetender.core.face.LotWords;
import org.conetender.core.face.Sentences;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * What a word ends besides. A short one ends a batch that grows or still hatches. Somebody may harvest sooner
 * than was announced, so it is not refused; who meant another cone must hear what it means while it can be
 * taken back. A set-point ends the hour that was wanted.
 */
final class Ending {

    private Ending() {}

    /** What is said of the batch or the hour that this will end; empty where nobody need be warned. */
    static String of(Work work, Cone cone, Ask ask) {
        Batch b = work.batch(cone.id());
        if (ask instanceof Ask.SetSetpoint) {
            return b.marks().readyBy().map(h -> " " + h.withWeekday() + " is no longer wanted: a set-point "
                    + "takes the place of an hour. To want it again say 'ready-by " + h.text() + "'.")
                    .orElse("");
        }
        boolean ends = ask instanceof Ask.Did(Step s)
                && (s == Step.DRAINED || s == Step.CLEANED || s == Step.STARTED);
        if (!ends || !b.stage().growing() || b.marks().harvests() > 0) {
            return "";
        }
        ConeLive.Outlook outlook = work.live(cone.id()).outlook();
        double ageH = Units.hours(work.image.now().monoMs() - outlook.atMs());
        boolean hatched = b.stage() instanceof Stage.Hatching;
        if (hatched && outlook.forecast().filter(f -> f.ready().earliest() <= ageH).isPresent()) {
            return "";
        }
        List<String> of = new ArrayList<>();
        b.stock().map(Batch.Stock::lot).filter(lot -> !Lots.unnamed(lot)).ifPresent(of::add);
        outlook.forecast().ifPresent(f -> of.addAll(stands(work, f, ageH)));
        return Text.of(" This ends batch %d%s%s. If it was another cone, say 'withdraw' within half an hour.",
                b.number(), of.isEmpty() ? "" : " (" + String.join(", ", of) + ")",
                hatched ? "; what had hatched counts as its harvest" : " without a harvest");
    }

    /** @param ageH hours since that was foreseen */
    private static List<String> stands(Work work, Forecast f, double ageH) {
        List<String> of = new ArrayList<>();
        of.add(Text.of("%.0f %% hatched", 100 * f.hatched().median()));
        double hours = f.ready().announced() - ageH;
        if (Double.isFinite(hours)) {
            of.add("ready " + (work.image.now().wallTrusted() ? "about " + Sentences.clock(
                    work.image.now().wallMs() + Units.msOfHours(hours),
                    work.settings.site().feeding().zone(), work.image.now().wallMs())
                    : LotWords.inHours(hours)));
        }
        return of;
    }
}

package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
 * What a word means besides what it says, so that who did not mean it hears it in time. A short one ends a
 * batch that grows, still hatches or, by a start, waits for its harvest: somebody may harvest sooner than was
 * announced, or report no harvest at all, so it is not refused; who meant another cone can take it back. A
 * set-point ends the hour that was wanted.
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
        if (ask instanceof Ask.Shelve h) {
            boolean stands = work.before.live().alarms().raised(cone.id(), h.alarm()).isPresent();
            return h.hours() == 0 || stands ? "" : Text.of("alarm '%s' does not stand "
                    + "now; if it comes within %s h nobody is called, and it is in the list.", h.alarm(),
                    Sentences.plain(h.hours()));
        }
        if (!(ask instanceof Ask.Did(Step step))) {
            return "";
        }
        if (breaksOff(step, cone, b)) {
            return " This breaks the separation off: the air comes back and stirs the layer up. To separate"
                    + " anew say " + (step == Step.VALVE_OPEN ? "'valve-shut', then 'settle'." : "'settle'.");
        }
        // Unlike 'drained' and 'cleaned' it speaks of another batch, and ends this one beside.
        if (step == Step.STARTED && b.stage().hasAnimals()) {
            return ends(work, cone, b);
        }
        if (b.marks().harvests() > 0 || !early(work, cone, b)) {
            return "";
        }
        return switch (step) {
            case DRAINED, CLEANED -> ends(work, cone, b);
            case SETTLE -> foreseen(work, cone).isEmpty() ? "" : Text.of(" It is not ripe yet%s: what has "
                    + "not hatched stays behind with the shells. To let it go on, say 'withdraw'.",
                    known(work, cone, b));
            default -> "";
        };
    }

    /** Hands in the water bring the air back, and an open valve does where water could run back. */
    private static boolean breaksOff(Step step, Cone cone, Batch b) {
        return b.stage().airOff() != null && (step == Step.HANDS_IN
                || step == Step.VALVE_OPEN && cone.fittings().air().geometry().canSiphon());
    }

    /** What is left of a batch that was drawn in part is no harvest, nor is it without one. */
    private static String ends(Work work, Cone cone, Batch b) {
        return Text.of(" This ends batch %d%s%s. If it was another cone, say 'withdraw' within half an hour.",
                b.number(), known(work, cone, b), b.marks().harvests() > 0 ? ""
                : b.stage().hasAnimals() ? "; what had hatched counts as its harvest" : " without a harvest");
    }

    private static Optional<Forecast> foreseen(Work work, Cone cone) {
        return work.live(cone.id()).outlook().forecast();
    }

    /** Whether it grows, or still hatches and the hour that was announced lies ahead. */
    private static boolean early(Work work, Cone cone, Batch b) {
        ConeLive live = work.live(cone.id());
        boolean due = b.stage() instanceof Stage.Hatching && live.outlook().forecast()
                .filter(f -> f.ready().announced() <= ageH(work, live)).isPresent();
        return b.stage().growing() && !due || b.stage() instanceof Stage.Ready && live.unripe(b);
    }

    /** Hours since the last forecast. */
    private static double ageH(Work work, ConeLive live) {
        return Units.hours(work.image.now().monoMs() - live.outlook().atMs());
    }

    /** Which lot it is and how far, in brackets after a space; empty where neither is known. */
    private static String known(Work work, Cone cone, Batch b) {
        ConeLive live = work.live(cone.id());
        List<String> of = new ArrayList<>();
        b.stock().map(Batch.Stock::lot).filter(lot -> !Lots.unnamed(lot)).ifPresent(of::add);
        boolean ready = b.stage() instanceof Stage.Ready && !live.unripe(b);
        live.outlook().forecast().ifPresent(f -> of.addAll(ready || b.stage().airOff() != null
                ? hatched(f) : stands(work, live, b, f)));
        if (ready) {
            of.add("ready");
        }
        return of.isEmpty() ? "" : " (" + String.join(", ", of) + ")";
    }

    private static List<String> stands(Work work, ConeLive live, Batch b, Forecast f) {
        List<String> of = new ArrayList<>(hatched(f));
        double hours = live.readyH(f.ready().announced(), b, work.image.now(), work.ledger.book().boots())
                - ageH(work, live);
        if (Double.isFinite(hours)) {
            of.add("ready " + (work.image.now().wallTrusted() ? "about " + Sentences.clock(
                    work.image.now().wallMs() + Units.msOfHours(hours),
                    work.settings.site().feeding().zone(), work.image.now().wallMs())
                    : LotWords.inHours(hours)));
        }
        return of;
    }

    private static List<String> hatched(Forecast f) {
        return List.of(Text.of("%.0f %% hatched", 100 * f.hatched().median()));
    }
}

package org.conetender.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Life;
import org.conetender.core.batch.Stage;
import org.conetender.core.batch.Yield;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Moment;

/**
 * One batch as the record has it, without what was withdrawn.
 *
 * @param cone its id
 * @param batch as it stood at its end, or stands
 * @param facts of it, in their order
 * @param stages every stage it went through, in order
 * @param newest whether no other batch came after it in that cone
 */
public record Story(String cone, Batch batch, List<Fact> facts, List<Entered> stages, boolean newest) {

    private static final List<String> SEPARATED = List.of("settling", "settled", "drawing");

    /** @param stage its word  @param at when it was entered */
    public record Entered(String stage, Moment at) {}

    public Story {
        facts = List.copyOf(facts);
        stages = List.copyOf(stages);
    }

    /** @param book of the cone when the batch was the present one, for the last time */
    static Story of(String cone, ConeBook book, boolean newest) {
        List<Fact> facts = new ArrayList<>();
        List<Entered> stages = new ArrayList<>();
        Batch b = book.before().batch();
        for (Fact f : book.facts()) {
            Batch next = Life.after(b, f);
            boolean stage = !next.stage().equals(b.stage());
            b = next;
            if (stage && b.number() == book.batch().number()) {
                stages.add(new Entered(b.stage().word(), b.stage().since()));
            }
            if (!(f.change() instanceof Change.Told(Ask.Did(Step s)) && s == Step.STARTED)) {
                facts.add(f);
            }
        }
        List<Moment> vain = new Drawings(stages).inVain();
        facts.removeIf(f -> f.change() instanceof Change.Drawn && vain.contains(f.at()));
        return new Story(cone, book.batch(), facts, stages, newest);
    }

    /** Such as {@code a/12}. */
    public String name() {
        return cone + "/" + batch.number();
    }

    public Optional<Batch.Stock> stock() {
        return batch.stock();
    }

    /** What it gave, as far as somebody weighed it. */
    public Optional<Yield> weight() {
        return Yield.of(batch, facts);
    }

    /** When it began: with its cysts, or with its water where none came. */
    Optional<Moment> began() {
        return stock().map(Batch.Stock::at).or(() -> batch.fill().map(Batch.Fill::at));
    }

    /** When the first tenth hatched, or somebody saw the first; not where that was taken back. */
    public Optional<Moment> hatched() {
        return reached("hatching", List.of("hydrating", "incubating"));
    }

    /** When it was called ready; that the air came back to a separation says nothing of it. */
    public Optional<Moment> ready() {
        return reached("ready", List.of("hydrating", "incubating"));
    }

    /** The first time, if nothing led back to before. @param before stages that take it back */
    private Optional<Moment> reached(String stage, List<String> before) {
        Optional<Moment> at = Optional.empty();
        String last = "";
        for (Entered e : stages) {
            if (before.contains(e.stage()) || stage.equals("ready") && e.stage().equals("hatching")
                    && last.equals("ready")) {
                at = Optional.empty();
            } else if (e.stage().equals(stage) && at.isEmpty()
                    && !(stage.equals("ready") && SEPARATED.contains(last))) {
                at = Optional.of(e.at());
            }
            last = e.stage();
        }
        return at;
    }

    /** When it was drawn first; where nobody said so, when one that had hatched was emptied or cleaned. */
    public Optional<Moment> harvest() {
        Optional<Moment> drawn = new Drawings(stages).first();
        if (abandoned()) {
            return drawn;
        }
        return drawn.or(() -> hatched().isEmpty() && ready().isEmpty() ? Optional.empty()
                : entered("drained").or(() -> entered("clean")));
    }

    /** Until when its cysts stood in the water; empty while they do. */
    Optional<Moment> over() {
        return entered("drained").or(() -> entered("abandoned")).or(() -> entered("clean"));
    }

    private Optional<Moment> entered(String stage) {
        return stages.stream().filter(e -> e.stage().equals(stage)).map(Entered::at).findFirst();
    }

    private boolean abandoned() {
        return entered("abandoned").isPresent();
    }

    /** Steps that a later report implied and nobody reported; the air may have come back to one that was. */
    public List<String> assumed() {
        return batch.marks().words().assumed().stream().filter(w -> !List.of(Step.SETTLE.word(),
                Step.DRAWING.word()).contains(w) || facts.stream().noneMatch(f ->
                f.change() instanceof Change.Told(Ask a) && a.word().equals(w))).toList();
    }

    /** How it ended, or where it stands, in words. */
    public String ended() {
        Stage s = batch.stage();
        boolean empty = s instanceof Stage.Clean || s instanceof Stage.Drained;
        if (abandoned()) {
            return harvest().isPresent() ? "drawn, then given up" : "given up";
        }
        if (empty || !newest) {
            return harvest().isPresent() ? "harvested" : "emptied without a harvest";
        }
        return "in the cone, " + s.word();
    }
}

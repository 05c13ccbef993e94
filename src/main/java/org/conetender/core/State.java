package org.conetender.core;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.Fact;
import org.conetender.core.hatch.Known;
import org.conetender.core.hatch.RoomDay;
import org.conetender.core.image.Request;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;

/**
 * All that one tick hands to the next. The ledger is durable, everything in {@link Live} is rebuilt.
 */
public record State(Ledger ledger, Live live) {

    public Book book() {
        return ledger.book();
    }

    /**
     * @param begun when this life of the process began
     * @param cones by id, in the order of the configuration
     * @param alarms which stand
     * @param timers the rest
     * @param beat the heartbeat's level, which every healthy tick turns over
     * @param diary what the running minute leaves for reports
     * @param day what the room does in a day
     */
    public record Live(Moment begun, Map<String, ConeLive> cones, Alarms alarms, Timers timers,
                       boolean beat, Diary diary, RoomDay day) {}

    /**
     * @param last when the last tick began; empty before the first
     * @param checkpointAtMs when the last checkpoint was written, monotonic ms
     * @param wallUntrustedForMs how long the wall clock has not been trusted in this life
     * @param waiting requests that wait for a grant of their cone to become durable
     * @param minuteOwed since when the record has owed an answer to a checkpoint, monotonic ms
     * @param refused by cone, what was refused since its last report
     */
    public record Timers(Optional<Moment> last, long checkpointAtMs, long wallUntrustedForMs,
                         List<Request> waiting, OptionalLong minuteOwed, Map<String, Refused> refused) {}

    /** A report that was not taken. @param word its own  @param at when */
    public record Refused(String word, Moment at) {}

    /**
     * The state with which a life of the process begins: nothing is energised, nothing heard yet. The
     * facts of its {@link Opening} count already, and are on their way to the record.
     *
     * @param facts all that the record holds, in order
     * @param checkpoint the last one
     */
    public static State begin(Settings settings, List<Fact> facts, Optional<Checkpoint> checkpoint,
            Moment now) {
        return begin(settings, facts, checkpoint, Opening.facts(settings, facts, checkpoint, now));
    }

    /** @param opening what {@link Opening} makes of the rest, for whoever has it already */
    public static State begin(Settings settings, List<Fact> facts, Optional<Checkpoint> checkpoint,
            List<Fact> opening) {
        Moment now = opening.getFirst().at();
        Book book = Book.empty(settings, facts.isEmpty() ? now : facts.getFirst().at())
                .after(facts, Opening.aside(facts, opening));
        Ledger ledger = Ledger.of(book, opening.getFirst().seq()).opened(opening);
        Map<String, ConeLive> cones = new LinkedHashMap<>();
        boolean unended = book.lives().running();
        Known known = Known.NONE;
        for (Cone c : settings.cones()) {
            known = known.begun(book.lots(), c.id(), book.cone(c.id()).batch());
            cones.put(c.id(), ConeLive.begin(c.id(), book, checkpoint, now).knowing(known)
                    .worn(RelayLife.begun(c, book.cone(c.id()), unended)));
        }
        return new State(ledger, new Live(now, cones,
                Alarms.resumed(seen(ledger.book()), unseen(ledger.book(), cones.keySet()), now),
                new Timers(Optional.empty(), now.monoMs(), 0, List.of(), OptionalLong.empty(),
                        Map.of()), false,
                Diary.EMPTY, RoomDay.resumed(checkpoint.map(Checkpoint::day).orElse(List.of()))));
    }

    /** The facts with which a life ends in good order: what its relays did, and at last that it ended. */
    public List<Fact> leaving(Settings settings, Moment now) {
        List<Fact> out = new ArrayList<>();
        Ledger last = ledger;
        for (Cone c : settings.cones()) {
            Ledger.Written worn = last.write(c.id(), RelayLife.unwritten(c, this), now, Ledger.Reason.OWN);
            out.addAll(worn.facts());
            last = worn.facts().isEmpty() ? last : worn.ledger();
        }
        out.addAll(last.write("", List.of(new Change.Left()), now, Ledger.Reason.OWN).facts());
        return List.copyOf(out);
    }

    /** What nobody has seen of these cones, as the record keeps it. */
    static List<Alarms.Kept> unseen(Book book, Collection<String> cones) {
        List<Alarms.Kept> out = new ArrayList<>();
        cones.forEach(id -> book.cone(id).alarms().unseen().forEach(u -> AlarmKind.of(u.alarm())
                .filter(AlarmKind::standsUntilSeen)
                .ifPresent(k -> out.add(new Alarms.Kept(id, k, u.what(), u.since())))));
        return out;
    }

    /** What people have acknowledged and has not been seen to end, by cone. */
    private static Map<String, List<String>> seen(Book book) {
        Map<String, List<String>> out = new TreeMap<>();
        book.cones().forEach((id, cone) -> out.put(id, cone.acknowledged()));
        return out;
    }
}

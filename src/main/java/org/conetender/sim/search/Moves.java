package org.conetender.sim.search;

import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.batch.Fits;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;

/** Which moves are tried from a state. What cannot be told from another move is left out. */
final class Moves {

    private final Bounds bounds;
    private final Cone cone;

    Moves(Bounds bounds, Cone cone) {
        this.bounds = bounds;
        this.cone = cone;
    }

    boolean possible(Node n, Move move) {
        return switch (move) {
            case Move.Waits _ -> true;
            case Move.Misfits _ -> heard(n) && n.settled();
            case Move.Says(Ask.Did(Step s)) -> heard(n)
                    && (!n.settled() || Fits.refusal(n.book(), s).isEmpty());
            case Move.Says(Ask.Acknowledge(String id)) -> heard(n) && raised(n, id);
            case Move.Says(Ask _) -> heard(n);
            case Move.Turns(Move.Trouble t, boolean wrong) -> wrong ? mayBegin(n, t) : there(n, t);
            case Move.Dies(boolean cut, boolean arrived) -> Likeness.exits(n) < bounds.exits()
                    && (!arrived || !n.world().paper().queue().isEmpty());
        };
    }

    /** One request waits at most: a second in the queue meets the same desk. */
    private boolean heard(Node n) {
        return n.state().live().timers().waiting().isEmpty() && (bounds.haste() || n.settled()
                || n.world().paper().mood() != Paper.Mood.KEEPING && n.state().ledger().pending().size() < 2);
    }

    /** An alarm that stands and was not seen; once more, if a latch behind it may be released now. */
    private static boolean raised(Node n, String id) {
        List<Alarm> raised = n.state().live().alarms().raised();
        Optional<Alarm> a = raised.stream().filter(x -> x.kind().id().equals(id)).findFirst();
        return a.isPresent() && (!a.get().acknowledged() || a.get().held() != Alarm.Held.BY_CAUSE);
    }

    private boolean mayBegin(Node n, Move.Trouble t) {
        World w = n.world();
        boolean fits = switch (t) {
            case LEVEL_LIES -> cone.fittings().probes().level() && !w.senses().levelLies();
            case NO_AIR -> cone.fittings().air().proof() && !w.senses().noAir();
            case PROBE_GONE, PROBE_LATE, PROBE_FROZEN -> w.senses().probe().answers() == World.Answers.WELL;
            case HOT_ROOM, KILLING_ROOM, COLD_WATER -> w.senses().climate() == World.Climate.USUAL;
            case HEAT_UNSET, AIR_UNSET -> w.senses().unset().isEmpty();
            case RECORD_SILENT, RECORD_REFUSES -> w.paper().mood() == Paper.Mood.KEEPING;
            case RECORD_DAMAGED -> Likeness.exits(n) <= bounds.exits();
            case CLOCK_LOST -> w.now().wallTrusted();
        };
        return fits && w.faults() == 0 && bounds.troubles().contains(t);
    }

    static boolean there(Node n, Move.Trouble t) {
        World w = n.world();
        return switch (t) {
            case LEVEL_LIES -> w.senses().levelLies();
            case NO_AIR -> w.senses().noAir();
            case PROBE_GONE -> w.senses().probe().answers() == World.Answers.ABSENT;
            case PROBE_LATE -> w.senses().probe().answers() == World.Answers.LATE;
            case PROBE_FROZEN -> w.senses().probe().answers() == World.Answers.FROZEN;
            case HOT_ROOM -> w.senses().climate() == World.Climate.HOT;
            case KILLING_ROOM -> w.senses().climate() == World.Climate.KILLING;
            case COLD_WATER, RECORD_DAMAGED -> false;
            case HEAT_UNSET -> w.senses().unset().contains("a.heat");
            case AIR_UNSET -> w.senses().unset().contains("a.air-pause");
            case RECORD_SILENT -> w.paper().mood() == Paper.Mood.SILENT;
            case RECORD_REFUSES -> w.paper().mood() == Paper.Mood.REFUSING;
            case CLOCK_LOST -> !w.now().wallTrusted();
        };
    }
}

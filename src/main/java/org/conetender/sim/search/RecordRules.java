package org.conetender.sim.search;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Ask;
import org.conetender.sim.Latched;

/**
 * Rules about the record: what is acknowledged is durable, and what is locked stays so until a person comes.
 */
final class RecordRules {

    private final Rules rules;

    RecordRules(Rules rules) {
        this.rules = rules;
    }

    void look(Event e) {
        answers(e);
        locks(e);
        released(e);
        agrees(e);
    }

    /** A life begins. */
    void begun(World w, State state) {
        Set<String> has = latches(state.book());
        for (String lock : w.paper().durable().locks()) {
            rules.check(has.contains(lock), "lock-lost", "'" + lock + "' was forgotten at a restart");
        }
    }

    private static Set<String> latches(Book book) {
        Set<String> out = new TreeSet<>();
        book.cone(Fitted.CONE).latches().forEach(l -> out.add(l.guard()));
        book.lives().lock().ifPresent(l -> out.add(l.guard()));
        book.lives().damage().ifPresent(l -> out.add(l.guard()));
        return out;
    }

    /** Who is told that it is done can rely on it. */
    private void answers(Event e) {
        Book durable = e.before().world().paper().durable().book();
        for (Result.Reply r : e.result().words().replies()) {
            rules.check(!r.sentence().isBlank(), "reason", "an answer says nothing");
            rules.check(!r.accepted() || durable.recentIds().contains(r.request().id()), "answer-early",
                    "'" + r.request().ask().word() + "' was answered as done before it was recorded");
        }
    }

    /** A lock goes only when its release is on the disk. */
    private void locks(Event e) {
        Set<String> on = latches(e.next().state().book());
        Set<String> onDisk = e.before().world().paper().durable().locks();
        for (String lock : latches(e.before().state().book())) {
            rules.check(on.contains(lock) || !onDisk.contains(lock), "lock-gone",
                    "'" + lock + "' went without a release in the record");
        }
    }

    /** A release comes with a person's acknowledgement, and not while its cause is plainly there. */
    private void released(Event e) {
        for (List<Fact> facts : e.result().record().transactions()) {
            for (Fact f : facts) {
                if (f.change() instanceof Change.Released(String guard, String _)) {
                    boolean acknowledged = facts.stream().anyMatch(a -> a.change() instanceof Change.Told(
                            Ask.Acknowledge(String id)) && id.equals(Latched.alarm(guard)));
                    rules.check(acknowledged, "lock-released", "'" + guard + "' was released by nobody");
                    rules.check(!there(guard, e), "lock-cause", "'" + guard
                            + "' was released although its cause is there");
                }
            }
        }
    }

    private static boolean there(String guard, Event e) {
        return switch (guard) {
            case "too-hot" -> e.senses().gone() || e.readingC() >= e.cone().limits().guardC();
            case "probe", "frozen" -> e.senses().gone();
            case "crash-loop" -> !e.before().state().book().lives().aside().isEmpty()
                    && e.before().state().book().lives().aside().stream()
                    .anyMatch(a -> a.cone().equals(Fitted.CONE));
            default -> false;
        };
    }

    /** When nothing is on its way, the daemon stands where a restart would. */
    private void agrees(Event e) {
        if (!e.next().state().ledger().pending().isEmpty() || !e.next().settled()) {
            return;
        }
        ConeBook disk = e.next().world().paper().durable().book().cone(Fitted.CONE);
        Batch is = e.next().batch();
        rules.check(is.equals(disk.batch()), "agrees", "the daemon has the batch " + is.stage().word()
                + ", the record " + disk.batch().stage().word());
        rules.check(latches(e.next().state().book()).equals(e.next().world().paper().durable().locks()),
                "agrees", "locks differ from those in the record");
    }
}

package org.conetender.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Commit;
import org.conetender.core.image.Request;
import org.conetender.core.unit.Moment;

/**
 * The book, and what is on its way into it. What takes permission away counts at once; what only
 * grants counts when it is durable. The effective book is always "committed, then the pending
 * takings in their order".
 *
 * <p>A taking may give as well: {@code part-drawn} brings the air back and the heat too. So power is
 * given only where three readings agree: this book, what a restart would read now, and what it would
 * read once everything on its way has arrived ({@link org.conetender.core.guard.Unwritten}).
 *
 * @param committed fold of everything durable, up to the first fact that is not
 * @param pending not yet durable, in order of their numbers
 * @param nextSeq number of the next fact
 * @param book the effective book
 * @param kept what a restart would read now
 * @param hoped what a restart would read if nothing on its way is lost
 */
public record Ledger(Book committed, List<Pending> pending, long nextSeq, Book book, Book kept, Book hoped) {

    /** A ledger that has nothing on its way. */
    public static Ledger of(Book committed, long nextSeq) {
        return new Ledger(committed, List.of(), nextSeq, committed, committed, committed);
    }

    private static Ledger of(Book committed, List<Pending> pending, long nextSeq) {
        return new Ledger(committed, List.copyOf(pending), nextSeq,
                folded(committed, pending, Pending::counts),
                folded(committed, pending, p -> p.way() == Pending.Way.KEPT),
                folded(committed, pending, p -> true));
    }

    private static Book folded(Book committed, List<Pending> pending, Predicate<Pending> which) {
        Book b = committed;
        for (Pending p : pending) {
            b = which.test(p) ? after(b, p) : b;
        }
        return b;
    }

    /** The other readings of that cone, where they differ from the effective book's; mostly none. */
    List<Book> otherReadings(String cone) {
        return pending.isEmpty() ? List.of()
                : Stream.of(kept, hoped).filter(b -> b.cone(cone) != book.cone(cone)).toList();
    }

    private static Book after(Book book, Pending p) {
        Book b = book;
        for (Fact f : p.facts()) {
            b = b.after(f);
        }
        return b;
    }

    /** @param ledger afterwards  @param done became durable  @param failed could not be recorded */
    record Settled(Ledger ledger, List<Pending> done, List<Pending> failed) {}

    /**
     * The ledger after what the record agent finished. A restart folds by number, so nothing is folded
     * into {@code committed} before everything with a smaller number has found its end.
     */
    Settled settled(List<Commit> commits) {
        List<Pending> left = new ArrayList<>();
        List<Pending> done = new ArrayList<>();
        List<Pending> failed = new ArrayList<>();
        for (Pending p : pending) {
            Optional<Commit> c = commits.stream().filter(x -> x.seq() == p.lastSeq()).findFirst();
            if (c.isEmpty() || p.way() == Pending.Way.KEPT) {
                left.add(p);
            } else if (c.get().failure().isEmpty()) {
                done.add(p);
                left.add(p.now(Pending.Way.KEPT));
            } else {
                failed.add(p);
                if (p.takesAway()) {
                    left.add(p.now(Pending.Way.REFUSED));
                }
            }
        }
        Book b = committed;
        while (!left.isEmpty() && left.getFirst().way() == Pending.Way.KEPT) {
            b = after(b, left.removeFirst());
        }
        return new Settled(commits.isEmpty() ? this : of(b, left, nextSeq), done, failed);
    }

    /** What the record refused and must be offered again: it is in force already. */
    List<Fact> refused() {
        return pending.stream().filter(p -> p.way() == Pending.Way.REFUSED).flatMap(p -> p.facts().stream())
                .toList();
    }

    /** Number of the last fact that is folded into {@code committed}. */
    public long committedSeq() {
        return (pending.isEmpty() ? nextSeq : pending.getFirst().facts().getFirst().seq()) - 1;
    }

    /** The ledger after all of that was offered again. */
    Ledger offeredAgain(long nowMs) {
        return new Ledger(committed, pending.stream().map(p -> p.way() == Pending.Way.REFUSED
                ? p.again(nowMs) : p).toList(), nextSeq, book, kept, hoped);
    }

    /** How long the record has owed an answer, ms; 0 while it owes none. */
    long owedMs(long nowMs) {
        long owed = 0;
        for (Pending p : pending) {
            owed = Math.max(owed, p.owedMs(nowMs));
        }
        return owed;
    }

    /** Whether a grant for that cone is on its way, so that the next request must wait for it. */
    boolean busy(String cone) {
        for (Pending p : pending) {
            if (!p.counts() && p.cone().equals(cone)) {
                return true;
            }
        }
        return false;
    }

    /** @param ledger afterwards  @param facts to be recorded, numbered */
    record Written(Ledger ledger, List<Fact> facts) {}

    /** Puts these changes on their way, in one transaction. */
    Written write(String cone, List<Change> changes, Moment at, Reason why) {
        List<Fact> facts = new ArrayList<>();
        long seq = nextSeq;
        String source = why.request().map(Request::id).orElse("");
        for (Change c : changes) {
            facts.add(new Fact(seq++, at, cone, source, c));
        }
        List<Pending> more = new ArrayList<>(pending);
        more.add(new Pending(facts, why.request(), why.besides(), Pending.Way.OFFERED, at.monoMs()));
        return new Written(of(committed, more, seq), facts);
    }

    /** With facts that the shell itself hands to the record: those with which a life begins. */
    Ledger opened(List<Fact> facts) {
        List<Pending> more = new ArrayList<>(pending);
        more.add(new Pending(facts, Optional.empty(), "", Pending.Way.OFFERED,
                facts.getLast().at().monoMs()));
        return of(committed, more, facts.getLast().seq() + 1);
    }

    /** @param request who waits for the answer, if anybody  @param besides for the answer */
    record Reason(Optional<Request> request, String besides) {
        static final Reason OWN = new Reason(Optional.empty(), "");
    }
}

package org.conetender.sim.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.conetender.core.Opening;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.settings.Settings;

/**
 * What has reached the disk, and what a restart would make of it, kept beside the daemon's own ledger so that
 * the two can be compared.
 *
 * @param settings for a book that is folded anew
 * @param kept newest first; null before the first
 * @param book the fold of all of them, by number
 * @param locks guards that have tripped and were not released, by a count of these facts alone
 * @param damages how often a part of them was lost
 */
record Durable(Settings settings, Kept kept, Book book, Set<String> locks, int damages) {

    /** A fact and those that were written before it. */
    record Kept(Fact fact, Kept before) {}

    static Durable nothing(Settings settings, Book empty) {
        return new Durable(settings, null, empty, Set.of(), 0);
    }

    /** With one more transaction. */
    Durable with(List<Fact> transaction) {
        Kept k = kept;
        Book b = book;
        boolean inOrder = true;
        for (Fact f : transaction) {
            inOrder &= k == null || f.seq() > k.fact().seq();
            inOrder &= !(f.change() instanceof Change.SetAside);
            k = new Kept(f, k);
            b = inOrder ? b.after(f) : b;
        }
        Durable d = new Durable(settings, k, b, locks, damages);
        return new Durable(settings, k, inOrder ? b : d.folded(), d.counted(transaction), damages);
    }

    /** Without the newer half of it. */
    Durable damaged() {
        List<Fact> all = facts();
        Durable none = nothing(settings, Book.empty(settings, all.getFirst().at()));
        Durable d = none.with(all.subList(0, Math.ceilDiv(all.size(), 2)));
        return new Durable(settings, d.kept(), d.book(), d.locks(), damages + 1);
    }

    /** What the store says of that, oldest first. */
    List<String> lost() {
        return IntStream.rangeClosed(1, damages).mapToObj(i -> "half of the record was lost, " + i).toList();
    }

    private Set<String> counted(List<Fact> transaction) {
        Set<String> next = locks;
        for (Fact f : transaction) {
            if (f.change() instanceof Change.Tripped(String guard, String _)) {
                next = new TreeSet<>(next);
                next.add(guard);
            } else if (f.change() instanceof Change.Released(String guard, String _)) {
                next = new TreeSet<>(next);
                next.remove(guard);
            }
        }
        return next;
    }

    private Book folded() {
        List<Fact> all = facts();
        return Book.empty(settings, all.getFirst().at()).after(all, Opening.aside(all));
    }

    /** As a restart reads them: by number. */
    List<Fact> facts() {
        List<Fact> all = new ArrayList<>();
        for (Kept k = kept; k != null; k = k.before()) {
            all.add(k.fact());
        }
        Collections.reverse(all);
        all.sort(Comparator.comparingLong(Fact::seq));
        return all;
    }
}

package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.conetender.core.unit.Moment;

/**
 * What is durable of a cone's alarms: not that they stand, which shows itself anew, but what people did about
 * them, and what no cause will show again.
 *
 * @param acknowledged ids of those a person has seen
 * @param unseen those that stand until a person sees them, and whose cause may long be over
 * @param shelves those a person wants to hear nothing of for a time
 */
public record AlarmBook(List<String> acknowledged, List<Unseen> unseen, List<Shelf> shelves) {

    static final AlarmBook EMPTY = new AlarmBook(List.of(), List.of(), List.of());

    /** @param alarm its id  @param what in words  @param since when it was raised */
    public record Unseen(String alarm, String what, Moment since) {}

    /** @param alarm its id  @param hours for so long  @param since when a person said so */
    public record Shelf(String alarm, double hours, Moment since) {}

    /** Whether anything is kept that ends with the alarm. */
    public boolean knows(String alarm) {
        return acknowledged.contains(alarm) || unseen.stream().anyMatch(u -> u.alarm().equals(alarm));
    }

    AlarmBook acknowledged(String alarm) {
        return new AlarmBook(and(acknowledged, alarm::equals, alarm), without(unseen, u -> u.alarm()
                .equals(alarm)), shelves);
    }

    AlarmBook over(String alarm) {
        return new AlarmBook(without(acknowledged, alarm::equals),
                without(unseen, u -> u.alarm().equals(alarm)), shelves);
    }

    /** A new incident, whatever a person had seen of the one before. */
    AlarmBook raised(Unseen u) {
        return new AlarmBook(without(acknowledged, u.alarm()::equals),
                and(unseen, x -> x.alarm().equals(u.alarm()), u), shelves);
    }

    /** No hours take it off the shelf. */
    AlarmBook shelved(Shelf s) {
        Predicate<Shelf> same = x -> x.alarm().equals(s.alarm());
        return new AlarmBook(acknowledged, unseen, s.hours() > 0 ? and(shelves, same, s)
                : without(shelves, same));
    }

    /** What was said of the batch before is over (as in {@code Alarms.filled}). */
    AlarmBook filled() {
        return unseen.isEmpty() ? this : new AlarmBook(acknowledged, List.of(), shelves);
    }

    /** The filling is withdrawn. @param before what nobody had seen until then */
    AlarmBook notFilled(List<Unseen> before) {
        AlarmBook next = this;
        for (Unseen u : before) {
            next = next.knows(u.alarm()) ? next : next.raised(u);
        }
        return next;
    }

    private static <T> List<T> without(List<T> all, Predicate<T> which) {
        return all.stream().noneMatch(which) ? all : all.stream().filter(which.negate()).toList();
    }

    private static <T> List<T> and(List<T> all, Predicate<T> instead, T one) {
        List<T> next = new ArrayList<>(without(all, instead));
        next.add(one);
        return List.copyOf(next);
    }
}

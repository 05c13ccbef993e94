package org.conetender.core;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.core.alarm.Again;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook.Latch;
import org.conetender.core.face.ShelfWords;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.View;
import org.conetender.core.guard.WrongCone;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Text;

/** What follows from an acknowledgement: whether heat comes back, whether it is told again, and the shelf. */
final class Seen {

    private final Work work;
    private final List<Guard> guards;

    Seen(Work work, List<Guard> guards) {
        this.work = work;
        this.guards = guards;
    }

    /** A clause with its sentences. @param releases what the acknowledgement sets free */
    String of(Cone c, String alarm, List<Change> releases) {
        Alarms alarms = work.before.live().alarms();
        Optional<Alarm> a = alarms.raised(c.id(), alarm);
        boolean locks = a.filter(x -> !x.cone().isEmpty() && x.held() != Alarm.Held.BY_CAUSE).isPresent();
        boolean site = work.ledger.book().lives().locks().stream().anyMatch(l -> stays(l, releases));
        String left = locks ? left(c, releases) : "";
        // What is locked for the whole site is said by whoever knows what was set aside.
        String heat = !locks ? a.map(x -> quiet(x, site)).orElse("")
                : !left.isEmpty() ? "; heat stays locked off until " + left
                : site ? "" : "; heat is allowed again and comes back where it is wanted";
        return heat + shelf(work, a, alarms.shelves()) + "." + a.map(x -> others(alarms, x)).orElse("");
    }

    private static boolean stays(Latch l, List<Change> releases) {
        return !releases.contains(new Change.Released(l.guard(), Desk.RELEASED));
    }

    /** By which acknowledgements its heat is opened yet: its own, and that of whom it is crossed with. */
    private String left(Cone c, List<Change> releases) {
        Book book = work.ledger.book();
        Stream<String> own = book.cone(c.id()).latches().stream().filter(l -> stays(l, releases))
                .map(l -> open(alarm(c, l), "", l));
        Stream<String> crossed = WrongCone.victim(work.settings, book, c.id()).stream()
                .map(v -> open(WrongCone.ID, " of cone " + v, book.latch(v, WrongCone.ID).orElseThrow()));
        return Stream.concat(own, crossed).collect(Collectors.joining(" and "));
    }

    private static String open(String alarm, String where, Latch l) {
        return "'" + alarm + "'" + where + " is acknowledged with its cause gone (" + l.why() + ")";
    }

    /** The alarm by which people are told of that latch. */
    private String alarm(Cone c, Latch l) {
        View v = work.view(c);
        return guards.stream().filter(g -> g.id().equals(l.guard())).flatMap(g -> g.look(v).stream())
                .flatMap(f -> f.alarm().stream()).map(AlarmKind::id).findFirst().orElse(l.guard());
    }

    /** What was named with it and locks heat as well: it waits for its own answer, and is told again. */
    private static String others(Alarms alarms, Alarm a) {
        return alarms.named(a).stream().filter(f -> f.held() != Alarm.Held.BY_CAUSE && !f.acknowledged())
                .map(f -> Text.of(" '%s' of cone %s locks its heat off by itself, until that is acknowledged "
                        + "with its cause gone: conetender tell %s acknowledge %s.", f.kind().id(), f.cone(),
                        f.cone(), f.kind().id())).collect(Collectors.joining());
    }

    /** @param site whether all heat is locked off yet */
    private String quiet(Alarm a, boolean site) {
        if (a.kind() == AlarmKind.CRASH_LOOP || a.kind() == AlarmKind.RECORD_DAMAGED) {
            Book book = work.ledger.book();
            String own = work.settings.cones().stream().map(Cone::id).filter(id -> !book.cone(id).latches()
                    .isEmpty() || WrongCone.known(work.settings, book, id)).collect(Collectors.joining(", "));
            return site ? "" : "; heat is allowed again" + (own.isEmpty() ? "" : ", save in cone " + own
                    + ", which its own alarms lock");
        }
        return !a.active() ? "; it leaves the list, for its cause is over"
                : "; it is not told again " + (Again.minutesOnly(a.kind()) ? "for ten minutes"
                        : "while its cause lasts");
    }

    /** It outlasts the alarm, so that whoever shelved it is not told of the next one either. */
    private static String shelf(Work work, Optional<Alarm> a, Map<String, Long> shelves) {
        return a.map(x -> shelves.get(x.key())).map(untilMs -> ". It stays shelved until "
                + ShelfWords.until(work.settings, untilMs, work.image.now())
                + ", so nobody is called if it comes again before that; 'shelve " + a.get().kind().id()
                + " 0' ends the shelf").orElse("");
    }
}

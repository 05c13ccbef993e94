package org.conetender.core;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.AlarmBook.Shelf;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.guard.View;
import org.conetender.core.image.Ask;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Units;

/** Alarms that a person wants to hear nothing of for some hours; never one that is dangerous. */
final class Shelving {

    private Shelving() {}

    /** Why that alarm is not put on the shelf, or not taken off it. */
    static Optional<String> refusal(Ask.Shelve s, View v) {
        Optional<AlarmKind> kind = AlarmKind.of(s.alarm());
        if (kind.isEmpty()) {
            return Optional.of("there is no alarm '" + s.alarm() + "'; the alarms that can be shelved are "
                    + Arrays.stream(AlarmKind.values()).filter(k -> !k.dangerous()).map(AlarmKind::id)
                            .collect(Collectors.joining(", ")) + ".");
        }
        if (kind.get().dangerous()) {
            return Optional.of("alarm '" + s.alarm() + "' cannot be shelved: it means that "
                    + kind.get().stakes().harm().words() + " may come to harm within "
                    + kind.get().stakes().minutes() + " min. When it stands, acknowledge it; that "
                    + "silences it.");
        }
        ConeBook book = v.book().cone(place(v.settings(), s, v.cone()));
        return s.hours() > 0 || book.alarms().shelves().stream().anyMatch(x -> x.alarm().equals(s.alarm()))
                ? Optional.empty() : Optional.of("alarm '" + s.alarm() + "' is not on the shelf.");
    }

    /** Whether no cone need be named. */
    static boolean site(Ask.Shelve s, Settings settings) {
        return settings.cones().size() == 1
                || AlarmKind.of(s.alarm()).filter(k -> !k.siteWide()).isEmpty();
    }

    /** Of the site's alarms it is noted at the first cone, whichever was named. */
    static String place(Settings settings, Ask.Shelve s, Cone named) {
        boolean site = AlarmKind.of(s.alarm()).filter(AlarmKind::siteWide).isPresent();
        return site ? settings.cones().getFirst().id() : named.id();
    }

    /** What is on the shelf now, and until when, monotonic ms; where no clock tells, it is over sooner. */
    static Map<String, Long> until(Work work) {
        Map<String, Long> out = new HashMap<>();
        for (Cone c : work.settings.cones()) {
            for (Shelf s : work.ledger.book().cone(c.id()).alarms().shelves()) {
                long ageMs = work.since(s.since()).mostMs();
                long forMs = Units.msOfHours(s.hours());
                if (ageMs < forMs) {
                    AlarmKind.of(s.alarm()).filter(k -> !k.dangerous()).ifPresent(k -> out.put(
                            Tick.place(k, c.id()) + "/" + k.id(),
                            work.image.now().monoMs() + forMs - ageMs));
                }
            }
        }
        return out;
    }
}

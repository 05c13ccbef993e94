package org.conetender.app.demo;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.app.view.ConeView;
import org.conetender.app.view.SiteView;

/** What was announced, and when: noted from the published view, as a person would in a notebook. */
final class Announcements {

    /** @param atMs world time of the look  @param readyWallMs announced  @param interval 8 in 10 */
    record Note(long atMs, long readyWallMs, Interval interval) {}

    /** Wall ms since 1970. */
    record Interval(long fromMs, long untilMs) {
        boolean holds(long wallMs) {
            return fromMs <= wallMs && wallMs <= untilMs;
        }
    }

    private final Map<String, List<Note>> notes = new LinkedHashMap<>();

    /** Notes what is new. @param nowMs world time */
    void look(SiteView site, long nowMs) {
        for (ConeView c : site.cones()) {
            ConeView.Ready r = c.hatch().ready();
            Optional<Long> ready = r.at().map(Announcements::ms);
            List<Note> of = notes.computeIfAbsent(c.id(), k -> new ArrayList<>());
            if (ready.isPresent() && (of.isEmpty() || of.getLast().readyWallMs() != ready.get())) {
                // An open end is not published: then nothing bounds it.
                of.add(new Note(nowMs, ready.get(),
                        new Interval(r.most().from().map(Announcements::ms).orElse(Long.MIN_VALUE),
                        r.most().until().map(Announcements::ms).orElse(Long.MAX_VALUE))));
            }
        }
    }

    private static long ms(OffsetDateTime t) {
        return t.toInstant().toEpochMilli();
    }

    /** The first announcement after that world time. */
    Optional<Note> first(String cone, long afterMs) {
        return notes.getOrDefault(cone, List.of()).stream().filter(n -> n.atMs() >= afterMs)
                .findFirst();
    }

    /** What was announced at that world time, if it was later than {@code afterMs}. */
    Optional<Note> standing(String cone, long afterMs, long atMs) {
        return notes.getOrDefault(cone, List.of()).stream()
                .filter(n -> n.atMs() >= afterMs && n.atMs() <= atMs)
                .reduce((earlier, later) -> later);
    }
}

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

    /** @param atMs world time of the look  @param ready announced, wall ms since 1970 */
    record Note(long atMs, long readyWallMs) {}

    private final Map<String, List<Note>> notes = new LinkedHashMap<>();

    /** Notes what is new. @param nowMs world time */
    void look(SiteView site, long nowMs) {
        for (ConeView c : site.cones()) {
            Optional<Long> ready = c.hatch().ready().at().map(OffsetDateTime::toInstant).map(i -> i.toEpochMilli());
            List<Note> of = notes.computeIfAbsent(c.id(), k -> new ArrayList<>());
            if (ready.isPresent() && (of.isEmpty() || of.getLast().readyWallMs() != ready.get())) {
                of.add(new Note(nowMs, ready.get()));
            }
        }
    }

    /** The first announcement after that world time. */
    Optional<Long> first(String cone, long afterMs) {
        return notes.getOrDefault(cone, List.of()).stream().filter(n -> n.atMs() >= afterMs)
                .findFirst().map(Note::readyWallMs);
    }

    /** What was announced at that world time, if it was later than {@code afterMs}. */
    Optional<Long> standing(String cone, long afterMs, long atMs) {
        return notes.getOrDefault(cone, List.of()).stream().filter(n -> n.atMs() >= afterMs && n.atMs() <= atMs)
                .reduce((earlier, later) -> later).map(Note::readyWallMs);
    }
}

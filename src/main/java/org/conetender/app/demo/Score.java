package org.conetender.app.demo;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.conetender.core.unit.Text;
import org.conetender.sim.BatchTruth;
import org.conetender.sim.SimCone;
import org.conetender.sim.World;

/** Forecast against truth, batch by batch. The truth is the world's own, and nobody was told it before. */
final class Score {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);
    private static final long MINUTE_MS = 60_000;
    private static final long BEFORE_MS = 180 * MINUTE_MS;

    /** A table in eighty columns. */
    private static final String ROW = "%-4s %-8s %-9s %-16s %-16s %-4s %-9s %s";

    private final World world;
    private final Announcements announced;
    private final ZoneId zone;

    Score(World world, Announcements announced, ZoneId zone) {
        this.world = world;
        this.announced = announced;
        this.zone = zone;
    }

    /** Batches that ended with animals in the sieve, oldest first. */
    static List<BatchTruth> harvests(World world) {
        return world.cones().stream().map(SimCone::batches).flatMap(List::stream)
                .filter(b -> b.endedAtMs() >= 0 && b.harvest().drawn() > 0)
                .sorted((a, b) -> Long.compare(a.endedAtMs(), b.endedAtMs())).toList();
    }

    List<String> lines() {
        if (harvests(world).isEmpty()) {
            return List.of("No harvest yet, so there is no forecast to hold against the truth.");
        }
        List<String> out = new ArrayList<>();
        out.add("Forecast against truth. The truth is T90: nine in ten of what can hatch have");
        out.add("hatched. Nobody has seen these lots hatch, so each is announced late on purpose:");
        out.add("at the hour by which three in four such lots are ready. In brackets minutes: +");
        out.add("was announced later than it came, - earlier. 'held': the interval given at");
        out.add("stocking (8 in 10) has the truth in it.");
        out.add("");
        out.add(Text.of(ROW, "cone", "lot", "truth", "told at stocking", "told 3 h before", "held", "drained",
                "hatched"));
        harvests(world).forEach(b -> out.add(line(b)));
        return out;
    }

    private String line(BatchTruth b) {
        long truthMs = b.moments().t90Ms();
        Optional<Announcements.Note> first = announced.first(b.cone(), b.stockedAtMs());
        Optional<Announcements.Note> late = truthMs < 0 ? Optional.empty()
                : announced.standing(b.cone(), b.stockedAtMs(), truthMs - BEFORE_MS);
        String held = first.isEmpty() || truthMs < 0 ? "" : first.get().interval().holds(wall(truthMs))
                ? "yes" : "no";
        return Text.of(ROW, b.cone(), b.lot().label(),
                truthMs < 0 ? "not yet" : clock(wall(truthMs)), told(first, truthMs), told(late, truthMs),
                held,
                clock(wall(b.endedAtMs())), Text.of("%3.0f %%", 100 * b.harvest().hatched())).stripTrailing();
    }

    private String told(Optional<Announcements.Note> note, long truthMs) {
        if (note.isEmpty()) {
            return "nothing";
        }
        String clock = clock(note.get().readyWallMs());
        return truthMs < 0 ? clock : clock + Text.of(" (%+d)",
                Math.round((note.get().readyWallMs() - wall(truthMs)) / (double) MINUTE_MS));
    }

    private long wall(long worldMs) {
        return world.clock().trueWallMs() - world.clock().elapsedMs() + worldMs;
    }

    private String clock(long wallMs) {
        return Instant.ofEpochMilli(wallMs).atZone(zone).format(DAY);
    }
}

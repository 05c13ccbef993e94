package org.conetender.app.view;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SortedMap;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** What a person would be told aloud: a line for each stage, alert and state that is new. One thread. */
public final class Changes {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    /** A daemon that is away for less long is not told of (design.md, alarms must not cry wolf). */
    private static final long AWAY_MS = 5 * Units.MINUTE_MS;
    /** States in which it may be about to come back by itself. */
    private static final Set<String> BRIEF = Set.of("lost", "init");

    private final Map<String, String> told = new HashMap<>();
    private OptionalLong awaySinceMs = OptionalLong.empty();

    /** The lines that are new since the last look. @param nowMs any clock that only goes on */
    public List<String> since(SiteView site, long nowMs) {
        List<String> out = new ArrayList<>();
        if (!briefly(site, nowMs) && fresh("state", site.state())) {
            out.add(site.name() + ": "
                    + (site.alive() ? "the daemon is there." : "the daemon is " + site.state() + "."));
        }
        alerts("", site.alerts(), out);
        for (ConeView c : site.cones()) {
            if (fresh(c.id() + " stage", c.hatch().stands())) {
                out.add("Cone " + c.id() + ": " + c.hatch().stands() + ready(c) + "; next: "
                        + c.hand().next());
            }
            c.hatch().warnings().missed().filter(m -> fresh(c.id() + " missed", feed(m)))
                    .ifPresent(m -> out.add("! Cone " + c.id() + ": " + m));
            alerts(c.id(), c.alerts(), out);
        }
        return out;
    }

    /** Whoever begins to look is told at once how it stands. */
    private boolean briefly(SiteView site, long nowMs) {
        if (!BRIEF.contains(site.state())) {
            awaySinceMs = OptionalLong.empty();
            return false;
        }
        awaySinceMs = awaySinceMs.isPresent() ? awaySinceMs : OptionalLong.of(nowMs);
        return told.containsKey("state") && nowMs - awaySinceMs.getAsLong() < AWAY_MS;
    }

    /** That a feed is missed is told once, and not again whenever the hour moves. */
    private static String feed(String sentence) {
        return sentence.replaceAll(" and will not be.*", "");
    }

    private static String ready(ConeView c) {
        return c.hatch().ready().at().map(t -> ", ready about " + t.format(DAY)).orElse("")
                + (c.water().degreesC().isPresent()
                ? Text.of(", water %.1f °C", c.water().degreesC().getAsDouble())
                : "");
    }

    private void alerts(String cone, SortedMap<String, String> alerts, List<String> out) {
        alerts.forEach((id, sentence) -> {
            if (fresh(cone + " alert " + id, "stands")) {
                out.add("! " + sentence);
            }
        });
        told.keySet().removeIf(k -> {
            boolean gone = k.startsWith(cone + " alert ")
                    && !alerts.containsKey(k.substring(cone.length() + 7));
            if (gone) {
                out.add((cone.isEmpty() ? "" : "Cone " + cone + ": ") + "'" + k.substring(cone.length() + 7)
                        + "' is over.");
            }
            return gone;
        });
    }

    private boolean fresh(String what, String now) {
        return !Objects.equals(told.put(what, now), now);
    }
}

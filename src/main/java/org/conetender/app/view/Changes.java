package org.conetender.app.view;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import org.conetender.core.unit.Text;

/** What a person would be told aloud: a line for each stage, alert and state that is new. One thread. */
public final class Changes {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    private final Map<String, String> told = new HashMap<>();

    /** The lines that are new since the last look. */
    public List<String> since(SiteView site) {
        List<String> out = new ArrayList<>();
        if (fresh("state", site.state())) {
            out.add(site.name() + ": "
                    + (site.alive() ? "the daemon is there." : "the daemon is " + site.state() + "."));
        }
        alerts("", site.alerts(), out);
        for (ConeView c : site.cones()) {
            if (fresh(c.id() + " stage", c.hatch().stage())) {
                out.add("Cone " + c.id() + ": " + c.hatch().stage() + ready(c) + "; next: "
                        + c.hand().next());
            }
            alerts(c.id(), c.alerts(), out);
        }
        return out;
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

package org.conetender.app.view;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.conetender.core.face.Json;

/** A look at a site as one line of JSON, for another program. What is not known is left out. */
public final class ViewJson {

    private ViewJson() {}

    public static String of(SiteView s) {
        Map<String, Object> m = new LinkedHashMap<>();
        m.put("site", s.name());
        m.put("state", s.state());
        put(m, "digest", s.notes().digest());
        m.put("alerts", s.alerts());
        m.put("cones", s.cones().stream().map(ViewJson::cone).toList());
        return Json.write(m);
    }

    private static Map<String, Object> cone(ConeView c) {
        Map<String, Object> m = new LinkedHashMap<>();
        m.put("cone", c.id());
        m.put("stage", c.hatch().stage());
        put(m, "degree-hours", c.hatch().done().middle());
        put(m, "degree-hours-least", c.hatch().done().least());
        put(m, "degree-hours-most", c.hatch().done().most());
        put(m, "degree-hours-needed", c.hatch().needed());
        put(m, "hatched-percent", c.hatch().hatched());
        put(m, "ready-at", c.hatch().ready().at().map(Object::toString));
        between(m, "ready-from", c.hatch().ready().most(), "ready-until");
        between(m, "ready-half-from", c.hatch().ready().half(), "ready-half-until");
        ConeView.Food food = c.hatch().ready().food();
        put(m, "food-most-at", food.most().map(Object::toString));
        between(m, "food-from", food.there(), "food-until");
        between(m, "harvest-first-at", food.twice().at(), "harvest-second-at");
        put(m, "harvest-first-share-percent", food.twice().share());
        put(m, "ready-by-outlook", c.hatch().wanted().stands());
        put(m, "ready-by-chance-percent", c.hatch().wanted().chance());
        put(m, "doubt", c.hatch().warnings().doubt());
        put(m, "feed-missed", c.hatch().warnings().missed());
        put(m, "water-c", c.water().degreesC());
        put(m, "setpoint-c", c.water().aim().setpoint());
        put(m, "held-c", c.water().aim().held());
        m.put("trust", c.water().trust());
        c.out().heat().duty().ifPresent(_ -> m.put("heat", c.out().heat().on()));
        put(m, "heat-known", c.out().heat().known());
        put(m, "relay-closings", c.out().heat().relay().closings());
        put(m, "relay-used-percent", c.out().heat().relay().used());
        put(m, "relay-days-left", c.out().heat().relay().daysLeft());
        m.put("air", c.out().air());
        m.put("air-proven", c.out().proven());
        c.out().lamp().ifPresent(on -> m.put("lamp", on));
        m.put("siphon", c.out().siphon());
        m.put("next-step", c.hand().next());
        m.put("alerts", c.alerts());
        put(m, "alarms", c.hand().alarms());
        return m;
    }

    private static void between(Map<String, Object> m, String from, ConeView.Between b, String until) {
        put(m, from, b.from().map(Object::toString));
        put(m, until, b.until().map(Object::toString));
    }

    private static void put(Map<String, Object> m, String key, Optional<String> value) {
        value.ifPresent(v -> m.put(key, v));
    }

    private static void put(Map<String, Object> m, String key, OptionalDouble value) {
        value.ifPresent(v -> m.put(key, v));
    }
}

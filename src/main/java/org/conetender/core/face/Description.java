package org.conetender.core.face;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/**
 * The {@code $description} documents (Homie 5, mqtt.md). A stranger's client can use everything
 * through them alone. Their version comes from the record ({@link Versions}).
 */
public final class Description {

    static final String STAGES = "clean,filled,hydrating,incubating,hatching,ready,settling,settled,drawing,"
            + "drained,abandoned";
    static final String STEPS = Arrays.stream(Step.values()).map(Step::word).collect(Collectors.joining(","));

    static final String FILLED = schema(Map.of("litres", number(0.1, 25), "ppt", number(0, 90)), "litres",
            "ppt");
    static final String STOCKED = schema(Map.of("lot", text(40), "cysts-g", number(0.01, 200)), List.of(),
            "lot", "cysts-g");
    static final String COUNT = schema(Map.of("nauplii", whole(), "umbrella", whole(), "unhatched", whole(),
            "sample-ml", number(0.01, 1000)), "nauplii", "umbrella", "unhatched", "sample-ml");

    static final String WEIGHED = schema(Map.of("wet-g", number(0.01, 5_000)), "wet-g");
    static final String TIN = schema(Map.of("lot", text(40), "cysts-g", number(0, 50_000)), "lot",
            "cysts-g");

    static final String SHELVE = schema(Map.of("alarm", text(40), "hours", number(0,
            Ask.Shelve.MOST_HOURS)), "alarm", "hours");

    /** What only a heater gives a meaning. */
    private static final Set<String> HELD = Set.of("setpoint", "held");

    private Description() {}

    /** The nodes of a cone to which everything is fitted, in order. */
    static final Map<String, List<Property>> CONE = cone();

    /** The nodes of the site, in order. */
    static final Map<String, List<Property>> SITE = site();

    private static Map<String, List<Property>> cone() {
        Map<String, List<Property>> n = new LinkedHashMap<>();
        n.put("water", List.of(
                Property.of("temperature", "Water temperature", "float").unit("°C"),
                Property.of("setpoint", "Set-point of this batch", "float").format("15:30").unit("°C").set(),
                Property.of("held", "What heat aims at now; not there while no heat is wanted", "float")
                        .unit("°C"),
                Property.of("trust", "Whether the temperature is believed", "enum")
                        .format("trusted,projected,untrusted"),
                Property.of("why", "Why the temperature is not believed", "string"),
                Property.of("untested", "Why nobody can tell whether the probe still measures", "string")));
        n.put("hatch", hatch());
        n.put("heat", HeatNode.PROPERTIES);
        n.put("air", List.of(Property.of("on", "Air commanded on", "boolean"),
                Property.of("proven", "Whether air is proven to flow; it fails only while on", "enum")
                .format("proven,failed,unverified")));
        n.put("lamp", List.of(Property.of("on", "Harvest lamp on", "boolean")));
        n.put("siphon", List.of(Property.of("state", "Whether stopping the pump could flood it", "enum")
                .format("safe,valve-shut,at-risk")));
        n.put("usual", List.of(Property.of("lot", "Usual lot", "string").set(),
                Property.of("litres", "Usual volume", "float").format("0.1:25").unit("L").set(),
                Property.of("cysts-g", "Usual cysts", "float").format("0.01:200").unit("g").set(),
                Property.of("ppt", "Usual salinity", "float").format("0:90").unit("g/kg").set()));
        n.put("hand", List.of(Property.of("next-step", "What to do next", "string"),
                Property.of("step", "Report a step", "enum").format(STEPS).set(),
                Property.of("filled", "Report a filling with its figures", "json").format(FILLED).set(),
                Property.of("stocked", "Report cysts with their figures", "json").format(STOCKED).set(),
                Property.of("count", "Report a counted sub-sample", "json").format(COUNT).set(),
                Property.of("weighed", "Report a harvest's wet weight", "json").format(WEIGHED).set(),
                Property.of("withdraw", "Take back the last report; with its step only if it was that one",
                        "string").set(),
                Property.of("acknowledge", "Acknowledge an alarm by its id", "string").set(),
                Property.of("shelve", "Put an alarm on the shelf for some hours; 0 ends it", "json")
                        .format(SHELVE).set(),
                Property.of("alarms", "Every alarm of this cone with its states", "string"),
                Property.of("answer", "The last answer", "string")));
        return n;
    }

    /** The nodes of that cone: none for what is not fitted to it. */
    private static Map<String, List<Property>> of(Cone c) {
        Map<String, List<Property>> n = new LinkedHashMap<>(CONE);
        if (!c.fittings().heat().fitted()) {
            n.remove("heat");
            n.computeIfPresent("water", (_, all) -> all.stream().filter(p -> !HELD.contains(p.id()))
                    .toList());
        }
        if (!c.fittings().lights().harvest()) {
            n.remove("lamp");
        }
        return n;
    }

    private static List<Property> hatch() {
        return List.of(
                Property.of("stage", "Stage of the batch", "enum").format(STAGES),
                Property.of("batch", "Number of the batch", "integer"),
                Property.of("degree-hours", "Degree-hours done", "float").unit("°C·h"),
                Property.of("degree-hours-least", "Degree-hours surely done", "float").unit("°C·h"),
                Property.of("degree-hours-most", "Degree-hours that may have been done", "float")
                        .unit("°C·h"),
                Property.of("degree-hours-needed", "Degree-hours at the harvest point", "float").unit("°C·h"),
                Property.of("hatched", "Share hatched, estimated", "float").unit("%"),
                Property.of("ready-at", "Ready at", "datetime"),
                Property.of("ready-from", "Ready in one of ten cases before", "datetime"),
                Property.of("ready-until", "Ready in nine of ten cases before", "datetime"),
                Property.of("ready-half-from", "Ready in one of four cases before", "datetime"),
                Property.of("ready-half-until", "Ready in three of four cases before", "datetime"),
                Property.of("food-most-at", "Most of its food is in the cone at", "datetime"),
                Property.of("food-from", "From then on 95 % of that food is there", "datetime"),
                Property.of("food-until", "Until then 95 % of that food is there", "datetime"),
                Property.of("harvest-first-at", "It hatches over long: harvest first at", "datetime"),
                Property.of("harvest-first-share", "Share of what hatches in that first harvest", "float")
                        .unit("%"),
                Property.of("harvest-second-at", "And the rest at", "datetime"),
                Property.of("feed-missed", "The feed it was to be ready for and will not be", "string"),
                Property.of("ready-by", "Have it ready by: " + Hour.FORMS + "; empty gives it up", "string")
                        .set(),
                Property.of("ready-by-outlook", "How the wanted hour stands, in words", "string"),
                Property.of("ready-by-chance", "Chance of being ready by the wanted hour", "float")
                        .unit("%"),
                Property.of("outlook", "How the hatch stands, in words", "string"),
                Property.of("arrested", "Whether development stands still", "boolean"),
                Property.of("doubt", "Why to look before feeding", "string"));
    }

    private static Map<String, List<Property>> site() {
        Map<String, List<Property>> n = new LinkedHashMap<>();
        n.put("feed", List.of(Property.of("next", "Next feed", "datetime"),
                Property.of("digest", "What is there for it", "string")));
        n.put("room", List.of(Property.of("temperature", "Room temperature", "float").unit("°C")));
        n.put("site", List.of(Property.of("clock", "Whether the clock is trusted", "enum")
                .format("trusted,untrusted"),
                Property.of("record", "How the record stands", "string"),
                Property.of("alarms", "Every alarm of the site and its cones with its states", "string"),
                Property.of("escalated", "For the second person: what nobody has answered", "string"),
                Property.of("tin", "Report what is left of a lot", "json").format(TIN).set(),
                Property.of("away", "Who may be called while nobody is near; empty ends it", "string")
                .set()));
        return n;
    }

    /** The root device's document. @param version above that of every other text it had */
    public static String root(Settings s, long version) {
        Names names = new Names("homie", s.site().id());
        Map<String, Object> d = head(s.site().name(), "hatchery", version);
        d.put("nodes", nodes(SITE));
        d.put("children", s.cones().stream().map(c -> names.device(c.id())).toList());
        return Json.write(d);
    }

    /** One cone's document. @param version above that of every other text it had */
    public static String cone(Settings s, Cone c, long version) {
        Map<String, Object> d = head(s.site().name() + ", cone " + c.id(), "hatching-cone", version);
        d.put("nodes", nodes(of(c)));
        d.put("root", s.site().id());
        return Json.write(d);
    }

    private static Map<String, Object> head(String name, String type, long version) {
        Map<String, Object> d = new LinkedHashMap<>();
        d.put("homie", "5.0");
        d.put("version", version);
        d.put("name", name);
        d.put("type", type);
        return d;
    }

    private static Map<String, Object> nodes(Map<String, List<Property>> nodes) {
        Map<String, Object> out = new LinkedHashMap<>();
        nodes.forEach((id, properties) -> {
            Map<String, Object> p = new LinkedHashMap<>();
            properties.forEach(x -> p.put(x.id(), x.describe()));
            out.put(id, Map.of("properties", p));
        });
        return out;
    }

    private static String schema(Map<String, Object> properties, String... all) {
        return schema(properties, List.of(all), all);
    }

    /** @param all in their order */
    private static String schema(Map<String, Object> properties, List<String> required, String... all) {
        Map<String, Object> s = new LinkedHashMap<>();
        s.put("type", "object");
        Map<String, Object> p = new LinkedHashMap<>();
        for (String name : all) {
            p.put(name, properties.get(name));
        }
        s.put("properties", p);
        s.put("required", required);
        s.put("additionalProperties", false);
        return Json.write(s);
    }

    private static Map<String, Object> number(double least, double most) {
        Map<String, Object> m = new LinkedHashMap<>();
        m.put("type", "number");
        m.put("minimum", least);
        m.put("maximum", most);
        return m;
    }

    private static Map<String, Object> whole() {
        Map<String, Object> m = new LinkedHashMap<>();
        m.put("type", "integer");
        m.put("minimum", 0);
        m.put("maximum", 1_000_000);
        return m;
    }

    private static Map<String, Object> text(int most) {
        Map<String, Object> m = new LinkedHashMap<>();
        m.put("type", "string");
        m.put("minLength", 1);
        m.put("maxLength", most);
        return m;
    }
}

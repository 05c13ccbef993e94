package org.conetender.app.config;

import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Site;

/** Reads {@code [site]}: names, feed hours, the power limit, the room. */
final class SiteReader {

    /** Longest name for people; it stands in messages beside other words. *guess* */
    private static final int MOST_NAME = 60;

    private static final Pattern HOUR = Pattern.compile("([01][0-9]|2[0-3]):[0-5][0-9]");

    private final Fields site;

    SiteReader(Fields site) {
        this.site = site;
    }

    /** Reads all of it; the cones have been read before, because the power limit must carry them. */
    Site read(List<Cone> cones, LineBook lines, Ids ids, String id) {
        String name = name(id);
        Site.Feeding feeding = new Site.Feeding(zone(), hours(), (int) site.number("lead-minutes"));
        Site.Supply supply = new Site.Supply(powerLimit(cones),
                lines.output(site, "heartbeat-line", "site.heartbeat"));
        return new Site(id, name, feeding, supply, roomProbe(ids), site.text("second-person")
                .map(p -> forPeople("second-person", p)), site.flag("salt-slows"));
    }

    private String name(String id) {
        String name = site.text("name", Optional.of(id)).orElse(id);
        return site.at().raw("name") == null ? name : forPeople("name", name);
    }

    private String forPeople(String key, String text) {
        if (text.isBlank() || text.length() > MOST_NAME || text.chars().anyMatch(Character::isISOControl)) {
            site.at().wrong(key, "this must be 1 to " + MOST_NAME + " characters, no control characters");
        }
        return text;
    }

    private ZoneId zone() {
        Optional<String> name = site.text("zone");
        try {
            return name.map(ZoneId::of).orElse(ZoneOffset.UTC);
        } catch (DateTimeException e) {
            site.at().wrong("zone", "no such zone; it must be a name of the IANA list, such as Europe/London"
                    + Nearest.hint(name.orElseThrow(), ZoneId.getAvailableZoneIds()));
            return ZoneOffset.UTC;
        }
    }

    private List<LocalTime> hours() {
        List<LocalTime> hours = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (String text : site.texts("feeds")) {
            if (!HOUR.matcher(text).matches()) {
                site.at().wrong("feeds", Shown.quoted(text) + " is not an hour; it must be \"00:00\" to "
                        + "\"23:59\", with two digits on both sides");
            } else if (!seen.add(text)) {
                site.at().wrong("feeds", Shown.quoted(text) + " stands twice; name each feed once");
            } else {
                hours.add(LocalTime.parse(text));
            }
        }
        if (!site.given("feeds")) {
            site.at().warn("feeds", "no feed hours: the harvest is offered whenever it is ready, "
                    + "at night too");
        }
        return hours;
    }

    private double powerLimit(List<Cone> cones) {
        // A limit below one heater would keep its cone cold for ever; unreadable ratings do not count.
        double largest = cones.stream().mapToDouble(c -> c.fittings().heat().watts())
                .filter(w -> !Double.isNaN(w)).max().orElse(0);
        double limit = site.number("power-limit-w", largest);
        if (limit < largest) {
            site.at().wrong("power-limit-w", "below the largest heater, which could then never heat; it must "
                    + "be " + SettingDoc.figure(largest) + " W or more, or fit a smaller heater");
        }
        return limit;
    }

    private Optional<String> roomProbe(Ids ids) {
        Optional<String> probe = site.text("room-probe");
        if (!site.given("room-probe")) {
            site.at().warn("room-probe", "no room probe: forecasts know less of how the water cools, and a "
                    + "frozen probe is harder to find");
        }
        return probe.filter(p -> ids.probe(site, "room-probe", p, "the room"));
    }
}

package org.conetender.core.settings;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * What all cones share.
 *
 * @param id lower-case letters, digits and {@code -}: the root device on MQTT
 * @param name for people
 * @param feeding the hours at which fry are fed
 * @param supply the site's electrical limit and heartbeat
 * @param roomProbe id of the probe in the room's air, if there is one
 * @param second how the person is addressed who is called when nobody answers, if there is one
 * @param saltSlows whether the salt of a batch's water counts in its forecasts
 */
public record Site(String id, String name, Feeding feeding, Supply supply, Optional<String> roomProbe,
                   Optional<String> second, boolean saltSlows) {

    /**
     * @param zone of the feed hours and of every time shown to people
     * @param hours times of day at which fry are fed; may be empty
     * @param leadMinutes a harvest should be offered this long before a feed (drawing and rinsing)
     */
    public record Feeding(ZoneId zone, List<LocalTime> hours, int leadMinutes) {
        public Feeding {
            hours = hours.stream().sorted().toList();
        }
    }

    /**
     * @param limitWatts heaters on together never take more than this
     * @param heartbeat whether an output beats, an edge a tick, for an external dead-man relay
     */
    public record Supply(double limitWatts, boolean heartbeat) {}
}

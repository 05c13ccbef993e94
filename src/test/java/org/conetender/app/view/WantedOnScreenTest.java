package org.conetender.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.face.Names;
import org.junit.jupiter.api.Test;

class WantedOnScreenTest {

    private static final String SENTENCE = "Ready by Fri 07:30: holding 25.4 °C.";

    private static SiteView site(boolean wanted) {
        Map<String, String> topics = new HashMap<>(Map.of("homie/5/larkmoor/$state", "ready",
                "homie/5/larkmoor-a/hatch/stage", "incubating"));
        if (wanted) {
            topics.put("homie/5/larkmoor-a/hatch/ready-by-outlook", SENTENCE);
        }
        return SiteView.of(topics, new Names("homie", "larkmoor"), List.of("a"), Optional.empty());
    }

    private static List<String> screen(SiteView site) {
        return Screen.of(site, new Screen.Frame(new Terminal.Size(80, 100), false,
                OffsetDateTime.parse("2026-11-26T09:00:00Z"), new Screen.Around("", "", "")));
    }

    @Test
    void theWantedHourStandsOnTheScreenAndInTheObjectForPrograms() {
        assertThat(screen(site(true))).contains("  wanted  " + SENTENCE);
        assertThat(ViewJson.of(site(true))).contains("\"ready-by-outlook\":\"" + SENTENCE + "\"");
    }

    /** Somebody settled it too early and gave that up: its stage is ready, and it is not. */
    @Test
    void whatWasCalledReadyTooEarlyDoesNotReadReady() {
        Map<String, String> topics = new HashMap<>(Map.of("homie/5/larkmoor/$state", "ready",
                "homie/5/larkmoor-a/hatch/stage", "ready"));
        assertThat(screen(SiteView.of(topics, new Names("homie", "larkmoor"), List.of("a"),
                Optional.empty()))).contains("Cone a  ready");
        topics.put("homie/5/larkmoor-a/hatch/ready-at", "2026-11-26T12:00:00Z");
        SiteView early = SiteView.of(topics, new Names("homie", "larkmoor"), List.of("a"), Optional.empty());
        assertThat(screen(early)).contains("Cone a  called ready, not ripe yet");
        assertThat(new Changes().since(early, 0)).anyMatch(l -> l.startsWith("Cone a: called ready, not "));
    }

    @Test
    void whereNoHourIsWantedNothingIsSaid() {
        assertThat(screen(site(false))).noneMatch(l -> l.contains("wanted"));
        assertThat(ViewJson.of(site(false))).doesNotContain("ready-by");
    }
}

package org.conetender.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A relay's life is shown where there is room, and crowds nothing else. */
class RelayOnScreenTest {

    private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-03-03T00:10:00Z");

    private final Published site = new Published().incubating("a").incubating("b").incubating("c");

    private List<String> page(int rows) {
        return Screen.of(site.view("a", "b", "c"), new Screen.Frame(new Terminal.Size(80, rows), false, NOW,
                new Screen.Around("", "", "Ctrl-C ends this.")));
    }

    private void relay(String cone, String closings, String used, String daysLeft) {
        site.says("-" + cone + "/heat/relay-closings", closings).says("-" + cone + "/heat/relay-used", used)
                .says("-" + cone + "/heat/relay-days-left", daysLeft);
    }

    @Test
    void aTallWindowShowsIt() {
        relay("a", "12345", "12.3", "580");
        assertThat(page(40)).filteredOn(l -> l.startsWith("  relay")).containsExactly(
                "  relay   12 % of its life used; at this pace the rest lasts about 19 months");
        assertThat(ViewJson.of(site.view("a"))).contains("\"relay-closings\":12345",
                "\"relay-used-percent\":12.3", "\"relay-days-left\":580");
    }

    @Test
    void anotherProgramIsToldHowWellTheConeIsKnown() {
        assertThat(ViewJson.of(site.view("a"))).doesNotContain("heat-known");
        site.says("-a/heat/known", "roughly");
        assertThat(ViewJson.of(site.view("a"))).contains("\"heat-known\":\"roughly\"");
    }

    @Test
    void aFullWindowIsAsItWasWithoutAndSaysNothingOfIt() {
        List<String> without = page(40);
        for (String cone : List.of("a", "b", "c")) {
            relay(cone, "12345", "12.3", "580");
        }
        assertThat(page(without.size())).isEqualTo(without);
        assertThat(page(without.size() + 1)).hasSize(without.size() + 1);
    }

    @ParameterizedTest
    @CsvSource({"1, 1 day", "2, 2 days", "99, 99 days", "100, 3 months", "670, 22 months", "700, 2 years",
        "3650, 10 years"})
    void thePaceIsToldInWordsThatOneReckonsIn(String days, String words) {
        relay("b", "500", "0.5", days);
        assertThat(String.join("\n", page(60))).contains("the rest lasts about " + words + "\n");
    }

    @Test
    void onceItIsWornOnlyItsAlarmTells() {
        relay("a", "100200", "100.2", "0");
        assertThat(String.join("\n", page(60))).doesNotContain("relay");
    }
}

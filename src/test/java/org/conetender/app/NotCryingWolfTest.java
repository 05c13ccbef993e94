package org.conetender.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.conetender.app.view.Changes;
import org.conetender.app.view.SiteView;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.Story;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.face.Names;
import org.conetender.core.face.Tree;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** "Alarms must not cry wolf": the sentences of that paragraph of design.md, one test each, in order. */
class NotCryingWolfTest {

    private static final String MISSED = "homie/5/larkmoor-a/hatch/feed-missed";
    private static final String DIGEST = "homie/5/larkmoor/feed/digest";

    private static Map<String, String> tree(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
    }

    private static Story cold(Story s, double degreesC, long minutes) {
        s.senses.probe("a-water", new Reading.Value(degreesC));
        return s.minutes(minutes);
    }

    /** Stocked at nine in the morning it is ready in the night after the next day's feeds, and waits. */
    @Test
    void readyAtNightIsNotAnAlarm() {
        Story s = Story.at(Fitting.AIR_PROOF, Fitting.LEVEL, Fitting.ROOM_PROBE);
        s.wall(Duration.ofHours(-9).toMillis(), true);
        s.does(Step.STARTED);
        boolean atNight = false;
        for (int h = 0; h < 60; h++) {
            s.pass(Duration.ofHours(1));
            long hour = s.now().wallMs() / 3_600_000 % 24;
            atNight |= s.stage().equals("ready") && (hour >= 22 || hour < 6);
        }
        assertThat(atNight).isTrue();
        assertThat(s.messages()).isEmpty();
        assertThat(tree(s).keySet()).noneMatch(t -> t.contains("$alert"));
    }

    @Test
    void aMovedForecastIsToldOnlyInTheLastSixHoursAndOnlyIfItMissesAFeed() {
        Story early = Story.at();
        early.does(Step.STARTED);
        early.pass(Duration.ofHours(12));
        cold(early, 16, 150);
        assertThat(tree(early)).as("more than six hours before").doesNotContainKey(MISSED);

        Story late = Story.at();
        late.does(Step.STARTED);
        late.pass(Duration.ofHours(23));
        String was = tree(late).get("homie/5/larkmoor-a/hatch/ready-at");
        cold(late, 25, 30);
        assertThat(tree(late).get("homie/5/larkmoor-a/hatch/ready-at")).isNotEqualTo(was);
        assertThat(tree(late)).as("still in time").doesNotContainKey(MISSED);
        cold(late, 16, 210);
        assertThat(tree(late)).containsKey(MISSED);
        assertThat(late.messages()).as("nor is it an alarm").filteredOn(m -> m.alarms().stream()
                .anyMatch(a -> a.what().contains("feed"))).isEmpty();
    }

    @Test
    void thereIsOneDigestPerFeedForAllCones() {
        Story s = Story.at();
        for (String cone : List.of("a", "b", "c")) {
            s.did(cone, Step.STARTED);
            s.did(cone, Step.FIRST_SEEN);
            s.did(cone, Step.SETTLE);
            s.did(cone, Step.HANDS_IN);
        }
        s.seconds(5);
        // They were called ready long before they can be.
        assertThat(tree(s).get(DIGEST)).matches("For the feed at 12:30: cone a is not ripe yet.*, "
                + "cone b is not ripe yet.*, cone c is not ripe yet.*");
        assertThat(tree(s).keySet().stream().filter(t -> t.contains("digest"))).containsExactly(DIGEST);
        assertThat(s.messages()).isEmpty();
    }

    @Test
    void lostIsToldAfterFiveMinutes() {
        Map<String, String> topics = new TreeMap<>(tree(Story.at()));
        Names names = Names.of("homie", Story.at().settings());
        Changes changes = new Changes();
        List<String> said = new ArrayList<>();
        for (int s = 0; s <= 600; s++) {
            boolean away = s >= 60;
            topics.put(names.root() + "/$state", away ? "lost" : "ready");
            for (String line : changes.since(SiteView.of(topics, names, List.of("a"),
                    Optional.of("Larkmoor Fry Room")), s * 1_000L)) {
                if (line.contains("daemon")) {
                    said.add(s + " " + line);
                }
            }
        }
        assertThat(said).containsExactly("0 Larkmoor Fry Room: the daemon is there.",
                "360 Larkmoor Fry Room: the daemon is lost.");
    }

    @Test
    void anUntrustedClockIsAStatusForItsFirstHour() {
        Story s = Story.at();
        s.wall(0, false).minutes(59);
        assertThat(tree(s)).containsEntry("homie/5/larkmoor/site/clock", "untrusted");
        assertThat(s.messages()).isEmpty();
        assertThat(s.standing("")).isEmpty();
        s.minutes(2);
        assertThat(s.told("clock")).isEqualTo(1);
    }

    /** Over, seen, following from another, or brief and past: none of it rings again in half a day. */
    @Test
    void nothingIsRepeatedThatNobodyCanActOn() {
        Story over = Story.at(Fitting.LEVEL);
        over.does(Step.STARTED);
        over.minutes(10);
        over.senses.contact("a.level", Level.OPEN);
        over.minutes(2);
        over.senses.contact("a.level", Level.CLOSED);
        over.pass(Duration.ofHours(12));
        assertThat(over.told("dry")).as("its cause is over").isEqualTo(1);

        Story past = Story.at();
        past.does(Step.STARTED, Step.FIRST_SEEN, Step.SETTLE);
        past.pass(Duration.ofHours(12));
        assertThat(past.standing("a")).contains("air-back");
        assertThat(past.told("air-back")).as("nobody can do more about it").isEqualTo(1);

        Story bus = Story.at(Fitting.TWO_PROBES);
        for (String cone : List.of("a", "b", "c")) {
            bus.did(cone, Step.STARTED);
        }
        bus.minutes(20);
        for (String probe : List.of("a-water", "b-water", "c-water", "a-second", "b-second", "c-second")) {
            bus.senses.probe(probe, new Reading.Absent());
        }
        bus.pass(Duration.ofHours(12));
        assertThat(bus.told()).as("one bus, one incident").extracting(Alarm::key).containsOnly("a/probe");
        assertThat(bus.standing("b")).contains("probe");
    }
}

package org.conetender.sim.swarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.conetender.core.guard.AirFailed;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.guard.LyingProbe;
import org.conetender.core.guard.WeldedHeater;
import org.conetender.sim.Parts;
import org.conetender.sim.trial.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A few of the stories that the soak tells by the thousand. */
class SwarmTest {

    private static final int THREADS = Runtime.getRuntime().availableProcessors();

    @Test
    void aFewStoriesOfADayEndWellAndComeToTheSameWhenToldAgain() throws Exception {
        SwarmReport report = Swarm.run(new Swarm.Plan(1, 16, 24, THREADS, true), share -> { });
        assertThat(report.broken()).as(String.join("\n", report.lines())).isEmpty();
        assertThat(report.targets()).filteredOn(t -> t.what().startsWith("stories"))
                .allMatch(Target::met).hasSize(3);
        assertThat(report.lines().getFirst())
                .startsWith("16 stories of 24 h, seeds 1 to 16: 1152 cone-hours");
    }

    @Test
    void aStoryThatBreaksSomethingIsShrunkToWhatMattersAndBreaksItAgain() {
        Parts guards = Parts.with(Guards.ALL.stream().filter(g -> !(g instanceof LyingProbe)).toList());
        Tale tale = Tale.parse("""
                story larkmoor-plain careful seed 5 hours 8
                00:20:00 site link-down 600s
                00:30:00 disk slow 300s
                00:50:00 water a lid-off 3000s
                01:00:00 kill now
                02:00:00 probe c 0 absent 3000s
                02:10:00 hang 20s
                03:00:00 set a water/setpoint warm
                """);
        Play.Played played = Play.of(tale, guards);
        assertThat(played.broken()).isNotEmpty();
        Shrink.Shrunk shrunk = Shrink.of(tale, played.broken().getFirst(), guards, most(40));
        assertThat(shrunk.whole()).isTrue();
        Tale less = shrunk.tale();
        assertThat(less.events()).extracting(Event::text).containsExactly("02:00:00 probe c 0 absent 3000s");
        Tale again = Tale.parse(less.text());
        assertThat(Play.of(again, guards).broken()).extracting(v -> v.rule())
                .containsExactly(played.broken().getFirst().rule());
        assertThat(Swarm.tell(again)).as("with every guard").isEmpty();
        Shrink.Shrunk hasty = Shrink.of(tale, played.broken().getFirst(), guards, most(3));
        assertThat(hasty.whole()).isFalse();
        String said = SwarmReport.text("probe", hasty, 3);
        assertThat(said).startsWith("# probe; perhaps not as short as it can be: the 3 tellings"
                + " that it had are spent\nstory ");
        assertThat(Play.of(Tale.parse(said), guards).broken()).isNotEmpty();
    }

    private static Shrink.Most most(int tellings) {
        return new Shrink.Most(tellings, () -> { });
    }

    /** Drawn stories of a dozen events each, and guards that are missing: every rule has its short one. */
    @Test
    void ofEachRuleThatBreaksAStoryOfTenEventsAtMostIsPrinted() throws Exception {
        Parts guards = Parts.with(Guards.ALL.stream()
                .filter(g -> !(g instanceof AirFailed) && !(g instanceof WeldedHeater)).toList());
        SwarmReport report = Swarm.run(new Swarm.Plan(85, 3, 12, THREADS, false), guards, share -> { });
        assertThat(report.broken()).filteredOn(b -> b.tale().events().size() > 10)
                .extracting(b -> b.violation().rule()).contains("air-failed", "excess");
        assertThat(report.stories()).as("what they came to can be read before").isEmpty();
        List<Double> shares = new CopyOnWriteArrayList<>();
        report.shrink(guards, shares::add);
        assertThat(shares).as("of the tellings").hasSizeGreaterThan(5)
                .allMatch(s -> s > 0 && s <= 1);
        assertThat(report.shrunk()).containsOnlyKeys(report.broken().stream().map(b -> b.violation().rule())
                .distinct().toArray(String[]::new));
        report.shrunk().forEach((rule, s) -> {
            assertThat(s.whole()).as(rule).isTrue();
            assertThat(s.tale().events()).as(rule).hasSizeLessThanOrEqualTo(10);
            assertThat(report.stories()).contains("# " + rule + "\n" + s.tale().text());
            assertThat(Play.of(Tale.parse(s.tale().text()), guards).broken()).extracting(v -> v.rule())
                    .containsExactly(rule);
        });
    }

    /** No heat without a reading: the two gaps of a minute and more are in every cone at once. */
    @ParameterizedTest
    @ValueSource(strings = {"slow", "absent"})
    void aBusThatFailsForAllProbesEndsWell(String how) {
        assertThat(Swarm.tell(Tale.parse("story larkmoor-plain careful seed 5 hours 6\n02:00:00 bus " + how
                + " 3000s\n04:00:00 bus " + how + " 90s"))).isEmpty();
    }

    @Test
    void whatTheDaemonThrowsBreaksTheStory() {
        Guard bug = new Guard() {
            @Override
            public String id() {
                return "bug";
            }

            @Override
            public List<org.conetender.core.guard.Finding> look(org.conetender.core.guard.View v) {
                throw new IllegalStateException("planted");
            }
        };
        assertThat(Play.of(Tales.of(1, 1), Parts.with(List.of(bug))).broken()).singleElement()
                .matches(v -> v.rule().equals("thrown") && v.what().contains("planted"));
    }

    /** Of six hours' darkness the batch that was there is marked, and not the one that hatches days later. */
    @Test
    void aBatchOfAfterThePowerCutIsNotInDoubtOverIt() {
        assertThat(Swarm.tell(Tale.parse("""
                story larkmoor-plain careful seed 30034 hours 73
                46:52:51 site power-cut 21018s
                """))).isEmpty();
    }

    /** Reported started for the wrong cone: its own batch lives through the dark all the same. */
    @Test
    void aBatchOverWhichAnotherWasBegunByMistakeIsInDoubtOverAPowerCut() {
        assertThat(Swarm.tell(Tale.parse("""
                story larkmoor-plain nobody seed 5 hours 4
                00:00:20 begin a
                01:00:00 say a first-seen
                01:10:00 say a started
                01:12:00 set a hand/withdraw last
                01:30:00 site power-cut 5400s
                """))).isEmpty();
    }

    /** A press too many, taken back at once: the water is as short of oxygen as it was. */
    @ParameterizedTest
    @ValueSource(strings = {"drained", "cleaned", "abandoned", "started"})
    void aBatchThatWasReportedGoneByMistakeIsNotSettledTwiceInARow(String slip) {
        assertThat(Swarm.tell(Tale.parse("""
                story larkmoor-plain nobody seed 5 hours 2
                00:00:20 begin a
                01:00:00 say a first-seen
                01:01:00 say a settle
                01:08:00 say a drawing
                01:10:30 say a SLIP
                01:11:00 set a hand/withdraw last
                01:11:30 say a settle
                """.replace("SLIP", slip)))).isEmpty();
    }

    /** It runs back into the pump meanwhile; how warm the rest below the probe is, nobody can know. */
    @Test
    void hotWaterThatRanAwayBelowItsProbeIsToldOfAsLongAsAnythingShowsIt() {
        Tale tale = Tale.parse("""
                story larkmoor-plain nobody seed 5 hours 2
                00:00:20 begin b
                01:00:00 site power-cut 1200s
                01:05:00 water b hot-poured 300s
                """);
        assertThat(Play.of(tale, Parts.WHOLE).broken()).isEmpty();
    }
}

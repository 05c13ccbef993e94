package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.conetender.core.Larkmoor.Fitting;
import org.conetender.core.batch.Batch;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.guard.Power;
import org.conetender.core.guard.Unwritten;
import org.conetender.core.image.Ask;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Every step, said at every stage: while its record is on its way nothing is allowed that was not
 * allowed before, and nothing that will not be afterwards (style.md, commit order).
 */
class PermitsTest {

    /** Where cone a stands when something is said. */
    private enum Place {
        CLEAN(s -> s.does(Step.STARTED, Step.DRAINED, Step.CLEANED)),
        FILLED(s -> s.does(Step.FILLED).seconds(1)),
        HYDRATING(s -> s.does(Step.STARTED).seconds(1)),
        HATCHING(s -> s.does(Step.STARTED, Step.FIRST_SEEN)),
        VALVE_SHUT(s -> s.does(Step.STARTED, Step.FIRST_SEEN, Step.VALVE_SHUT)),
        SETTLING(s -> VALVE_SHUT.to.apply(s).does(Step.SETTLE)),
        READY(s -> SETTLING.to.apply(s).seconds(200).does(Step.VALVE_OPEN)),
        SETTLED(s -> SETTLING.to.apply(s).seconds(70)),
        DRAWING(s -> SETTLED.to.apply(s).does(Step.DRAWING)),
        PART_DRAWN(s -> DRAWING.to.apply(s).does(Step.PART_DRAWN, Step.VALVE_OPEN)),
        HANDS_IN(s -> s.does(Step.STARTED, Step.HANDS_IN)),
        TOPPED_UP(s -> s.does(Step.STARTED, Step.TOPPED_UP)),
        ABANDONED(s -> s.does(Step.STARTED, Step.ABANDONED)),
        DRAINED(s -> s.does(Step.STARTED, Step.DRAINED));

        private final UnaryOperator<Story> to;

        Place(UnaryOperator<Story> to) {
            this.to = to;
        }

        Story story(List<Guard> guards, Fitting... fittings) {
            Story s = to.apply(new Story(Larkmoor.room(fittings).airOff(1, 3).build(), guards));
            s.senses.contact("a.level", fittings == RUN_DRY ? Level.OPEN : Level.CLOSED);
            s.tick();
            return s;
        }
    }

    /** Here the level contact says that it is empty. */
    private static final Fitting[] RUN_DRY = {Fitting.LEVEL};

    private static final List<Fitting[]> FITTINGS = List.of(new Fitting[0],
            new Fitting[] {Fitting.SIPHONING, Fitting.LEVEL}, new Fitting[] {Fitting.MAT, Fitting.IDLE_AIR},
            RUN_DRY);

    private static List<Ask> everything() {
        List<Ask> all = new ArrayList<>(Stream.of(Step.values()).map(s -> (Ask) new Ask.Did(s)).toList());
        all.addAll(List.of(new Ask.DidFill(2, 25), new Ask.DidStock("L-0417", 2), new Ask.Withdraw("last"),
                new Ask.SetSetpoint(24), new Ask.SetSetpoint(28),
                new Ask.ReadyBy(Optional.of(Hour.parse("2026-03-03 14:00"))),
                new Ask.ReadyBy(Optional.empty()),
                new Ask.DidCount(9, 9, 9, 1), new Ask.DidWeigh(9.5), new Ask.TinHolds("L-0417", 425)));
        return all;
    }

    /** What cone a is allowed by the last tick. */
    private static Set<Power> allowed(Story s) {
        EnumSet<Power> out = EnumSet.noneOf(Power.class);
        boolean heat = s.on("a.cut-out") && s.last().findings().get("a").stream()
                .noneMatch(f -> f.denies().contains(Power.HEAT));
        if (heat) {
            out.add(Power.HEAT);
        }
        if (s.on("a.air-pause")) {
            out.add(Power.AIR_OFF);
        }
        return out;
    }

    /** Rows in which power was given too early or taken too late. */
    private static List<String> wrong(Place place, Ask ask, List<Guard> guards) {
        List<String> out = new ArrayList<>();
        for (Fitting[] fittings : FITTINGS) {
            String row = ask + " at " + place + " with " + List.of(fittings);
            Story s = place.story(guards, fittings);
            Set<Power> before = allowed(s);
            s.paper.mood(Paper.Mood.WAITING);
            s.send("a", ask);
            List<Set<Power>> meanwhile = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                s.tick();
                meanwhile.add(allowed(s));
            }
            s.paper.mood(Paper.Mood.KEEPING);
            s.seconds(3);
            Set<Power> after = allowed(s);
            for (Set<Power> m : meanwhile) {
                m.stream().filter(p -> !before.contains(p)).forEach(p -> out.add(row + ": " + p + " early"));
                m.stream().filter(p -> !after.contains(p)).forEach(p -> out.add(row + ": " + p + " late"));
            }
        }
        return out;
    }

    @ParameterizedTest
    @EnumSource(Place.class)
    void whileItIsWrittenDownNothingIsAllowedThatWasNotOrWillNotBe(Place place) {
        for (Ask ask : everything()) {
            assertThat(wrong(place, ask, Guards.ALL)).isEmpty();
        }
    }

    @Test
    void withoutThisGuardTheseStepsWouldGiveBeforeTheyAreRecorded() {
        List<Guard> others = Guards.ALL.stream().filter(g -> !(g instanceof Unwritten)).toList();
        Set<String> early = new TreeSet<>();
        for (Place place : List.of(Place.HYDRATING, Place.VALVE_SHUT, Place.SETTLING, Place.DRAWING)) {
            everything().forEach(a -> wrong(place, a, others).forEach(row -> early.add(a.word() + ":"
                    + row.replaceFirst(".*:", ""))));
        }
        assertThat(early).contains("part-drawn: HEAT early", "valve-open: HEAT early",
                "withdraw: AIR_OFF early", "withdraw: HEAT early",
                "settle: HEAT late", "started: AIR_OFF late");
    }

    @ParameterizedTest
    @EnumSource(Place.class)
    void aRecordThatRefusesGivesNothingAndKeepsTakingAway(Place place) {
        for (Ask ask : everything()) {
            for (Fitting[] fittings : FITTINGS.subList(0, 2)) {
                Story s = place.story(Guards.ALL, fittings);
                Set<Power> before = allowed(s);
                s.paper.mood(Paper.Mood.REFUSING);
                s.send("a", ask);
                for (int i = 0; i < 65; i++) {
                    s.tick();
                    assertThat(before).as(ask + " at " + place + ", second " + i).containsAll(allowed(s));
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Place.class)
    void afterACrashMeanwhileTheConeStandsWhereItStoodAndNobodyWasToldDone(Place place) {
        for (Ask ask : everything()) {
            Story s = place.story(Guards.ALL);
            Batch stood = s.batch("a");
            s.paper.mood(Paper.Mood.WAITING);
            var request = s.send("a", ask);
            s.seconds(10);
            assertThat(s.replies().stream().filter(r -> r.request().equals(request) && r.accepted()))
                    .as(ask + " at " + place).isEmpty();
            assertThat(s.notes(request)).as(ask + " at " + place)
                    .noneMatch(n -> n.matches(".*\\b(recorded|done)\\b.*") && !n.contains("not done"));
            s.restart("boot-1", 3_000);
            assertThat(s.batch("a")).as(ask + " at " + place).isEqualTo(stood);
            s.paper.mood(Paper.Mood.KEEPING);
            s.tick();
            boolean water = stood.stage().hasWater();
            assertThat(water && s.on("a.air-pause")).as("no separation outlives a restart").isFalse();
            assertThat(s.on("a.heat")).as("nothing is energised at once").isFalse();
        }
    }
}

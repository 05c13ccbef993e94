package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.conetender.core.alarm.Bell.cause;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.conetender.core.alarm.Alarms.Cause;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Fifty faults at once do not ring fifty times, and none of them is lost. */
@Tag("slow")
class StormTest {

    private static final int FAULTS = 50;

    private final Bell bell = new Bell();

    private static List<Cause> faults(Random r) {
        List<Cause> all = new ArrayList<>();
        for (AlarmKind k : AlarmKind.values()) {
            for (String cone : k.siteWide() ? List.of("") : List.of("a", "b", "c")) {
                all.add(cause(cone, k));
            }
        }
        Collections.shuffle(all, r);
        return all.subList(0, FAULTS);
    }

    static long[] seeds() {
        return new Random(1).longs(60).toArray();
    }

    /** Fifty faults that come within a minute, and a person who answers what is dangerous. */
    @ParameterizedTest
    @MethodSource("seeds")
    void fiftyFaultsAreThreeMessagesAndEveryFirstCauseIsNamedAndListed(long seed) {
        List<Cause> all = storm(new Random(seed), true);
        second(all, true, 540);
        assertThat(bell.messages.size()).isBetween(1, 3);
        for (Alarm a : bell.alarms.raised()) {
            assertThat(a.kind().dangerous() && !named().contains(a.key()) && lasted(a, 150))
                    .as(a.key() + " was swallowed").isFalse();
        }
        second(all, true, 700);
        assertThat(bell.alarms.raised()).extracting(Alarm::key)
                .containsExactlyInAnyOrderElementsOf(all.stream().map(Cause::key).toList());
        assertThat(bell.alarms.raised()).filteredOn(a -> !a.follows()).extracting(Alarm::key)
                .as("first causes").isSubsetOf(named());
    }

    /** Who does not answer is called again for want of air, every three minutes, and for nothing else. */
    @ParameterizedTest
    @MethodSource("seeds")
    void unansweredItIsNoMoreThanThatAndTheRepetitionsOfWhatSuffocates(long seed) {
        List<Cause> all = storm(new Random(seed), false);
        second(all, false, 540);
        long again = bell.messages.stream().filter(m -> m.alarms().stream()
                .anyMatch(a -> a.kind().dangerous() && a.told().times() > 1)).count();
        assertThat(bell.messages.size() - again).isBetween(1L, 3L);
        assertThat(again).as("two that suffocate, out of step").isLessThanOrEqualTo(8);
    }

    private List<Cause> storm(Random r, boolean answered) {
        List<Cause> all = faults(r);
        List<Cause> there = new ArrayList<>();
        for (int s = 0; s < 60; s++) {
            there.addAll(all.subList(FAULTS * s / 60, FAULTS * (s + 1) / 60));
            second(List.copyOf(there), answered, 1);
        }
        return all;
    }

    private void second(List<Cause> causes, boolean answered, int times) {
        for (int i = 0; i < times; i++) {
            bell.pass(1, causes);
            bell.alarms.raised().stream().filter(a -> answered && a.kind().dangerous() && !a.acknowledged()
                    && a.told().times() > 0).forEach(a -> bell.acknowledge(a.cone(), a.kind()));
        }
    }

    /** All that any message named. */
    private Set<String> named() {
        Set<String> out = new HashSet<>();
        for (Message m : bell.messages) {
            for (Alarm a : m.alarms()) {
                out.add(a.key());
                out.addAll(a.told().with());
            }
        }
        return out;
    }

    private boolean lasted(Alarm a, int s) {
        return bell.nowMs() - a.course().since().monoMs() > s * 1_000L;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void allInOneSecondIsOneMessageForWhatHasNoDelay(long seed) {
        List<Cause> all = faults(new Random(seed)).stream().filter(c -> c.kind().onDelayMs() == 0).toList();
        bell.pass(1, all);
        assertThat(bell.messages).hasSize(1);
        Set<String> said = new HashSet<>();
        bell.messages.getFirst().alarms().forEach(a -> {
            said.add(a.key());
            said.addAll(a.told().with());
        });
        assertThat(said).containsAll(all.stream().filter(c -> c.kind().dangerous()).map(Cause::key).toList());
    }
}

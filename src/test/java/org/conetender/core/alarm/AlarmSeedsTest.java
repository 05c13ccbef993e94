package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.conetender.core.alarm.Alarms.Cause;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Seeded: whatever comes, goes, is acknowledged and put on the shelf in three cones, the list is complete, no
 * danger is told late, nothing is told without a reason, and the telephone keeps quiet in between.
 */
@Tag("slow")
class AlarmSeedsTest {

    private static final List<String> CONES = List.of("a", "b", "c");

    /** Those that only an acknowledgement of their own would end, which nothing here takes up. */
    private static final Set<AlarmKind> LOCKS = Set.of(AlarmKind.NO_EFFECT, AlarmKind.PROBE_FROZEN,
            AlarmKind.SWITCH_STUCK);

    private static final List<Cause> ALL = all();
    private static final Map<String, AlarmKind> KINDS = ALL.stream()
            .collect(Collectors.toMap(Cause::key, Cause::kind));

    private final Map<String, Long> causedSince = new HashMap<>();
    private final Map<String, Long> goneSince = new HashMap<>();
    private final Map<String, Long> raisedAt = new TreeMap<>();
    private final Map<String, Long> acknowledgedAt = new HashMap<>();
    private final Map<String, Long> toldAt = new HashMap<>();
    /** Since when nothing but the gate keeps it from being told. */
    private final Map<String, Long> waitsSince = new HashMap<>();
    private final Map<String, Long> shelves = new HashMap<>();
    private final Deque<Long> dull = new ArrayDeque<>();
    private Alarms alarms = Alarms.NONE;
    private long told;
    private long lastMessage = -1_000;
    private String seed;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void everyTellingHasItsReasonAndEveryIncidentItsTelling(long number) {
        seed = "seed " + number;
        Random r = new Random(number);
        Map<String, Cause> wrong = new TreeMap<>();
        for (long s = 0; s < 10_000; s++) {
            // Some seeds are a calm house, others a storm that does not end.
            int calm = number % 2 == 0 ? 20_000 : 600;
            for (Cause c : ALL) {
                if (r.nextInt(c.kind() == AlarmKind.DRY ? 40 : wrong.containsKey(c.key()) ? 600 : calm) == 0
                        && wrong.remove(c.key()) == null) {
                    wrong.put(c.key(), c);
                }
            }
            if (r.nextInt(400) == 0 && !alarms.raised().isEmpty()) {
                acknowledge(alarms.raised().get(r.nextInt(alarms.raised().size())), s);
            }
            Cause some = ALL.get(r.nextInt(ALL.size()));
            if (r.nextInt(2_000) == 0 && !some.kind().dangerous()) {
                shelves.put(some.key(), (s + r.nextInt(3_600)) * 1_000);
            }
            second(List.copyOf(wrong.values()), s);
        }
        assertThat(told).as(seed).isGreaterThan(number % 2 == 0 ? 15 : 100);
    }


    private static List<Cause> all() {
        List<Cause> out = new ArrayList<>();
        for (AlarmKind k : AlarmKind.values()) {
            for (String cone : k.siteWide() ? List.of("") : CONES) {
                out.add(new Cause(cone, k, "something", LOCKS.contains(k) ? Alarm.Held.ONLY_BY_LATCH
                        : Alarm.Held.BY_CAUSE));
            }
        }
        return out;
    }

    private void acknowledge(Alarm a, long s) {
        Alarms before = alarms;
        alarms = alarms.acknowledged(a.cone(), a.kind().id(), s * 1_000);
        alarms.raised().stream().filter(Alarm::acknowledged)
                .filter(x -> !before.standing().get(x.key()).equals(x))
                .peek(x -> assertThat(x.key().equals(a.key()) || !LOCKS.contains(x.kind())
                        || before.standing().get(x.key()).acknowledged())
                        .as(seed + ": " + x.key() + " counts as seen with " + a.key()).isTrue())
                .forEach(x -> acknowledgedAt.put(x.key(), s));
        assertThat(acknowledgedAt).as(seed).containsKey(a.key());
    }

    private void second(List<Cause> causes, long s) {
        TreeSet<String> now = new TreeSet<>();
        causes.forEach(c -> now.add(c.key()));
        shelves.values().removeIf(until -> until <= s * 1_000);
        Alarms.Turn turn = alarms.shelving(shelves).after(causes, new Moment("boot-1", s * 1_000, 0, true));
        now.forEach(k -> causedSince.putIfAbsent(k, s));
        now.forEach(k -> beginsAgain(k, goneSince.remove(k), s));
        turn.raised().forEach(a -> raises(a, s));
        turn.tell().forEach(a -> tells(a, now, s));
        causedSince.keySet().stream().filter(k -> !now.contains(k)).forEach(k -> goneSince.putIfAbsent(k, s));
        turn.over().forEach(a -> ends(a, s));
        causedSince.keySet().removeIf(k -> !now.contains(k) && !raisedAt.containsKey(k));
        goneSince.keySet().retainAll(causedSince.keySet());
        alarms = turn.next();
        theGateKeepsThemApart(turn.messages(), s);
        theListIsComplete(now, s);
        nobodyIsForgotten(now, s);
    }

    /** What stands only because nobody has seen it yet is a new incident when its cause comes back. */
    private void beginsAgain(String key, Long gone, long s) {
        if (gone != null && (s - gone) * 1_000 >= Alarms.OFF_DELAY_MS && raisedAt.remove(key) != null) {
            causedSince.put(key, s);
            acknowledgedAt.remove(key);
            toldAt.remove(key);
        }
    }

    private void raises(Alarm a, long s) {
        assertThat(raisedAt.put(a.key(), s)).as(seed + ": " + a.key() + " raised twice at " + s).isNull();
        assertThat((s - causedSince.get(a.key())) * 1_000).as(a.key()).isEqualTo(a.kind().onDelayMs());
    }

    private void tells(Alarm a, TreeSet<String> now, long s) {
        String at = seed + ": " + a.key() + " told at " + s;
        if (a.told().atMs() != s * 1_000) {
            assertThat(a.told().way()).as(at + " as one that waits yet").isEqualTo(Alarm.Way.AMONG);
            return;
        }
        told++;
        assertThat(raisedAt).as(at + " before it stood").containsKey(a.key());
        assertThat(shelves).as(at + " from the shelf").doesNotContainKey(a.key());
        assertThat(now.contains(a.key()) || a.kind().standsUntilSeen()).as(at + " without a cause").isTrue();
        assertThat(a.follows() && !a.kind().dangerous()).as(at + " though it follows").isFalse();
        Long seen = acknowledgedAt.remove(a.key());
        if (seen != null) {
            // A lock that is still there after that was not opened by the acknowledgement.
            assertThat((s - seen) * 1_000).as(at).isGreaterThanOrEqualTo(LOCKS.contains(a.kind())
                    ? Alarms.UNKEPT_MS : Again.quietMs(a.kind()));
        }
        toldAt.put(a.key(), s);
    }

    private void ends(Alarm a, long s) {
        assertThat(raisedAt.remove(a.key())).as(seed + ": " + a.key() + " ended twice at " + s).isNotNull();
        // What stands under another name is not over, and does not wait to be.
        boolean renamed = a.kind().renamed().filter(k -> raisedAt.containsKey(Alarm.key(a.cone(), k)))
                .isPresent();
        // Nor does a lock flutter that somebody has opened.
        boolean opened = LOCKS.contains(a.kind()) && acknowledgedAt.containsKey(a.key());
        assertThat((s - goneSince.get(a.key())) * 1_000).as(seed + ": " + a.key() + " ended early at " + s)
                .isGreaterThanOrEqualTo(renamed || opened ? 0 : Alarms.OFF_DELAY_MS);
        acknowledgedAt.remove(a.key());
        toldAt.remove(a.key());
        causedSince.remove(a.key());
    }

    private void theGateKeepsThemApart(List<Message> messages, long s) {
        if (messages.isEmpty()) {
            return;
        }
        boolean danger = messages.stream().flatMap(m -> m.alarms().stream())
                .anyMatch(a -> a.kind().dangerous());
        assertThat(s - lastMessage).as(seed + ": a message at " + s).isGreaterThanOrEqualTo(60);
        assertThat(messages.size()).as(seed + " at " + s).isLessThanOrEqualTo(2);
        lastMessage = s;
        dull.removeIf(t -> s - t >= 600);
        for (Message m : messages) {
            if (!danger) {
                dull.add(s);
            }
        }
        assertThat(dull.size()).as(seed + ": messages without danger within 10 min at " + s)
                .isLessThanOrEqualTo(2);
    }

    private void theListIsComplete(TreeSet<String> now, long s) {
        for (String key : now) {
            boolean lasted = (s - causedSince.get(key)) * 1_000 >= kind(key).onDelayMs();
            assertThat(raisedAt.containsKey(key)).as(seed + ": " + key + " stands at " + s).isEqualTo(lasted);
        }
        if (s % 60 == 0) {
            assertThat(alarms.raised()).as(seed + " at " + s).extracting(Alarm::key)
                    .containsExactlyInAnyOrderElementsOf(raisedAt.keySet());
        }
    }

    private static AlarmKind kind(String key) {
        return KINDS.get(key);
    }

    /** A danger is told within the minute after it stands, everything else within ten. */
    private void nobodyIsForgotten(TreeSet<String> now, long s) {
        for (Alarm a : alarms.raised()) {
            assertThat(LOCKS.contains(a.kind()) && a.aside().follows().map(alarms.standing()::get)
                    .filter(Alarm::acknowledged).isPresent()).as(seed + ": " + a.key()
                    + " waits for a message that never comes at " + s).isFalse();
            boolean waits = now.contains(a.key()) && !a.acknowledged() && !a.shelved()
                    && a.told().times() == 0 && (!a.follows() || a.kind().dangerous());
            if (!waits) {
                waitsSince.remove(a.key());
                boolean silent = now.contains(a.key()) && !a.acknowledged() && !a.shelved() && !a.follows()
                        && (s * 1_000 - a.told().atMs()) > Again.afterMs(a.kind(), 9) + Gate.WITHIN_MS;
                assertThat(silent).as(seed + ": " + a.key() + " was forgotten at " + s).isFalse();
                continue;
            }
            long since = waitsSince.computeIfAbsent(a.key(), _ -> s);
            assertThat((s - since) * 1_000).as(seed + ": nobody was told of " + a.key() + " at " + s)
                    .isLessThanOrEqualTo(a.kind().dangerous() ? Gate.APART_MS : Gate.WITHIN_MS);
        }
        waitsSince.keySet().retainAll(alarms.standing().keySet());
    }
}

package org.conetender.core.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.conetender.core.alarm.Alarms.Cause;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Seeded: whatever comes, goes and is acknowledged, a person is told of all that matters and not twice. */
class AlarmSeedsTest {

    private final Map<String, Long> causedSince = new HashMap<>();
    private final Map<String, Long> goneSince = new HashMap<>();
    private final Map<String, Long> toldAt = new HashMap<>();
    private final Map<String, Long> acknowledgedAt = new HashMap<>();
    private final Set<String> raised = new HashSet<>();
    private Alarms alarms = Alarms.NONE;
    private String seed;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void everyTellingHasItsReasonAndEveryIncidentItsTelling(long number) {
        seed = "seed " + number;
        Random r = new Random(number);
        Set<AlarmKind> wrong = new HashSet<>();
        for (long s = 0; s < 20_000; s++) {
            // A cause comes or goes about every five minutes; one that flutters does so every few seconds.
            for (AlarmKind k : AlarmKind.values()) {
                if (r.nextInt(k == AlarmKind.DRY ? 20 : 300) == 0 && !wrong.remove(k)) {
                    wrong.add(k);
                }
            }
            if (r.nextInt(400) == 0 && !alarms.raised().isEmpty()) {
                acknowledge(alarms.raised().get(r.nextInt(alarms.raised().size())), s);
            }
            second(causes(wrong), s);
        }
        assertThat(toldAt).as(seed).hasSizeGreaterThan(15);
    }

    private static List<Cause> causes(Set<AlarmKind> wrong) {
        List<Cause> out = new ArrayList<>();
        wrong.forEach(k -> out.add(new Cause(k.siteWide() ? "" : "a", k, "something", Alarm.Held.BY_CAUSE)));
        return out;
    }

    private void acknowledge(Alarm a, long s) {
        alarms = alarms.acknowledged(a.cone(), a.kind().id(), s * 1_000);
        acknowledgedAt.put(a.key(), s);
    }

    private void second(List<Cause> causes, long s) {
        Set<String> now = new HashSet<>();
        causes.forEach(c -> now.add(Alarm.key(c.cone(), c.kind())));
        Alarms.Turn turn = alarms.after(causes, new Moment("boot-1", s * 1_000, 0, true));
        now.forEach(k -> causedSince.putIfAbsent(k, s));
        now.forEach(k -> beginsAgain(k, goneSince.remove(k), s));
        turn.tell().forEach(a -> tells(a, now, s));
        causedSince.keySet().stream().filter(k -> !now.contains(k)).forEach(k -> goneSince.putIfAbsent(k, s));
        turn.over().forEach(a -> ends(a, s));
        causedSince.keySet().removeIf(k -> !now.contains(k) && !raised.contains(k));
        alarms = turn.next();
        everyCauseThatLastedIsKnown(causes, s);
        if (s % 60 == 0) {
            assertThat(alarms.raised()).as(seed + " at " + s).extracting(Alarm::key)
                    .containsExactlyInAnyOrderElementsOf(raised);
        }
    }

    /** What stands only because nobody has seen it yet is a new incident when its cause comes back. */
    private void beginsAgain(String key, Long gone, long s) {
        if (gone != null && (s - gone) * 1_000 >= Alarms.OFF_DELAY_MS && raised.remove(key)) {
            causedSince.put(key, s);
            acknowledgedAt.remove(key);
        }
    }

    private void tells(Alarm a, Set<String> now, long s) {
        String at = seed + ": " + a.key() + " told at " + s;
        assertThat(now).as(at + " though its cause is not there").contains(a.key());
        if (raised.add(a.key())) {
            assertThat((s - causedSince.get(a.key())) * 1_000).as(at + " before its delay")
                    .isGreaterThanOrEqualTo(a.kind().onDelayMs());
        } else {
            Long seen = acknowledgedAt.remove(a.key());
            long since = seen == null ? s - toldAt.get(a.key()) : s - seen;
            assertThat(since * 1_000).as(at + " again too soon").isGreaterThanOrEqualTo(
                    seen == null ? a.kind().repeatAfterMs(1) : a.kind().quietMs());
        }
        toldAt.put(a.key(), s);
    }

    private void ends(Alarm a, long s) {
        assertThat(raised.remove(a.key())).as(seed + ": " + a.key() + " ended twice at " + s).isTrue();
        assertThat((s - goneSince.get(a.key())) * 1_000).as(seed + ": " + a.key() + " ended early at " + s)
                .isGreaterThanOrEqualTo(Alarms.OFF_DELAY_MS);
        acknowledgedAt.remove(a.key());
        causedSince.remove(a.key());
    }

    /** One that lasted its delay without a break stands, and one that is not acknowledged was told lately. */
    private void everyCauseThatLastedIsKnown(List<Cause> causes, long s) {
        for (Cause c : causes) {
            String key = Alarm.key(c.cone(), c.kind());
            boolean lasted = (s - causedSince.get(key)) * 1_000 >= c.kind().onDelayMs();
            if (lasted && !raised.contains(key)) {
                fail(seed + ": nobody was told of " + key + " at " + s);
            }
            boolean waits = raised.contains(key) && !acknowledgedAt.containsKey(key);
            if (waits && (s - toldAt.get(key)) * 1_000 > c.kind().repeatAfterMs(9) + 60_000) {
                fail(seed + ": " + key + " was forgotten at " + s);
            }
        }
    }
}

package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.guard.Power;
import org.conetender.core.guard.Suffocation;
import org.conetender.core.guard.Unwritten;
import org.conetender.core.guard.View;
import org.junit.jupiter.api.Test;

/** What a disk that is full or hangs does to cones that are being harvested. */
class DiskTest {

    private static Rig run(Theme theme, long seed, List<Guard> guards) {
        return theme.run(new Rig(Larkmoor.settings(), seed, Bench.larkmoor(), guards));
    }

    @Test
    void aDiskThatFillsWhilePeopleDrawKeepsTheHeatOffButNotTheAir() {
        Rig r = run(Theme.DISK_FILLS_WHILE_DRAWING, 3, Guards.ALL);
        assertThat(r.invariants().broken()).isEmpty();
        assertThat(r.state().book().cone("a").batch().marks().harvests()).isEqualTo(1);
        assertThat(r.coverage().alarms()).contains("record");
    }

    @Test
    void withoutItsGuardHeatWouldRestOnWhatNoRecordKnows() {
        List<Guard> others = Guards.ALL.stream().filter(g -> !(g instanceof Unwritten)).toList();
        Rig r = run(Theme.DISK_FILLS_WHILE_DRAWING, 3, others);
        assertThat(r.invariants().broken()).extracting(Invariants.Violation::rule).contains("unwritten-heat");
    }

    /** An acknowledgement that no record could take counts in this life, also once one is kept again. */
    @Test
    void whoSawItWhileNothingWasKeptHasSeenIt() {
        Rig r = seenWithoutARecord();
        assertThat(standing(r)).doesNotContain("air-back");
        r.disk().mood(SimStore.Mood.HEALTHY);
        r.run(120);
        assertThat(r.invariants().broken()).isEmpty();
        assertThat(standing(r)).doesNotContain("air-back");
    }

    @Test
    void theNextLifeTellsAgainWhatWasSeenWithoutARecord() {
        Rig r = seenWithoutARecord();
        r.kill();
        r.disk().mood(SimStore.Mood.HEALTHY);
        r.run(120);
        assertThat(r.invariants().broken()).isEmpty();
        assertThat(standing(r)).contains("air-back");
    }

    /** A disk that fails excuses nobody who was never told. */
    @Test
    void whatIsNeverToldIsFoundOnceThereIsARecordAgain() {
        List<Guard> mute = Guards.ALL.stream().map(g -> g instanceof Suffocation ? silent(g) : g).toList();
        Rig r = new Rig(Larkmoor.settings(), 3, Bench.larkmoor(), mute);
        for (long s = 0; s < 6_000 && r.invariants().broken().isEmpty(); s++) {
            nursed(r, s);
            if (s == 4_000 || s == 5_200) {
                r.disk().mood(s == 4_000 ? SimStore.Mood.FULL : SimStore.Mood.HEALTHY);
            }
        }
        assertThat(r.invariants().broken()).extracting(Invariants.Violation::rule).contains("air-back-told");
    }

    /** The same guard, but people are told nothing. */
    private static Guard silent(Guard real) {
        return new Guard() {
            @Override
            public String id() {
                return real.id();
            }

            @Override
            public List<Finding> look(View v) {
                return real.look(v).stream().map(f -> Finding.veto(real.id(), f.what(),
                        f.denies().toArray(Power[]::new))).toList();
            }
        };
    }

    private static void nursed(Rig r, long s) {
        Scripts.nursed(r, s);
        Scripts.hatchedAndSettled(r, s, "a");
        r.second();
    }

    private static Rig seenWithoutARecord() {
        Rig r = new Rig(Larkmoor.settings(), 3, Bench.larkmoor(), Guards.ALL);
        for (long s = 0; s < 7_000 && !r.coverage().alarms().contains("air-back"); s++) {
            nursed(r, s);
        }
        r.run(120).disk().mood(SimStore.Mood.FULL);
        r.run(120);
        assertThat(standing(r)).contains("air-back", "record");
        r.set("a", "hand/acknowledge", "air-back");
        return r.run(120);
    }

    private static List<String> standing(Rig r) {
        return r.state().live().alarms().raised().stream().map(a -> a.kind().id()).toList();
    }

    @Test
    void aDiskThatHangsIsToldAndNobodySuffocates() {
        Rig r = run(Theme.DISK_HANGS, 3, Guards.ALL);
        assertThat(r.invariants().broken()).isEmpty();
        assertThat(r.coverage().alarms()).contains("record", "air-back");
        assertThat(r.state().book().cone("c").batch().stage().word()).isEqualTo("drained");
    }
}

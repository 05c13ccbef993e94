package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.batch.Stage;
import org.conetender.core.guard.Guards;
import org.conetender.core.settings.Settings;
import org.junit.jupiter.api.Test;

/** The whole daemon on simulated water: what it counts of a relay beside what the relay really did. */
class RelayTest {

    private static final int HOUR_S = 3_600;

    private static Rig filled(Settings settings, long seed) {
        Rig r = new Rig(settings, seed, Bench.larkmoor(), Guards.ALL);
        for (int s = 0; s <= 30; s++) {
            Scripts.nursed(r, s);
            r.second();
        }
        return r;
    }

    private static Rig hours(Rig r, double hours) {
        r.run((long) (hours * HOUR_S));
        assertThat(r.invariants().broken()).isEmpty();
        return r;
    }

    /** What the contact did, whoever counts. */
    private static long done(Rig r, String cone) {
        return r.world().devices().switches().get(cone + ".heat").cycles();
    }

    private static String shown(Rig r, String cone, String property) {
        return r.world().broker().payload("homie/5/larkmoor-" + cone + "/" + property);
    }

    private static long counted(Rig r, String cone) {
        return Long.parseLong(shown(r, cone, "heat/relay-closings"));
    }

    @Test
    void theCountIsTheContactsOwnAndAtAKillItIsGuessedWhatWasNotWritten() {
        Rig r = hours(filled(Larkmoor.mixed(), 3), 9);
        assertThat(done(r, "c")).as("enough to tell").isGreaterThan(20);
        assertThat(counted(r, "c")).isEqualTo(done(r, "c"));
        assertThat(shown(r, "a", "heat/relay-closings")).as("a solid-state switch").isNull();
        r.kill();
        hours(r, 0.2);
        assertThat(counted(r, "c")).isBetween(done(r, "c") - 25, done(r, "c") + 25);
        hours(r, 7);
        r.kill();
        hours(r, 0.2);
        assertThat(counted(r, "c")).isBetween(done(r, "c") - 50, done(r, "c") + 50)
                .isGreaterThanOrEqualTo(75);
    }

    @Test
    void whenItIsWornAPersonIsToldAndTheNewOneIsCountedFromTheBeginning() {
        Rig r = filled(Larkmoor.mixed(), 4);
        assertThat(shown(r, "c", "heat/relay-days-left")).as("100 closings at 150 a day").isEqualTo("1");
        for (int h = 0; h < 30 && !r.coverage().alarms().contains("relay-worn"); h++) {
            hours(r, 1);
        }
        assertThat(done(r, "c")).isGreaterThanOrEqualTo(100);
        assertThat(shown(r, "c", "$alert/relay-worn")).contains("has closed 100 times",
                "mains unplugged; then report 'relay-exchanged'");
        assertThat(Double.parseDouble(shown(r, "c", "heat/relay-used"))).isGreaterThanOrEqualTo(100);
        assertThat(shown(r, "c", "heat/relay-days-left")).isEqualTo("0");
        Stage before = r.state().book().cone("c").batch().stage();
        r.say("c", "relay-exchanged");
        hours(r, 0.1);
        assertThat(shown(r, "c", "hand/answer")).contains("'relay-exchanged' is recorded",
                "counted from the beginning");
        assertThat(counted(r, "c")).isLessThan(5);
        assertThat(shown(r, "c", "$alert/relay-worn")).isNull();
        assertThat(r.state().book().cone("c").batch().stage()).isEqualTo(before);
        r.kill();
        hours(r, 0.2);
        assertThat(counted(r, "c")).as("and after a kill, for which half a step is added")
                .isBetween(25L, 25L + 8);
    }

    /** Three relays under a limit of watts that serves two: turns, proofs and doubts cost cycles too. */
    @Test
    void eightHoursOfThreeConesUnderALimitKeepsTheirBudgets() {
        Rig r = hours(filled(Larkmoor.settings(), 5), 3);
        List<String> cones = List.of("a", "b", "c");
        List<Long> before = cones.stream().map(c -> done(r, c)).toList();
        hours(r, 8);
        for (int i = 0; i < cones.size(); i++) {
            assertThat(done(r, cones.get(i)) - before.get(i)).as("%s, of 50 in eight hours", cones.get(i))
                    .isBetween(13L, 51L);
        }
    }
}

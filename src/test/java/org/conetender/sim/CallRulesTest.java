package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.guard.Guards;
import org.conetender.core.unit.Moment;
import org.conetender.port.Transport;
import org.junit.jupiter.api.Test;

/** The rules about people who are called. */
class CallRulesTest {

    private static final Moment NOW = new Moment("boot", 0, 0, true);

    private static Alarm alarm(AlarmKind kind, int times, Alarm.Aside aside) {
        return new Alarm("a", kind, "planted", "planted", Alarm.Held.BY_CAUSE,
                new Alarm.Course(NOW, OptionalLong.empty(), true), new Alarm.Told(times,
                OptionalLong.empty(), 0, OptionalLong.empty(), List.of(), Alarm.Way.ALONE, false, false),
                aside);
    }

    private static Alarm.Aside aside(boolean follows, boolean shelved) {
        return new Alarm.Aside(follows ? Optional.of("/record") : Optional.empty(),
                shelved ? OptionalLong.of(1) : OptionalLong.empty());
    }

    @Test
    void whatIsNeverSaidIsUntoldUnlessItFollowsOrIsShelved() {
        assertThat(untold(AlarmKind.WELDED, 0, aside(false, false))).isTrue();
        assertThat(untold(AlarmKind.WELDED, 1, aside(false, false))).isFalse();
        assertThat(untold(AlarmKind.ONE_PROBE, 0, aside(true, false))).isFalse();
        assertThat(untold(AlarmKind.AIR_FAILED_ANIMALS, 0, aside(true, false)))
                .as("a danger is never left to another's message").isTrue();
        assertThat(untold(AlarmKind.ONE_PROBE, 0, aside(false, true))).isFalse();
        assertThat(untold(AlarmKind.WELDED, 0, aside(false, true))).as("nor put on the shelf").isTrue();
    }

    private static boolean untold(AlarmKind kind, int times, Alarm.Aside aside) {
        return CallRules.untold(alarm(kind, times, aside), among(alarm(AlarmKind.RECORD, 1,
                aside(false, false))));
    }

    private static Alarms among(Alarm first) {
        return new Alarms(Map.of("/record", first), Alarms.NONE.seen(), Map.of(), Alarms.NONE.calls());
    }

    /** Who wants to hear nothing of an alarm is told nothing that it explains: so it explains nothing. */
    @Test
    void whatFollowsFromAnAlarmThatIsOverOrOnTheShelfIsUntold() {
        Alarm follower = alarm(AlarmKind.ONE_PROBE, 0, aside(true, false));
        assertThat(CallRules.untold(follower, Alarms.NONE)).isTrue();
        assertThat(CallRules.untold(follower, among(alarm(AlarmKind.RECORD, 1, aside(false, true)))))
                .isTrue();
    }

    /** An alert comes back to the broker after its alarm is over, and nobody takes it away. */
    @Test
    void anAlertThatStaysAtTheBrokerIsSeen() {
        Rig rig = new Rig(Larkmoor.settings(), 2, Bench.larkmoor(), Guards.ALL);
        rig.run(60);
        rig.world().broker().inject(new Transport.Incoming("homie/5/larkmoor-a/$alert/probe", "planted", true,
                Map.of()));
        rig.run(300);
        assertThat(rig.invariants().broken().stream().map(Invariants.Violation::rule).distinct())
                .containsExactly("alert-left");
    }

    /** A client deletes an alert that the daemon left at the broker, and goes on doing so. */
    @Test
    void anAlertThatIsNoMoreAtTheBrokerIsSeen() {
        assertThat(broken(false)).isEmpty();
        assertThat(broken(true)).containsExactly("alert-missing");
    }

    private static List<String> broken(boolean deletes) {
        Rig rig = new Rig(Larkmoor.settings(), 2, Bench.larkmoor(), Guards.ALL);
        rig.world().cone("a").fill(2, 24, 25);
        rig.world().cone("a").air().valve(true);
        rig.run(5);
        rig.say("a", "filled");
        rig.run(300);
        rig.world().apply(new Fault.OfProbe("a", 0, SimProbe.Fault.ABSENT,
                new Fault.When(rig.world().clock().elapsedMs(), 100_000_000)));
        rig.world().apply(new Fault.OfProbe("a", 1, SimProbe.Fault.ABSENT,
                new Fault.When(rig.world().clock().elapsedMs(), 100_000_000)));
        for (int i = 0; i < 1_200 && rig.invariants().broken().isEmpty(); i++) {
            rig.second();
            if (deletes) {
                List.copyOf(rig.world().broker().under("homie/5/larkmoor-a/$alert/").keySet())
                        .forEach(t -> rig.world().broker().inject(new Transport.Incoming(t, "", true,
                                Map.of())));
            }
        }
        return rig.invariants().broken().stream().map(Invariants.Violation::rule).distinct().toList();
    }
}

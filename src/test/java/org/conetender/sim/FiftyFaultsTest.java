package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.conetender.core.Result;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.guard.Guards;
import org.conetender.core.image.Ask;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A storm through the whole daemon: eight cones with nauplii in them, and within a minute fifty things fail
 * that are fifty devices of the simulated world, in an order that the seed draws.
 */
class FiftyFaultsTest {

    private static final int HOUR_MS = 3_600_000;
    private static final List<String> CONES = List.of("a", "b", "c", "d", "e", "f", "g", "h");
    /** What each of a cone's six faults comes to. */
    private static final List<String> EACH = List.of("probe", "heater-stuck", "air-stuck", "output-stuck",
            "dry", "air-failed-animals");

    private final Rig rig = new Rig(eight(), 1, Bench.larkmoor(), Guards.ALL);
    private final List<String> calls = new ArrayList<>();

    private static Settings eight() {
        Settings s = Larkmoor.settings();
        Cone a = s.cones().getFirst();
        return new Settings(s.site(), CONES.stream().map(id -> {
            Cone.Fittings f = a.fittings();
            Cone.Probes probe = new Cone.Probes(List.of("28-00000a00000" + (CONES.indexOf(id) + 1)), true);
            return new Cone(id, new Cone.Fittings(probe, f.heat(), f.air(), f.lights(), f.button(),
                    f.vessel()), a.limits(), a.timing(), a.usual());
        }).toList());
    }

    /** Forty-eight in the cones, the room's probe, and the disk. */
    private List<Runnable> faults() {
        Fault.When now = new Fault.When(Scripts.now(rig), HOUR_MS);
        List<Runnable> all = new ArrayList<>(List.of(() -> rig.disk().mood(SimStore.Mood.FULL),
                () -> rig.world().apply(new Fault.OfRoomProbe(SimProbe.Fault.ABSENT, now))));
        for (String c : CONES) {
            Stream.of(new Fault.OfProbe(c, 0, SimProbe.Fault.ABSENT, now),
                    new Fault.OfSwitch(c, Fixtures.HEAT, SimSwitch.Fault.REFUSING, now),
                    new Fault.OfSwitch(c, Fixtures.AIR_PAUSE, SimSwitch.Fault.REFUSING, now),
                    new Fault.OfSwitch(c, Fixtures.HARVEST, SimSwitch.Fault.REFUSING, now),
                    new Fault.OfContact(c, Fixtures.LEVEL, SimContact.Fault.STUCK_OPEN, now),
                    new Fault.OfAir(c, Air.Fault.HOSE_OFF, now))
                    .<Runnable>map(f -> () -> rig.world().apply(f)).forEach(all::add);
        }
        return all;
    }

    /** Whoever is called acknowledges what is dangerous. */
    private void seconds(int n) {
        for (int i = 0; i < n; i++) {
            rig.second();
            assertThat(rig.invariants().broken()).isEmpty();
            raised().filter(a -> a.kind().dangerous() && !a.acknowledged() && a.told().times() > 0)
                    .forEach(a -> rig.set(a.cone(), "hand/acknowledge", a.kind().id()));
        }
    }

    private Stream<Alarm> raised() {
        return rig.state().live().alarms().raised().stream();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void fiftyFaultsAreThreeMessagesAndTheListHasEachOfThemAndEveryFirstCause(long seed) {
        for (int s = 0; s < 900; s++) {
            Scripts.nursed(rig, s);
            rig.second();
        }
        CONES.forEach(c -> rig.say(c, "first-seen"));
        seconds(60);
        assertThat(raised()).as("before it").isEmpty();
        List<Runnable> all = faults();
        assertThat(all).hasSize(50);
        Collections.shuffle(all, new Random(seed));
        rig.world().broker().listen(m -> {
            if (m.topic().contains("/$alert/") && !m.payload().isEmpty()) {
                calls.add(m.topic() + ": " + m.payload());
            }
        });
        for (int s = 0; s < 60; s++) {
            all.subList(50 * s / 60, 50 * (s + 1) / 60).forEach(Runnable::run);
            seconds(1);
        }
        seconds(540);
        assertThat(calls).as("messages in ten minutes").hasSizeBetween(1, 3);
        seconds(120);
        rig.socket().tell("site alarms");
        seconds(1);
        assertThat(rig.process().control().replies()).filteredOn(r -> r.request().ask() instanceof Ask.Alarms)
                .extracting(Result.Reply::sentence).singleElement().satisfies(this::listsAll);
    }

    private void listsAll(String list) {
        for (String c : CONES) {
            EACH.forEach(id -> assertThat(list).contains("Cone " + c + ", " + id + ": "));
        }
        assertThat(list).contains("Larkmoor Fry Room, record: ");
        String called = String.join("\n", calls);
        assertThat(raised().filter(a -> !a.follows())).isNotEmpty().allSatisfy(a -> {
            assertThat(list).as("what to do about it").contains(a.kind().todo());
            assertThat(a.told().times()).as("called of " + a.key()).isPositive();
            assertThat(called).contains(a.kind().id());
        });
    }
}

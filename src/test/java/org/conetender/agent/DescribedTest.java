package org.conetender.agent;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.conetender.core.Larkmoor;
import org.conetender.core.settings.Settings;
import org.conetender.core.settings.Site;
import org.conetender.homie.Homie5Checker;
import org.conetender.homie.Homie5Stream;
import org.conetender.homie.Homie5Stream.Kept;
import org.conetender.port.Transport.Incoming;
import org.conetender.port.Transport.Outgoing;
import org.conetender.sim.SimStore;
import org.junit.jupiter.api.Test;

/** What the devices are called from one configuration to the next, at a broker that remembers. */
class DescribedTest {

    private static final String ROOT = "larkmoor/$description";
    private static final Settings THREE = Larkmoor.with();

    private final HandBench bench = new HandBench().rounds(3);

    private static Settings cones(int n) {
        return new Settings(THREE.site(), THREE.cones().subList(0, n));
    }

    private static Settings named(String name) {
        Site s = THREE.site();
        return new Settings(new Site(s.id(), name, s.feeding(), s.supply(), s.roomProbe(), s.second(),
                s.saltSlows()),
                THREE.cones());
    }

    private Map<String, String> life(Settings settings) {
        bench.settings = settings;
        bench.begin();
        bench.rounds(3);
        return new TreeMap<>(bench.broker.under("homie/"));
    }

    private long version(String topic) {
        return Long.parseLong(bench.shown(topic).replaceAll(".*\"version\":(\\d+).*", "$1"));
    }

    private static List<String> wrong(Map<String, String> retained) {
        return Homie5Checker.check(retained).stream().filter(v -> !v.endsWith("has no value")).toList();
    }

    @Test
    void theVersionRisesWithEveryChangeAlsoWithOneThatIsUndone() {
        Map<String, String> before = new TreeMap<>(bench.broker.under("homie/"));
        List<Settings> lives = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            lives.addAll(List.of(cones(2), THREE, named("Fry room no. " + i), cones(1)));
        }
        for (Settings s : lives) {
            long was = version(ROOT);
            Map<String, String> after = life(s);
            assertThat(Homie5Checker.checkChange(before, after)).isEmpty();
            assertThat(version(ROOT)).isGreaterThan(was);
            before = after;
        }
    }

    /** Every word of six lives, in its order. */
    @Test
    void nothingIsEverSaidOutOfOrder() {
        for (Settings s : List.of(cones(2), THREE, named("Fry room"), cones(1), THREE)) {
            bench.set("larkmoor-a/hand/step", "started");
            bench.rounds(30);
            life(s);
        }
        assertThat(bench.heard).hasSizeGreaterThan(500);
        assertThat(Homie5Stream.check(Map.of(), bench.heard.stream().map(o -> new Homie5Stream.Said(o.topic(),
                o.payload(), o.retained() ? Kept.YES : Kept.NO)).toList())).isEmpty();
    }

    @Test
    void whatDidNotChangeKeepsItsVersion() {
        long root = version(ROOT);
        long cone = version("larkmoor-a/$description");
        life(THREE);
        assertThat(version(ROOT)).isEqualTo(root);
        life(cones(2));
        assertThat(version("larkmoor-a/$description")).isEqualTo(cone);
    }

    /** A new card: the broker holds what the lost record had counted. */
    @Test
    void aRecordBegunAnewDoesNotCountBelowTheLostOne() {
        for (int i = 0; i < 3; i++) {
            life(named("Fry room no. " + i));
            bench.clock.advance(60_000);
        }
        Map<String, String> before = new TreeMap<>(bench.broker.under("homie/"));
        bench.disk = new SimStore.Disk();
        assertThat(Homie5Checker.checkChange(before, life(THREE))).isEmpty();
    }

    @Test
    void aConeThatIsConfiguredNoLongerIsTakenBackAfterItsParentNamesItNoMore() {
        bench.set("larkmoor-c/hand/step", "started");
        bench.rounds(5);
        assertThat(bench.broker.under("homie/5/larkmoor-c/")).containsKeys("homie/5/larkmoor-c/$state",
                "homie/5/larkmoor-c/hand/answer", "homie/5/larkmoor-c/hand/step/$target");
        bench.heard.clear();
        assertThat(wrong(life(cones(2)))).isEmpty();
        assertThat(bench.broker.under("homie/5/larkmoor-c/")).isEmpty();

        List<String> order = bench.heard.stream().filter(o -> o.topic().contains("larkmoor-c/")
                || o.topic().equals("homie/5/" + ROOT) || o.topic().equals("homie/5/larkmoor/$state"))
                .map(Outgoing::topic).toList();
        // Lost with the life before, then: init, the new description, ready; and only then the child goes.
        assertThat(order).startsWith("homie/5/larkmoor/$state", "homie/5/larkmoor/$state", "homie/5/" + ROOT,
                "homie/5/larkmoor/$state", "homie/5/larkmoor-c/$state", "homie/5/larkmoor-c/$description");
        assertThat(bench.shown("larkmoor/$state")).isEqualTo("ready");
    }

    /** The broker may have been away when the cone was first missing. */
    @Test
    void itIsTakenBackAtEveryConnectionUntilItIsConfiguredAgain() {
        Map<String, String> whole = new TreeMap<>(bench.broker.under("homie/5/larkmoor-c/"));
        life(cones(2));
        whole.forEach((t, p) -> bench.broker.inject(new Incoming(t, p, true, Map.of())));
        life(cones(2));
        assertThat(bench.broker.under("homie/5/larkmoor-c/")).isEmpty();
        assertThat(wrong(life(THREE))).isEmpty();
        assertThat(bench.shown("larkmoor-c/$state")).isEqualTo("ready");
    }
}

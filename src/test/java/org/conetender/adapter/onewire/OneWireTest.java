package org.conetender.adapter.onewire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import org.conetender.adapter.onewire.BulkTrigger.Outcome;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.port.Probe;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class OneWireTest {

    private static final String A = "28-0000000000aa";
    private static final String B = "28-0000000000bb";

    @TempDir
    Path root;

    private final HandClock clock = new HandClock(0);

    @BeforeEach
    void layOutAsTheKernelDoes() throws IOException {
        probe(A, "27062\n");
        probe(B, "8125\n");
    }

    private void probe(String address, String temperature) throws IOException {
        Path folder = Files.createDirectories(root.resolve(address));
        Files.writeString(folder.resolve("temperature"), temperature);
        Files.writeString(folder.resolve("resolution"), "12\n");
        Files.writeString(folder.resolve("ext_power"), "1\n");
    }

    private void put(String address, String file, String text) throws IOException {
        Files.writeString(root.resolve(address).resolve(file), text);
    }

    private record Bench(OneWireBus bus, OneWireProbe a, OneWireProbe b) {}

    private Bench bench(HandClock clock, Outcome bulk) {
        OneWireProbe a = new OneWireProbe("a", root.resolve(A), clock.monoMs());
        OneWireProbe b = new OneWireProbe("b", root.resolve(B), clock.monoMs());
        return new Bench(new OneWireBus("test", List.of(a, b), new FakeBulk(bulk), clock), a, b);
    }

    record FakeBulk(Outcome convert) implements BulkTrigger {
        @Override
        public Optional<String> trouble() {
            return Optional.empty();
        }
    }

    private Reading reading(Probe p) {
        return p.latest(clock.monoMs()).reading();
    }

    @Test
    void aProbeHasNotAnsweredBeforeTheFirstCycleAndItsWaitingTimeGrows() {
        Bench bench = bench(clock, Outcome.NONE);
        clock.pass(1_500);
        assertThat(bench.a().latest(clock.monoMs()))
                .isEqualTo(new ProbeSample("a", new Reading.NotYet(), 1_500));
    }

    @Test
    void eachCycleReadsEveryProbeAndItsAgeCountsFromThere() {
        Bench bench = bench(clock, Outcome.NONE);
        bench.bus().cycle();
        clock.pass(700);
        assertThat(bench.a().latest(clock.monoMs()))
                .isEqualTo(new ProbeSample("a", new Reading.Value(27.062), 700));
        assertThat(bench.b().latest(clock.monoMs()))
                .isEqualTo(new ProbeSample("b", new Reading.Value(8.125), 700));
    }

    @Test
    void probesThatConvertedTogetherAreOfOneAge() {
        HandClock ticking = new HandClock(100);
        Bench bench = bench(ticking, Outcome.DONE);
        bench.bus().cycle();
        long now = ticking.monoMs();
        assertThat(bench.a().latest(now).ageMs()).isEqualTo(bench.b().latest(now).ageMs());
    }

    @Test
    void probesThatConvertOneAfterTheOtherAreOfDifferentAge() {
        HandClock ticking = new HandClock(100);
        Bench bench = bench(ticking, Outcome.NONE);
        bench.bus().cycle();
        long now = ticking.monoMs();
        assertThat(bench.a().latest(now).ageMs() - bench.b().latest(now).ageMs()).isEqualTo(100);
    }

    @Test
    void aMissingFolderIsAnAbsentProbeAndTheOthersAreStillRead() throws IOException {
        for (String f : List.of("temperature", "resolution", "ext_power")) {
            Files.delete(root.resolve(A).resolve(f));
        }
        Files.delete(root.resolve(A));
        Bench bench = bench(clock, Outcome.NONE);
        bench.bus().cycle();
        assertThat(reading(bench.a())).isEqualTo(new Reading.Absent());
        assertThat(reading(bench.b())).isEqualTo(new Reading.Value(8.125));
    }

    @Test
    void anEmptyFileIsAFaultAndTheLastTemperatureIsNotHeld() throws IOException {
        Bench bench = bench(clock, Outcome.NONE);
        bench.bus().cycle();
        put(A, "temperature", "");
        bench.bus().cycle();
        assertThat(reading(bench.a())).isInstanceOf(Reading.Faulty.class);
        put(A, "temperature", "26937\n");
        bench.bus().cycle();
        assertThat(reading(bench.a())).isEqualTo(new Reading.Value(26.937));
    }

    @Test
    void aBareZeroIsBelievedOnlyWithItsBytes() throws IOException {
        Bench bench = bench(clock, Outcome.NONE);
        put(A, "temperature", "0\n");
        bench.bus().cycle();
        assertThat(reading(bench.a())).as("no bytes to see").isInstanceOf(Reading.Faulty.class);
        put(A, "w1_slave", W1ParserTest.slaveText(new byte[8], "YES", 0));
        bench.bus().cycle();
        assertThat(reading(bench.a())).as("all zero").isInstanceOf(Reading.Faulty.class);
        put(A, "w1_slave", W1ParserTest.slaveText(W1ParserTest.eight(0), "YES", 0));
        bench.bus().cycle();
        assertThat(reading(bench.a())).isEqualTo(new Reading.Value(0));
    }

    @Test
    void anOlderKernelIsReadThroughItsTwoLines() throws IOException {
        Files.delete(root.resolve(A).resolve("temperature"));
        put(A, "w1_slave", W1ParserTest.slaveText(W1ParserTest.eight(433), "YES", 27062));
        Bench bench = bench(clock, Outcome.NONE);
        bench.bus().cycle();
        assertThat(reading(bench.a())).isEqualTo(new Reading.Value(27.062));
        put(A, "w1_slave", W1ParserTest.slaveText(W1ParserTest.eight(433), "NO", 27062));
        bench.bus().cycle();
        assertThat(reading(bench.a())).isInstanceOf(Reading.Faulty.class);
    }

    @Test
    void aFolderWithoutEitherFileSaysWhichModuleIsMissing() throws IOException {
        Files.delete(root.resolve(A).resolve("temperature"));
        Bench bench = bench(clock, Outcome.NONE);
        bench.bus().cycle();
        assertThat(reading(bench.a())).asString().contains("w1_therm");
    }

    @Test
    void afterThreeSilentCyclesTheBusIsLeftMoreRestUntilSomethingAnswers() throws IOException {
        Bench bench = bench(clock, Outcome.NONE);
        put(A, "temperature", "");
        put(B, "temperature", "85000\n");
        bench.bus().cycle();
        bench.bus().cycle();
        assertThat(bench.bus().slow()).isFalse();
        bench.bus().cycle();
        assertThat(bench.bus().slow()).isTrue();
        put(B, "temperature", "8125\n");
        bench.bus().cycle();
        assertThat(bench.bus().slow()).as("one healthy probe is enough").isFalse();
    }

    @Test
    void parasitePowerAndCoarseStepsAreToldOnce() throws IOException {
        put(A, "ext_power", "0\n");
        put(B, "resolution", "10\n");
        Bench bench = bench(clock, Outcome.NONE);
        bench.bus().cycle();
        bench.bus().cycle();
        assertThat(bench.bus().describe()).hasSize(2);
        assertThat(bench.bus().describe().get(0)).contains("probe a").contains("data wire");
        assertThat(bench.bus().describe().get(1)).contains("probe b").contains("0.25 °C");
    }

    @Test
    void healthyWiringNeedsNoWords() {
        Bench bench = bench(clock, Outcome.NONE);
        bench.bus().cycle();
        assertThat(bench.bus().describe()).isEmpty();
    }

    @Test
    void theBulkTriggerIsWrittenAsTheKernelWantsIt() throws IOException {
        Path master = Files.createDirectories(root.resolve("w1_bus_master1"));
        Files.writeString(master.resolve("therm_bulk_read"), "0\n");
        assertThat(new KernelBulk(master).convert()).as("a plain file").isEqualTo(Outcome.NONE);
        assertThat(master.resolve("therm_bulk_read")).hasContent("trigger\n");
        assertThat(new KernelBulk(root).convert()).as("not offered").isEqualTo(Outcome.NONE);
    }

    @Test
    void onlyAConversionOfOurOwnIsTakenAsFresh() {
        assertThat(KernelBulk.outcome(true, "1\n")).isEqualTo(Outcome.DONE);
        assertThat(KernelBulk.outcome(false, "1\n")).isEqualTo(Outcome.LEFT_OVER);
        assertThat(KernelBulk.outcome(true, "0\n")).isEqualTo(Outcome.NONE);
        assertThat(KernelBulk.outcome(true, "-1\n")).isEqualTo(Outcome.NONE);
        assertThat(KernelBulk.outcome(false, "")).isEqualTo(Outcome.NONE);
    }

    @Test
    void aTriggerThatMayNotBeWrittenIsToldWithWhatToDo() throws IOException {
        Path master = Files.createDirectories(root.resolve("w1_bus_master1").resolve("therm_bulk_read"));
        KernelBulk bulk = new KernelBulk(master.getParent());
        assertThat(bulk.convert()).isEqualTo(Outcome.NONE);
        assertThat(bulk.trouble()).isPresent();
    }

    @Test
    void eachBusMasterGetsAReaderOfItsOwn() throws IOException {
        Path devices = Files.createDirectories(root.resolve("devices"));
        Path links = Files.createDirectories(root.resolve("bus"));
        for (int i = 1; i <= 2; i++) {
            Path master = Files.createDirectories(devices.resolve("w1_bus_master" + i));
            Path probe = Files.createDirectories(master.resolve("28-00000000000" + i));
            Files.writeString(probe.resolve("temperature"), "2000" + i + "\n");
            Files.createSymbolicLink(links.resolve(master.getFileName()), master);
            Files.createSymbolicLink(links.resolve(probe.getFileName()), probe);
        }
        List<OneWire.Place> places = List.of(new OneWire.Place("a", "28-000000000001"),
                new OneWire.Place("b", "28-000000000002"), new OneWire.Place("late", "28-000000000003"));
        try (OneWire wire = new OneWire(links, places, clock)) {
            assertThat(wire.masterCount()).isEqualTo(2);
            wire.start(10);
            Probe b = wire.probes().get(1);
            await(() -> reading(b).equals(new Reading.Value(20.002)));
            await(() -> reading(wire.probes().get(0)).equals(new Reading.Value(20.001)));
            await(() -> reading(wire.probes().get(2)).equals(new Reading.Absent()));
        }
    }

    @Test
    void aRootThatDoesNotExistMakesEveryProbeAbsent() {
        try (OneWire wire = new OneWire(root.resolve("nowhere"), List.of(new OneWire.Place("a", A)), clock)) {
            wire.start(10);
            await(() -> reading(wire.probes().get(0)).equals(new Reading.Absent()));
        }
    }

    @Test
    void anAddressThatIsNoProbesIsRefusedWithAnExample() {
        for (String bad : List.of("", "28-xyz", "../../etc", "10-0000000000aa", "28-0000000000AA")) {
            assertThatThrownBy(() -> new OneWire.Place("a", bad)).isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("28-0123456789ab");
        }
    }

    @Test
    void filesRewrittenWhileBeingReadNeverMakeATemperatureThatNobodyWrote() throws Exception {
        AtomicBoolean stop = new AtomicBoolean();
        Path file = root.resolve(A).resolve("temperature");
        Thread writer = Thread.ofPlatform().start(() -> rewrite(file, stop));
        Set<Reading> seen = new HashSet<>();
        try (OneWire wire = new OneWire(root, List.of(new OneWire.Place("a", A)), clock)) {
            Bench bench = bench(clock, Outcome.NONE);
            // As often as it takes to catch both texts: a reader may run in step with the writer for a while.
            for (int i = 0; i < 4_000 || i < 1_000_000 && seen.stream()
                    .filter(r -> r instanceof Reading.Value).count() < 2; i++) {
                bench.bus().cycle();
                seen.add(reading(bench.a()));
            }
            wire.start(1);
            await(() -> reading(wire.probes().get(0)) instanceof Reading.Value);
        } finally {
            stop.set(true);
            writer.join();
        }
        List<Reading> values = new ArrayList<>(seen);
        values.removeIf(r -> r instanceof Reading.Faulty);
        assertThat(values).isSubsetOf(new Reading.Value(27.062), new Reading.Value(-10.125));
        assertThat(seen).as("both texts were caught").contains(new Reading.Value(27.062),
                new Reading.Value(-10.125));
    }

    /** Truncates, then writes byte by byte: worse than any real writer. */
    private static void rewrite(Path file, AtomicBoolean stop) {
        for (int i = 0; !stop.get(); i++) {
            try (var out = Files.newOutputStream(file, StandardOpenOption.TRUNCATE_EXISTING)) {
                for (byte b : (i % 2 == 0 ? "27062\n" : "-10125\n").getBytes(StandardCharsets.US_ASCII)) {
                    out.write(b);
                }
                for (int n = 0; n < 20_000; n++) {
                    Thread.onSpinWait();
                }
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }
    }

    private static void await(BooleanSupplier condition) {
        for (int i = 0; i < 2_000; i++) {
            if (condition.getAsBoolean()) {
                return;
            }
            java.util.concurrent.locks.LockSupport.parkNanos(5_000_000);
        }
        throw new AssertionError("not within 10 s");
    }
}

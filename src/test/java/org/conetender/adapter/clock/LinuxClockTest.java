package org.conetender.adapter.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LinuxClockTest {

    @Test
    void javasClockCountsFromTheBootAsTheKernelsDoes() {
        long before = Kernel.monotonicNs().orElseThrow();
        long java = System.nanoTime();
        long after = Kernel.monotonicNs().orElseThrow();
        assertThat(java).isBetween(before, after);
    }

    @Test
    void monotonicTimeIsNoMoreThanTheUptimeOfTheMachine() throws Exception {
        Moment now = new LinuxClock().now();
        double uptimeS = Double.parseDouble(Files.readString(Path.of("/proc/uptime")).split(" ")[0]);
        assertThat(now.monoMs()).as("uptime also counts sleep").isPositive()
                .isLessThanOrEqualTo((long) (uptimeS * 1000) + 20);
    }

    @Test
    void timesOfTwoProcessesOfOneBootCompare() throws Exception {
        LinuxClock clock = new LinuxClock();
        Moment before = clock.now();
        Process other = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED", "-cp", System.getProperty("java.class.path"),
                ClockReader.class.getName()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        String[] said = other.inputReader().readLine().split(" ");
        Moment after = clock.now();
        assertThat(said[0]).isEqualTo(before.boot()).isNotEmpty();
        assertThat(Long.parseLong(said[1])).isBetween(before.monoMs(), after.monoMs());
    }

    @Test
    void theWallClockIsTheMachines() {
        long before = System.currentTimeMillis();
        assertThat(new LinuxClock().now().wallMs()).isBetween(before, System.currentTimeMillis());
    }

    @Test
    void trustIsTheKernelsOwnFlag() {
        assertThat(new LinuxClock().now().wallTrusted()).isEqualTo(Kernel.wall().synchronised()
                && Kernel.wall().maxErrorMs() <= Boots.SKEW_MS);
    }

    @ParameterizedTest
    @CsvSource({"0, 0x2001, true", "0, 0x2041, false", "5, 0x40, false", "5, 0, false", "-1, 0, false",
        "1, 0, true", "4, 0, true"})
    void anUnsynchronisedOrRefusedAnswerIsNotTrusted(int state, String status, boolean trusted) {
        assertThat(Kernel.synchronised(state, Integer.decode(status))).isEqualTo(trusted);
    }

    @Test
    void trustIsAskedAgainAfterTenSecondsAndNotBefore() {
        AtomicLong ns = new AtomicLong(1_000_000_000);
        AtomicInteger asked = new AtomicInteger();
        AtomicBoolean synchronised = new AtomicBoolean();
        LinuxClock clock = new LinuxClock("boot-1", ns::get, () -> ns.get() / 1_000_000, () -> {
            asked.incrementAndGet();
            return new Kernel.Wall(synchronised.get(), 20);
        });
        synchronised.set(true);
        ns.addAndGet((LinuxClock.TRUST_MS - 1) * 1_000_000);
        assertThat(clock.now().wallTrusted()).isFalse();
        ns.addAndGet(1_000_000);
        assertThat(clock.now().wallTrusted()).isTrue();
        assertThat(clock.now().wallTrusted()).isTrue();
        assertThat(asked).hasValue(2);
    }

    /** Who sets it by hand takes the kernel's flag away in the same moment. */
    @Test
    void aWallClockThatIsSetIsNotTrustedForAnotherTenSeconds() {
        AtomicLong ns = new AtomicLong(1_000_000_000);
        AtomicLong wallMs = new AtomicLong(1_795_608_000_000L);
        AtomicBoolean synchronised = new AtomicBoolean(true);
        LinuxClock clock = new LinuxClock("boot-1", ns::get, wallMs::get,
                () -> new Kernel.Wall(synchronised.get(), 20));
        ns.addAndGet(1_000_000_000);
        wallMs.addAndGet(1_000);
        assertThat(clock.now().wallTrusted()).isTrue();
        synchronised.set(false);
        for (long years : new long[] {10, -20}) {
            wallMs.addAndGet(years * 31_556_952_000L);
            assertThat(clock.now().wallTrusted()).isFalse();
        }
        synchronised.set(true);
        wallMs.addAndGet(10 * 31_556_952_000L);
        assertThat(clock.now().wallTrusted()).as("set back to the true time, and fetched").isTrue();
    }

    /** What a boot is placed by must be good; what it says later, without a network, goes on from there. */
    @Test
    void trustBeginsOnlyWithASmallErrorAndOutlastsALargerOne() {
        AtomicLong ns = new AtomicLong(1_000_000_000);
        AtomicLong setMs = new AtomicLong();
        AtomicLong errorMs = new AtomicLong(Boots.SKEW_MS + 1);
        LinuxClock clock = new LinuxClock("boot-1", ns::get, () -> ns.get() / 1_000_000 + setMs.get(),
                () -> new Kernel.Wall(true, errorMs.get()));
        assertThat(clock.now().wallTrusted()).isFalse();
        long[][] errorsAndTrust = {{15_000, 0}, {Boots.SKEW_MS, 1}, {15_000, 1}};
        for (long[] e : errorsAndTrust) {
            ns.addAndGet(LinuxClock.TRUST_MS * 1_000_000);
            errorMs.set(e[0]);
            assertThat(clock.now().wallTrusted()).as(e[0] + " ms").isEqualTo(e[1] == 1);
        }
        setMs.set(600);
        assertThat(clock.now().wallTrusted()).as("set anew, and not well").isFalse();
    }

    /** As adjtimex(2) has it: at most 16 s, or the flag is gone. */
    @Test
    void theKernelBoundsItsError() {
        assertThat(Kernel.wall().maxErrorMs()).isBetween(0L, 16_000L);
    }

    @Test
    void aJavaClockOfAnotherOriginIsNotUsed() {
        LongSupplier java = () -> 17;
        LongSupplier kernel = () -> 900_000_000_000L;
        assertThat(LinuxClock.sinceBoot(java, kernel)).isSameAs(kernel);
        assertThat(LinuxClock.sinceBoot(kernel, kernel)).isSameAs(kernel);
        LongSupplier alike = () -> 900_000_100_000L;
        assertThat(LinuxClock.sinceBoot(alike, kernel)).isSameAs(alike);
    }

    @Test
    void withoutABootIdItSaysWhatItNeeds() {
        assertThatThrownBy(() -> LinuxClock.bootId(Path.of("no-such-file")))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("no-such-file").hasMessageContaining("/proc");
    }
}

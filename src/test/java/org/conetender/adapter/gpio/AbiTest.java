package org.conetender.adapter.gpio;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.foreign.Arena;
import java.lang.foreign.MemorySegment;
import org.junit.jupiter.api.Test;

/** Sizes, offsets and call numbers as a C compiler finds them in linux/gpio.h, on amd64 and arm64. */
class AbiTest {

    @Test
    void everyStructureHasTheSizeTheKernelExpects() {
        assertThat(Abi.CHIP_INFO.byteSize()).isEqualTo(68);
        assertThat(Abi.LINE_VALUES.byteSize()).isEqualTo(16);
        assertThat(Abi.LINE_ATTRIBUTE.byteSize()).isEqualTo(16);
        assertThat(Abi.LINE_CONFIG_ATTRIBUTE.byteSize()).isEqualTo(24);
        assertThat(Abi.LINE_CONFIG.byteSize()).isEqualTo(272);
        assertThat(Abi.LINE_REQUEST.byteSize()).isEqualTo(592);
        assertThat(Abi.LINE_INFO.byteSize()).isEqualTo(256);
    }

    @Test
    void everyFieldOfALineRequestLiesWhereTheKernelReadsIt() {
        assertThat(Abi.at(Abi.LINE_REQUEST, "offsets")).isZero();
        assertThat(Abi.at(Abi.LINE_REQUEST, "consumer")).isEqualTo(256);
        assertThat(Abi.at(Abi.LINE_REQUEST, "config", "flags")).isEqualTo(288);
        assertThat(Abi.at(Abi.LINE_REQUEST, "config", "num_attrs")).isEqualTo(296);
        assertThat(Abi.at(Abi.LINE_REQUEST, "config", "attrs", "[0]", "attr", "id")).isEqualTo(320);
        assertThat(Abi.at(Abi.LINE_REQUEST, "config", "attrs", "[0]", "attr", "values")).isEqualTo(328);
        assertThat(Abi.at(Abi.LINE_REQUEST, "config", "attrs", "[0]", "mask")).isEqualTo(336);
        assertThat(Abi.at(Abi.LINE_REQUEST, "num_lines")).isEqualTo(560);
        assertThat(Abi.at(Abi.LINE_REQUEST, "event_buffer_size")).isEqualTo(564);
        assertThat(Abi.at(Abi.LINE_REQUEST, "fd")).isEqualTo(588);
    }

    @Test
    void everyFieldThatIsReadBackLiesWhereTheKernelWritesIt() {
        assertThat(Abi.at(Abi.CHIP_INFO, "label")).isEqualTo(32);
        assertThat(Abi.at(Abi.CHIP_INFO, "lines")).isEqualTo(64);
        assertThat(Abi.at(Abi.LINE_VALUES, "mask")).isEqualTo(8);
        assertThat(Abi.at(Abi.LINE_INFO, "consumer")).isEqualTo(32);
        assertThat(Abi.at(Abi.LINE_INFO, "offset")).isEqualTo(64);
        assertThat(Abi.at(Abi.LINE_INFO, "flags")).isEqualTo(72);
    }

    @Test
    void everyCallHasTheNumberOfTheHeader() {
        assertThat(Abi.GET_CHIP_INFO).isEqualTo(0x8044B401L);
        assertThat(Abi.GET_LINE_INFO).isEqualTo(0xC100B405L);
        assertThat(Abi.GET_LINE).isEqualTo(0xC250B407L);
        assertThat(Abi.GET_VALUES).isEqualTo(0xC010B40EL);
        assertThat(Abi.SET_VALUES).isEqualTo(0xC010B40FL);
    }

    @Test
    void theRealKernelSaysThatThereIsNoSuchDevice() {
        assertThat(new Libc().open("/dev/no-such-gpiochip")).isEqualTo(-Errno.ENOENT);
    }

    @Test
    void theRealKernelSaysThatANullDeviceIsNoGpioChip() {
        Libc libc = new Libc();
        int descriptor = libc.open("/dev/null");
        try (Arena arena = Arena.ofConfined()) {
            MemorySegment info = arena.allocate(Abi.CHIP_INFO);
            assertThat(descriptor).isPositive();
            assertThat(libc.ioctl(descriptor, Abi.GET_CHIP_INFO, info)).isEqualTo(-Errno.ENOTTY);
        } finally {
            assertThat(libc.close(descriptor)).isZero();
        }
    }
}

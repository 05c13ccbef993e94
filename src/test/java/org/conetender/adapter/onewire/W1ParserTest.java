package org.conetender.adapter.onewire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import java.util.Locale;
import java.util.Random;
import org.conetender.core.image.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class W1ParserTest {

    /** What the kernel prints for these eight bytes, with the checksum that belongs to them. */
    static String slaveText(byte[] eight, String verdict, int milli) {
        byte[] nine = java.util.Arrays.copyOf(eight, 9);
        nine[8] = (byte) Scratchpad.crc8(eight, 8);
        String hex = HexFormat.ofDelimiter(" ").formatHex(nine);
        String crc = String.format(Locale.ROOT, "%02x", nine[8]);
        return hex + " : crc=" + crc + " " + verdict + "\n" + hex + " t=" + milli + "\n";
    }

    static byte[] eight(int sixteenths) {
        return new byte[] {(byte) sixteenths, (byte) (sixteenths >> 8), 0x4b, 0x46, 0x7f, (byte) 0xff, 0x0c,
            0x10};
    }

    private static String why(Reading reading) {
        assertThat(reading).isInstanceOf(Reading.Faulty.class);
        return ((Reading.Faulty) reading).why();
    }

    @ParameterizedTest
    @CsvSource({"27062, 27.062", "-125, -0.125", "125000, 125.0", "-55000, -55.0", "62, 0.062"})
    void aPlainNumberIsATemperature(String text, double degreesC) {
        assertThat(W1Parser.temperature(text + "\n")).isEqualTo(new Reading.Value(degreesC));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "27062", "2706", "27062\n\n", " 27062\n", "27.062\n", "27062\n8000\n",
            "--5\n", "2706200\n", "NaN\n", "error\n", "\u0000\u0000\n", "0x27\n",
            "+27062\n", "٢٧٠٦٢\n", "85000\n", "127937\n", "-55001\n", "125001\n", "-109900\n"})
    void whatIsNotCertainlyATemperatureIsAFault(String text) {
        assertThat(why(W1Parser.temperature(text))).isNotBlank();
    }

    @Test
    void thePowerOnValueIsToldAsWhatItIs() {
        assertThat(why(W1Parser.temperature("85000\n"))).contains("85.000").contains("lost its power");
        assertThat(why(W1Parser.temperature("127937\n"))).contains("127.937").contains("supply");
        assertThat(W1Parser.temperature("84937\n")).isEqualTo(new Reading.Value(84.937));
    }

    @Test
    void zeroAndAllOnesNeedTheBytes() {
        assertThat(W1Parser.needsBytes("0\n")).isTrue();
        assertThat(W1Parser.needsBytes("-62\n")).isTrue();
        assertThat(W1Parser.needsBytes("62\n")).isFalse();
        assertThat(W1Parser.needsBytes("")).isFalse();
    }

    @Test
    void theKernelsOwnExamplesAreRead() {
        // The power-on scratchpad of control.md §3.2, and one of 27.0625 °C.
        assertThat(why(W1Parser.slave("50 05 4b 46 7f ff 0c 10 1c : crc=1c YES\n"
                + "50 05 4b 46 7f ff 0c 10 1c t=85000\n"))).contains("85.000");
        assertThat(W1Parser.slave(slaveText(eight(433), "YES", 27062))).isEqualTo(new Reading.Value(27.062));
    }

    @Test
    void everyTemperatureOfThePartIsReadBothWaysAlike() {
        for (int sixteenths = -55 * 16; sixteenths <= 125 * 16; sixteenths++) {
            int milli = sixteenths * 1000 / 16;
            Reading bytes = W1Parser.slave(slaveText(eight(sixteenths), "YES", milli));
            assertThat(bytes).as("%d/16", sixteenths).isEqualTo(W1Parser.temperature(milli + "\n"));
        }
    }

    @Test
    void realZeroDegreesIsATemperatureAndAllZeroBytesAreNot() {
        assertThat(W1Parser.slave(slaveText(eight(0), "YES", 0))).isEqualTo(new Reading.Value(0));
        assertThat(why(W1Parser.slave(slaveText(new byte[8], "YES", 0)))).contains("every byte is zero");
        assertThat(slaveText(new byte[8], "YES", 0)).as("its checksum does hold").contains("crc=00 YES");
    }

    @Test
    void allOnesIsNoAnswer() {
        String ones = "ff ff ff ff ff ff ff ff ff : crc=c9 NO\nff ff ff ff ff ff ff ff ff t=-62\n";
        assertThat(why(W1Parser.slave(ones))).contains("every byte is one");
    }

    @Test
    void aChecksumLineThatSaysNoIsAFaultAndTheRetainedLineIsNotUsed() {
        String no = "b1 01 4b 46 7f ff 0c 10 00 : crc=15 NO\n98 01 4b 46 7f ff 08 10 9f t=27062\n";
        assertThat(why(W1Parser.slave(no))).contains("checksum");
    }

    @Test
    void theChecksumIsRecomputedWhateverTheKernelSays() {
        Random random = new Random(5);
        String good = slaveText(eight(433), "YES", 27062);
        for (int i = 0; i < 500; i++) {
            byte[] nine = HexFormat.ofDelimiter(" ").parseHex(good.substring(0, 26));
            nine[random.nextInt(9)] ^= (byte) (1 << random.nextInt(8));
            String bad = HexFormat.ofDelimiter(" ").formatHex(nine) + good.substring(26);
            assertThat(why(W1Parser.slave(bad))).as(bad).contains("checksum");
        }
    }

    @Test
    void bytesAndNumberMustAgree() {
        assertThat(why(W1Parser.slave(slaveText(eight(433), "YES", 28062)))).contains("disagree");
    }

    @Test
    void halfAFileIsNeverATemperature() {
        String whole = slaveText(eight(433), "YES", 27062);
        for (int n = 0; n < whole.length(); n++) {
            assertThat(W1Parser.slave(whole.substring(0, n))).as("%d characters", n)
                    .isInstanceOf(Reading.Faulty.class);
        }
    }

    @Test
    void aLongPieceOfGarbageIsShownShortAndOnOneLine() {
        assertThat(why(W1Parser.temperature("a\nb\u0007" + "c".repeat(4000)))).hasSizeLessThan(110)
                .doesNotContain("\n");
    }
}

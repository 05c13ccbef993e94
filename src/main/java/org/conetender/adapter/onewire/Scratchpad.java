package org.conetender.adapter.onewire;

import java.util.HexFormat;

/**
 * The nine bytes a probe sends: two of temperature, two alarm bytes, configuration, three reserved,
 * and the checksum over the first eight.
 */
final class Scratchpad {

    static final int BYTES = 9;

    /** Polynomial x⁸ + x⁵ + x⁴ + 1, lowest bit first, as the part's data sheet defines it. */
    private static final int POLYNOMIAL = 0x8c;

    private final byte[] bytes;

    /** @param hex nine two-digit numbers, separated by blanks */
    Scratchpad(String hex) {
        bytes = HexFormat.ofDelimiter(" ").parseHex(hex.strip());
        if (bytes.length != BYTES) {
            throw new IllegalArgumentException("a scratchpad has nine bytes, not " + bytes.length);
        }
    }

    boolean checksumHolds() {
        return crc8(bytes, BYTES - 1) == (bytes[BYTES - 1] & 0xff);
    }

    /** Whether every byte is {@code value}: a shorted bus reads as zeros, an open one as ones. */
    boolean isAll(int value) {
        for (byte b : bytes) {
            if ((b & 0xff) != value) {
                return false;
            }
        }
        return true;
    }

    /** The temperature register in sixteenths of a degree, signed. */
    int sixteenths() {
        return (short) ((bytes[0] & 0xff) | bytes[1] << 8);
    }

    static int crc8(byte[] data, int length) {
        int crc = 0;
        for (int i = 0; i < length; i++) {
            crc ^= data[i] & 0xff;
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc & 1) == 1 ? crc >> 1 ^ POLYNOMIAL : crc >> 1;
            }
        }
        return crc;
    }
}

package org.conetender.adapter.sqlite;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.zip.CRC32C;

/**
 * A sum of 32 bits over what a row says. SQLite finds pages that are no pages; a bit that fell over inside a
 * text or a number it does not, and one row in 2^32 of such reads well by this sum.
 */
final class Sum {

    private Sum() {}

    /** Over these fields in their order; none of them holds a zero character. */
    static long of(Object... fields) {
        // One text and one pass: a start sums the rows of a year, mostly before Java has compiled this.
        StringBuilder all = new StringBuilder(128);
        for (Object f : fields) {
            all.append(f).append('\0');
        }
        CRC32C crc = new CRC32C();
        crc.update(all.toString().getBytes(UTF_8));
        return crc.getValue();
    }
}

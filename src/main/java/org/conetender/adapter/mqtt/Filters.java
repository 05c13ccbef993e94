package org.conetender.adapter.mqtt;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** What MQTT 5 (chapter 4.7) allows as a topic and as a topic filter. */
final class Filters {

    /** Bytes of a topic at most: its length is written in two bytes (MQTT 5, 1.5.4). */
    private static final int LONGEST = 65_535;

    private Filters() {}

    /** Whether a message can be published there. */
    static boolean canPublish(String topic) {
        return isText(topic) && topic.indexOf('+') < 0 && topic.indexOf('#') < 0;
    }

    /** @throws IllegalArgumentException in words, when a filter is malformed or two of them overlap */
    static void requireUsable(List<String> filters) {
        for (int i = 0; i < filters.size(); i++) {
            if (!isFilter(filters.get(i))) {
                throw new IllegalArgumentException("'" + filters.get(i) + "' is no topic filter");
            }
            for (int k = 0; k < i; k++) {
                if (overlap(filters.get(k), filters.get(i))) {
                    throw new IllegalArgumentException("the filters '" + filters.get(k) + "' and '"
                            + filters.get(i) + "' overlap, so that a command could arrive twice");
                }
            }
        }
    }

    /**
     * Neither empty nor too long, and without what the client library refuses only when it is already
     * sending: control characters, half surrogates and non-characters would cost the connection.
     */
    private static boolean isText(String topic) {
        return !topic.isEmpty()
                && topic.codePoints().noneMatch(Filters::isForbidden)
                && topic.getBytes(StandardCharsets.UTF_8).length <= LONGEST;
    }

    private static boolean isForbidden(int codePoint) {
        return Character.isISOControl(codePoint)
                || Character.getType(codePoint) == Character.SURROGATE
                || (codePoint & 0xFFFE) == 0xFFFE
                || (codePoint >= 0xFDD0 && codePoint <= 0xFDEF);
    }

    private static boolean isFilter(String filter) {
        String[] levels = filter.split("/", -1);
        for (int i = 0; i < levels.length; i++) {
            boolean plain = levels[i].indexOf('+') < 0 && levels[i].indexOf('#') < 0;
            boolean last = i == levels.length - 1;
            if (!plain && !levels[i].equals("+") && !(last && levels[i].equals("#"))) {
                return false;
            }
        }
        return isText(filter);
    }

    /** Whether some topic matches both. */
    static boolean overlap(String one, String other) {
        String[] a = one.split("/", -1);
        String[] b = other.split("/", -1);
        int shared = Math.min(a.length, b.length);
        for (int i = 0; i < shared; i++) {
            if (a[i].equals("#") || b[i].equals("#")) {
                return true;
            }
            if (!a[i].equals("+") && !b[i].equals("+") && !a[i].equals(b[i])) {
                return false;
            }
        }
        // "a/#" also matches "a" itself.
        return a.length == b.length
                || (a.length == shared + 1 && a[shared].equals("#"))
                || (b.length == shared + 1 && b[shared].equals("#"));
    }
}

package org.conetender.core.face;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One property as a Homie 5 description has it.
 *
 * @param id lower-case word
 * @param name for people
 * @param datatype one of the convention's
 * @param format range, list or schema; empty when there is none
 * @param unit empty when there is none
 * @param settable whether clients may set it
 */
record Property(String id, String name, String datatype, String format, String unit, boolean settable) {

    static Property of(String id, String name, String datatype) {
        return new Property(id, name, datatype, "", "", false);
    }

    Property format(String f) {
        return new Property(id, name, datatype, f, unit, settable);
    }

    Property unit(String u) {
        return new Property(id, name, datatype, format, u, settable);
    }

    Property set() {
        return new Property(id, name, datatype, format, unit, true);
    }

    Map<String, Object> describe() {
        Map<String, Object> m = new LinkedHashMap<>();
        m.put("name", name);
        m.put("datatype", datatype);
        if (!format.isEmpty()) {
            m.put("format", format);
        }
        if (!unit.isEmpty()) {
            m.put("unit", unit);
        }
        if (settable) {
            m.put("settable", true);
        }
        return m;
    }
}

package org.conetender.core.face;

import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.conetender.core.unit.Text;

/** Writes JSON text from maps, lists, strings, numbers and booleans. Only writes; reading is the shell's. */
public final class Json {

    private Json() {}

    /** @throws IllegalArgumentException for a value that has no JSON form */
    public static String write(Object value) {
        StringBuilder s = new StringBuilder();
        append(s, value);
        return s.toString();
    }

    private static void append(StringBuilder s, Object value) {
        switch (value) {
            case String t -> quote(s, t);
            case Boolean b -> s.append(b);
            case Integer i -> s.append(i);
            case Long l -> s.append(l);
            case Double d when Double.isFinite(d) -> s.append(d == Math.rint(d) && Math.abs(d) < 1e15
                    ? String.valueOf(d.longValue()) : d.toString());
            case Map<?, ?> m -> object(s, m);
            case List<?> l -> array(s, l);
            case null, default -> throw new IllegalArgumentException("not a JSON value: " + value);
        }
    }

    private static void object(StringBuilder s, Map<?, ?> m) {
        s.append('{');
        Iterator<? extends Map.Entry<?, ?>> it = m.entrySet().iterator();
        while (it.hasNext()) {
            Map.Entry<?, ?> e = it.next();
            quote(s, e.getKey().toString());
            s.append(':');
            append(s, e.getValue());
            s.append(it.hasNext() ? "," : "");
        }
        s.append('}');
    }

    private static void array(StringBuilder s, List<?> l) {
        s.append('[');
        for (int i = 0; i < l.size(); i++) {
            s.append(i > 0 ? "," : "");
            append(s, l.get(i));
        }
        s.append(']');
    }

    private static void quote(StringBuilder s, String t) {
        s.append('"');
        for (int i = 0; i < t.length(); i++) {
            char c = t.charAt(i);
            switch (c) {
                case '"', '\\' -> s.append('\\').append(c);
                case '\n' -> s.append("\\n");
                case '\t' -> s.append("\\t");
                case '\r' -> s.append("\\r");
                default -> {
                    if (c < 32) {
                        s.append(Text.of("\\u%04x", (int) c));
                    } else {
                        s.append(c);
                    }
                }
            }
        }
        s.append('"');
    }
}

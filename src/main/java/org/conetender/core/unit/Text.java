package org.conetender.core.unit;

import java.util.Locale;

/** Sentences with figures in them: the same text on every machine, whatever its language. */
public final class Text {

    private Text() {}

    /** As {@link String#format}, with a point in 27.0 also where the machine would write a comma. */
    public static String of(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures);
    }
}
